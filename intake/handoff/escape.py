"""People's words inside Markdown and CSV: shown as said, never obeyed."""

import re
from collections.abc import Sequence

from intake.spec.clean import one_line

_SIGNS = re.compile(r"([\\`*_{}\[\]()<>#+\-.!|~&])")
# A spreadsheet takes these as the start of a formula, also in their full-width forms.
_FORMULA = "=+-@|%＝＋－＠｜％"


def md(text: str) -> str:
    """Words for a Markdown line or table cell: on one line, every sign that means something held back.

    >>> md("a|b <i> [x](y)")
    'a\\\\|b \\\\<i\\\\> \\\\[x\\\\]\\\\(y\\\\)'
    """
    return _SIGNS.sub(r"\\\1", one_line(text))


def md_code(text: str) -> str:
    """Our own ids and formulas as code in a table cell: a bar would end the cell even inside code."""
    return "`" + one_line(text).replace("`", "'").replace("|", "\\|") + "`" if text else ""


def plain_words(value: object) -> str:
    """A choice word, yes or no as people read it: not yet escaped."""
    if value is None:
        return "not known"
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value).replace("_", " ")


def csv_cell(text: str) -> str:
    """Words for a CSV cell that no spreadsheet runs. Numbers we computed are given as numbers, not through here."""
    starts = text.startswith(("\t", "\n", "\r"))
    words = one_line(text)
    return "'" + words if starts or words[:1] in tuple(_FORMULA) else words


def table(heads: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> list[str]:
    """A Markdown table. The cells are already escaped; the heads are our own."""
    lines = ["| " + " | ".join(heads) + " |", "| " + " | ".join("---" for _ in heads) + " |"]
    return lines + ["| " + " | ".join(row) + " |" for row in rows]
