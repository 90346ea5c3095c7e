"""The words that tell who the person of a case is, and blanks in their place."""

import json
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from intake.spec import Event, vocabulary
from intake.spec.bodies import Messages, doubt_from_body, fact_from_body
from intake.spec.personal import addresses_and_numbers, name_parts

_WORDY = frozenset({"text", "title", "unread", "said", "why", "ask", "words", "waiting_for", "stood"})
_SHORTEST_TO_SEEK = 3  # shorter pieces of a name or number stand in too many other words
_NOTHING = re.compile("(?!)")


def pattern_of(events: Sequence[Event]) -> re.Pattern[str]:
    """What to blank: every personal value ever heard in the case, parts of the name, and mail addresses and telephone
    numbers wherever they stand. Figures that were read as facts are no telephone numbers."""
    messages = {e.seq: (str(e.body["text"]), str(e.body.get("who", ""))) for e in events if e.kind == "message"}
    words: set[str] = set()
    names: set[str] = set()
    figures: dict[int, list[tuple[int, int]]] = {}
    for field, said, message, span in _said(events, messages):
        if vocabulary()[field].personal:
            words.add(said.strip())
            names |= name_parts(said) if field == "contact.name" else set()
        elif span is not None and message is not None and vocabulary()[field].kind != "text":
            figures.setdefault(message, []).append(span)
    for seq, (text, _) in messages.items():
        words |= set(_addresses(text, figures.get(seq, ())))
    for event in events:
        words |= set(_addresses(str(event.body.get("title", "")), ()))
    return _pattern(words - {""}, names)


def words_found(events: Sequence[Event]) -> list[str]:
    """What would be blanked in the messages and titles of a case, each once."""
    pattern = pattern_of(events)
    texts = [str(event.body.get(key, "")) for event in events for key in ("text", "title")]
    return list(dict.fromkeys(hit[0] for text in texts for hit in pattern.finditer(text)))


def blanked(text: str, pattern: re.Pattern[str]) -> str:
    """The text with a blank for each sign of the words, so that places in it still hold."""
    return pattern.sub(lambda hit: " " * len(hit[0]), text)


def blanked_body(body: Mapping[str, Any], pattern: re.Pattern[str]) -> dict[str, Any]:
    """A body (or any tree of plain values) with the words blanked wherever people's words stand in it."""
    return _blank_tree(body, lambda text: blanked(text, pattern))  # type: ignore[no-any-return]


def blanked_json(body: str, pattern: re.Pattern[str]) -> str:
    """The same for a body as it is kept: of the same length, also where a word is longer in JSON than in itself."""

    def blank(text: str) -> str:
        return pattern.sub(lambda hit: " " * (len(json.dumps(hit[0], ensure_ascii=False)) - 2), text)

    return json.dumps(_blank_tree(json.loads(body), blank), ensure_ascii=False)


def _pattern(words: set[str], names: set[str]) -> re.Pattern[str]:
    long = sorted((word for word in words if len(word) >= _SHORTEST_TO_SEEK), key=len, reverse=True)
    short = sorted(word for word in words if len(word) < _SHORTEST_TO_SEEK)
    anyhow = [*map(re.escape, long), *(_alone(re.escape(word)) for word in short)]
    # A part of a name is sought as names are written: "Case" is a person where "case" is a box.
    written = [way for name in sorted(names, key=len, reverse=True) for way in (name, name.upper())]
    parts = [*([f"(?i:{'|'.join(anyhow)})"] if anyhow else []), *(_alone(re.escape(way)) for way in written)]
    return re.compile("|".join(parts)) if parts else _NOTHING


def _alone(words: str) -> str:
    """The words where no letter or digit touches them: also "plan_of_Ann.pdf"."""
    return rf"(?<![^\W_]){words}(?![^\W_])"


def _said(events: Sequence[Event], messages: Messages) -> Iterator[tuple[str, str, int | None, tuple[int, int] | None]]:
    """Every fact and doubt that was ever heard: field, words, message and place in it."""
    for event in events:
        for body in (*event.body.get("facts", ()), *([event.body["fact"]] if "fact" in event.body else ())):
            fact = fact_from_body(body, messages)
            yield fact.field, fact.said, fact.message, fact.span
        for body in event.body.get("doubts", ()):
            message = event.body.get("message")
            doubt = doubt_from_body(body, message, messages)
            yield doubt.field, doubt.said, message, doubt.span


def _addresses(text: str, figures: Sequence[tuple[int, int]]) -> Iterator[str]:
    """Mail addresses and telephone numbers; the places of figures are neither, nor any part of them."""
    masked = text
    for start, end in figures:
        masked = masked[:start] + "/" * (end - start) + masked[end:]
    yield from (text[start:end] for start, end in addresses_and_numbers(masked))


def _blank_tree(part: Any, blank: Callable[[str], str], wordy: bool = False) -> Any:
    if isinstance(part, str):
        return blank(part) if wordy else part
    if isinstance(part, Mapping):
        text = _is_text(part.get("field"))
        return {
            key: _blank_tree(value, blank, key in _WORDY or _is_text(key) or (text and key == "value"))
            for key, value in part.items()
        }
    return [_blank_tree(item, blank, wordy) for item in part] if isinstance(part, list | tuple) else part


def _is_text(name: Any) -> bool:
    known = vocabulary().get(name) if isinstance(name, str) else None
    return known is not None and known.kind == "text"
