"""What one person has open in a browser: remembered between two pages, so that a reload finds it again.

A small file next to the casebook holds ids of cases and nothing else. It is a convenience: whatever is wrong with it,
the desk opens as if there were none, and no case is touched.
"""

import contextlib
import json
import os
import re
import secrets
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from intake.casebook import book_path
from intake.casebook.names import is_fit

_ID = re.compile(r"[0-9a-f]{32}")
_LONGEST_FILE = 100_000
_MOST_OPEN = 200
KEPT_DAYS = 30


@dataclass(frozen=True, slots=True)
class Remembered:
    """Which cases were open, and which one was in front. Both empty where nothing is known."""

    open_cases: tuple[str, ...] = ()
    front: str = ""


def new_sitting_id() -> str:
    """An id that nobody can guess: 32 hexadecimal digits."""
    return secrets.token_hex(16)


def is_sitting_id(text: str) -> bool:
    """True for 32 hexadecimal digits in small letters, and nothing else: no path, no shell sign, no line end."""
    return bool(_ID.fullmatch(text))


class Sitting:
    """The memory of one sitting. Raises ValueError for an id that is none."""

    def __init__(self, id: str) -> None:
        if not is_sitting_id(id):
            raise ValueError("a sitting is named by 32 hexadecimal digits")
        self._file = _folder() / f"{id}.json"

    def remember(self, open_cases: Sequence[str], front: str) -> None:
        """Keep which cases are open and which is in front. A disk that refuses costs only the convenience."""
        words = json.dumps({"open": list(open_cases)[:_MOST_OPEN], "front": front})
        with contextlib.suppress(OSError):
            self._file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            if not self._file.exists():
                _forget_old(self._file.parent)
            _replace(self._file, words)

    def recall(self) -> Remembered:
        """What was kept last. A missing or damaged file, and names that no case may have, count as nothing."""
        try:
            with self._file.open("rb") as file:
                kept: Any = json.loads(file.read(_LONGEST_FILE))
        except (OSError, ValueError, RecursionError):
            return Remembered()
        if not isinstance(kept, dict) or not isinstance(kept.get("open"), list):
            return Remembered()
        names = [name for name in kept["open"] if isinstance(name, str) and is_fit(name)]
        open_cases = tuple(dict.fromkeys(names))[:_MOST_OPEN]
        front = kept.get("front")
        return Remembered(open_cases, front if front in open_cases else (open_cases[0] if open_cases else ""))


def _folder() -> Path:
    return book_path().parent / "sittings"


def _replace(file: Path, words: str) -> None:
    """Write beside it and rename, so that the file is the old one or the new one, never half of one."""
    beside = file.with_name(f".{file.stem}.{os.getpid()}")
    try:
        with open(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "w", encoding="utf-8") as out:
            out.write(words)
        os.replace(beside, file)
    finally:
        beside.unlink(missing_ok=True)


def _forget_old(folder: Path) -> None:
    """Remove what nobody sat at for a month. Files of other names are not ours."""
    oldest = time.time() - KEPT_DAYS * 86_400
    for file in folder.glob("*.json"):
        with contextlib.suppress(OSError):
            if is_sitting_id(file.stem) and file.stat().st_mtime < oldest:
                file.unlink()
