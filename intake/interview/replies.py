"""Short replies that are no facts: "don't know", "I'll check", "back", "sorry, 45"."""

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from intake.spec.folder import shipped_folder

_ORDINALS = ("first", "second", "third")
_EDGES = " \t\n.,;:!…-–—"


class Replies:
    """What a folder counts as each kind of short reply (`replies.toml`).

    `by_ear`: the shorthand of staff counts too, from the tables [by_ear.KIND]; never in what visitors write themselves.
    """

    def __init__(self, folder: Path, *, by_ear: bool = False) -> None:
        own = folder / "replies.toml"
        self._rows = _rows(own if own.is_file() else shipped_folder() / "replies.toml")
        self._short: Mapping[str, Any] = self._rows.get("by_ear", {}) if by_ear else {}

    def means(self, kind: str, text: str) -> bool:
        """True when the whole message is such a reply, or holds one of its phrases."""
        words = _tidy(text)
        held = _holds(self._list(kind, "part"), words) or _opens(self._list(kind, "start"), words)
        return held or self.is_just(kind, text)

    def is_just(self, kind: str, text: str) -> bool:
        """True when the message is nothing but such a reply."""
        return _tidy(text) in self._list(kind, "whole")

    def corrects(self, text: str) -> bool:
        """True when the message takes something back that was said before."""
        words = _tidy(text)
        return _opens(self._list("correction", "start"), words) or _holds(self._list("correction", "part"), words)

    def thinks_again(self, text: str) -> bool:
        """True when the message may take something back, or may just be a slow answer ("actually, 14 feet")."""
        return _opens(self._list("second_thought", "start"), _tidy(text))

    def ordinal(self, text: str) -> int | None:
        """Which of several options is meant, counted from 0; None when the message is no such reply."""
        return next((n for n, kind in enumerate(_ORDINALS) if self.is_just(kind, text)), None)

    def _list(self, kind: str, how: str) -> tuple[str, ...]:
        found = (*self._rows.get(kind, {}).get(how, ()), *self._short.get(kind, {}).get(how, ()))
        return tuple(str(phrase) for phrase in found)


@cache
def _rows(path: Path) -> Mapping[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def _tidy(text: str) -> str:
    """Lower case, one blank between words, straight apostrophes, no marks at the edges."""
    plain = " ".join(text.replace("’", "'").casefold().split())
    return plain.strip(_EDGES) or plain


def _opens(leads: tuple[str, ...], words: str) -> bool:
    return any(re.match(rf"{re.escape(lead)}(?!\w)", words) for lead in leads)


def _holds(phrases: tuple[str, ...], words: str) -> bool:
    return any(re.search(rf"(?<!\w){re.escape(phrase)}(?!\w)", words) for phrase in phrases)
