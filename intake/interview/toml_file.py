"""One TOML file of a questions folder with its lines at hand, so that a problem can say where it stands."""

import re
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from intake.interview.complaints import complain
from intake.spec.problem import Problem

_ID = re.compile(r"^\s*id\s*=")
_PLACE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class TomlFile:
    """What a file holds. `name` is how problems call it.

    `blocks`: by key, the first lines (from 1) of the entries under [[key]], empty where they cannot be told for sure.
    """

    name: str
    data: dict[str, Any]
    lines: tuple[str, ...]
    blocks: Mapping[str, tuple[int, ...]]

    def line_of(self, needle: str) -> int | None:
        """The only line with `needle`, None when there is none or more than one: a wrong line is worse than none."""
        return self._only(needle, 1, len(self.lines))

    def entry_line(self, key: str, n: int) -> int | None:
        """The line that gives entry `n` (from 0) of [[key]] its id, or the line that opens it."""
        block = self._block(key, n)
        return None if block is None else self._only(_ID, *block) or block[0]

    def line_in_entry(self, key: str, n: int, needle: str) -> int | None:
        """The only line of the entry with `needle`; the entry's own line when that is not unique."""
        block = self._block(key, n)
        return None if block is None else self._only(needle, *block) or self.entry_line(key, n)

    def line_of_key(self, key: str, n: int, name: str) -> int | None:
        """The only line of the entry that sets `name`; the entry's own line when that is not unique."""
        block = self._block(key, n)
        return (
            None
            if block is None
            else self._only(re.compile(rf"^\s*{re.escape(name)}\s*="), *block) or self.entry_line(key, n)
        )

    def line_in_part(self, key: str, n: int, part: str, m: int, needle: str) -> int | None:
        """The only line with `needle` under header `m` (from 0) of [[key.part]] in entry `n`, or that header's line.

        Where the parts have no headers of their own: as `line_in_entry`.
        """
        block = self._block(key, n)
        if block is None:
            return None
        header = re.compile(rf"^\s*\[\[\s*{re.escape(key)}\s*\.\s*{re.escape(part)}\s*\]\]")
        starts = [line for line in range(block[0], block[1] + 1) if header.match(self.lines[line - 1])]
        if m >= len(starts):
            return self.line_in_entry(key, n, needle)
        last = starts[m + 1] - 1 if m + 1 < len(starts) else block[1]
        return self._only(needle, starts[m], last) or starts[m]

    def line_of_table_key(self, table: str, name: str) -> int | None:
        """The only line that sets `name` in the table [table]."""
        opening = self._only(re.compile(rf"^\s*\[\s*{re.escape(table)}\s*\]"), 1, len(self.lines))
        if opening is None:
            return None
        following = (n for n in range(opening + 1, len(self.lines) + 1) if self.lines[n - 1].lstrip().startswith("["))
        last = next(following, len(self.lines) + 1) - 1
        return self._only(re.compile(rf'^\s*"?{re.escape(name)}"?\s*='), opening, last)

    def _block(self, key: str, n: int) -> tuple[int, int] | None:
        starts = self.blocks.get(key, ())
        if n >= len(starts):
            return None
        own = (f"[[{key}.", f"[{key}.")
        for line in range(starts[n] + 1, len(self.lines) + 1):
            text = self.lines[line - 1].replace(" ", "")
            if text.startswith("[") and not text.startswith(own):
                return starts[n], line - 1
        return starts[n], len(self.lines)

    def _only(self, sought: str | re.Pattern[str], first: int, last: int) -> int | None:
        def found(line: str) -> bool:
            return sought in line if isinstance(sought, str) else bool(sought.search(line))

        hits = [n for n, line in enumerate(self.lines[first - 1 : last], first) if found(line)]
        return hits[0] if len(hits) == 1 else None


def read_toml(path: Path) -> TomlFile | Problem:
    """The file, or what is wrong with it as a whole."""
    try:
        text = path.read_bytes().decode("utf-8-sig")
        data = tomllib.loads(text)
    except OSError as error:
        return complain("unreadable", path.name, why=error.strerror or "no reason given")
    except UnicodeDecodeError as error:
        return complain("not_utf8", path.name, at=error.start)
    except RecursionError:
        return complain("bad_toml", path.name, why="lists or tables stand too deep in each other", place="that list")
    except tomllib.TOMLDecodeError as error:
        return _bad_toml(path.name, str(error), len(path.read_bytes().splitlines()))
    lines = tuple(text.split("\n"))  # as TOML counts them; splitlines knows more kinds of line end
    return TomlFile(name=path.name, data=data, lines=lines, blocks=_blocks(data, lines))


def _blocks(data: Mapping[str, Any], lines: Sequence[str]) -> dict[str, tuple[int, ...]]:
    found: dict[str, tuple[int, ...]] = {}
    for key, entries in data.items():
        header = re.compile(rf"^\s*\[\[\s*{re.escape(key)}\s*\]\]")
        starts = tuple(n for n, line in enumerate(lines, 1) if header.match(line))
        # A header inside a longer text would throw the count off: then no entry has a line.
        if isinstance(entries, list) and len(entries) == len(starts):
            found[key] = starts
    return found


def _bad_toml(name: str, message: str, length: int) -> Problem:
    """What the TOML reader said, with the line taken out of its sentence."""
    place = _PLACE.search(message)
    why = _PLACE.sub("", message)
    why = why[:1].lower() + why[1:]
    if place is None:
        return complain("bad_toml", name, why=why, place="that place")
    if place[1] is None:
        return complain("bad_toml", name, max(length, 1), why=why, place="the end of the file")
    return complain("bad_toml", name, int(place[1]), why=why, place=f"line {place[1]}, column {place[2]}")
