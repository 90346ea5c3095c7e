"""Random mail threads in the layouts of mail programs come apart into their mails, oldest first, each once."""

import textwrap
from collections.abc import Callable
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intake.reading.thread import split_thread

VISITOR, STAFF = ("Ann Example", "ann@tea.example"), ("Bob Desk", "sales@rise.example")
NEEDS = [
    "We need to raise cases.",
    "It is for a new hall.\n\nThe hall is 5 m high.",
    "12 kg",
    "Yes, they are.",
    "25 a minute at peak.",
    "Hello Bob,\nno, they are not.\nAnn",
    "up 3.5 m, see the drawing",
    "I'll ask maintenance.",
]
ASKS = [
    "How heavy is one?",
    "Hi Ann,\n\nand the ceiling?\n\nBob",
    "Thanks! How many a minute?",
    "Is it closed?",
    "How high do they go?",
]
Mail = tuple[tuple[str, str], str, str]
threads = st.tuples(st.permutations(NEEDS), st.permutations(ASKS), st.integers(2, 6)).map(
    lambda drawn: [
        ((VISITOR, STAFF)[n % 2], f"2 Mar 2026 at {9 + n:02d}:05", (drawn[0], drawn[1])[n % 2][n // 2])
        for n in range(drawn[2])
    ]
)


def attribution(mail: Mail) -> str:
    (name, address), at, _ = mail
    return f"On Mon, {at}, {name} <{address}> wrote:"


def header(mail: Mail, number: int) -> str:
    (name, address), at, _ = mail
    sent = at.replace(" at", "")
    subject = "RE: Lift" if number else "Lift"
    return f"From: {name} <{address}>\nSent: Monday, {sent}\nTo: somebody\nSubject: {subject}\n"


def quoted(text: str) -> str:
    return "\n".join(f"> {line}".rstrip() if not line.startswith(">") else f">{line}" for line in text.split("\n"))


def top_posted(mails: list[Mail]) -> str:
    text = mails[0][2]
    for before, mail in pairwise(mails):
        text = f"{mail[2]}\n\n{attribution(before)}\n{quoted(text)}"
    return text


def bottom_posted(mails: list[Mail]) -> str:
    text = mails[0][2]
    for before, mail in pairwise(mails):
        text = f"{attribution(before)}\n{quoted(text)}\n\n{mail[2]}"
    return text


def divided(mails: list[Mail]) -> str:
    numbered = list(enumerate(mails))[::-1]
    return "\n\n-----Original Message-----\n".join(f"{header(mail, n)}\n{mail[2]}" for n, mail in numbered)


def underlined(mails: list[Mail]) -> str:
    numbered = list(enumerate(mails))[::-1]
    return f"\n\n{'_' * 32}\n".join(f"{header(mail, n)}\n{mail[2]}" for n, mail in numbered)


def one_after_the_other(mails: list[Mail]) -> str:
    """Every mail whole, oldest first, each with all that it quotes."""
    return "\n\n".join(f"{header(mail, n)}\n{top_posted(mails[: n + 1])}" for n, mail in enumerate(mails))


def unwrapped_without_marks(mails: list[Mail]) -> str:
    """A mobile mail program: no marks before the quoted lines."""
    text = mails[0][2]
    for before, mail in pairwise(mails):
        text = f"{mail[2]}\n\n{attribution(before)}\n\n{text}"
    return text


LAYOUTS: list[Callable[[list[Mail]], str]] = [
    top_posted,
    bottom_posted,
    divided,
    underlined,
    one_after_the_other,
    unwrapped_without_marks,
]


@pytest.mark.parametrize("layout", LAYOUTS)
@given(mails=threads)
@settings(max_examples=40, deadline=None)
def test_a_thread_comes_apart_into_its_mails(layout: Callable[[list[Mail]], str], mails: list[Mail]) -> None:
    turns = split_thread(layout(mails))
    assert [turn.text for turn in turns] == [said for _, _, said in mails]
    assert [turn.who for turn in turns] == [("visitor", "staff")[n % 2] for n in range(len(mails))]
    for turn, (person, at, _) in list(zip(turns, mails, strict=True))[: -1 if layout in LAYOUTS[:2] else None]:
        if turn.name is not None:
            assert turn.name == person[0]
        if turn.at is not None:
            assert turn.at == f"2026-03-02T{at[-5:]}"
    assert all(turn.name for turn in turns[:-1])
    assert all(turn.at for turn in turns[:-1])


@given(mails=threads)
@settings(max_examples=30, deadline=None)
def test_windows_line_ends_change_nothing(mails: list[Mail]) -> None:
    plain, windows = (split_thread(text) for text in (top_posted(mails), top_posted(mails).replace("\n", "\r\n")))
    assert [turn.text for turn in plain] == [turn.text.replace("\r\n", "\n") for turn in windows]


def test_long_lines_that_were_wrapped_when_quoted_are_still_the_same_mail() -> None:
    long = "We need to raise taped cases of tea, 400 x 300 x 250 mm, " * 3 + "as soon as we can."
    wrapped = quoted("\n".join(textwrap.wrap(long, 60)))
    first, last = (VISITOR, "2 Mar 2026 at 09:05", long), (STAFF, "2 Mar 2026 at 10:05", "How heavy is one?")
    text = f"{header(first, 0)}\n{long}\n\n{header(last, 1)}\n{last[2]}\n\n{attribution(first)}\n{wrapped}\n"
    assert [turn.text for turn in split_thread(text)] == [long, "How heavy is one?"]


def test_the_same_short_word_in_two_mails_of_one_thread_counts_twice() -> None:
    first = "Bob Desk wrote:\n> Is it closed?"
    older = f"Ann Example wrote:\n> yes\n>\n{quoted(first)}"
    text = f"yes\n\nBob Desk wrote:\n> Is it fragile?\n>\n{quoted(older)}\n"
    assert [turn.text for turn in split_thread(text)] == ["Is it closed?", "yes", "Is it fragile?", "yes"]
