"""Sentences that people see, from `sentences/*.toml` of the questions folder, filled with figures."""

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from intake.spec.folder import questions_folder, shipped_folder

_BLANK = re.compile(r"\{([a-z_]+)\}")


@cache
def _tables(folder: Path) -> Mapping[str, str]:
    found: dict[str, str] = {}
    for path in sorted((folder / "sentences").glob("*.toml")):
        for name, entry in tomllib.loads(path.read_text(encoding="utf-8")).items():
            rows = entry.items() if isinstance(entry, dict) else [("", entry)]
            found.update({f"{name}.{key}".rstrip("."): str(said) for key, said in rows})
    return MappingProxyType(found)


class Sentences:
    """The templates of a folder. A sentence that a company's folder leaves out is said as the shipped one."""

    def __init__(self, folder: Path) -> None:
        self._said = {**_tables(shipped_folder()), **_tables(folder)}

    def find(self, *ids: str) -> str | None:
        """The first of these templates that there is, unfilled."""
        return next((self._said[id] for id in ids if id in self._said), None)

    def say(self, id: str, /, **blanks: str) -> str:
        """A sentence with its blanks filled. Values go in as they are: nothing in them is read as a template."""
        return fill(self._said[id], **blanks)

    def tables(self) -> set[str]:
        """The names of all tables."""
        return {id.split(".", 1)[0] for id in self._said}

    def group(self, prefix: str) -> dict[str, str]:
        """All templates of one table, by the rest of their ids."""
        start = f"{prefix}."
        return {id.removeprefix(start): said for id, said in self._said.items() if id.startswith(start)}


def in_force() -> Sentences:
    """The sentences of the questions folder in force."""
    return Sentences(questions_folder())


def fill(template: str, **blanks: str) -> str:
    """The template with each {name} replaced; a blank without a value stays empty.

    >>> fill("{family} is out: {reason}", family="{reason}", reason="no room")
    '{reason} is out: no room'
    """
    return _BLANK.sub(lambda found: blanks.get(found[1], ""), template).strip()


def joined(words: list[str], last: str = "and") -> str:
    """ "a, b and c".

    >>> joined(["a", "b", "c"])
    'a, b and c'
    """
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}" if words else ""


def by(sides: list[str]) -> str:
    """Sides of a product with their unit once: "400 x 300 x 250 mm".

    >>> by(["16 in", "9 1/2 in"]), by(["1.2 m", "800 mm"])
    ('16 x 9 1/2 in', '1.2 m x 800 mm')
    """
    unit = sides[-1].rsplit(" ", 1)[-1] if sides else ""
    if all(
        side.endswith(f" {unit}") and not any(mark in side[: -len(unit)] for mark in ("ft", "to")) for side in sides
    ):
        sides = [*(side.removesuffix(f" {unit}") for side in sides[:-1]), *sides[-1:]]
    return " x ".join(sides)


def sentence(text: str) -> str:
    """With a capital and a full stop."""
    tidy = text.strip()
    if not tidy:
        return ""
    return tidy[0].upper() + tidy[1:] + ("" if tidy[-1] in ".?!" else ".")
