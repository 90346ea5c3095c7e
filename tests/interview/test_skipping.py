"""Why a fact is not asked for. Sizing is stood in for by a toy of two rules."""

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from intake import sizing
from intake.interview.matters import missing_basics
from intake.interview.skipping import LeavingOut
from intake.interview.wording import Sentences, fill
from intake.sizing.result import FAMILIES, Check, Result
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder

FOLDER = questions_folder()
SAID = Sentences(FOLDER)
BASICS = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 12,
    "rate.normal": 20, "rise.height": 3, "rise.direction": "up",
}  # fmt: skip
Judged = Callable[..., LeavingOut]


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch, sized: Callable[..., Result]) -> Judged:
    """A judge over a toy: only the side grip reads handling.* and it needs sides that may be held; cleaning by
    high pressure shuts out the spiral; all read the rate."""

    def fields_read(family: str) -> frozenset[str]:
        common = {"rate.normal", "rate.peak", "cleaning.method", "temperature.zone"}
        own = {"handling.squeeze", "handling.squeeze_limit", "handling.invert"} if family == "side_grip" else set()
        return frozenset(common | own)

    def verdicts(spec: Spec, *, questions: object = None, families: object = ()) -> Mapping[str, str]:
        out = {name: "fits" for name in FAMILIES}
        if spec.word("cleaning.method") == "high_pressure":
            out["spiral"] = "out"
        return out

    monkeypatch.setattr(sizing, "fields_read", fields_read, raising=False)
    monkeypatch.setattr(sizing, "verdicts", verdicts, raising=False)

    def judge(families: dict[str, dict[str, Any]] | None = None, **parts: Any) -> LeavingOut:
        parts.setdefault("best", "incline")
        return LeavingOut(Spec.from_flat(BASICS), sized(families, **parts), FOLDER, SAID, "si")

    return judge


def part_of(judge: LeavingOut, field: str) -> str:
    return judge.why(field).part


def test_a_choice_of_which_an_unlikely_answer_changes_a_verdict_is_set_aside_not_skipped(judged: Judged) -> None:
    assert part_of(judged(), "cleaning.method") == "aside"


def test_a_choice_of_which_no_answer_changes_a_verdict_is_skipped(judged: Judged) -> None:
    matter = judged().why("temperature.zone")
    assert (matter.part, matter.reason) == ("skip", "same_anyway")


def test_a_fact_that_only_a_gone_family_reads_is_skipped_with_its_reason(
    judged: Judged, fails: Callable[..., Check]
) -> None:
    gone = {"verdict": "out", "checks": (fails("rate", 140.0, 120.0, "1/min"),)}
    matter = judged({"side_grip": gone}).why("handling.invert")
    assert matter.part == "skip"
    said = fill(SAID.find(f"left_out.{matter.reason}") or "", topic="may be turned over", **dict(matter.blanks))
    assert said == "may be turned over: no side-grip elevator left (140/min is over its rate of 120/min)"


def test_a_gone_family_that_comes_back_revives_its_questions(judged: Judged, fails: Callable[..., Check]) -> None:
    gone = {"verdict": "out", "checks": (fails("rate", 140.0, 120.0, "1/min"),)}
    assert part_of(judged({"side_grip": gone}), "handling.squeeze") == "skip"
    back = {"verdict": "depends", "depends_on": ("handling.squeeze",)}
    assert part_of(judged({"side_grip": back}), "handling.squeeze") == "aside"


def test_a_figure_is_skipped_only_where_what_reads_it_fits_over_all_that_it_may_be(judged: Judged) -> None:
    assert part_of(judged(), "rate.peak") == "skip"
    waits = {"spiral": {"verdict": "depends", "depends_on": ("space.length",)}}
    assert part_of(judged(waits), "rate.peak") == "aside"


def test_a_fact_that_nothing_reads_is_skipped(judged: Judged) -> None:
    assert part_of(judged(), "site.voltage") == "skip"


def test_another_word_on_what_is_known_is_skipped_and_what_should_follow_is_only_set_aside(judged: Judged) -> None:
    judge = judged()
    assert (judge.why("rate.pieces").part, judge.why("rate.pieces").reason) == ("skip", "needless")


def test_when_nothing_fits_nothing_is_asked(judged: Judged) -> None:
    everywhere = {name: {"verdict": "out"} for name in FAMILIES}
    matter = judged(everywhere, best=None, refer_out="freezer").why("site.voltage")
    assert (matter.part, matter.reason) == ("skip", "nothing_fits")


def test_measured_values_are_not_asked_of_a_visitor(judged: Judged) -> None:
    hangs = {"incline": {"verdict": "depends", "depends_on": ("test.slip_angle",)}}
    assert part_of(judged(hangs), "test.slip_angle") == "aside"


def test_basics_are_known_in_any_of_their_forms() -> None:
    assert set(missing_basics(Spec.from_flat({}))) >= {"product.type", "rate.normal", "rise.height", "rise.direction"}
    assert missing_basics(Spec.from_flat(BASICS)) == ()
    other = {name: BASICS[name] for name in ("product.type", "product.height", "product.weight")}
    other |= {"product.diameter": 0.1, "rate.peak": 40, "rise.infeed_height": 0.8, "rise.discharge_height": 3.6}
    assert missing_basics(Spec.from_flat(other)) == ()
