"""One TOML file of a questions folder with its lines at hand, so that a problem can say where it stands."""

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from intake.interview.complaints import complain
from intake.spec.problem import Problem

_HEADER = re.compile(r"^\s*\[\[\s*question\s*\]\]")
_PLACE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class TomlFile:
    """What a file holds. `name` is how problems call it; `blocks` are the first lines of its questions, from 1."""

    name: str
    data: dict[str, Any]
    lines: tuple[str, ...]
    blocks: tuple[int, ...]

    def line_of(self, needle: str) -> int | None:
        """The only line with `needle`, None when there is none or more than one: a wrong line is worse than none."""
        return self._only(needle, 1, len(self.lines))

    def question_line(self, n: int) -> int | None:
        """The line that gives question `n` (from 0) its id, or the line that opens it."""
        if n >= len(self.blocks):
            return None
        return self._only(re.compile(r"^\s*id\s*="), *self._block(n)) or self.blocks[n]

    def line_in_question(self, n: int, needle: str) -> int | None:
        """The only line of question `n` with `needle`; the question's own line when that is not unique."""
        if n >= len(self.blocks):
            return None
        return self._only(needle, *self._block(n)) or self.question_line(n)

    def _block(self, n: int) -> tuple[int, int]:
        following = (line for line, text in enumerate(self.lines, 1) if line > self.blocks[n] and _opens(text))
        return self.blocks[n], next(following, len(self.lines) + 1) - 1

    def _only(self, needle: str | re.Pattern[str], first: int, last: int) -> int | None:
        sought = re.compile(re.escape(needle)) if isinstance(needle, str) else needle
        hits = [n for n in range(first, last + 1) if sought.search(self.lines[n - 1])]
        return hits[0] if len(hits) == 1 else None


def _opens(line: str) -> bool:
    """True for a table header that ends a question: any but the question's own wordings."""
    return bool(re.match(r"^\s*\[", line)) and "[[question." not in line.replace(" ", "")


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
    blocks = tuple(n for n, line in enumerate(lines, 1) if _HEADER.match(line))
    found = data.get("question")
    # A header inside a longer text would throw the count off: then no question has a line.
    sure = isinstance(found, list) and len(found) == len(blocks)
    return TomlFile(name=path.name, data=data, lines=lines, blocks=blocks if sure else ())


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
