"""What is left out changes nothing, and what is called decided holds: random jobs, told in random orders.

The default run is small and the same each time; `pytest --hypothesis-profile=deep tests/talk/test_soundness.py` tries a
thousand new jobs.
"""

from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from whole_jobs import varied, whole_jobs

from intake.sizing import size, verdicts
from intake.sizing.result import Result
from intake.spec.flat import Spec, SpecError
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

JOBS = list(whole_jobs().values())
SEEDS = st.integers(0, 2**32)
FIGURES = (0.0, 0.01, 0.1, 0.3, 1.0, 3.0, 20.0, 60.0, 90.0, 180.0, 1000.0)


def is_deep() -> bool:
    return settings.get_current_profile_name() == "deep"


def for_seeds(law: Any, tries: int) -> None:
    rules = settings(
        max_examples=1000 if is_deep() else tries, derandomize=not is_deep(), deadline=None,
        suppress_health_check=list(HealthCheck),
    )  # fmt: skip
    rules(given(SEEDS)(law))()


def part_of(rng: Random) -> dict[str, Any]:
    """Some of the facts of a job, as they may be known half-way through a talk."""
    job = varied(rng.choice(JOBS), rng)
    names = rng.sample(sorted(job), len(job))
    return {name: job[name] for name in names[: rng.randint(4, len(names))]}


def any_value(rng: Random, field: str) -> Any:
    """Anything that the input takes for a field."""
    known = vocabulary()[field]
    if known.kind == "yes_no":
        return rng.random() < 0.5
    if not known.is_number:
        return rng.choice(known.choices) if known.choices else "some words"
    if known.kind == "count":
        return rng.choice([1, 2, 5, 40])
    return rng.choice(FIGURES) if rng.random() < 0.5 else round(10.0 ** rng.uniform(-2.0, 3.0), 4)


@pytest.mark.usefixtures("sampled")
def test_no_possible_answer_to_a_skipped_question_changes_a_verdict_that_stands() -> None:
    tried = {"skipped": 0, "answers": 0}

    def law(seed: int) -> None:
        rng = Random(seed)
        part = part_of(rng)
        talk = Interview()
        for name, said in part.items():
            talk.know(name, said)
        before, quarrels = verdicts(Spec.from_flat(part)), len(size(part).conflicts)
        for left in talk.skipped:
            tried["skipped"] += 1
            for _ in range(3):
                more = part | {name: any_value(rng, name) for name in left.fields}
                try:
                    after = verdicts(Spec.from_flat(more))
                except SpecError:
                    continue  # refused on entry
                if len(size(more).conflicts) > quarrels:
                    continue  # against what is known: no completion
                tried["answers"] += 1
                assert [n for n in before if before[n] != "out" and after[n] != before[n]] == [], (left, more)

    for_seeds(law, 25)
    assert tried["skipped"] > 200
    assert tried["answers"] > 400


_ANOTHER_WORD = {"product.base", "product.base_width", "temperature.room", "cleaning.pressure", "rise.infeed_height"}
"""Parts of what is known, or another word on it: told at random they would contradict it."""


def completed(rng: Random, part: dict[str, Any], result: Result, job: dict[str, Any]) -> dict[str, Any]:
    """Everything else disclosed: what the job says, and what its assumptions hold plausible."""
    whole = dict(part)
    for one in result.assumptions:
        about = one.about[0] if one.about else ""
        if about not in vocabulary() or about in whole or about in _ANOTHER_WORD:
            continue
        if one.values is not None:
            whole[about] = rng.choice(one.values)
        elif one.low is not None and one.high is not None and vocabulary()[about].unit == one.unit:
            whole[about] = rng.uniform(one.low, one.high)
    for name, said in job.items():
        whole.setdefault(name, said)
    return whole


@pytest.mark.usefixtures("sampled")
def test_a_decided_talk_keeps_its_best_family_when_everything_is_disclosed() -> None:
    pooled = {"decided": 0, "same": 0}

    def law(seed: int) -> None:
        rng = Random(seed)
        job = varied(rng.choice(JOBS), rng)
        talk = Interview()
        while not talk.decided:
            question = talk.ask()
            if question is None or question.purpose == "engineering":
                return
            if seed % 2:  # half of the talks go as they please
                question = talk.put(rng.choice([one.id for one in talk.open_questions() if one.kind == "question"]))
            names = [name for name in question.fields if name in job]
            for name in names:
                talk.know(name, job[name])
            if len(names) < len(question.fields):
                talk.unknown(question.id)
        result = talk.result()
        for _ in range(4):
            whole = completed(rng, talk.spec(), result, job)
            after = size(whole)
            if len(after.conflicts) > len(result.conflicts):
                continue
            pooled["decided"] += 1
            pooled["same"] += after.best == result.best

    for_seeds(law, 25)
    assert pooled["decided"] > 60
    assert pooled["same"] >= 0.95 * pooled["decided"], pooled


@pytest.mark.usefixtures("sampled")
@pytest.mark.parametrize("name", sorted(whole_jobs()))
def test_a_whole_job_ends_with_the_recommendation_of_its_full_spec(name: str) -> None:
    job = whole_jobs()[name]
    talk = Interview()
    for _ in range(30):
        question = talk.ask()
        if talk.decided or question is None or question.purpose == "engineering":
            break
        for field in question.fields:
            if field in job:
                talk.know(field, job[field])
        if any(field not in job for field in question.fields):
            talk.unknown(question.id)
    assert talk.result().best == size(job).best
