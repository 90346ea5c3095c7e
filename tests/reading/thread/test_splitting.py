"""Random talks in every form come apart as they were put together; lists of facts and hostile text do not break."""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intake.reading.thread import Turn, split_thread

NAMES = [
    "Ann",
    "Bob",
    "Ann Example",
    "Marek Holt",
    "Yara Quill",
    "José",
    "Dora",
    "O'Neil",
    "Visitor 12",
    "Agent",
    "Lena (Sales)",
]
SAID = [
    "hello, we need to raise cases",
    "How heavy is one?",
    "30 lb",
    "yes",
    "no idea, sorry",
    "about 12 x 10 x 8 in",
    "our shift ends at 12:30, so call before",
    "up to a mezzanine: 12 ft",
    "thanks, what's the ceiling like?",
    "Note: the door is 8 ft wide",
    "25/min (peak 40)",
    "see http://tea.example/a:b",
    "done :)",
    "It's 5' 6\" tall",
    "from 7:00 to 15:00",
    "ok",
    "Size: 12x10\nWeight: 12 kg\nRate: 20/min",
    "first line\nsecond line, 40 long",
    "two\n\nparagraphs",
]
Talk = list[tuple[str, str]]
talks = st.tuples(
    st.lists(st.sampled_from(NAMES), min_size=2, max_size=3, unique_by=lambda name: name.split()[0]),
    st.lists(st.sampled_from(SAID), min_size=4, max_size=9),
).map(lambda drawn: [(drawn[0][n % len(drawn[0])], said) for n, said in enumerate(drawn[1])])


def clock(n: int) -> str:
    return f"{9 + n // 60:02d}:{n % 60:02d}"


FORMS: dict[str, Callable[[int, str, str], str]] = {
    "stamp_colon": lambda n, name, said: f"{clock(n)} {name}: {said}\n",
    "bracket": lambda n, name, said: f"[{clock(n)}] {name}: {said}\n",
    "full_bracket": lambda n, name, said: f"[2026-03-02, {clock(n)}:11] {name}: {said}\n",
    "dash": lambda n, name, said: f"02/03/2026, {clock(n)} - {name}: {said}\n",
    "iso": lambda n, name, said: f"2026-03-02T{clock(n)}:05Z {name}: {said}\n",
    "behind": lambda n, name, said: f"{name} ({clock(n)}): {said}\n",
    "behind_brackets": lambda n, name, said: f"{name} [2026-03-02 {clock(n)}]: {said}\n",
    "alone": lambda n, name, said: f"{name}  {clock(n)}\n{said}\n\n",
    "alone_comma": lambda n, name, said: f"{name}, 2 March 2026 at {clock(n)}\n{said}\n",
    "alone_dash": lambda n, name, said: f"{name} — {clock(n)} AM\n{said}\n",
    "two_lines": lambda n, name, said: f"{name}\n{clock(n)}\n{said}\n\n",
    "angle": lambda n, name, said: f"<{name}> {said}\n",
    "angle_timed": lambda n, name, said: f"[{clock(n)}] <{name}> {said}\n",
    "stars": lambda n, name, said: f"**{name}:** {said}\n",
    "windows_ends": lambda n, name, said: f"{clock(n)} {name}: {said}\n".replace("\n", "\r\n"),
    "tabs": lambda n, name, said: f"{clock(n)}\t{name}\t{said}\n",
}
"""Forms that tell speakers from lists of facts by a mark of their own."""


def bare(name: str) -> str:
    return name.split(" (")[0]


@pytest.mark.parametrize("form", FORMS)
@given(talk=talks)
@settings(max_examples=25, deadline=None)
def test_a_talk_comes_apart_as_it_was_put_together(form: str, talk: Talk) -> None:
    text = "".join(FORMS[form](n, name, said) for n, (name, said) in enumerate(talk))
    turns = split_thread(text)
    assert [turn.name for turn in turns] == [bare(name) for name, _ in talk]
    assert [turn.text.replace("\r\n", "\n") for turn in turns] == [said for _, said in talk]


@given(talk=talks)
@settings(max_examples=60, deadline=None)
def test_with_the_sides_as_labels_no_time_is_needed(talk: Talk) -> None:
    speakers = list(dict.fromkeys(name for name, _ in talk))
    labels = {name: ("Visitor", "Agent", "Agent Lena")[n] for n, name in enumerate(speakers)}
    turns = split_thread("".join(f"{labels[name]}: {said}\n" for name, said in talk))
    assert [(turn.name, turn.text) for turn in turns] == [(labels[name], said) for name, said in talk]
    assert [turn.who for turn in turns] == ["visitor" if labels[name] == "Visitor" else "staff" for name, _ in talk]


