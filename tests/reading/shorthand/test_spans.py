"""Every fact and doubt says the words as typed, whatever was spelt out to read them."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from labels import rows
from rendered import Piece, specs
from shorthand_lines import lines

from intake.reading import read
from intake.reading.shorthand.rows import shorthand_of
from intake.spec.folder import shipped_folder


def _lawful(text: str, asked: Any = None) -> None:
    heard = read(text, asked, shorthand=True)
    for found in (*heard.facts, *heard.doubts, *(option for doubt in heard.doubts for option in doubt.options)):
        assert found.span is not None
        start, end = found.span
        assert 0 <= start < end <= len(text)
        assert text[start:end] == found.said
    for piece in heard.unread:
        assert piece in text


def test_labelled_lines_keep_the_law() -> None:
    for line in (*lines("open"), *lines("aside")):
        _lawful(line.text, line.asked)
        _lawful("Caller:\r\n\t" + line.text.replace(" ", "  ") + "\u00a0\u200b", line.asked)


def test_prose_keeps_the_law() -> None:
    for row in rows("open")[::4]:
        _lawful(row["text"], row["asked"])


@settings(max_examples=80, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck))
@given(specs())
def test_random_specs_keep_the_law(piece: Piece) -> None:
    _lawful(piece[0])


_SHORT = sorted(" ".join(row.words) for rows in shorthand_of(shipped_folder()).rows.values() for row in rows)
_SOUP = st.lists(
    st.sampled_from([*_SHORT, "no", "y", "n", "ok", "?", "x?", ">", "->", "12", "30\"", "14'6\"", "3.5", "½", "m", "#",
                     "/m", "\n", "\t", "İ", "\u202e", "[red]", "\x1b[31m", "=1+1", "<b>", ",", ";", "in", "out"]),
    max_size=25,
)  # fmt: skip


@settings(max_examples=150, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck))
@given(_SOUP, st.sampled_from(["", " "]), st.sampled_from([None, "rise.turn", "product.fill", "rate.peak"]))
def test_any_soup_of_words_keeps_the_law_and_raises_nothing(words: list[str], gap: str, asked: str | None) -> None:
    _lawful(gap.join(words), asked)


@settings(max_examples=100, derandomize=True, deadline=None)
@given(st.text(max_size=120))
def test_any_text_keeps_the_law(text: str) -> None:
    _lawful(text)


@pytest.mark.parametrize(
    "piece", ["no sq ", 'in 30" out ', "pk 32 ", "> ", "30\" > 14' ", "sq? ", "fl ", "w/o ", 'L 3" ']
)
def test_a_long_hostile_text_is_read_to_its_end(piece: str) -> None:
    _lawful(piece * (8_000 // len(piece)))
