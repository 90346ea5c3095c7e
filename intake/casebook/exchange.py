"""A case as JSON Lines, to send or to put by: a header, one event a line, and files' contents where asked for."""

import base64
import binascii
import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, fields
from typing import Any, NoReturn

from intake.casebook.error import BookError
from intake.casebook.files import file_mark, refuse_too_large
from intake.casebook.personal import blanked_body, pattern_of
from intake.casebook.rows import event_of_line
from intake.casebook.seam import IndexRow
from intake.spec import Event
from intake.spec.clean import one_line

FORMAT, VERSION, WITH_FILES = "intake case", 1, 2
"""A case without contents of files is written as before, so that earlier programs read it."""

_LONGEST = 400_000_000
_MOST_OPEN = 1_000_000


@dataclass(frozen=True, slots=True)
class Exported:
    """What an export holds. `files`: contents by SHA-256, where they came along."""

    case_id: str
    events: list[Event]
    index: IndexRow
    files: Mapping[str, bytes] = field(default_factory=dict)

    @property
    def attached(self) -> dict[str, int]:
        """SHA-256 and bytes of every file that the case names."""
        return {str(e.body["file"]): int(e.body["bytes"]) for e in self.events if e.kind == "attached"}


def written(
    case_id: str,
    events: Sequence[Event],
    index: IndexRow,
    *,
    personal: bool,
    files: Mapping[str, bytes] | None = None,
) -> str:
    """The case as text. Without `personal` the name, company, address and number heard are blanked everywhere."""
    rows: list[Any] = [asdict(index), *(event.to_json() for event in events)]
    if not personal:
        pattern = pattern_of(events)
        rows = [blanked_body(row, pattern) for row in rows]
    header = {"format": FORMAT, "version": WITH_FILES if files else VERSION, "case": case_id, "index": rows[0]}
    named = len({str(event.body["file"]) for event in events if event.kind == "attached"})
    if named:
        header["files"] = {"attached": named, "carried": len(files or {})}
    contents = [
        {"file": sha, "content": base64.b64encode(content).decode("ascii")} for sha, content in (files or {}).items()
    ]
    # All but plain letters as escapes: nothing in the words steers a terminal that the export is printed to.
    return "".join(json.dumps(line) + "\n" for line in [header, *rows[1:], *contents])


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
    contents: dict[str, bytes] = {}
    for number, line in lines[1:]:
        if line.startswith('{"file"'):
            sha, content = _content(number, line)
            contents[sha] = content
            continue
        try:
            event = event_of_line(line)
        except ValueError as slip:
            _refuse(number, str(slip))
        if event.seq != len(events) + 1:
            _refuse(number, f"event {len(events) + 1} should stand here, not {event.seq}")
        events.append(event)
    if not events:
        _refuse(lines[0][0], "the case has no events")
    exported = Exported(case_id, events, index, contents)
    if set(contents) - set(exported.attached):
        _refuse(lines[0][0], "it carries a file that the case does not name")
    return exported


def _header(number: int, line: str) -> tuple[str, IndexRow]:
    try:
        header = json.loads(line)
    except (ValueError, RecursionError):
        header = None
    if not isinstance(header, dict) or header.get("format") != FORMAT:
        _refuse(number, f'the first line does not say "format": "{FORMAT}"')
    if header.get("version") not in (VERSION, WITH_FILES):
        _refuse(number, "a newer program wrote it; update this one")
    given = header.get("index")
    parts = given if isinstance(given, dict) else {}
    texts = {f.name: one_line(str(parts.get(f.name, "")), 2000) for f in fields(IndexRow) if f.name != "open"}
    waits = parts.get("open")
    open_ = waits if type(waits) is int and 0 <= waits <= _MOST_OPEN else 0
    return str(header.get("case", "")), IndexRow(**texts, open=open_)


def _content(number: int, line: str) -> tuple[str, bytes]:
    try:
        row = json.loads(line)
        sha, content = str(row["file"]), base64.b64decode(row["content"], validate=True)
    except (ValueError, TypeError, KeyError, RecursionError, binascii.Error):
        _refuse(number, "the content of a file cannot be read")
    if file_mark(content) != sha:
        _refuse(number, "the content of a file is not the one that its mark names")
    refuse_too_large(len(content))
    return sha, content


def _refuse(number: int, what: str) -> NoReturn:
    raise BookError("bad_file", f"line {number}: {what}", "Give a file that intake cases --export wrote, unchanged.")
