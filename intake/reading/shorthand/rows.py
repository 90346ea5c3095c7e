"""The shorthand words of a questions folder (`shorthand.toml`), by the words that they begin with."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from intake.reading.amounts.unit_words import UNIT_WORDS
from intake.reading.text.fold import fold
from intake.reading.text.tokens import tokens_of
from intake.spec.folder import shipped_folder

FILE = "shorthand.toml"
GUARDS = (
    "anywhere", "with_type", "terse", "before.height", "before.figure", "behind.figure", "behind.length", "behind.turn",
)  # fmt: skip
"""The tables of the file that hold words, each with the guard of its name."""

LISTS = ("prose", "types", "english", "marks")
"""Its lists of words."""

Words = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """`words` under its guard stand for `says`.

    `then` goes behind the figure that follows, `before` before the figure that the word stands behind, which must be
    above `over`.
    """

    words: Words
    says: str
    guard: str
    then: str = ""
    before: str = ""
    over: float = 0.0


@dataclass(frozen=True, slots=True)
class Label:
    """What may be said yes or no to, and the words for both."""

    words: Words
    yes: str
    no: str


@dataclass(slots=True)
class Shorthand:
    """All of a folder's shorthand. `first`: every word that anything begins with."""

    rows: dict[str, list[Row]] = field(default_factory=dict)
    labels: dict[str, list[Label]] = field(default_factory=dict)
    answers: dict[str, dict[Words, str]] = field(default_factory=dict)
    prose: frozenset[str] = frozenset()
    english: frozenset[str] = frozenset()
    marks: frozenset[str] = frozenset()
    """Words that are shorthand and nothing else: a line with one of them is typed in shorthand."""
    first: frozenset[str] = frozenset()
    behind: frozenset[str] = frozenset()
    """Words that may stand behind their figure."""
    types: frozenset[str] = frozenset()
    """Words for kinds of product, with those that stand for one."""


def words_of(typed: str) -> Words:
    """A key of the file, or an answer, as the words that the reader sees.

    >>> words_of("HP wash"), words_of("w/o")
    (('hp', 'wash'), ('w', '/', 'o'))
    """
    return tuple(token.text for token in tokens_of(fold(typed)))


def tables(data: Mapping[str, Any]) -> Iterable[tuple[str, Mapping[str, Any]]]:
    """The tables of words with the names of their guards; what is no table is left out."""
    for guard in GUARDS:
        found: Any = data
        for part in guard.split("."):
            found = found.get(part, {}) if isinstance(found, Mapping) else {}
        if isinstance(found, Mapping):
            yield guard, found


def _table(data: Mapping[str, Any], name: str) -> Mapping[str, Any]:
    found = data.get(name, {})
    return found if isinstance(found, Mapping) else {}


@cache
def shorthand_of(folder: Path) -> Shorthand:
    """The shorthand of a folder, read once; the shipped one stands in for a folder without.

    Raises OSError where the file cannot be read and TOMLDecodeError where it is none.
    """
    path = folder / FILE
    data = tomllib.loads((path if path.is_file() else shipped_folder() / FILE).read_text(encoding="utf-8"))
    found = Shorthand(prose=frozenset(map(str, data.get("prose", ()))))
    for guard, table in tables(data):
        for typed, said in table.items():
            own = said if isinstance(said, Mapping) else {"says": said}
            texts = [str(own.get(key, "")) for key in ("says", "then", "before")]
            row = Row(words_of(typed), texts[0], guard, texts[1], texts[2], float(own.get("over", 0)))
            if row.words:
                found.rows.setdefault(row.words[0], []).append(row)
    for typed, said in _table(data, "yes_no").items():
        words = words_of(typed)
        if words and isinstance(said, Mapping):
            label = Label(words, str(said.get("yes", "")), str(said.get("no", "")))
            found.labels.setdefault(words[0], []).append(label)
    for name, table in _table(data, "answers").items():
        found.answers[name] = {words_of(typed): str(said) for typed, said in table.items()}
    for rows in found.rows.values():
        rows.sort(key=lambda row: -len(row.words))  # the longest first; guards in the order of the file
    for labels in found.labels.values():
        labels.sort(key=lambda label: -len(label.words))
    found.first = frozenset(found.rows) | frozenset(found.labels)
    found.english = frozenset(map(str, data.get("english", ())))
    single = {row.words[0] for rows in found.rows.values() for row in rows if len(row.words) == 1}
    only = (single | set(found.labels)) - found.english - UNIT_WORDS
    found.marks = frozenset(only | set(map(str, data.get("marks", ()))))
    found.behind = frozenset(w for w, rows in found.rows.items() if any(row.guard == "behind.figure" for row in rows))
    found.types = frozenset(map(str, data.get("types", ())))
    return found
