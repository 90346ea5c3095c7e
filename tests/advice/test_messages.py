"""Messages that go to the visitor as they are."""

from collections.abc import Callable

from intake.advice import follow_up_lines, next_question_message, sample_request, verdict_line, why_not
from intake.interview.question import OpenPoint, Option, Question
from intake.sizing.result import Check, FollowUp, Result
from intake.spec.facts import Fact
from intake.spec.flat import Spec

BOX = Spec.from_flat({"product.length": 0.4, "product.width": 0.3, "product.height": 0.25})


def test_ready_answers_go_with_the_question_unless_it_names_them() -> None:
    options = tuple(
        Option(label=said, fact=Fact(field="rise.height", low=1.0, high=1.0)) for said in ("12 in", "12 mm")
    )
    question = Question(id="doubt", kind="doubt", fields=(), say="Which?", why="", branch="rise", options=options)
    assert next_question_message(question) == "Which? (12 in or 12 mm?)"
    named = Question(id="doubt", kind="doubt", fields=(), say="12 in or 12 mm?", why="", branch="rise", options=options)
    assert next_question_message(named) == "12 in or 12 mm?"


def test_follow_ups_say_what_would_settle_them() -> None:
    point = OpenPoint(
        field="rate.peak", test=None, say="And at the busiest?", why="", settle="a count", state="unknown"
    )
    assert follow_up_lines([point]) == ["Still open: And at the busiest? What would settle it: a count."]
    assert len(follow_up_lines([])) == 1


def test_samples_are_asked_for_by_size_and_for_a_purpose(sized: Callable[..., Result]) -> None:
    slip = FollowUp(field=None, test="test.slip_angle", why="")
    lines = sample_request(sized(follow_ups=(slip,)), BOX, "si")
    assert "400 x 300 x 250 mm" in lines[0]
    assert "slide" in lines[1]


def test_a_test_that_was_made_is_not_asked_for_again(sized: Callable[..., Result]) -> None:
    slip = FollowUp(field=None, test="test.slip_angle", why="")
    done = Spec.from_flat({"test.slip_angle": 22})
    assert sample_request(sized(follow_ups=(slip,)), done, "si") == sample_request(sized(), BOX, "si")


def test_empties_are_asked_for_where_both_run(sized: Callable[..., Result]) -> None:
    both = Spec.from_flat({"product.fill": "both"})
    lines = sample_request(sized(flags=("squeeze_test",)), both, "si")
    assert any("empties" in line for line in lines)


def test_why_not_names_every_failing_check(sized: Callable[..., Result], fails: Callable[..., Check]) -> None:
    checks = (fails("rate", 140.0, 31.0, "1/min"), fails("weight", 30.0, 23.0, "kg"))
    result = sized({"index_lift": {"verdict": "out", "checks": checks}}, best="incline")
    said = why_not(result, "index_lift", "si")
    assert "140/min is over its rate of 31/min" in said[0]
    assert "30 kg is too heavy for it (at most 23 kg)" in said[1]


def test_why_not_of_a_family_that_fits_says_what_the_best_has_over_it(sized: Callable[..., Result]) -> None:
    families = {"incline": {"reasons": {"floor": 0.9}}, "spiral": {"reasons": {"floor": 0.2}}}
    (said,) = why_not(sized(families, best="incline"), "spiral", "si")
    assert "less floor" in said


def test_a_verdict_in_one_line_starts_with_its_word(sized: Callable[..., Result], fails: Callable[..., Check]) -> None:
    families = {
        "index_lift": {"verdict": "out", "checks": (fails("rate", 140.0, 31.0, "1/min"),)},
        "incline": {"verdict": "depends", "depends_on": ("space.ceiling",)},
        "cover_belt": {"verdict": "depends", "likely_out": True, "depends_on": ("space.ceiling",)},
    }
    result = sized(families)
    lines = {name: verdict_line(found, result, "si") for name, found in result.families.items()}
    assert lines["index_lift"] == "out: 140/min is over its rate of 31/min"
    assert lines["incline"] == "depends on clear height overhead"
    assert lines["cover_belt"] == "likely out; depends on clear height overhead"
    assert lines["spiral"] == "fits"
