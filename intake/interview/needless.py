"""Facts that need no asking once something else is known, from `needless.toml` of the questions folder."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from dataclasses import field as having
from functools import cache
from pathlib import Path
from typing import Any

from intake.interview.tree import is_settled
from intake.spec.flat import Spec
from intake.spec.folder import shipped_folder


@dataclass(frozen=True, slots=True, kw_only=True)
class Needless:
    """One row: `field` need not be asked when all that stands here holds."""

    field: str
    why: str
    known: tuple[str, ...] = ()
    unless_known: tuple[str, ...] = ()
    is_word: Mapping[str, tuple[Any, ...]] = having(default_factory=dict)

    def holds(self, spec: Spec) -> bool:
        """True when the row's facts are as it says."""
        return (
            all(spec.knows(name) for name in self.known)
            and not any(spec.knows(name) for name in self.unless_known)
            and all(_what(spec, name) in words for name, words in self.is_word.items())
        )


@cache
def needless_rows(folder: Path) -> tuple[Needless, ...]:
    """The rows of a folder; a folder without the file has the shipped ones."""
    own = folder / "needless.toml"
    path = own if own.is_file() else shipped_folder() / "needless.toml"
    rows = tomllib.loads(path.read_text(encoding="utf-8")).get("needless", [])
    return tuple(
        Needless(
            field=str(row["field"]),
            why=str(row["why"]),
            known=tuple(row.get("known", ())),
            unless_known=tuple(row.get("unless_known", ())),
            is_word={name: tuple(words) for name, words in row.get("is", {}).items()},
        )
        for row in rows
    )


def is_same_matter(field: str, spec: Spec, folder: Path) -> bool:
    """True when the field would be but another word on what is known, so that it can change nothing."""
    rows = (row for row in needless_rows(folder) if row.field == field and row.holds(spec))
    return is_settled(field, spec) or any(not row.is_word for row in rows)


def why_needless(field: str, spec: Spec, folder: Path) -> str | None:
    """Why this field need not be asked now, None when it may be."""
    if is_settled(field, spec):
        return ""
    return next((row.why for row in needless_rows(folder) if row.field == field and row.holds(spec)), None)


def _what(spec: Spec, name: str) -> Any:
    found = spec.of(name)
    if found is None:
        return None
    return found.single if found.is_number else found.value
