"""Whatever is typed or pasted: nothing is raised, nothing comes out of nothing, and every place cuts its own words."""

import math
from typing import Any

from hypothesis import strategies as st

from intake.reading import quantities, read

ASKED = st.sampled_from(
    [None, "rise.height", "rate.normal", "product.weight", "handling.squeeze", "site.before", "product.type",
    "temperature.room",
     "project.weeks", "space.ceiling", "cleaning.method", "product.length", "rise.turn", "contact.name"]
)  # fmt: skip
SIGNS = list("0123456789'\"½¼x/-–—.,:;#°%$€@&*+=~<>()[]{}|\\^_!? \n\r\t")
ODD = [
    "\x00", "\x1b", "\x1b[31m", "\x07", "\x7f", "\x85", "\u2028", "\u202e", "\u200f", "\u200b", "\u200d", "\ufeff",
    "\u2066", "\ud800", "\udfff",
    "\U0001f4e6", "👩‍🏭", "é", "é", "ß", "İ", "ﬁ", "²", "³", "⁄", "①", "Ⅻ", "٣", "३", "１２", "㎜", "㎏", "℃", "½",
    "±", "×", "ø", "″", "’",
]  # fmt: skip
PIECES = [
    "in", "ft", "lb", "kg", "mm", "cm", "m", "oz", "C", "F", "V", "N", "Hz", "psi", "per", "minute", "min", "hour",
    "a", "an", "one", "two", "half",
    "and", "to", "from", "between", "by", "each", "every", "x", "not", "no", "up", "down", "case", "totes", "high",
    "wide", "long", "about", "max",
    "at least", "dozen", "hundred", "point", "minus", "below zero", "degrees", "ceiling", "weigh", "or", "of", "the",
    "1e5", "1e999", "9" * 40, "12", "3.5",
    "1,200", "12'6\"", "0", "-", "00", "1/2", "5/0", "16x12x10", "|", "sorry", "I mean", "L", "W", "H", "shift",
    "week", "day", "per hour",
]  # fmt: skip
WILD_TEXT = st.text(st.characters() | st.sampled_from(SIGNS) | st.sampled_from(["\ud800", "\udfff"]), max_size=120)
WILD_WORDS = st.lists(st.sampled_from(PIECES) | st.sampled_from(SIGNS) | st.sampled_from(ODD), max_size=30)
PASTED = st.one_of(WILD_TEXT, WILD_WORDS.map(" ".join), WILD_WORDS.map("".join))
STRANGE = st.text(
    st.characters(categories=["Lu", "Ll", "Lo"], exclude_characters="Øø", min_codepoint=0x370, max_codepoint=0x9FFF),
    max_size=60,
)
MEANINGLESS = st.text(
    st.sampled_from([*"qzxvwjk", *" .,;:!?-()\n\t", *"дзжшђћ漢字かな", "🙂", "👍", "\u200f", "\u202e", "\x1b"]),
    max_size=80,
)
CHAT = [
    "ok", "yes thanks", "hmm let me check that", "who are you?", "is anybody there", "I will ask my boss", "lol",
    "???", "...", "see above", "call me",
    "what do you mean by that", "never mind", "that is a good question", "fine by me", "sounds good",
    "sorry, wrong window", "test", "asdf", "qwerty",
    "you tell me", "can you repeat that please", "we are still thinking", "my colleague knows", "will send it later",
    "no idea", "not sure yet",
]  # fmt: skip


def _cuts_its_words(text: str, asked: str | None) -> None:
    heard = read(text, asked)
    for item in (*heard.facts, *heard.doubts):
        assert item.span is not None
        assert 0 <= item.span[0] <= item.span[1] <= len(text)
        assert text[item.span[0] : item.span[1]] == item.said
    assert all(piece in text for piece in heard.unread)
    for fact in heard.facts:
        for end in (fact.low, fact.high):
            assert end is None or math.isfinite(end)
        assert fact.low is None or fact.high is None or fact.low <= fact.high


def test_any_text_is_read_without_raising_and_places_cut_its_words(for_all: Any) -> None:
    for_all(_cuts_its_words, PASTED, ASKED, tries=250)


def test_quantities_of_any_text_cut_its_words_in_order_and_are_finite(for_all: Any) -> None:
    def law(text: str) -> None:
        behind = 0
        for found in quantities(text):
            assert text[found.span[0] : found.span[1]] == found.said
            assert found.said
            assert behind <= found.span[0] < found.span[1]
            behind = found.span[1]
            assert all(end is None or math.isfinite(end) for end in (found.low, found.high))
            assert found.low is None or found.high is None or found.low <= found.high

    for_all(law, PASTED, tries=250)


def test_the_same_text_gives_the_same_answer_twice(for_all: Any) -> None:
    def law(text: str, asked: str | None, between: str) -> None:
        first = read(text, asked), quantities(text)
        read(between)
        assert (read(text, asked), quantities(text)) == first

    for_all(law, PASTED, ASKED, PASTED, tries=60)


def test_text_without_figures_or_known_words_gives_nothing(for_all: Any) -> None:
    def law(text: str) -> None:
        heard = read(text)
        assert (heard.facts, heard.doubts, quantities(text)) == ((), (), [])

    for_all(law, STRANGE | MEANINGLESS, tries=150)


def test_a_figure_in_a_fact_stands_in_the_words_of_the_fact(for_all: Any) -> None:
    words = st.sampled_from(
        [
            piece
            for piece in PIECES
            if piece.isalpha() and piece not in ("one", "two", "half", "dozen", "hundred", "point")
        ]
    )

    def law(pieces: list[str]) -> None:
        text = " ".join(pieces)
        assert [found for found in quantities(text) if not set(found.said.split()) & {"a", "an"}] == []

    for_all(law, st.lists(words, max_size=15), tries=150)


def test_chat_about_nothing_gives_no_fact() -> None:
    assert {text: read(text).facts for text in CHAT if read(text).facts} == {}


def test_runs_of_one_sign_and_huge_figures_are_read_without_raising() -> None:
    for sign in [*SIGNS, *ODD, *PIECES]:
        for text in (sign * 300, f"{sign} " * 300, f"weight {sign * 50} kg"):
            _cuts_its_words(text, "product.weight")
            assert all(found.low is None or math.isfinite(found.low) for found in quantities(text))
