"""What only a test can tell: which tests, why, and how many samples of which sizes."""

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name
from intake.advice.messages import sample_request, tests_wanted
from intake.interview.reasons import shown
from intake.interview.wording import sentence
from intake.sizing.result import Assumption


def trials(brief: Brief) -> Answer:
    """The tests that are wanted, each with what is counted on until it is made, and the request for samples."""
    said, result = brief.sentences, brief.result
    tests = tests_wanted(result, brief.spec)
    if not tests:
        return Answer(topic="tests", lines=(said.say("trials.none"),), data={"tests": []})
    lines = []
    if result.best is not None:
        lines.append(said.say("trials.lead", family=family_name(result.best, said)))
    for test in tests:
        name = said.find(f"test.{test}") or test
        lines.append(sentence(said.say("trials.one", test=name, why=_why(test, brief))))
    lines += sample_request(result, brief.spec, brief.system, said)
    return Answer(topic="tests", lines=(*lines, said.say("trials.safe")), data={"tests": tests})


def _why(test: str, brief: Brief) -> str:
    """What is counted on until the test is made, first what the leading family leans on."""
    best = brief.best
    leaned_on = {id for check in best.checks for id in check.assumes} if best is not None else set()
    about = [one for one in brief.result.assumptions if one.test == test]
    one = next((one for one in about if one.id in leaned_on), about[0] if about else None)
    value = _range(one, brief) if one is not None else ""
    if not value and test in _BY_FIGURE:
        return brief.sentences.say("trial_why.plain")
    return brief.sentences.say(f"trial_why.{test}", value=value)


_BY_FIGURE = ("test.slip_angle", "test.squeeze_mark", "test.grip_slip")
"""Tests whose reason tells a figure."""


def _range(one: Assumption, brief: Brief) -> str:
    if one.low is None or one.high is None:
        return "" if one.typical is None else shown(one.typical, one.unit, brief.system)
    return f"{shown(one.low, one.unit, brief.system)} to {shown(one.high, one.unit, brief.system)}"
