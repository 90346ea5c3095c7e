"""The vocabulary of facts: what the interview can learn, read from `fields.toml`."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Literal

Kind = Literal["quantity", "count", "choice", "yes_no", "text"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One fact that can be learned. `unit` is canonical: "" for all but quantities (counts have "1")."""

    id: str
    kind: Kind
    unit: str = ""
    choices: tuple[str, ...] = ()
    note: str = ""
    since: int = 1
    personal: bool = False

    @property
    def branch(self) -> str:
        """The part before the dot: product, rate, rise ..."""
        return self.id.split(".", 1)[0]

    @property
    def is_number(self) -> bool:
        """True for what is kept as low and high."""
        return self.kind in ("quantity", "count")


@cache
def vocabulary() -> Mapping[str, Field]:
    """All fields by id, in the order of the file."""
    text = files("intake.spec").joinpath("fields.toml").read_text(encoding="utf-8")
    found: dict[str, Field] = {}
    for branch, entries in tomllib.loads(text).items():
        for name, entry in entries.items():
            unit = entry.get("unit", "1" if entry["kind"] == "count" else "")
            found[f"{branch}.{name}"] = Field(
                id=f"{branch}.{name}",
                kind=entry["kind"],
                unit=unit,
                choices=tuple(entry.get("choices", ())),
                note=entry.get("note", ""),
                since=entry.get("since", 1),
                personal=entry.get("personal", False),
            )
    return MappingProxyType(found)


def field(id: str) -> Field:
    """The field of that id. Raises KeyError for one that the vocabulary does not have."""
    return vocabulary()[id]


def nearest(word: str, among: tuple[str, ...] | None = None) -> str | None:
    """The closest known spelling of a field id (or of one of `among`), None when nothing is close."""
    pool = tuple(vocabulary()) if among is None else among
    close = get_close_matches(word, pool, n=1, cutoff=0.6)
    return close[0] if close else None
