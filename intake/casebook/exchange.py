"""A case as JSON Lines, to send or to put by: a header, then one event a line."""

import json
import re
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, fields
from typing import Any, NoReturn

from intake.casebook.error import BookError
from intake.casebook.rows import event_of_line
from intake.casebook.seam import IndexRow
from intake.spec import Event
from intake.spec.bodies import doubt_from_body, fact_from_body
from intake.spec.clean import one_line
from intake.spec.vocabulary import vocabulary

FORMAT, VERSION = "intake case", 1
_LONGEST = 64_000_000
_WORDY = frozenset({"text", "title", "unread", "said", "why", "ask", "words", "waiting_for"})
_SHORTEST_TO_SEEK = 3  # shorter pieces of a name or number stand in too many other words


@dataclass(frozen=True, slots=True)
class Exported:
    """What an export holds."""

    case_id: str
    events: list[Event]
    index: IndexRow


def written(case_id: str, events: Sequence[Event], index: IndexRow, *, personal: bool) -> str:
    """The case as text. Without `personal` the name, company, address and number heard are blanked everywhere."""
    tame = _blanking([] if personal else _personal_words(events))
    header = {"format": FORMAT, "version": VERSION, "case": case_id, "index": tame(asdict(index))}
    lines = [header, *(tame(event.to_json()) for event in events)]
    # All but plain letters as escapes: nothing in the words steers a terminal that the export is printed to.
    return "".join(json.dumps(line) + "\n" for line in lines)


def read_export(text: str) -> Exported:
    """The case in an export. Raises BookError naming the line that cannot be taken."""
    if len(text) > _LONGEST:
        _refuse(1, "the file is too long for a case")
    # By line feeds alone: other line separators may stand inside a message.
    lines = [(number, line) for number, line in enumerate(text.split("\n"), 1) if line.strip()]
    if not lines:
        _refuse(1, "the file is empty")
    case_id, index = _header(*lines[0])
    events: list[Event] = []
    for number, line in lines[1:]:
        try:
            event = event_of_line(line)
        except ValueError as slip:
            _refuse(number, str(slip))
        if event.seq != len(events) + 1:
            _refuse(number, f"event {len(events) + 1} should stand here, not {event.seq}")
        events.append(event)
    if not events:
        _refuse(lines[0][0], "the case has no events")
    return Exported(case_id, events, index)


def _header(number: int, line: str) -> tuple[str, IndexRow]:
    try:
        header = json.loads(line)
    except (ValueError, RecursionError):
        header = None
    if not isinstance(header, dict) or header.get("format") != FORMAT:
        _refuse(number, f'the first line does not say "format": "{FORMAT}"')
    if header.get("version") != VERSION:
        _refuse(number, "a newer program wrote it; update this one")
    given = header.get("index")
    parts = given if isinstance(given, dict) else {}
    index = IndexRow(**{f.name: one_line(str(parts.get(f.name, "")), 2000) for f in fields(IndexRow)})
    return str(header.get("case", "")), index


def _refuse(number: int, what: str) -> NoReturn:
    raise BookError("bad_file", f"line {number}: {what}", "Give a file that intake cases --export wrote, unchanged.")


def _personal_words(events: Sequence[Event]) -> list[str]:
    """Every personal value that was ever heard in the case, longest first."""
    messages = {e.seq: (str(e.body["text"]), str(e.body.get("who", ""))) for e in events if e.kind == "message"}
    found: set[str] = set()
    for event in events:
        facts = [*event.body.get("facts", ()), *([event.body["fact"]] if "fact" in event.body else ())]
        said = [(body["field"], fact_from_body(body, messages).said) for body in facts]
        for body in event.body.get("doubts", ()):
            said.append((body["field"], doubt_from_body(body, event.body.get("message"), messages).said))
        found |= {words.strip() for name, words in said if vocabulary()[name].personal}
    return sorted(found - {""}, key=len, reverse=True)


def _blanking(words: Sequence[str]) -> Callable[[Any], Any]:
    """Blanks the words wherever people's words stand, with as many blanks, so that places in messages still hold."""
    if not words:
        return lambda part: part
    long = [re.escape(word) for word in words if len(word) >= _SHORTEST_TO_SEEK]
    short = [rf"\b{re.escape(word)}\b" for word in words if len(word) < _SHORTEST_TO_SEEK]
    pattern = re.compile("|".join([*long, *short]), re.IGNORECASE)

    def blank(part: Any, wordy: bool = False) -> Any:
        if isinstance(part, str):
            return pattern.sub(lambda hit: " " * len(hit[0]), part) if wordy else part
        if isinstance(part, dict):
            text = _is_text(part.get("field"))
            return {
                key: blank(v, key in _WORDY or _is_text(key) or (text and key == "value")) for key, v in part.items()
            }
        return [blank(item, wordy) for item in part] if isinstance(part, list | tuple) else part

    return blank


def _is_text(name: Any) -> bool:
    known = vocabulary().get(name) if isinstance(name, str) else None
    return known is not None and known.kind == "text"
