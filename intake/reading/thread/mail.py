"""A mail thread cut into its mails: quotes unfolded, repeated quotes counted once, oldest first."""

import re
from dataclasses import dataclass, field
from datetime import datetime
from itertools import pairwise

from intake.reading.thread.asks import asks_something
from intake.reading.thread.chat import Message
from intake.reading.thread.lines import Line, lines_of
from intake.reading.thread.mail_marks import Mark, marks_in, person
from intake.reading.thread.roles import key_of, role_of
from intake.reading.thread.stamps import NO_STAMP, Stamp, settled
from intake.reading.thread.turn import Part, Span


@dataclass(eq=False, slots=True)
class Mail:
    """One mail while the thread is taken apart. `newer`: the mail that quotes it."""

    mark: Mark | None
    newer: "Mail | None" = None
    depth: int = 0
    runs: list[tuple[list[Span], list[Span]]] = field(default_factory=list)
    """Quoted words right above, own words: one pair for each stretch of its own."""
    older: list["Mail"] = field(default_factory=list)
    parts: list[Part] = field(default_factory=list)
    stamp: Stamp = NO_STAMP
    name: str | None = None
    number: int = 0
    chain: int = 0
    """The number of the mail that it is quoted in, on and on: within one chain nothing stands twice."""
    copied_below: bool = False
    """A mail further down the text quotes this one, so that it is the older of the two."""

    @property
    def words(self) -> str:
        """All its words in one line, for comparing."""
        return " ".join(" ".join(part.text for part in self.parts).casefold().split())


def mail_messages(text: str) -> list[Message] | None:
    """The mails of a thread, oldest first; None where the text is no thread."""
    lines = lines_of(text, quoted=True)
    marks = marks_in(lines)
    if not marks and not _answers_quotes(lines):
        return None
    mails = _taken_apart(lines, marks)
    for mail in mails:
        mail.parts = _parts(text, mail)
    mails = _once([mail for mail in mails if mail.parts])
    if not mails:
        return None
    for mail, stamp in zip(mails, settled([mail.mark.stamp if mail.mark else Stamp() for mail in mails]), strict=True):
        mail.stamp = stamp
    _name_by_signature(mails)
    return [_message(mail) for mail in _in_order(mails)]


def _answers_quotes(lines: list[Line]) -> bool:
    """True for own words between quoted questions, where nothing says who asked."""
    quoted = [line for line in lines if line.depth and not line.blank]
    own = [line for line in lines if not line.depth and not line.blank]
    return bool(quoted and own) and asks_something("\n".join(line.text for line in quoted[:200]))


def _taken_apart(lines: list[Line], marks: dict[int, Mark]) -> list[Mail]:
    mails = [Mail(None)]
    owners: dict[int, Mail] = {0: mails[0]}
    last: Mail = mails[0]
    run: list[Span] = []
    n = 0
    while n < len(lines):
        line, mark = lines[n], marks.get(n)
        if mark is not None:
            depth = line.depth
            if mark.kind == "wrote":
                below = next((other for other in lines[mark.after : mark.after + 6] if not other.blank), None)
                depth = max(depth, below.depth if below is not None else depth)
            holder = _holder(owners, min(depth, line.depth), mails)
            chain = len(mails) if mark.kind == "block" else holder.chain
            mail = Mail(mark, holder, depth, number=len(mails), chain=chain)
            holder.older.append(mail)
            mails.append(mail)
            owners = {at: owner for at, owner in owners.items() if at < depth} | {depth: mail}
            run = []
            n = mark.after
            continue
        owner = _holder(owners, line.depth, mails)
        if not line.blank and owner is not last:
            above = run if last.depth > owner.depth else []
            if above or not owner.runs:
                owner.runs.append((above, []))
            run, last = [], owner
        elif not owner.runs:
            owner.runs.append(([], []))
        owner.runs[-1][1].append((line.start, line.after))
        run.append((line.start, line.after))
        n += 1
    return mails


def _holder(owners: dict[int, Mail], depth: int, mails: list[Mail]) -> Mail:
    """Whose words stand at this depth; a quote that nobody announced belongs to somebody unknown."""
    if depth not in owners:
        above = max(at for at in owners if at < depth) if any(at < depth for at in owners) else min(owners)
        mail = Mail(None, owners[above], depth, number=len(mails), chain=owners[above].chain)
        owners[above].older.append(mail)
        mails.append(mail)
        owners[depth] = mail
    return owners[depth]


_DISCLAIMER = re.compile(
    r"^(?:[\s*_]*(?:disclaimer|confidentiality(?: notice)?|legal notice|privileged)\b[\s*_:.-]*"
    r"|.{0,60}\bthis (?:e-?mail|message|communication|transmission)\b.{0,200}\b(?:confidential|privileged|intended"
    r"|addressee|recipient)"
    r"|.{0,80}\bif you (?:are|have) (?:not the intended|received this)"
    r"|.{0,40}\b(?:please )?(?:consider|think of) the environment before printing"
    r"|.{0,20}\bdiese e-?mail (?:enthält|kann) .{0,80}vertraulich"
    r"|\s*(?:caution|warning|external)\b.{0,20}\b(?:external|outside)\b.{0,40}(?:e-?mail|sender|organi[sz]ation))",
    re.IGNORECASE | re.DOTALL,
)


