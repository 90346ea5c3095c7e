"""Messages that can be sent as they are: the next question, follow-ups, a request for samples."""

from collections.abc import Iterable

from intake.interview.question import OpenPoint, Question
from intake.interview.wording import Sentences, by, in_force, joined
from intake.sizing.result import Result
from intake.spec.display import System, show_value
from intake.spec.flat import Spec

_SAMPLES_EACH = "20"  # common practice, no source: enough for slip, tip and squeeze with some to spoil
_TESTS_BY_FLAG = {
    "slip_test": "test.slip_angle",
    "tip_test": "test.tip_angle",
    "transfer_small_product": "test.transfers",
}
_SQUEEZE = ("test.squeeze_mark", "test.grip_slip")


def next_question_message(question: Question) -> str:
    """The question as it goes to the visitor, with ready answers where there are some."""
    labels = [option.label for option in question.options if option.fact is not None]
    unsaid = [label for label in labels if label.casefold() not in question.say.casefold()]
    return f"{question.say} ({joined(unsaid, 'or')}?)" if unsaid else question.say


def follow_up_lines(points: Iterable[OpenPoint], sentences: Sentences | None = None) -> list[str]:
    """Each open point in one line for the visitor, with what would settle it; one breath is one line."""
    said = sentences or in_force()
    lines = []
    for point in points:
        parts = [said.say(f"open_point.{point.state}", say=point.say)]
        parts += [said.say("open_point.settle", settle=point.settle.rstrip("."))] if point.settle else []
        lines.append(" ".join(parts))
    return list(dict.fromkeys(lines)) or [said.say("open_point.none")]


def sample_request(result: Result, spec: Spec, system: System, sentences: Sentences | None = None) -> list[str]:
    """What to ask for when tests are wanted: how many of which sizes, packed how, what for."""
    said = sentences or in_force()
    named = wanted_tests(result, spec, said)
    if not named:
        return [said.say("sample.nothing")]
    lines = [said.say("sample.ask", count=_SAMPLES_EACH, sizes=_sizes(spec, system, said))]
    lines.append(said.say("sample.why", tests=joined(named)))
    lines += [said.say("sample.empties")] if spec.word("product.fill") == "both" else []
    return [*lines, said.say("sample.where")]


def wanted_tests(result: Result, spec: Spec, sentences: Sentences) -> list[str]:
    """What samples would show, each test that was not made yet in words."""
    return [sentences.find(f"test.{test}") or test for test in tests_wanted(result, spec)]


def tests_wanted(result: Result, spec: Spec) -> list[str]:
    """The tests that are wanted and were not made yet, by their fields, the weightiest first."""
    tests = [point.test for point in result.follow_ups if point.test and point.test.startswith("test.")]
    tests += [test for flag, test in _TESTS_BY_FLAG.items() if flag in result.flags]
    tests += list(_SQUEEZE) if "squeeze_test" in result.flags else []
    return [test for test in dict.fromkeys(tests) if not spec.knows(test)]


def _sizes(spec: Spec, system: System, sentences: Sentences) -> str:
    described = []
    for size in spec.sizes:
        edges = ("product.length", "product.width", "product.diameter", "product.height")
        sides = [show_value(name, found, system) for name in edges if (found := spec.of(name, size)) is not None]
        described += [by(sides)] if sides else []
    count = spec.of("product.sizes")
    if len(described) > 1 or (described and (count is None or count.single == 1)):
        return joined(list(dict.fromkeys(described)))
    return sentences.say("sample.smallest_largest")
