"""The proof of cards finds each kind of mistake, with file and line."""

import shutil
from pathlib import Path

import pytest

from intake.advice.brief import Brief
from intake.advice.cards import answer_question, deck_of, prove_cards
from intake.interview.complaints import TreeError
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder

GOOD = """[[card]]
id = "{id}"
asks = ["{id} apples", "{id} pears", "{id} plums"]
about = "fruit"
says = ["It is {{best}}.", "In general yes."]
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with no cards but those that a test writes."""
    shutil.copytree(questions_folder(), tmp_path / "own", ignore=shutil.ignore_patterns("cards"))
    (tmp_path / "own" / "cards").mkdir()
    return tmp_path / "own"


def problems(folder: Path, text: str, name: str = "fruit.toml") -> list[str]:
    """What the proof says to one file."""
    (folder / "cards" / name).write_text(text, encoding="utf-8")
    return [str(problem) for problem in prove_cards(folder).problems]


def card(says: str = '["Yes."]', more: str = "", asks: str = '["green apples", "ripe pears", "sweet plums"]') -> str:
    """A card of six lines."""
    return f'[[card]]\nid = "fruit"\nasks = {asks}\nabout = "fruit"\nsays = {says}\n{more}\n'


def test_the_shipped_cards_are_sound_and_counted() -> None:
    proof = prove_cards(questions_folder())
    assert proof.problems == ()
    assert proof.cards >= 45


def test_a_good_card_of_ones_own_is_sound(folder: Path) -> None:
    assert problems(folder, GOOD.format(id="ripe")) == []
    assert prove_cards(folder).cards == 1


@pytest.mark.parametrize(
    ("text", "line", "what"),
    [
        (card(more='colour = "red"'), 6, 'has "colour", which it cannot have'),
        (card(more="").replace('about = "fruit"\n', ""), 2, "has no about"),
        (card('["It is {bset}.", "Yes."]'), 5, 'the blank "bset"'),
        (card('["Up to {limit.spiral.weigth_most}.", "Yes."]'), 5, 'Did you mean "weight_most"?'),
        (card('["Up to {limit.spirale.weight_most}.", "Yes."]'), 5, 'Did you mean "spiral"?'),
        (card('["Up to {most.weigth_most}.", "Yes."]'), 5, 'Did you mean "weight_most"?'),
        (card('["At {figure.belt_sped}.", "Yes."]'), 5, 'Did you mean "belt_speed"?'),
        (card('["You said {fact.rise.hight}.", "Yes."]'), 5, 'Did you mean "rise.height"?'),
        (card('["You said {fact.contact.name}.", "Yes."]'), 5, "own words are not said back"),
        (card('["{topic.how_hihg}", "Yes."]'), 5, 'Did you mean "how_high"?'),
        (card('["{assumed.runs_ful}", "Yes."]'), 5, 'Did you mean "runs_full"?'),
        (card('["Only {having.washing.steam}.", "Yes."]'), 5, "No family has that word"),
        (card('["The {then.best}.", "Yes."]'), 5, "needs a card with what_if"),
        (card('["At {asked}.", "Yes."]'), 5, "needs a card that takes a field"),
        (card('["It is {best}."]'), 5, "which only a case can fill"),
        (card('["Up to {limit.best.weight_most}."]'), 5, "which only a case can fill"),
        (card('["About $500.", "Yes."]'), 5, "speaks of money"),
        (card('["Yes, 20 thousand."]'), 5, "speaks of money"),
        (card(more='what_if = { "temperature.zone" = "frozen" }'), 6, "is not one of its choices"),
        (card(more='what_if = { "temperature.zon" = "freezer" }'), 6, 'Did you mean "temperature.zone"?'),
        (card(more='takes = "rise.hight"'), 6, 'Did you mean "rise.height"?'),
        (card(more='takes = "rise.direction"'), 6, "which is a choice"),
        (card(asks='["is it", "ripe pears", "sweet plums"]'), 3, "no word is left to match by"),
        (card(asks='["pears"]'), 3, "asks of card"),
        ("[[card]\n", 1, "this is not TOML"),
    ],
)  # fmt: skip
def test_each_kind_of_mistake_is_found_with_its_line(folder: Path, text: str, line: int, what: str) -> None:
    found = problems(folder, text)
    assert len(found) == 1, found
    assert found[0].startswith(f"fruit.toml:{line}: "), found
    assert what in found[0], found


def test_one_way_of_asking_on_two_cards_is_found(folder: Path) -> None:
    problems(folder, GOOD.format(id="ripe"), "first.toml")
    found = problems(folder, GOOD.format(id="sour").replace('"sour apples"', '"is the apple ripe?"'), "second.toml")
    assert len(found) == 1
    assert found[0].startswith("second.toml:3: ")
    assert 'asking card "ripe"' in found[0]


def test_an_id_given_twice_is_found_with_the_place_of_the_other(folder: Path) -> None:
    text = GOOD.format(id="ripe")
    problems(folder, text, "first.toml")
    found = problems(folder, text.replace("ripe ", "sour "), "second.toml")
    assert len(found) == 1
    assert 'there is a card "ripe" already (first.toml:2)' in found[0]


def test_words_of_matching_are_proved_too(folder: Path) -> None:
    words = folder / "card_words.toml"
    text = words.read_text(encoding="utf-8")
    words.write_text(text.replace('noisy = ["noise"', 'noisy = ["freezer", "noise"'), encoding="utf-8")
    assert any('"freezer" counts for both' in found for found in problems(folder, GOOD.format(id="ripe")))
    words.write_text(text.replace("spiral = [", "spirale = [", 2), encoding="utf-8")
    assert any("there is no family" in found for found in problems(folder, GOOD.format(id="ripe")))


def test_a_folder_without_cards_has_the_shipped_ones(folder: Path) -> None:
    shutil.rmtree(folder / "cards")
    (folder / "card_words.toml").unlink()
    assert prove_cards(folder).problems == ()
    assert len(deck_of(folder).cards) == len(deck_of(questions_folder()).cards)


def test_a_company_answers_with_its_own_cards(folder: Path) -> None:
    problems(folder, GOOD.format(id="ripe"))
    found = answer_question("are your pears ripe?", Brief(spec=Spec({}), folder=folder))
    assert found.card == "ripe"
    assert found.lines == ("In general yes.",)


def test_wrong_cards_are_told_with_every_problem_when_they_are_loaded(folder: Path) -> None:
    problems(folder, card(more='colour = "red"'))
    with pytest.raises(TreeError, match="colour"):
        deck_of(folder)
