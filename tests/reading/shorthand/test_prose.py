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


def _worse(row: dict[str, Any]) -> list[str]:
    """The fields for which the mode lost a right fact or read one that the labels do not have."""
    plain = _values(read(row["text"], row["asked"]))
    short = _values(read(row["text"], row["asked"], shorthand=True))
    want = {name: wanted(name, label) for name, label in row["facts"].items()}
    changed = {name for name in plain.keys() | short.keys() if plain.get(name) != short.get(name)}
    return [
        name
        for name in changed
        if (name in want and name in plain and near(want[name], plain[name]))
        or (name in short and not (name in want and near(want[name], short[name])))
    ]


def test_prose_is_read_the_same_or_better() -> None:
    assert [(row["text"], worse) for row in rows("open") if (worse := _worse(row))] == []


def test_prose_without_a_shorthand_word_is_the_same_to_the_letter() -> None:
    for row in rows("open"):
        asked = (row["asked"],) if row["asked"] else ()
        folded = fold(row["text"])
        if spelt_out(folded, shipped_folder(), asked) is folded:
            assert read(row["text"], row["asked"], shorthand=True) == read(row["text"], row["asked"])


def test_hardly_any_prose_holds_a_shorthand_word() -> None:
    other = [r for r in rows("open") if read(r["text"], r["asked"]) != read(r["text"], r["asked"], shorthand=True)]
    assert len(other) <= 0.01 * len(rows("open")), [row["text"] for row in other]


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
