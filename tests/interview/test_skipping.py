"""What still matters, and why the rest does not. Sizing is stood in for by a toy of two rules."""

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from intake import sizing
from intake.interview.skipping import Judge, missing_basics
from intake.interview.wording import Sentences, fill
from intake.sizing.result import FAMILIES, Check, FollowUp, Result
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder

FOLDER = questions_folder()
SAID = Sentences(FOLDER)
BASICS = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 12,
    "rate.normal": 20, "rise.height": 3, "rise.direction": "up",
}  # fmt: skip
Judged = Callable[..., Judge]


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

    def judge(families: dict[str, dict[str, Any]] | None = None, needs: tuple[str, ...] = (), **parts: Any) -> Judge:
        parts.setdefault("best", "incline")
        return Judge(Spec.from_flat(BASICS), sized(families, **parts), needs, FOLDER, SAID, "si")

    return judge


def part_of(judge: Judge, field: str) -> str:
    matter = judge.wanted(field) or judge.left_out(field)
    return matter.part


def test_a_fact_that_a_verdict_hangs_on_is_asked(judged: Judged) -> None:
    judge = judged({"side_grip": {"verdict": "depends", "depends_on": ("handling.squeeze",)}})
    assert part_of(judge, "handling.squeeze") == "best"


def test_a_choice_of_which_an_unlikely_answer_changes_a_verdict_is_set_aside_not_skipped(judged: Judged) -> None:
    assert part_of(judged(), "cleaning.method") == "aside"


def test_a_choice_of_which_no_answer_changes_a_verdict_is_skipped(judged: Judged) -> None:
    matter = judged().left_out("temperature.zone")
    assert (matter.part, matter.reason) == ("skip", "same_anyway")


def test_a_fact_that_only_a_gone_family_reads_is_skipped_with_its_reason(
    judged: Judged, fails: Callable[..., Check]
) -> None:
    gone = {"verdict": "out", "checks": (fails("rate", 140.0, 120.0, "1/min"),)}
    matter = judged({"side_grip": gone}).left_out("handling.invert")
    assert matter.part == "skip"
    said = fill(SAID.find(f"left_out.{matter.reason}") or "", topic="may be turned over", **dict(matter.blanks))
    assert said == "may be turned over: no side-grip elevator left (140/min is over its rate of 120/min)"


def test_a_gone_family_that_comes_back_revives_its_questions(judged: Judged, fails: Callable[..., Check]) -> None:
    gone = {"verdict": "out", "checks": (fails("rate", 140.0, 120.0, "1/min"),)}
    assert part_of(judged({"side_grip": gone}), "handling.squeeze") == "skip"
    back = {"verdict": "depends", "depends_on": ("handling.squeeze",)}
    assert part_of(judged({"side_grip": back}), "handling.squeeze") == "best"


def test_a_figure_that_a_standing_family_reads_is_never_skipped(judged: Judged) -> None:
    assert part_of(judged(), "rate.peak") == "aside"
    assert part_of(judged(), "handling.squeeze_limit") == "aside"


def test_what_engineering_needs_is_asked_though_no_verdict_hangs_on_it(judged: Judged) -> None:
    assert part_of(judged(needs=("site.voltage",)), "site.voltage") == "engineering"
    assert part_of(judged(), "site.voltage") == "skip"


def test_an_answer_that_rarely_changes_the_best_family_is_set_aside(judged: Judged) -> None:
    hangs = {"side_grip": {"verdict": "depends", "depends_on": ("handling.squeeze",)}}
    rare = FollowUp(field="handling.squeeze", test=None, why="", changes_best=0.01)
    often = FollowUp(field="handling.squeeze", test=None, why="", changes_best=0.2)
    assert part_of(judged(hangs, follow_ups=(rare,)), "handling.squeeze") == "aside"
    asked = judged(hangs, follow_ups=(often,)).wanted("handling.squeeze")
    assert asked is not None
    assert asked.worth == pytest.approx(0.2)


def test_while_no_single_answer_tells_the_leaders_apart_what_they_hang_on_is_asked(judged: Judged) -> None:
    families = {
        "side_grip": {"verdict": "depends", "depends_on": ("handling.squeeze",)},
        "incline": {"verdict": "depends", "depends_on": ("space.length",)},
    }
    nought = tuple(
        FollowUp(field=name, test=None, why="", changes_best=0.0) for name in ("handling.squeeze", "space.length")
    )
    judge = judged(families, follow_ups=nought, decided=False)
    assert part_of(judge, "space.length") == "best"
    assert part_of(judge, "handling.squeeze") == "aside"
    assert part_of(judged(families, follow_ups=nought, decided=True), "space.length") == "aside"


def test_once_decided_only_engineering_goes_on(judged: Judged) -> None:
    hangs = {"side_grip": {"verdict": "depends", "depends_on": ("handling.squeeze",)}}
    judge = judged(hangs, needs=("site.voltage",), decided=True)
    assert part_of(judge, "handling.squeeze") == "aside"
    assert part_of(judge, "site.voltage") == "engineering"


def test_when_nothing_fits_nothing_is_asked(judged: Judged) -> None:
    everywhere = {name: {"verdict": "out"} for name in FAMILIES}
    matter = judged(everywhere, best=None, refer_out="freezer").left_out("site.voltage")
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
