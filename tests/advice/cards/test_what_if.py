"""Cards that look at a changed case say what sizing the changed spec says."""

from typing import Any

import pytest

from intake.advice import family_name
from intake.advice.brief import Brief
from intake.advice.cards import Deck, answer_question
from intake.advice.cards.answering import say
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec.flat import Spec

PUTS: dict[str, dict[str, Any]] = {
    "goes_down": {"rise.direction": "both"},
    "empties": {"product.fill": "empty"},
    "glass": {"product.surface": "glass"},
    "open_product": {"product.closed": False},
    "classified_area": {"site.hazardous_area": True},
    "wash_down": {"cleaning.method": "high_pressure"},
    "clean_in_place": {"cleaning.method": "clean_in_place"},
    "several_levels": {"rise.levels": 3.0},
    "backing_up": {"rate.backs_up": True},
    "bare_food": {"cleaning.exposed_food": True},
    "bags": {"product.type": "bag", "product.rigidity": "soft", "product.surface": "film"},
    "stainless": {"cleaning.frame": "stainless"},
    "freezer": {"temperature.zone": "freezer", "temperature.room": None},
    "chilled": {"temperature.zone": "chilled", "temperature.room": None},
    "hot_room": {"temperature.zone": "hot", "temperature.room": None},
}


def changed(brief: Brief, puts: dict[str, Any]) -> Result:
    """The same spec with other values, sized by itself."""
    return size({name: value for name, value in (brief.spec.to_flat() | puts).items() if value is not None})


@pytest.mark.parametrize("id", sorted(PUTS))
def test_a_what_if_agrees_with_sizing_the_changed_spec(id: str, briefs: dict[str, Brief], deck: Deck) -> None:
    brief = briefs["fits"]
    said = " ".join(say(deck.card(id), brief, deck, ()))
    result = changed(brief, PUTS[id])
    assert result.best != brief.result.best or family_name(result.best or "") in said
    for name in result.standing[:4]:
        if "left with" in said:
            assert family_name(name) in said, said
    if result.best is None and result.refer_out:
        assert result.refer_out.rstrip(".") in said


ASKED = [
    ("would it run 60 a minute?", "how_fast", {"rate.peak": 60.0}),
    ("could it take a 30 kg case?", "how_heavy", {"product.weight": 30.0}),
    ("can it go up 5 m?", "how_high", {"rise.height": 5.0, "rise.discharge_height": 5.75}),
    ("is 5 m of ceiling enough headroom?", "ceiling", {"space.ceiling": 5.0}),
    ("is it ok in a room at 48 C ambient?", "hot_room", {"temperature.room": 48.0}),
    ("can it stand in a cold room at 4 C?", "chilled", {"temperature.room": 4.0}),
]


@pytest.mark.parametrize(("text", "id", "puts"), ASKED)
def test_a_figure_in_the_question_is_tried_on_the_case(
    text: str, id: str, puts: dict[str, Any], briefs: dict[str, Brief], deck: Deck
) -> None:
    brief = Brief(spec=briefs["fits"].spec, system="si")
    found = answer_question(text, brief, deck)
    assert found.card == id
    said = " ".join(found.lines)
    result = changed(brief, puts)
    value = next(iter(puts.values()))
    assert f"{value:g}" in said
    if result.best is not None:
        assert family_name(result.best) in said
    else:
        assert "nothing in the range" in said


def test_a_price_in_the_question_is_no_figure_to_try(briefs: dict[str, Brief], deck: Deck) -> None:
    found = answer_question("what would it cost, is it under $50k?", briefs["fits"], deck)
    assert found.card == "cost"
    assert "50" not in " ".join(found.lines)


def test_the_case_itself_is_left_as_it_was(briefs: dict[str, Brief], deck: Deck) -> None:
    before = briefs["fits"].spec.to_flat()
    answer_question("can it go in a freezer?", briefs["fits"], deck)
    assert briefs["fits"].spec == Spec.from_flat(before)
