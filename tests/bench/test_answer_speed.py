"""From an answer to verdicts, and to the next question: multiples of one evaluation, in one run.

One evaluation is one completion of the job tried with all families: the quick pass of sampling.
`pytest -m bench -s tests/bench/test_answer_speed.py`.
"""

from collections.abc import Callable
from statistics import median
from time import perf_counter
from typing import Any

import pytest
from whole_jobs import whole_jobs

from intake import reading
from intake.interview.tree import load_tree
from intake.sizing import FAMILIES, size, verdicts
from intake.sizing.quick import QuickPass
from intake.sizing.range_data import load_range
from intake.sizing.resolve import resolve
from intake.sizing.sampling import Sampler
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder
from intake.talk import Interview

pytestmark = pytest.mark.bench
ROUNDS = 5
ANSWER = "at the upper end it leaves at 4.1 m, straight on, and 30 a minute at the most"


def took(work: Callable[[], Any]) -> float:
    """Seconds, the middle of a few rounds."""
    times = []
    for _ in range(ROUNDS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return median(times)


def stages(job: dict[str, Any]) -> list[dict[str, Any]]:
    """A job as it is known after a first message, half-way, and near the end."""
    names = list(job)
    return [{name: job[name] for name in names[:count]} for count in (9, 14, len(names) - 2)]


def one_evaluation(spec: Spec) -> float:
    job = resolve(spec, load_range())
    sampler = Sampler(job, 16)
    quick = QuickPass(job, FAMILIES, sampler.view(0))
    return took(lambda: [quick.scores(sampler.view(n)) for n in range(16)]) / 16.0


def asked_next(spec: dict[str, Any]) -> float:
    """What ranking and deciding take on top of the verdicts."""
    talk = Interview()
    for name, said in spec.items():
        talk.know(name, said)

    def anew() -> None:
        talk._results.clear()
        talk._plan = None
        talk.open_questions()

    return took(anew)


def test_verdicts_and_the_next_question_take_so_many_evaluations() -> None:
    load_tree(questions_folder())
    rows = []
    for job in whole_jobs().values():
        for known in stages(job):
            spec = Spec.from_flat(known)
            read = took(lambda: reading.read(ANSWER, asked=("rise.discharge_height", "rise.turn")))
            bounds = took(lambda spec=spec: size(spec))  # type: ignore[misc]  # bound now
            alone = took(lambda spec=spec: verdicts(spec))  # type: ignore[misc]  # bound now
            rows.append((one_evaluation(spec), read, bounds, alone, asked_next(known)))
    evaluation, read, bounds, alone, asking = (median(column) for column in zip(*rows, strict=True))
    worst = max(row[4] for row in rows)
    print(f"\none evaluation {evaluation * 1e3:.3f} ms; {len(rows)} states of {len(whole_jobs())} jobs")
    print(f"read an answer: {read * 1e3:.1f} ms, {read / evaluation:.0f} evaluations")
    print(f"verdicts by bounds: {alone * 1e3:.1f} ms, {alone / evaluation:.0f} evaluations")
    print(f"re-sized by bounds, with reasons: {bounds * 1e3:.1f} ms, {bounds / evaluation:.0f} evaluations")
    print(f"read and re-sized: {(read + bounds) * 1e3:.1f} ms (aim 15)")
    print(
        f"sized, ranked, decided: {asking * 1e3:.1f} ms, {asking / evaluation:.0f} evaluations, worst {worst * 1e3:.0f}"
    )
    assert read + bounds <= 60.0 * evaluation
    assert asking <= 1.2 * 256.0 * evaluation
