"""Entries that are asked back: too heavy, too light, out of all proportion, or against each other."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.interview.entry_checks import EntryChecks
from intake.interview.question import Question
from intake.interview.tree import load_tree
from intake.interview.wording import Sentences
from intake.sizing.result import Conflict, Result
from intake.spec.case import Case
from intake.spec.facts import Fact
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder
from intake.spec.vocabulary import vocabulary

Ask = Callable[..., list[Question]]


@pytest.fixture
def ask(sized: Callable[..., Result]) -> Ask:
    """Asks back what does not look right in a flat spec."""
    folder = questions_folder()
    checks = EntryChecks(load_tree(folder), folder, Sentences(folder))

    def questions(flat: dict[str, Any], passed: dict[str, str] | None = None, **parts: Any) -> list[Question]:
        spec = Spec.from_flat(flat)
        facts = {
            key: Fact(field=key[0], size=key[1], low=known.low, high=known.high, value=known.value, said="as typed")
            for key, known in spec.items()
        }
        return checks.questions(Case(facts=facts, passed=passed or {}), spec, sized(**parts), "si")

    return questions


BOX = {"product.length": 0.4, "product.width": 0.3, "product.height": 0.25}


def test_an_ordinary_case_is_not_asked_back(ask: Ask) -> None:
    assert ask(BOX | {"product.weight": 12, "rate.normal": 20, "rise.height": 3}) == []


def test_a_pack_denser_than_stone_asks_whether_the_weight_is_a_pallets(ask: Ask) -> None:
    (question,) = ask(BOX | {"product.weight": 400})
    assert question.kind == "doubt"
    assert "product.weight" in question.fields
    assert "pallet" in question.say
    assert "400 kg" in question.say


def test_a_pack_lighter_than_foam_asks_whether_the_weight_is_a_pieces(ask: Ask) -> None:
    (question,) = ask(BOX | {"product.weight": 0.3})
    assert "single piece" in question.say


def test_empties_may_be_much_lighter(ask: Ask) -> None:
    assert ask(BOX | {"product.weight": 0.3, "product.fill": "empty"}) == []
    assert len(ask(BOX | {"product.weight": 0.05, "product.fill": "empty"})) == 1


def test_a_round_product_is_weighed_against_its_cylinder(ask: Ask) -> None:
    can = {"product.diameter": 0.1, "product.height": 0.2}  # 1.57 litres
    assert ask(can | {"product.weight": 4.6}) == []  # 2930 kg/m3
    assert len(ask(can | {"product.weight": 4.8})) == 1  # 3060 kg/m3


def test_each_further_size_is_weighed_by_itself(ask: Ask) -> None:
    (question,) = ask(BOX | {"product.weight": 12, "product.weight@2": 500})
    assert question.id == "density:product.weight@2"


def test_a_figure_outside_what_is_usual_is_asked_back_with_its_words(ask: Ask) -> None:
    (question,) = ask({"rate.normal": 9000})
    assert question.id == "plausible:rate.normal"
    assert "as typed" in question.say
    assert "9000/min" in question.say


def test_what_was_passed_over_is_quiet_until_it_changes(ask: Ask) -> None:
    (question,) = ask({"rate.normal": 9000})
    assert ask({"rate.normal": 9000}, passed={question.id: question.stood}) == []
    assert len(ask({"rate.normal": 9001}, passed={question.id: question.stood})) == 1


def test_a_rate_in_pieces_asks_how_many_are_in_one(ask: Ask) -> None:
    (question,) = ask({"product.type": "tray", "rate.pieces": 240})
    assert question.fields == ("product.pieces",)
    assert "trays" in question.say
    assert ask({"product.type": "tray", "rate.pieces": 240, "product.pieces": 12}) == []
    assert ask({"product.type": "tray", "rate.pieces": 240, "rate.normal": 20}) == []


def test_a_conflict_of_sizing_is_asked_with_both_sides(ask: Ask) -> None:
    conflict = Conflict(fields=("rate.peak", "rate.normal"), why="peak_below_normal", taken=40.0)
    (question,) = ask({"rate.normal": 40, "rate.peak": 20}, conflicts=(conflict,))
    assert question.kind == "conflict"
    assert set(question.fields) == {"rate.peak", "rate.normal"}
    assert "40/min" in question.say
    assert "20/min" in question.say


def test_a_conflict_that_has_no_sentence_of_its_own_is_asked_all_the_same(ask: Ask) -> None:
    conflict = Conflict(fields=("space.length", "space.width"), why="brand_new", taken=None)
    (question,) = ask({"space.length": 4, "space.width": 3}, conflicts=(conflict,))
    assert "4 m" in question.say
    assert "3 m" in question.say


def test_every_sentence_of_a_check_has_all_its_blanks_filled(ask: Ask) -> None:
    asked = [*ask(BOX | {"product.weight": 400}), *ask({"rate.normal": 9000}), *ask({"rate.pieces": 240})]
    for question in asked:
        assert "  " not in question.say + question.why, question
        assert " ," not in question.say + question.why, question


def test_every_figure_of_the_vocabulary_can_be_asked_back(ask: Ask) -> None:
    numbers = [name for name, field in vocabulary().items() if field.is_number]
    for name in numbers:
        assert any(name in question.fields for question in ask({name: 10**11})), name
