"""The questions of a questions folder as staff paste them: as they are, or nearly."""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from rapidfuzz import fuzz, process

_NEARLY = 88.0
_WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)?")


@dataclass(frozen=True, slots=True)
class Own:
    """One way in which the folder asks: all of its words, and its fields in the order asked."""

    words: str
    fields: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OwnQuestions:
    """`whole`: complete texts, the longest first. `sentences`: single questions out of them by their words."""

    whole: tuple[Own, ...]
    sentences: dict[str, tuple[str, ...]]

    def in_text(self, text: str) -> tuple[list[tuple[str, ...]], str]:
        """The fields of each whole text that stands in these words, and what is left of them in plain words."""
        left = f" {plain(text)} "
        found: list[tuple[int, tuple[str, ...]]] = []
        for own in self.whole:
            at = left.find(f" {own.words} ")
            if at >= 0:
                found.append((at, own.fields))
                left = left[:at] + " " * (len(own.words) + 1) + left[at + len(own.words) + 1 :]
        return [fields for _, fields in sorted(found)], left

    def like(self, sentence: str) -> tuple[str, ...]:
        """The fields of the question that a sentence nearly is."""
        words = plain(sentence)
        if len(words) < 10 or len(words) > 400:
            return ()
        close = process.extractOne(words, self.sentences.keys(), scorer=fuzz.ratio, score_cutoff=_NEARLY)
        return self.sentences[str(close[0])] if close is not None else ()


def plain(text: str) -> str:
    """Lower case words and figures with single spaces, no signs."""
    return " ".join(_WORD.findall(text.casefold().replace("’", "'")))


@cache
def own_questions(folder: Path) -> OwnQuestions:
    """Everything that a folder may ask, read once. Raises OSError or tomllib.TOMLDecodeError for a broken folder."""
    rows: list[tuple[str, tuple[str, ...]]] = []
    fields_of: dict[str, tuple[str, ...]] = {}
    for file in sorted((folder / "tree").glob("*.toml")):
        for entry in _toml(file).get("question", ()):
            fields = tuple(str(name) for name in entry.get("fields", ()))
            fields_of[str(entry.get("id"))] = fields
            rows.append((str(entry.get("say", "")), fields))
            for wording in entry.get("wordings", ()):
                rows.append((str(wording.get("say", "")), tuple(wording.get("asks", fields))))
    for row in _toml(folder / "together.toml").get("together", ()):
        asked = [name for id in row.get("questions", ()) for name in fields_of.get(str(id), ())]
        rows.append((str(row.get("say", "")), tuple(dict.fromkeys(asked))))
    whole = {plain(say): fields for say, fields in rows if say}
    sentences: dict[str, tuple[str, ...]] = {}
    for say, fields in rows:
        asking = re.findall(r"[^.?!]+\?", say)
        for sentence in asking:
            if len(asking) == 1:
                sentences.setdefault(plain(sentence), fields)
    return OwnQuestions(
        tuple(Own(words, fields) for words, fields in sorted(whole.items(), key=lambda row: -len(row[0]))), sentences
    )


def _toml(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8")) if path.is_file() else {}