KEYS = [
    "Size",
    "Weight",
    "Rate",
    "Rise",
    "Ceiling",
    "Note",
    "Product",
    "Room temperature",
    "Infeed height",
    "Qty",
    "L",
    "W",
    "H",
    "Max weight",
    "Voltage",
    "Door",
    "Floor space",
    "Contact",
    "Deadline",
    "Site",
    "Customer",
    "Material",
    "Subject",
    "Date",
]
VALUES = [
    "12 kg",
    "12x10",
    "20/min",
    "12:30",
    "yes",
    "5 m",
    "cases, taped",
    "",
    "480 V 3 ph",
    "10-12 ft",
    "as discussed",
    "none",
]


@given(
    rows=st.lists(
        st.tuples(st.sampled_from(KEYS), st.sampled_from(VALUES)), min_size=1, max_size=12, unique_by=lambda r: r[0]
    )
)
@settings(max_examples=150, deadline=None)
def test_a_list_of_facts_has_no_speakers(rows: list[tuple[str, str]]) -> None:
    text = "\n".join(f"{key}: {value}" for key, value in rows)
    [turn] = split_thread(text)
    assert (turn.who, turn.name, turn.at, turn.text) == ("visitor", None, None, text.strip())


@given(
    rows=st.lists(
        st.tuples(st.sampled_from(KEYS), st.sampled_from(VALUES)), min_size=2, max_size=8, unique_by=lambda r: r[0]
    ),
    form=st.sampled_from(sorted(FORMS)),
)
@settings(max_examples=100, deadline=None)
def test_a_list_of_facts_inside_a_message_stays_whole(rows: list[tuple[str, str]], form: str) -> None:
    pasted = "here you go\n" + "\n".join(f"{key}: {value}".strip() for key, value in rows)
    talk = [
        ("Ann", "we need to lift cases"),
        ("Bob", "What figures do you have?"),
        ("Ann", pasted),
        ("Bob", "Thank you!"),
    ]
    turns = split_thread("".join(FORMS[form](n, name, said) for n, (name, said) in enumerate(talk)))
    assert [turn.text.replace("\r\n", "\n") for turn in turns] == [said for _, said in talk]


def holds(text: str, turns: tuple[Turn, ...]) -> None:
    for turn in turns:
        start, end = turn.span
        assert 0 <= start < end <= len(text)
        for part in turn.parts:
            assert part.text == "".join(text[a:b] for a, b in part.pieces)


MESS = st.text(
    st.sampled_from("Ann:<>[]()*-_>/.@ \n\r\t0123456789:\x1b\u202e\x00é\u0301日①pmAMOn wrote:From"), max_size=300
)


@given(
    text=st.one_of(
        st.text(max_size=300),
        MESS,
        st.lists(
            st.sampled_from(
                [
                    "From: a@b.example",
                    "On Mon, 2 Mar 2026 at 10:32, X wrote:",
                    "> > quote",
                    "-----Original Message-----",
                    "Ann: hi",
                    "10:32 Ann: hi",
                    "Ann  10:32",
                    "",
                    "Subject: Re: x",
                    "Sent: 99/99/9999",
                    "--- 31 February 2026 ---",
                    "[25:61] Z: what",
                    "Ann joined the chat",
                ]
            ),
            max_size=14,
        ).map("\n".join),
    )
)
@settings(max_examples=300, deadline=None)
def test_no_text_breaks_it_and_places_hold(text: str) -> None:
    holds(text, split_thread(text))


@pytest.mark.parametrize(
    "text",
    [
        ":" * 100_000,
        "a:" * 50_000,
        "a: b\n" * 20_000,
        "> " * 50_000,
        ">\n" * 50_000,
        "10:32 " * 30_000,
        "[" * 100_000,
        "On " * 40_000 + "wrote:",
        "From: x\n" * 8_000,
        "Ann: hi\n" + "x" * 1_000_000,
        "\x1b[31m" * 50_000,
        "<" * 100_000,
        "**" * 60_000,
        "Ann Example  10:32\n" * 6_000,
        "-----Original Message-----\n" * 6_000,
        " " * 200_000,
        "A " * 100_000,
        "On Mon, 2 Mar 2026 at 10:32, Bob <b@c.example> wrote:\n> x\n" * 3_000,
    ],
    ids=lambda text: repr(text[:20]),
)
def test_long_and_odd_text_comes_through(text: str) -> None:
    holds(text, split_thread(text))
