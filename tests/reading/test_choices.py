"""Words of choice, yes and no: as answers to their own question, in mid-message, and where they are traps."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.reading import read

Facts = Callable[..., dict[str, Any]]

_LEAVE = {
    True: [
        "sure thing, walls are like concrete", "I don't see why not", "no issue at all", "hmm, well yeah", "10-4", "👍",
        "our people pick them by both flanks all day so I'd say yes. Jars, 370 ml", "they'd survive", "go ahead",
        "that won't hurt them", "should be ok to squeeze lightly", "yes but gently",
    ],
    False: [
        "they'd crumple", "oh god no", "nah", "that's a no from me", "no, they can't", "I'd rather not", "too delicate",
        "probably not but would have to ask", "no - thin walls", "it would burst", "only from below",
    ],
    None: [
        "let me ask our QA", "it depends", "yes and no", "never tried", "yes for the tubs, no for the bags",
        "how hard?",
        "only if your belts are foam, otherwise no", "QA must answer that",
    ],
}  # fmt: skip


@pytest.mark.parametrize(("value", "text"), [(value, text) for value, texts in _LEAVE.items() for text in texts])
def test_leave_to_squeeze_is_given_and_refused_in_many_ways(value: bool | None, text: str, facts: Facts) -> None:
    assert facts(text, "handling.squeeze").get("handling.squeeze") is value


@pytest.mark.parametrize(
    ("asked", "text", "value"),
    [
        ("handling.invert", "oh god no, open cups, we'd be swimming in custard", False),
        ("handling.invert", "flip it all you want", True),
        ("handling.fragile", "no problem", False),
        ("handling.fragile", "you could drop one, nothing happens", False),
        ("handling.fragile", "a knock cracks the wafers", True),
        ("product.closed", "nothing comes out", True),
        ("product.closed", "flaps are still up at that point", False),
        ("product.closed", "no, sealed tight", True),
        ("cleaning.exposed_food", "nothing between", True),
        ("cleaning.exposed_food", "only the tray touches it", False),
        ("site.hazardous_area", "not to my knowledge", False),
        ("site.hazardous_area", "that'd be zone 1, spirits", True),
        ("project.samples", "can't, our customer made us sign an NDA", False),
        ("project.samples", "sure, where do we ship them", True),
        ("project.samples", "how many do you need?", True),
        ("test.transfers", "got stuck at the dead plate", False),
        ("rate.backs_up", "has to clear itself", False),
    ],
)
def test_what_an_answer_means_goes_by_its_question(asked: str, text: str, value: bool, facts: Facts) -> None:
    assert facts(text, asked).get(asked) is value


@pytest.mark.parametrize(
    "text", ["should be ok to squeeze lightly", "probably not but would have to ask", "yes, I think"]
)
def test_an_answer_that_is_not_sure_is_marked(text: str) -> None:
    (fact,) = (f for f in read(text, "handling.squeeze").facts if f.field == "handling.squeeze")
    assert fact.hedged


@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        ("Clamping on the flanks is allowed, though our spec caps it", "handling.squeeze", True),
        ("def dont grip em", "handling.squeeze", False),
        ("lateral clamping: not permitted", "handling.squeeze", False),
        ("SIDE PRESSURE: ok", "handling.squeeze", True),
        ("Turning the pack bottom-up is out of the question", "handling.invert", False),
        ("flip the kegs end over end for all i care", "handling.invert", True),
        ("exp food = no", "cleaning.exposed_food", False),
        ("the loaves sit in them unwrapped but only the basket touches the belt", "cleaning.exposed_food", False),
        ("raw chicken portions lie directly on the belt", "cleaning.exposed_food", True),
        ("samples no problem we'll drop a dozen in the mail", "project.samples", True),
        ("samples impossible, they're 900 dollars apiece", "project.samples", False),
        ("crates of plums, only the empty ones travel", "product.fill", "empty"),
        ("drums 55gal steel, full, 24 in dia", "product.fill", "full"),
        ("kegs, full and empty", "product.fill", "both"),
        ("the jars aren't fragile, they're PET", "product.surface", "plastic"),
        ("open mail trays made of corrugated plastic", "product.surface", "plastic"),
        ("book cartons, regular corrugated", "product.type", "case"),
        ("a six-bottle paperboard carton", "product.type", "carton"),
        ("ppl under only, no trucks", "space.passage", "people"),
        ("Between allergen runs it gets rinsed with a garden hose", "cleaning.frequency", "each_changeover"),
        ("frame 304 SS", "cleaning.frame", "stainless"),
        ("mezz->fl", "rise.direction", "down"),
        ("from the ground floor to the first floor", "rise.direction", "up"),
        ("the outfeed sits 2.6 m higher than the infeed", "rise.direction", "up"),
        ("up in the morning, and back down after 2", "rise.direction", "both"),
    ],
)
def test_a_choice_is_read_in_the_middle_of_a_message(text: str, field: str, value: Any, facts: Facts) -> None:
    assert facts(text).get(field) == value


@pytest.mark.parametrize(
    ("text", "field", "asked"),
    [
        ("squeeze bottles of mustard", "handling.squeeze", None),
        ("lids are clamped on", "handling.squeeze", None),
        ("it has to squeeze through a 3 ft door", "handling.squeeze", None),
        ("can it flip them?", "handling.invert", None),
        ("began to tip over at 22 degrees", "handling.invert", None),
        ("please send a sample drawing", "project.samples", None),
        ("Bundles of flyers, unwrapped (just 2 straps)", "cleaning.exposed_food", None),
        ("a keg is a slim one in stainless", "cleaning.frame", None),
        ("nothing under 450 g goes onto that belt", "space.passage", None),
        ("Underneath the mezz joists I measure 11 foot 4", "space.passage", None),
        ("the pit's been filled, so there's a flat pad", "product.fill", None),
        ("salt 750 g inside, empty canister 55 g", "product.fill", None),
        ("rag n bucket", "product.type", "cleaning.method"),
        ("fork trucks, loaded, mast down", "rise.direction", "space.passage"),
        ("stand-up pouches", "rise.direction", None),
        ("free up 11 ft of floor", "rise.direction", None),
        ("the lights hang down to 4800 mm", "rise.direction", None),
        ("goods up to 1300 mm in total", "rise.direction", None),
        ("in at 820 mm and out at 5150 mm", "rise.direction", None),
        ("the solvent store is Ex-rated; where your machine goes is not classified", "rise.turn", None),
    ],
)
def test_the_same_words_elsewhere_give_nothing(text: str, field: str, asked: str | None, facts: Facts) -> None:
    assert field not in facts(text, asked)


def test_yes_to_a_question_is_not_undone_by_the_words_behind_it(facts: Facts) -> None:
    assert facts("yes, but don't squeeze hard", "handling.squeeze")["handling.squeeze"] is True
