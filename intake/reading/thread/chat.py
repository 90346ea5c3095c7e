"""A chat log cut into what each speaker said."""

import re
from collections.abc import Container, Iterable
from dataclasses import dataclass, field, replace
from itertools import pairwise
from pathlib import Path

from intake.reading.thread.heads import Head, heads_in, is_time_line
from intake.reading.thread.labels import speaking_heads
from intake.reading.thread.lines import Line, lines_of
from intake.reading.thread.notices import SYSTEM_NAMES, is_date_line, is_framed, is_notice
from intake.reading.thread.roles import Role, bare_name, key_of, role_of
from intake.reading.thread.stamps import TIME, Stamp, settled, stamp_of
from intake.reading.thread.turn import Part, Span


@dataclass(slots=True)
class Message:
    """One message: who by label, the moment, and the places of its words."""

    name: str | None
    key: str
    role: Role | None
    stamp: Stamp
    parts: list[Part] = field(default_factory=list)
    domain: str = ""
    """The part behind the @ of a mail address, "" in chats."""

    @property
    def text(self) -> str:
        """All its words."""
        return "\n".join(part.text for part in self.parts)


_MEETS = re.compile(
    r"(?:(?P<role>agent|operator|representative|rep|advisor|visitor|customer|guest)\s+)?"
    r"(?P<name>[^\W\d_a-z][\w.'’-]*(?: [^\W\d_a-z][\w.'’-]*){0,2})(?: \((?P<in>[^()\n]{1,30})\))? (?:has |have )?"
    r"(?:joined|entered|left|accepted|picked up|took over|ended)\b",
    re.IGNORECASE,
)
_CHATTING_WITH = re.compile(
    r"(?:chatting|speaking|talking|connected) (?:to|with) (?P<name>[^\W\d_][\w.'’-]*(?: [^\W\d_a-z][\w.'’-]*){0,2})"
)
_TAIL = re.compile(
    rf"(?:\s*[\[(]\s*(?P<in>{TIME})\s*[\])]|(?:\s{{2,}}|\t)(?P<far>{TIME})"
    rf"|(?<!\bat)(?<!\bto)(?<!\bby)(?<!until)(?<!till)(?<!from)(?<!before)(?<!after)(?<!\band)(?<!about)\s(?P<near>{TIME}))\s*$",
    re.I,
)
_INLINE = re.compile(
    r"(?:(?<=\s)|^)(?P<name>(?:website )?(?:visitor|customer|client|guest|prospect"
    r"|agent|support|sales|staff|operator|rep|showroom"
    r"|advisor)(?: \d+)?):(?=\s)",
    re.IGNORECASE,
)
_EDITED = re.compile(r"\s*[(\[]edited[)\]]\s*$", re.IGNORECASE)


def chat_messages(text: str, folder: Path) -> list[Message] | None:
    """The messages of a chat log in their order; None where the text is none."""
    lines = lines_of(text)
    roles = told_roles(lines)
    chosen = speaking_heads(lines, heads_in(lines), folder, frozenset(roles))
    if len(chosen) < 2:
        broken = _broken_at_labels(text, lines)
        lines = broken or lines
        chosen = speaking_heads(lines, heads_in(lines), folder, frozenset(roles)) if broken else chosen
    if not chosen:
        return None
    messages = _messages(text, lines, chosen, roles)
    _times_at_ends(text, messages)
    stamps = settled([message.stamp for message in messages])
    for message, stamp in zip(messages, stamps, strict=True):
        message.stamp = stamp
    _carry_days(messages)
    return [message for message in messages if message.parts and message.key not in SYSTEM_NAMES] or None


def _broken_at_labels(text: str, lines: list[Line]) -> list[Line] | None:
    """A log whose line ends got lost: a line begins at every "Visitor:" and "Agent:"; None where there are not both."""
    found = list(_INLINE.finditer(text))
    if len(found) < 2 or len({role_of(match["name"]) for match in found}) < 2:
        return None
    cuts = {match.start("name") for match in found}
    broken: list[Line] = []
    for line in lines:
        inside = sorted(cut for cut in cuts if line.start < cut < line.end) if len(line.text) < 200_000 else []
        places = [line.start, *inside, line.end]
        for start, end in pairwise(places):
            last = end == line.end
            broken.append(Line(start, end, line.after if last else end, 0, text[start:end]))
    return broken


def told_roles(lines: Iterable[Line]) -> dict[str, Role | None]:
    """Names that notices tell of, and the side where they tell it: "You are now chatting with Bob"."""
    found: dict[str, Role | None] = {}
    for line in lines:
        if not is_notice(line.text):
            continue
        with_whom = _CHATTING_WITH.search(line.text)
        if with_whom is not None:
            found[key_of(with_whom["name"])] = "staff"
        for meets in _MEETS.finditer(line.text):
            role = role_of(meets["role"] or "") or role_of(meets["in"] or "")
            found[key_of(meets["name"])] = role or found.get(key_of(meets["name"]))
    return {key: role for key, role in found.items() if key}