def _parts(text: str, mail: Mail) -> list[Part]:
    """The words of a mail without disclaimers. Signatures stay: reading passes over them and knows the contact."""
    parts: list[Part] = []
    for above, own in mail.runs:
        kept: list[Span] = []
        paragraph: list[Span] = []
        for start, after in [*own, (0, 0)]:
            if text[start:after].strip():
                paragraph.append((start, after))
                continue
            words = "".join(text[a:b] for a, b in paragraph)[:1500]
            if not _DISCLAIMER.match(words):
                kept += paragraph
                kept += [(start, after)] if after else []
            paragraph = []
        part = Part.of(text, kept, Part.of(text, above).text if any(text[a:b].strip() for a, b in above) else "")
        if part.pieces:
            parts.append(part)
    return parts


def _once(mails: list[Mail]) -> list[Mail]:
    """The mails, each once: a quoted copy of one that stands elsewhere, whole or in part, goes."""
    kept: list[Mail] = []
    by_author: dict[str, list[Mail]] = {}
    for mail in sorted(mails, key=lambda one: (one.depth, one.mark is not None and one.mark.kind == "divided")):
        key = key_of(_told_name(mail) or "")
        rivals = by_author.get(key, []) + (by_author.get("", []) if key else kept[-200:])
        original = next((one for one in rivals[-200:] if _is_copy(mail, one)), None)
        if original is None:
            kept.append(mail)
            by_author.setdefault(key, []).append(mail)
            continue
        if original.mark is None or not (original.mark.stamp.iso or original.mark.stamp.numeric):
            original.mark = mail.mark or original.mark
        if len(mail.words) > len(original.words) and len(mail.parts) == 1 == len(original.parts):
            original.parts = mail.parts
        quoted_in = mail.newer
        if quoted_in is not None and quoted_in.number > original.number and original.depth == 0:
            original.copied_below = True
    gone = {id(mail) for mail in mails} - {id(mail) for mail in kept}
    return [mail for mail in mails if id(mail) not in gone]


def _told_name(mail: Mail) -> str | None:
    return mail.mark.name if mail.mark is not None else None


def _is_copy(mail: Mail, other: Mail) -> bool:
    if mail.newer is None or mail is other or other.newer is mail:
        return False
    one, two = mail.mark.stamp if mail.mark else Stamp(), other.mark.stamp if other.mark else Stamp()
    same_moment = bool(one.time) and one.time[:5] == two.time[:5]
    if (one.time and two.time and not same_moment) or (mail.chain == other.chain and not same_moment):
        return False
    mine, theirs = mail.words, other.words
    if len(mine) > len(theirs):
        return bool(theirs) and len(theirs) >= 12 and mine.startswith(theirs) and len(mine) < 1.5 * len(theirs)
    if mine == theirs:
        return True
    pieces = [" ".join(part.text.casefold().split()) for part in mail.parts]
    return all(len(piece) >= 12 and piece in theirs for piece in pieces)


_GREETING = re.compile(r"^\W*(?:hi|hello|hey|dear|hallo|bonjour|good (?:morning|afternoon))\b[^\n]*", re.IGNORECASE)


def _name_by_signature(mails: list[Mail]) -> None:
    """A mail that nobody's header stands above is by whoever of the thread signs it."""
    names = [name for mail in mails if (name := _told_name(mail))]
    told = [mail.mark.to for mail in mails if mail.mark is not None and len(mail.mark.to) < 300]
    names += [name for to in told for one in to.split(";") if (name := person(one)[0]) and "@" not in name]
    for mail in mails:
        mail.name = _told_name(mail)
        if mail.name is not None:
            continue
        ending = [line.strip(" ,.-–—") for line in mail.parts[-1].text.splitlines() if line.strip()][-5:]
        for name in dict.fromkeys(names):
            first = name.split()[0] if "@" not in name else ""
            if any(line == name or (first and line == first) for line in ending if not _GREETING.match(line)):
                mail.name = name


def _in_order(mails: list[Mail]) -> list[Mail]:
    """Oldest first: by the times where the mails tell them, else by who quotes whom."""
    order = _by_nesting(mails)
    places = [n for n, mail in enumerate(order) if _moment(mail) is not None]
    dated = sorted((order[n] for n in places), key=lambda mail: _moment(mail) or datetime.min)
    for n, mail in zip(places, dated, strict=True):
        order[n] = mail
    return order


def _by_nesting(mails: list[Mail]) -> list[Mail]:
    """What a mail quotes stands below it or inside it; only whole mails one after the other may go downwards."""
    subjects = [mail.mark.subject.casefold() for mail in mails if mail.mark is not None and mail.mark.kind == "block"]
    replies = [subject.startswith(("re:", "aw:", "sv:", "antw:")) for subject in subjects]
    downwards = any(not first and second for first, second in pairwise(replies))
    if not downwards and not any(mail.copied_below for mail in mails):
        return mails[::-1]
    by_top: dict[int, list[Mail]] = {}
    for mail in mails[::-1]:
        by_top.setdefault(_top_of(mail).number, []).append(mail)
    return [mail for number in sorted(by_top) for mail in by_top[number]]


def _top_of(mail: Mail) -> Mail:
    """The mail that is quoted nowhere further up, in which this one stands."""
    while mail.depth and mail.newer is not None:
        mail = mail.newer
    return mail


def _moment(mail: Mail) -> datetime | None:
    stamp = mail.stamp
    if not (stamp.day and stamp.time):
        return None
    return datetime.fromisoformat(f"{stamp.day}T{stamp.time}")


def _message(mail: Mail) -> Message:
    name = mail.name
    role = role_of(name) if name else None
    if name and "@" in name and role is None:
        role = role_of(name.split("@")[0])
    domain = mail.mark.domain if mail.mark is not None else ""
    return Message(name, key_of(name or ""), role, mail.stamp, mail.parts, domain)
