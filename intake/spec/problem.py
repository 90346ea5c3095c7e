"""A problem in a data file: which file, which line, what is wrong, how to mend it."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One wrong entry. `line` is None where it cannot be told for sure: a wrong line is worse than none."""

    file: str
    line: int | None
    what: str
    mend: str

    def __str__(self) -> str:
        place = self.file if self.line is None else f"{self.file}:{self.line}"
        return f"{place}: {self.what}. {self.mend}"


def line_of(path: Path, needle: str) -> int | None:
    """The line (from 1) on which `needle` stands, None unless it stands on exactly one."""
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except OSError:
        return None
    hits = [n for n, line in enumerate(lines, 1) if needle in line]
    return hits[0] if len(hits) == 1 else None
