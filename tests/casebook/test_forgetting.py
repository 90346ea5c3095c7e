"""Forgetting a person: their words are nowhere in the book any more, and nothing else is changed."""

import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, IndexRow, file_mark
from intake.casebook.personal import words_found
from intake.spec import Doubt, Event, Fact, fold
from intake.spec.bodies import doubt_to_body, fact_to_body

Story = Callable[..., list[Event]]

TEXT = (
    "Mira Oldcastle here (Fennick & Söhne). 12 kg, ten of 1200 480 3600 mm; "
    "call 01632 960 123. 12 lb? - mira@fennick.example"
)
PLAN = b"drawn by Oldcastle"
TELLING = ("oldcastle", "mira", "fennick", "söhne", "960 123")


def place_of(words: str) -> tuple[int, int]:
    return TEXT.index(words), TEXT.index(words) + len(words)


def at(number: int, kind: str, /, **body: object) -> Event:
    return Event(seq=number, at="2026-03-02T09:00:00+00:00", kind=kind, body=body)


def person() -> list[Event]:
    """A case with one person in everything that can hold words."""
    facts = [
        Fact(
            field="contact.name",
            value="Mira Oldcastle",
            said="Mira Oldcastle",
            span=place_of("Mira Oldcastle"),
            message=2,
        ),
        Fact(field="product.weight", low=12.0, high=12.0, said="12 kg", span=place_of("12 kg"), message=2),
        Fact(
            field="product.length",
            low=1.2,
            high=1.2,
            said="1200 480 3600 mm",
            span=place_of("1200 480 3600 mm"),
            message=2,
        ),
        Fact(field="product.weight", low=5.4, high=5.4, said="12 lb", span=place_of("12 lb"), message=2),
        Fact(field="site.before", value="Mira's sealer", said="Mira's sealer"),
    ]
    company = Doubt(
        field="contact.company",
        said="Fennick & Söhne",
        why="w",
        ask="Fennick & Söhne?",
        span=place_of("Fennick & Söhne"),
    )
    heard = {
        "message": 2,
        "asked": [],
        "facts": [fact_to_body(fact) for fact in facts],
        "doubts": [doubt_to_body(company)],
    }
    return [
        at(1, "opened", title="cartons for MIRA OLDCASTLE"),
        at(2, "message", text=TEXT, who="visitor"),
        at(3, "heard", **heard, unread=['ask "Mira"\n']),
        at(4, "message", text='note: Mr "Oldcastle" is in till four', who="staff"),
        at(5, "noted", message=4),
        at(6, "message", text="plan_of_Oldcastle.pdf", who="staff"),
        at(7, "attached", message=6, file=file_mark(PLAN), bytes=len(PLAN)),
        at(8, "handed_over", revision="A", spec={"site.before": "Mira's sealer", "product.weight": 12.0}),
        at(9, "undone", seq=3),
    ]


def index_of(case_id: str, events: list[Event]) -> IndexRow:
    return IndexRow(title=fold(events).title, words=f"{len(events)} events")


@pytest.fixture
def met(book: Book, story: Story) -> Book:
    """The case of that person beside another one, with a draft."""
    book.append(
        "tea", person(), IndexRow(title="cartons for Mira Oldcastle", words="oldcastle"), files={file_mark(PLAN): PLAN}
    )
    book.append("soap", story())
    book.keep_draft("tea", "Dear Ms Oldcastle,")
    return book


def bytes_of(place: Path) -> bytes:
    return b"".join(file.read_bytes() for file in sorted(place.parent.iterdir()))


def terms_of(place: Path) -> set[str]:
    """Every word in the search index, as the index itself tells them."""
    other = sqlite3.connect(place)
    other.execute("create virtual table temp.term using fts5vocab(main, found, row)")
    found = {term for (term,) in other.execute("select term from term")}
    other.close()
    return found


def test_the_words_are_nowhere_in_the_file_nor_in_its_log(met: Book, place: Path) -> None:
    before = bytes_of(place).lower()
    assert all(word.encode() in before for word in TELLING)
    assert {"oldcastle", "mira", "fennick"} <= terms_of(place)
    done = met.forget("tea", index_of, files=True)
    after = bytes_of(place).lower()
    assert [word for word in TELLING if word.encode() in after] == []
    assert not {"oldcastle", "mira", "fennick", "sohne"} & terms_of(place)
    assert (done.messages, done.files, done.files_kept, done.also_in, done.sealed) == (3, 1, 0, (), True)


def test_places_and_figures_stay_as_they_were(met: Book) -> None:
    before = fold(met.events("tea")[:8])
    met.forget("tea", index_of)
    after = fold(met.events("tea")[:8])
    assert len(after.messages[2][0]) == len(TEXT)
    assert after.messages[2][0][slice(*place_of("1200 480 3600 mm"))] == "1200 480 3600 mm"
    assert after.messages[2][0][slice(*place_of("12 lb"))] == "12 lb"
    assert {name for name, _ in before.facts} - {name for name, _ in after.facts} == {"contact.name"}
    for key in (("product.weight", 1), ("product.length", 1)):
        assert after.facts[key] == before.facts[key]
    assert after.notes == ['note: Mr "         " is in till four']
    assert after.files[0].name == "plan_of_         .pdf"


