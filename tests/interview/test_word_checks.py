"""The words that people use for a choice: each belongs to one choice, and the choice exists."""

from collections.abc import Callable
from pathlib import Path

import pytest

Told = Callable[..., list[str]]


@pytest.fixture
def words(told: Told, folder: Path) -> Callable[[str], list[str]]:
    """The problems about words after these took the place of the words in rate.toml; the others have none."""
    for path in (folder / "tree").glob("*.toml"):
        path.write_text(path.read_text(encoding="utf-8").split("# --- words ---")[0], encoding="utf-8")
    head = (folder / "tree" / "rate.toml").read_text(encoding="utf-8")
    above = head.count("\n")

    def make(text: str) -> list[str]:
        told_all = told("tree/rate.toml", words=text)
        found = []
        for sentence in told_all:
            place, _, rest = sentence.partition(": ")
            name, _, line = place.partition(":")
            found.append(f"{name}:+{int(line) - above}: {rest}" if line else sentence)
        return found

    return make


def test_words_of_different_choices_are_sound(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arrival"]\nspaced = ["one by one"]\ntouching = ["back to back"]\n') == []


def test_one_word_may_stand_for_choices_of_two_fields(words: Callable[[str], list[str]]) -> None:
    text = '[words."cleaning.method"]\ndry = ["broom"]\n[words."rate.arrival"]\nspaced = ["broom"]\n'
    assert words(text) == []


def test_a_word_for_two_choices_is_told_whatever_its_case_and_blanks(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arrival"]\nspaced = ["in line"]\ntouching = ["In-Line", "tight"]\n') == [
        'rate.toml:+3: "In-Line" stands for both "spaced" and "touching" of "rate.arrival". Leave it with one of them.'
    ]


def test_the_name_of_one_choice_is_no_word_for_another(words: Callable[[str], list[str]]) -> None:
    assert words('[words."product.type"]\ncase = ["tray", "pallet load"]\n') == [
        'rate.toml:+2: "tray" stands for both "tray" and "case" of "product.type". Leave it with one of them.',
        'rate.toml:+2: "pallet load" stands for both "pallet_load" and "case" of "product.type". '
        "Leave it with one of them.",
    ]


def test_words_for_a_choice_that_does_not_exist_are_told(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arrival"]\nspaecd = ["one by one"]\n') == [
        'rate.toml:+2: there are words for "spaecd" of "rate.arrival", which is not one of its choices. '
        'Did you mean "spaced"?'
    ]


def test_words_for_yes_and_no_are_sound_and_for_maybe_are_not(words: Callable[[str], list[str]]) -> None:
    assert words('[words."site.air"]\nyes = ["shop air"]\nno = ["none"]\nmaybe = ["perhaps"]\n') == [
        'rate.toml:+4: there are words for "maybe" of "site.air", which is not one of its choices. Accepted: yes, no.'
    ]


def test_words_for_a_field_that_does_not_exist_are_told(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arival"]\nspaced = ["one by one"]\n') == [
        'rate.toml:+1: there are words for "rate.arival", which fields.toml does not have. Did you mean "rate.arrival"?'
    ]


def test_a_figure_may_have_words_for_figures_only(words: Callable[[str], list[str]]) -> None:
    text = '[words."site.phases"]\n3 = ["three phase"]\n0 = ["none"]\nmany = ["all of them"]\n'
    assert words(text) == [
        'rate.toml:+3: there are words for "0" of "site.phases", which is not one of its choices. '
        "Write a figure in whole numbers.",
        'rate.toml:+4: there are words for "many" of "site.phases", which is not one of its choices. '
        "Write a figure in whole numbers.",
    ]


def test_what_is_kept_as_said_has_no_words(words: Callable[[str], list[str]]) -> None:
    assert words('[words."site.before"]\nbelt = ["a belt"]\n') == [
        'rate.toml:+1: there are words for "site.before", which is a text. '
        "What is kept as said has no words of its own."
    ]


def test_alternatives_inside_an_entry_clash_one_by_one(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arrival"]\nspaced = ["are|come apart"]\nbunched = ["=come apart"]\n') == [
        'rate.toml:+3: "=come apart" stands for both "spaced" and "bunched" of "rate.arrival". '
        "Leave it with one of them."
    ]


def test_a_word_outside_a_list_and_an_empty_word_are_told(words: Callable[[str], list[str]]) -> None:
    assert words('[words."rate.arrival"]\nspaced = "one by one"\ntouching = ["", "tight"]\n') == [
        'rate.toml:+2: spaced of the words of "rate.arrival" is "one by one". '
        'Write a list of words: ["box", "carton box"].',
        'rate.toml:+3: "touching" of "rate.arrival" has an empty word. Take it out.',
    ]
