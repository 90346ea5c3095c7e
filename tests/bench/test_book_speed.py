"""How long a book of 50,000 cases takes to open and to search, against one of 500: `pytest -m bench -s tests/bench`.

Each case has 7 or 8 events and 2 or 3 messages of some 150 characters, in words as common as in real talk: half of all
words are one of twenty. A first page of 50 is read, as the desk shows it.
"""

import json
import random
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from time import perf_counter

import pytest

from intake.casebook import Book, Find, IndexRow
from intake.spec import Event

pytestmark = pytest.mark.bench

FEW, MANY, PAGE = 500, 50_000, 50
COMMON = [
    "the",
    "we",
    "need",
    "up",
    "to",
    "from",
    "our",
    "box",
    "carton",
    "line",
    "floor",
    "with",
    "and",
    "for",
    "a",
    "per",
    "minute",
    "weight",
    "about",
    "high",
]
RNG = random.Random(20260302)
RARE = [
    "".join(RNG.choice("bcdfghklmnprstvw") + RNG.choice("aeiou") for _ in range(RNG.randint(2, 4))) for _ in range(8000)
]


def message() -> str:
    """Some 150 characters."""
    words = []
    while sum(map(len, words)) + len(words) < 150:
        words.append(RNG.choice(COMMON) if RNG.random() < 0.5 else RNG.choice(RARE))
    return " ".join(words)


def rows(cases: int) -> Iterator[tuple[str, int, str, str, dict[str, object], str | None]]:
    """Events as the journal keeps them: case, number, time, kind, body, text."""
    for number in range(cases):
        name, at = (
            f"case{number}",
            f"2026-{1 + number * 12 // cases:02d}-{1 + number % 28:02d}T{number % 24:02d}:00:00+00:00",
        )
        yield name, 1, at, "opened", {"title": RNG.choice(RARE)}, None
        for turn in range(RNG.randint(2, 3)):
            seq = 2 + 3 * turn
            yield name, seq, at, "message", {"who": "visitor"}, message()
            yield (
                name,
                seq + 1,
                at,
                "heard",
                {"message": seq, "asked": [], "facts": [], "doubts": [], "unread": []},
                None,
            )
            yield name, seq + 2, at, "asked", {"question": "size", "fields": ["product.length"]}, None


def index_of(case_id: str, events: list[Event]) -> IndexRow:
    number = int(case_id[4:])
    return IndexRow(
        title=f"{events[0].body['title']}, 25/min, up 3 m",
        standing=("talking", "decided", "handed over, revision A")[number % 3],
        best=("spiral", "side_grip", "index_lift")[number % 3],
        waiting_for="us" if number % 10 == 0 else "",
        due="2026-05-01" if number % 50 == 0 else "",
        open=int(number % 10 == 0),
    )


def build(place: Path, cases: int) -> Path:
    """A book of so many cases, through its own guards, and its index by its own rebuild."""
    with Book(place) as book:
        book.keep_draft("x", "")
    connection = sqlite3.connect(place, isolation_level=None)
    connection.execute("begin")
    for name, seq, at, kind, body, text in rows(cases):
        connection.execute(
            "insert into event(case_id, seq, at, kind, body) values (?, ?, ?, ?, ?)",
            (name, seq, at, kind, json.dumps(body)),
        )
        if text is not None:
            connection.execute("insert into message values (?, ?, ?)", (name, seq, text))
    connection.execute("commit")
    connection.close()
    with Book(place) as book:
        book.rebuild(index_of)
    return place


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    folder = tmp_path_factory.mktemp("books")
    return build(folder / "few.sqlite3", FEW), build(folder / "many.sqlite3", MANY)


def fastest(place: Path, find: Find) -> tuple[float, int]:
    """The least time [s] to open the book anew and read the first page, and how many lines it had."""
    found = []
    for _ in range(7):
        started = perf_counter()
        with Book(place) as book:
            page = book.cases(find=find, limit=PAGE)
            found.append(perf_counter() - started)
    return min(found), len(page)


ASKED = {
    "the plain list": Find(),
    "a common word": Find(words="carton"),
    "three common words": Find(words="carton line floor"),
    "a common and a rare word": Find(words=f"the {RARE[7]}"),
    "a rare word": Find(words=RARE[5]),
    "a word that is nowhere": Find(words="zzzz"),
    "one letter": Find(words="c"),
    "a word with a sign in it": Find(words="side_grip"),
    "what is due": Find(due_by="2026-06-01"),
    "what is open for us": Find(open_only=True, waiting_for="us"),
    "a family that leads nowhere": Find(family="cover_belt"),
    "one month, a family, a word": Find(words="carton", family="spiral", since="2026-03-01", until="2026-03-31"),
}


def test_a_book_of_fifty_thousand_cases_against_one_of_five_hundred(books: tuple[Path, Path]) -> None:
    few, many = books
    print(f"\n{MANY} cases, {many.stat().st_size / 1e6:.0f} MB, against {FEW}; open anew and read a page of {PAGE}")
    for said, find in ASKED.items():
        (short, _), (long, lines) = fastest(few, find), fastest(many, find)
        print(
            f"{said:30s} {long * 1e3:6.1f} ms, {lines:2d} lines; of {FEW}: {short * 1e3:5.1f} ms: x {long / short:5.1f}"
        )
        assert long < MANY / FEW * short  # a guard against reading all of it, not an aim


def test_following_changes_and_keeping_an_answer(books: tuple[Path, Path]) -> None:
    times = []
    for place in books:
        with Book(place) as book:
            mark, _ = book.follow(2**62)
            started = perf_counter()
            for _ in range(200):
                book.follow(mark)
            following = (perf_counter() - started) / 200
            started = perf_counter()
            for number in range(1, 51):
                event = Event(seq=number, at="2026-12-31T00:00:00+00:00", kind="message", body={"text": message()})
                book.append("new", [event], IndexRow(title=f"new {number}"))
            times.append((following, (perf_counter() - started) / 50))
    (few_follow, few_keep), (many_follow, many_keep) = times
    print(f"\nfollow {many_follow * 1e6:.0f} us: x {many_follow / few_follow:.1f}")
    print(f"keep one answer with its index {many_keep * 1e3:.1f} ms: x {many_keep / few_keep:.1f}")
    assert many_follow < 20.0 * few_follow