def test_forgetting_is_noted_and_other_cases_are_not_touched(met: Book, story: Story) -> None:
    met.forget("tea", index_of)
    assert met.events("tea")[-1].kind == "forgotten"
    assert met.events("tea")[-1].body == {"messages": 3}
    assert met.events("soap") == story()
    assert met.draft("tea") == ""
    assert met.check() == []
    assert met.follow(0)[1] == ["soap", "tea"]


def test_the_index_and_the_search_know_the_person_no_more(met: Book) -> None:
    assert len(met.cases("oldcastle")) == 1
    met.forget("tea", index_of)
    assert met.cases("oldcastle") == []
    assert next(entry.index for entry in met.cases() if entry.id == "tea") == index_of("tea", met.events("tea"))


def test_files_stay_unless_asked_and_where_another_case_has_them(met: Book) -> None:
    done = met.forget("tea", index_of)
    assert (done.files, done.files_kept) == (0, 1)
    assert met.attachment("tea", file_mark(PLAN)) == PLAN
    met.copy("tea", "tea2")
    assert met.forget("tea", index_of, files=True).files_kept == 1
    assert met.attachment("tea2", file_mark(PLAN)) == PLAN


def test_a_copy_of_the_case_that_holds_the_words_is_named(met: Book) -> None:
    met.copy("tea", "tea2")
    assert met.forget("tea", index_of).also_in == ("tea2",)
    assert met.forget("tea2", index_of).also_in == ()


def test_an_old_copy_of_the_book_beside_it_is_named(met: Book, place: Path) -> None:
    place.with_name(f"{place.name}.v1-backup").write_bytes(b"")
    assert met.forget("tea", index_of).copies == (f"{place.name}.v1-backup",)


def test_forgetting_twice_changes_nothing_more(met: Book) -> None:
    met.forget("tea", index_of)
    done = met.forget("tea", index_of)
    assert (done.messages, done.events) == (0, 0)


def test_a_program_that_reads_meanwhile_is_told_of(met: Book, place: Path) -> None:
    with Book(place, wait_s=0.05) as here:
        here.cases()
        other = sqlite3.connect(place, isolation_level=None)
        other.execute("begin")
        other.execute("select count(*) from event").fetchone()
        assert not here.forget("tea", index_of).sealed
        other.execute("rollback")
        other.close()
        assert here.forget("tea", index_of).sealed
    assert b"oldcastle" not in bytes_of(place).lower().replace(PLAN.lower(), b"")


def test_where_the_index_cannot_be_made_nothing_is_blanked(met: Book) -> None:
    def broken(case_id: str, events: list[Event]) -> IndexRow:
        raise BookError("damaged", "no", "no.")

    with pytest.raises(BookError):
        met.forget("tea", broken)
    assert met.events("tea") == person()
    assert met.draft("tea") == "Dear Ms Oldcastle,"


def test_a_case_that_is_not_there_is_told(book: Book, story: Story) -> None:
    book.append("soap", story())
    with pytest.raises(BookError) as told:
        book.forget("tea", index_of)
    assert told.value.code == "no_case"


def test_what_would_be_blanked_can_be_looked_at_before() -> None:
    found = words_found(person())
    assert found[:2] == ["MIRA OLDCASTLE", "Mira Oldcastle"]
    assert {"Fennick & Söhne", "01632 960 123", "mira@fennick.example", "Oldcastle"} <= set(found)


STILL_WRONG = [
    "update message set text = upper(text)",
    "update message set text = substr(text, 2)",
    "update message set text = text || ' '",
    "update message set text = ' x' || substr(text, 3)",
    "update message set text = replace(text, 'k', char(0))",
    "update message set text = replace(text, 'k', char(9))",
    "update message set seq = seq + 100",
    "update message set case_id = 'x'",
    "update event set body = replace(body, 'product', 'Product')",
    "update event set at = '                         '",
    "update event set kind = 'noted'",
    "update event set seq = seq + 100",
    "update event set n = n + 100",
    "update event set body = replace(body, '{', ' ')",
]


@pytest.mark.parametrize("statement", STILL_WRONG)
def test_nothing_but_blanks_can_take_the_place_of_what_was_kept(met: Book, place: Path, statement: str) -> None:
    other = sqlite3.connect(place, isolation_level=None)
    with pytest.raises(sqlite3.IntegrityError):
        other.execute(statement)
    other.close()
    assert met.events("tea") == person()


def test_blanks_are_the_one_change_that_is_let_through(met: Book, place: Path) -> None:
    other = sqlite3.connect(place, isolation_level=None)
    other.execute("update message set text = replace(text, 'Oldcastle', '         ')")
    other.close()
    assert "Oldcastle" not in met.events("tea")[1].body["text"]


def test_a_name_that_is_also_a_word_of_ours_takes_only_the_name(book: Book) -> None:
    text = "Case here, 12 kg case, ask for Mark Case"
    name = Fact(field="contact.name", value="Mark Case", said="Mark Case", span=(31, 40), message=1)
    kind = Fact(field="product.type", value="case", said="case", span=(17, 21), message=1)
    heard = {"message": 1, "asked": [], "facts": [fact_to_body(name), fact_to_body(kind)]}
    book.append("tea", [at(1, "message", text=text, who="visitor"), at(2, "heard", **heard)])
    book.forget("tea", index_of)
    case = fold(book.events("tea"))
    assert case.messages[1][0] == "     here, 12 kg case, ask for          "
    assert case.facts[("product.type", 1)].value == "case"
