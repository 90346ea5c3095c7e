"""People's words in Markdown and CSV are shown and never obeyed."""

import csv
import io
import random

import pytest
from markdown_it import MarkdownIt

from intake.handoff.escape import csv_cell, md, md_code, table

HOSTILE = [
    "[click](javascript:alert(1))",
    "<script>alert(1)</script>",
    "a | b",
    "two\nlines\n# heading",
    "**bold** _it_ `code` ~~gone~~",
    "![x](http://a/b.png)",
    "<http://evil.example>",
    "- list\n1. item",
    "&lt;b&gt; &amp;",
    "\\| \\",
    "\x1b[31mred\x1b[0m",
]


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_stay_one_cell_of_plain_text(words: str) -> None:
    page = "\n".join(table(("who", "words"), [("visitor", md(words)), ("staff", "after")]))
    tokens = MarkdownIt("commonmark").enable("table").enable("strikethrough").parse(page)
    rows = [t for t in tokens if t.type == "tr_open"]
    cells = [t for t in tokens if t.type == "td_open"]
    inner = [child.type for t in tokens if t.type == "inline" for child in t.children or []]
    assert (len(rows), len(cells)) == (3, 4)
    assert set(inner) <= {"text", "text_special"}


def test_escaped_words_read_the_same_as_what_was_said() -> None:
    for words in ["16x12x10 in, 30 lb (about) #4 - 5*2", 'it\'s 12\'6" & "tight"']:
        inline = MarkdownIt("commonmark").parseInline(md(words))[0].children or []
        assert "".join(t.content for t in inline) == words


def test_a_bar_in_a_formula_does_not_end_the_cell() -> None:
    tokens = MarkdownIt("commonmark").enable("table").parse("\n".join(table(("f",), [(md_code("abs(a|b)"),)])))
    assert sum(t.type == "td_open" for t in tokens) == 1


@pytest.mark.parametrize("words", ["=HYPERLINK(1)", "+1", "-12 F", "@SUM(A1)", "|cmd", "%x", "＝1+1", "\t=1", "\n=1"])
def test_no_cell_of_words_starts_a_formula(words: str) -> None:
    out = io.StringIO()
    csv.writer(out).writerow([csv_cell(words)])
    [[cell]] = list(csv.reader(io.StringIO(out.getvalue())))
    assert cell.startswith("'")


def test_no_random_words_start_a_formula_or_break_a_row() -> None:
    draw = random.Random(7)
    signs = "=+-@|%＝＋ \t\n\r\"',;ab1\x1b["
    for _ in range(2000):
        cell = csv_cell("".join(draw.choice(signs) for _ in range(8)))
        assert "\n" not in cell
        assert not cell.lstrip().startswith(tuple("=+-@|%＝＋"))


def test_ordinary_words_are_left_as_they_are() -> None:
    assert csv_cell("16 in, taped") == "16 in, taped"
