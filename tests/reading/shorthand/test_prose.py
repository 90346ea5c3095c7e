"""Plain prose typed in shorthand mode is read as without the mode."""

from typing import Any

import pytest
from labels import near, rows, wanted
from phrases import entries, rendered

from intake.reading import read
from intake.reading.shorthand.spelling import spelt_out
from intake.reading.text.fold import fold
from intake.spec.facts import Heard
from intake.spec.folder import shipped_folder


def _values(heard: Heard) -> dict[str, Any]:
    return {
        fact.field if fact.size == 1 else f"{fact.field}@{fact.size}": (fact.low, fact.high)
        if fact.is_number
        else fact.value
        for fact in heard.facts
    }


@pytest.fixture(scope="module")
def both() -> list[tuple[dict[str, Any], Heard, Heard]]:
    """Every labelled message that may be looked at, read without the mode and with it."""
    return [
        (row, read(row["text"], row["asked"]), read(row["text"], row["asked"], shorthand=True)) for row in rows("open")
    ]


def _worse(row: dict[str, Any], heard: Heard, in_mode: Heard) -> list[str]:
    """The fields for which the mode lost a right fact or read one that the labels do not have."""
    plain, short = _values(heard), _values(in_mode)
    want = {name: wanted(name, label) for name, label in row["facts"].items()}
    changed = {name for name in plain.keys() | short.keys() if plain.get(name) != short.get(name)}
    return [
        name
        for name in changed
        if (name in want and name in plain and near(want[name], plain[name]))
        or (name in short and not (name in want and near(want[name], short[name])))
    ]


def test_prose_is_read_the_same_or_better(both: list[tuple[dict[str, Any], Heard, Heard]]) -> None:
    assert [(one[0]["text"], worse) for one in both if (worse := _worse(*one))] == []


def test_prose_without_a_shorthand_word_is_the_same_to_the_letter(
    both: list[tuple[dict[str, Any], Heard, Heard]],
) -> None:
    for row, plain, short in both:
        folded = fold(row["text"])
        if spelt_out(folded, shipped_folder(), (row["asked"],) if row["asked"] else ()) is folded:
            assert plain == short


def test_hardly_any_prose_holds_a_shorthand_word(both: list[tuple[dict[str, Any], Heard, Heard]]) -> None:
    other = [row["text"] for row, plain, short in both if plain != short]
    assert len(other) <= 0.01 * len(both), other


def test_answers_in_plain_words_are_read_the_same() -> None:
    for entry in entries(held=False):
        for text, _ in list(rendered(entry, seed=1))[:1]:
            plain, short = read(text, entry["field"]), read(text, entry["field"], shorthand=True)
            assert _values(plain) == _values(short), text


@pytest.mark.parametrize(
    "text",
    [
        "The cases come in 12 in cartons and go out on pallets.",
        "We have no air up there, and they come back wet.",
        "Is it ok if they are soft? Our peak is in summer.",
        "We run 7am to 3pm, back in by 6.",
        "Send it back to the man in the floor office.",
    ],
)
def test_words_of_plain_english_are_left_alone_in_sentences(text: str) -> None:
    assert read(text, shorthand=True) == read(text)