def _messages(
    text: str, lines: list[Line], chosen: dict[int, tuple[Head, Role | None]], roles: dict[str, Role | None]
) -> list[Message]:
    messages: list[Message] = []
    pieces: list[Span] = []
    day = _opening_day(lines, min(chosen))
    skip, above = 0, Stamp()
    times_above = any(is_time_line(line) for line in lines[max(min(chosen) - 3, 0) : min(chosen)])
    preamble = _preamble(text, lines[: min(chosen)])
    if preamble is not None:
        messages.append(preamble)
    for n, line in enumerate(lines):
        found = chosen.get(n)
        if found is not None:
            head, role = found
            _close(text, messages, pieces)
            key = key_of(head.name)
            stamp, above = (stamp_of(head.stamp) if head.stamp else above).on(day), Stamp()
            name = bare_name(head.name)
            messages.append(Message(name, key, role or roles.get(key), stamp))
            skip = n + head.lines
            pieces = [(head.begin, line.after)] if head.lines == 1 else []
        elif times_above and is_time_line(line) and _heads_next(lines, n, chosen):
            above = stamp_of(line.text)
        elif n >= skip and messages and n > min(chosen):
            if is_date_line(line.text) and _parts_days(lines, n, chosen):
                day = stamp_of(line.text)
                day = Stamp(day=day.day, numeric=day.numeric, dotted=day.dotted)  # the moment of that line is the day
            elif not is_notice(line.text):
                pieces.append((line.start, line.after))
    _close(text, messages, pieces)
    return messages


def _close(text: str, messages: list[Message], pieces: list[Span]) -> None:
    """Give the last message its words."""
    if not messages or messages[-1].parts:
        return
    if pieces:
        start, end = pieces[-1]
        mark = _EDITED.search(text[start:end])
        pieces[-1] = (start, start + mark.start()) if mark is not None else (start, end)
    part = Part.of(text, pieces)
    messages[-1].parts = [part] if part.pieces else []


_NEED = re.compile(
    r"\b(?:we|i|our)(?:'re|'d|'m)?\b.{0,40}\b(?:need|want|look|looking|raise|lift|move|moving|weigh|have|make)", re.I
)


def _preamble(text: str, lines: list[Line]) -> Message | None:
    """What stands above the first speaker, where somebody says a need there; titles and the like are passed over."""
    said = [line for line in lines if not line.blank and not is_notice(line.text) and not is_date_line(line.text)]
    part = Part.of(text, [(line.start, line.after) for line in said])
    if not said or not _NEED.search(part.text) or len(part.text.split()) < 6:
        return None
    return Message(None, "", "visitor", Stamp(), [part])


def _opening_day(lines: list[Line], first: int) -> Stamp:
    """The date above the first message: of a separator, or of the title of the log."""
    for line in reversed(lines[:first]):
        stamp = stamp_of(line.text) if len(line.text) < 120 else Stamp()
        if stamp.day or stamp.numeric:
            return Stamp(day=stamp.day, numeric=stamp.numeric, dotted=stamp.dotted)
    return Stamp()


def _parts_days(lines: list[Line], n: int, chosen: Container[int]) -> bool:
    """True where a date line stands between messages, and is not itself an answer."""
    if is_framed(lines[n].text):
        return True
    above = n == 0 or lines[n - 1].blank or is_notice(lines[n - 1].text)
    below = _below(lines, n)
    return above and below is not None and (below in chosen or is_notice(lines[below].text))


def _heads_next(lines: list[Line], n: int, chosen: Container[int]) -> bool:
    below = _below(lines, n)
    return below is not None and below in chosen


def _below(lines: list[Line], n: int) -> int | None:
    """The number of the next line with words on it, where it is near."""
    return next((m for m in range(n + 1, min(n + 6, len(lines))) if not lines[m].blank), None)


def _times_at_ends(text: str, messages: list[Message]) -> None:
    """Times that stand behind the words, where nearly every message has one there."""
    bare = [message for message in messages if message.parts and not message.stamp.time]
    found = [(message, tail) for message in bare if (tail := _TAIL.search(message.parts[-1].text)) is not None]
    sure = all(tail["near"] is None for _, tail in found)
    if len(bare) != len(messages) or len(found) < 2 or len(found) < (0.6 if sure else 1.0) * len(bare):
        return
    told = [stamp_of(tail.group()).time for _, tail in found]
    if not sure and (told != sorted(told) or len(set(told)) < 2):
        return  # hours that people speak of
    for message, tail in found:
        part = message.parts[-1]
        cut = part.place(0, tail.start())[1] if tail.start() else part.span[0]
        pieces = [(start, min(end, cut)) for start, end in part.pieces if start < cut]
        kept = Part.of(text, pieces)
        message.parts = [kept] if kept.pieces else []
        message.stamp = replace(message.stamp, time=stamp_of(tail.group()).time)


def _carry_days(messages: list[Message]) -> None:
    """A log that gives the day once gives it for what follows."""
    day = Stamp()
    for message in messages:
        day = Stamp(day=message.stamp.day) if message.stamp.day else day
        message.stamp = message.stamp.on(day)
