"""What cards say: whole sentences with the figures of the case, never an amount of money, never a promise."""

import re

import pytest

from intake.advice import topics
from intake.advice.brief import Answer, Brief
from intake.advice.cards import Deck, answer_card, answer_question, deck_of
from intake.advice.cards.answering import say
from intake.advice.cards.blanks import Blanks
from intake.advice.cards.card import Card
from intake.advice.cards.card_checks import MONEY
from intake.spec.display import show, show_range
from intake.spec.flat import Spec
from intake.spec.folder import shipped_folder

IDS = [card.id for card in deck_of(shipped_folder()).cards]
PROMISE = re.compile(r"\b(?:we guarantee|guaranteed to|we promise|it will certainly|we assure)\b", re.IGNORECASE)


def card_of(**parts: object) -> Card:
    """A card of our own."""
    given: dict[str, object] = {"id": "own", "topic": "own", "asks": ("x",), "about": "own", "says": ("Yes.",)}
    return Card(**{**given, **parts})  # type: ignore[arg-type]


@pytest.mark.parametrize("id", IDS)
def test_every_card_answers_every_case_in_whole_sentences(id: str, briefs: dict[str, Brief], deck: Deck) -> None:
    for name, brief in briefs.items():
        said = " ".join(answer_card(id, brief, deck).lines)
        assert said, name
        assert "{" not in said, name
        assert "}" not in said, name
        assert "  " not in said, name
        assert ".." not in said, name
        assert said[-1] in ".?", name
        assert said[0].isupper() or said[0].isdigit(), (name, said)
        assert not PROMISE.search(said), name
        assert len(said) < 800, (name, said)


@pytest.mark.parametrize("id", IDS)
def test_no_card_names_an_amount_of_money_whatever_was_asked(id: str, briefs: dict[str, Brief], deck: Deck) -> None:
    card = deck.card(id)
    for brief in briefs.values():
        for asked in ((), ("would $50k do for 20 ft, 30 kg, 60 a minute, 40 C, 8 weeks and 5 m, or €3,000?",)):
            said = " ".join(say(card, brief, deck, asked))
            assert not MONEY.search(said), said


def test_what_is_known_of_the_case_makes_most_answers_its_own(briefs: dict[str, Brief], deck: Deck) -> None:
    own = [
        id for id in IDS if answer_card(id, briefs["fits"], deck).lines != answer_card(id, briefs["none"], deck).lines
    ]
    assert len(own) > 0.7 * len(IDS)


@pytest.mark.parametrize(
    ("id", "figure"),
    [("how_fast", "rate_capacity"), ("ceiling", "overall_height"), ("footprint", "floor_length"),
     ("energy", "motor_power"), ("how_long_up", "transit_time"), ("noise", "belt_speed"), ("floor_load", "load_mass")],
)  # fmt: skip
def test_figures_in_answers_are_those_of_the_result(id: str, figure: str, briefs: dict[str, Brief], deck: Deck) -> None:
    for system in ("us", "si"):
        brief = Brief(spec=briefs["fits"].spec, system=system)  # type: ignore[arg-type]
        assert brief.best is not None
        found = brief.best.figures[figure]
        assert found.value is not None
        assert show(found.value, found.unit, brief.system) in " ".join(answer_card(id, brief, deck).lines)


def test_delivery_is_told_as_the_range_of_the_leading_family(briefs: dict[str, Brief], deck: Deck) -> None:
    best = briefs["fits"].best
    assert best is not None
    weeks = best.figures["lead_time"]
    said = answer_question("can we have it in 6 weeks?", briefs["fits"], deck)
    assert said.card == "delivery_time"
    assert show_range(weeks.low, weeks.high, "week", "us") in said.lines[0]
    assert "6 weeks" in said.lines[0]


@pytest.mark.parametrize("id", ["power_failure", "guarding", "underneath", "floor_opening", "installation"])
def test_safety_is_left_to_local_codes(id: str, briefs: dict[str, Brief], deck: Deck) -> None:
    for brief in briefs.values():
        said = " ".join(answer_card(id, brief, deck).lines)
        assert re.search(r"local codes?|local building code", said), said


@pytest.mark.parametrize(
    ("id", "words"),
    [("riding", ("Nobody rides", "licensed")), ("guarding", ("never ride", "risk assessment")),
     ("standards", ("ASME B20.1", "EN 619", "ISO 12100")), ("classified_area", ("NFPA 70", "safety people")),
     ("bare_food", ("food law", "EN 1672-2")), ("supply", ("licensed electrician",)),
     ("floor_load", ("structural engineer",)), ("jams", ("isolated",)), ("maintenance", ("isolated",)),
     ("power_failure", ("brake or backstop",)), ("cost", ("quote",)),
     ("who_quotes", ("nothing said here is an offer",))],
)  # fmt: skip
def test_what_must_be_said_is_said_in_every_case(
    id: str, words: tuple[str, ...], briefs: dict[str, Brief], deck: Deck
) -> None:
    for brief in briefs.values():
        said = " ".join(answer_card(id, brief, deck).lines)
        assert all(word in said for word in words), said


def test_why_not_speaks_of_the_family_that_was_named(briefs: dict[str, Brief], deck: Deck) -> None:
    found = answer_question("why can't we have a side grip?", briefs["fits"], deck)
    assert found.card == "why_not_that"
    assert found.lines[0].startswith("The side-grip elevator is out: ")


def test_nothing_is_worked_out_that_the_chosen_template_does_not_need(
    monkeypatch: pytest.MonkeyPatch, briefs: dict[str, Brief], deck: Deck
) -> None:
    def dear(_: Brief) -> Answer:
        raise AssertionError("nobody needs it")

    monkeypatch.setitem(topics.TOPICS, "how_high", dear)
    first = card_of(says=("Standing: {standing}.", "{topic.how_high}"))
    assert say(first, briefs["fits"], deck, ())[0].startswith("Standing: ")
    unsized = Brief(spec=briefs["fits"].spec)
    assert say(card_of(says=("Up to {limit.spiral.weight_most}.",)), unsized, deck, ()) == ("Up to 33.1 lb.",)
    assert "result" not in vars(unsized)


def test_a_topic_that_there_is_comes_before_the_sentence_without_it(
    monkeypatch: pytest.MonkeyPatch, briefs: dict[str, Brief], deck: Deck
) -> None:
    before = answer_card("doorway", briefs["fits"], deck).lines
    lines = ("It comes in two parts.", "Both pass the door.")
    monkeypatch.setitem(topics.TOPICS, "way_in", lambda brief: Answer(topic="way_in", lines=lines, data={"parts": 2}))
    assert answer_card("doorway", briefs["fits"], deck).lines == (" ".join(lines),) != before
    assert answer_card("doorway", briefs["none"], deck).lines != (" ".join(lines),)


def test_values_are_filled_in_and_never_read_as_templates(briefs: dict[str, Brief]) -> None:
    blanks = Blanks(brief=briefs["fits"], asked="{best} and {cost}")
    assert blanks.fill("You asked for {asked}.") == "You asked for {best} and {cost}."
    assert blanks.fill("{nothing}") is None
    assert blanks.fill("{figure.no_such_figure}") is None


def test_an_empty_case_fills_no_blank_of_a_case() -> None:
    blanks = Blanks(brief=Brief(spec=Spec({})))
    for name in ("best", "standing", "out", "tests", "missing", "topic.how_high", "figure.pitch", "fact.rise.height"):
        assert blanks.value(name) is None, name
