"""Cases as JSON Lines: the round trip, what is blanked, and what is refused."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from intake.casebook import Book, BookError, IndexRow
from intake.spec import Doubt, Event, Fact, fold
from intake.spec.bodies import doubt_to_body, fact_to_body

Story = Callable[..., list[Event]]


def test_an_export_with_everything_comes_back_as_it_was(book: Book, story: Story) -> None:
    events = story("12 kg, says Ann Example\u2028\x85\n\nand more")
    index = IndexRow(title="tea cartons", standing="talking", best="spiral", words="tea")
    book.append("tea", events, index)
    text = book.export("tea", personal=True)
    assert book.import_(text, "tea2") == "tea2"
    assert book.events("tea2") == events
    assert {entry.id: entry.index for entry in book.cases()} == {"tea": index, "tea2": index}


def test_every_line_of_an_export_is_one_json_value(book: Book, story: Story) -> None:
    book.append("tea", story("two\nlines"))
    lines = [json.loads(line) for line in book.export("tea").splitlines()]
    assert (lines[0]["format"], lines[0]["case"]) == ("intake case", "tea")
    assert [line["seq"] for line in lines[1:]] == [1, 2, 3, 4]


def test_an_export_printed_to_a_terminal_steers_nothing(book: Book, story: Story) -> None:
    book.append("tea", story("\x9b2J \u202e ä \x07"), IndexRow(title="\x1b[2J"))
    assert all(sign == "\n" or " " <= sign <= "~" for sign in book.export("tea"))


def test_what_was_heard_of_the_person_is_blanked_everywhere_and_the_rest_still_reads(book: Book) -> None:
    text = "Ann Example here, 12 kg after Ann Example's sealer. Ed too: a@example.org"
    mail = Doubt(field="contact.email", said="a@example.org", why="w", ask="a@example.org?", span=(61, 74))
    facts = [
        Fact(field="contact.name", value="Ann Example", said="Ann Example", span=(0, 11), message=2),
        Fact(field="product.weight", low=12.0, high=12.0, said="12 kg", span=(18, 23), message=2),
        Fact(field="site.before", value="Ann Example's sealer", said="Ann Example's sealer", span=(30, 50), message=2),
    ]
    heard: dict[str, Any] = {"message": 2, "facts": [fact_to_body(fact) for fact in facts]}
    heard |= {"doubts": [doubt_to_body(mail)], "unread": ["call ANN EXAMPLE"]}
    name = Fact(field="contact.company", value="Ed", said="Ed", span=(0, 2), message=4)
    events = [
        Event(seq=1, at="", kind="opened", body={"title": "for Ann Example"}),
        Event(seq=2, at="", kind="message", body={"text": text, "who": "visitor"}),
        Event(seq=3, at="", kind="heard", body=heard),
        Event(seq=4, at="", kind="message", body={"text": "Ed", "who": "staff"}),
        Event(seq=5, at="", kind="known", body={"fact": fact_to_body(name), "message": 4}),
        Event(seq=6, at="", kind="undone", body={"seq": 5}),
        Event(seq=7, at="", kind="handed_over", body={"spec": {"site.before": "Ann Example's sealer"}}),
    ]
    book.append("tea", events, IndexRow(title="Ann Example", words="ann example"))
    sent = book.export("tea")
    for word in ("ann example", "example.org", "Ed "):
        assert word.lower() not in sent.lower()
    book.import_(sent, "sent")
    before, after = fold(events), fold(book.events("sent"))
    assert after.facts[("product.weight", 1)] == before.facts[("product.weight", 1)]
    assert {name for name, _ in after.facts} == {"product.weight", "site.before"}
    blanked = after.messages[2][0]
    assert len(blanked) == len(text)
    assert blanked[18:23] == "12 kg"
    assert "handed" not in blanked


def test_a_name_that_is_also_a_word_of_ours_blanks_no_machinery(book: Book) -> None:
    fact = Fact(field="contact.name", value="Case", said="Case", span=(0, 4), message=1)
    kind = Fact(field="product.type", value="case", said="case", span=(5, 9), message=1)
    events = [
        Event(seq=1, at="", kind="message", body={"text": "Case case", "who": "visitor"}),
        Event(seq=2, at="", kind="heard", body={"message": 1, "facts": [fact_to_body(fact), fact_to_body(kind)]}),
    ]
    book.append("tea", events)
    book.import_(book.export("tea"), "sent")
    assert fold(book.events("sent")).facts[("product.type", 1)].value == "case"


def test_an_import_without_a_name_keeps_its_own_or_gets_a_free_one(book: Book, story: Story) -> None:
    book.append("tea", story())
    text = book.export("tea")
    fresh = book.import_(text)
    assert fresh not in ("tea", "")
    assert book.import_(text.replace('"case": "tea"', '"case": "soap"', 1)) == "soap"
    assert book.import_(text.replace('"case": "tea"', '"case": "../up"', 1)) not in ("../up", "tea", "soap")
    with pytest.raises(BookError, match="kept under"):
        book.import_(text, "tea")


HEAD = '{"format": "intake case", "version": 1, "case": "x"}'
LINE = '{"seq": 1, "at": "", "kind": "opened", "body": {}}'
REFUSED = [
    ("", "line 1", "empty"),
    ("\n\n", "line 1", "empty"),
    ("{}", "line 1", "first line"),
    ("[" * 5000, "line 1", "first line"),
    ('{"product.length": 0.4}', "line 1", "first line"),
    (HEAD.replace("1", "3") + "\n" + LINE, "line 1", "newer"),
    (HEAD, "line 1", "no events"),
    (HEAD + "\n\n" + LINE + "\nnot json", "line 4", "JSON"),
    (HEAD + "\n" + LINE + "\n" + LINE, "line 3", "event 2 should stand here"),
    (HEAD + "\n" + LINE.replace("opened", "sold"), "line 2", "unknown kind"),
    (HEAD + "\n" + LINE.replace("1", '"1"', 1), "line 2", "seq"),
    (HEAD + "\n" + LINE.replace("opened", "message"), "line 2", "text"),
    (HEAD + "\n" + LINE.replace("opened", "undone"), "line 2", "seq"),
    (HEAD + "\n" + LINE.replace("{}", '{"title": "\\ud800"}'), "line 2", ""),
    (HEAD + "\n" + LINE.replace("opened", "known").replace("{}", '{"fact": {"field": "x"}}'), "line 2", "a field that"),
    (
        HEAD + "\n" + LINE.replace("opened", "known").replace("{}", '{"fact": {"field": "rate.peak", "low": 1e999}}'),
        "line 2",
        "finite",
    ),
    (
        HEAD + "\n" + LINE.replace("opened", "known").replace("{}", '{"fact": {"field": "rate.peak", "value": true}}'),
        "line 2",
        "wrong kind",
    ),
]


@pytest.mark.parametrize(("text", "line", "what"), REFUSED)
def test_a_file_that_is_no_case_is_refused_with_its_line(book: Book, text: str, line: str, what: str) -> None:
    with pytest.raises(BookError) as told:
        book.import_(text)
    assert told.value.code == "bad_file"
    assert line in told.value.what
    assert what in told.value.what
    assert book.cases() == []


def test_an_imported_index_is_made_harmless(book: Book) -> None:
    head = json.dumps(
        {"format": "intake case", "version": 1, "case": "x", "index": {"title": "a\x1b[2J\nb", "best": 4}}
    )
    book.import_(f"{head}\n{LINE}")
    assert book.cases()[0].index == IndexRow(title="a b", best="4")
