"""What parts one mail from the next: header blocks, "On ... wrote:" lines, "-----Original Message-----"."""

import re
from dataclasses import dataclass

from intake.reading.thread.lines import Line
from intake.reading.thread.stamps import DATE, NO_STAMP, TIME, Stamp, stamp_of

_FIELDS = {
    "from": "from|von|de|van|från|da",
    "date": "sent|date|gesendet|datum|envoyé|enviado|fecha|verzonden|inviato|data",
    "to": "to|an|à|para|aan|a|till",
    "subject": "subject|betreff|objet|asunto|onderwerp|oggetto",
    "other": "cc|kopie|bcc|reply-to|importance|priority|attachments?|anlagen|mailed-by|signed-by",
}
_FIELD_OF = {name: field for field, names in _FIELDS.items() for name in names.replace("s?", "").split("|")}
_FIELD = re.compile(
    rf"[ \t]*[*_]{{0,2}}(?P<key>{'|'.join(_FIELDS.values())})[ \t]*:[*_]{{0,2}}(?:[ \t]+(?P<value>.*)|[ \t]*)$",
    re.IGNORECASE,
)
_ADDRESS = re.compile(r"[\w.+'-]{1,64}@(?P<domain>[\w-]{1,63}(?:\.[\w-]{1,63}){1,5})")
_DIVIDER = re.compile(
    r"[ \t]*(?:[-_*=]{2,}[ \t]*(?:original(?:e)? (?:message|mail|nachricht)|forwarded message|ursprüngliche nachricht"
    r"|message d'origine|message transféré|weitergeleitete nachricht|urspr\. nachricht|original appointment"
    r"|reply (?:above|below) this line)[ \t]*[-_*=]*|begin forwarded message:|_{16,})[ \t]*",
    re.IGNORECASE,
)
_WROTE = re.compile(
    r"[ \t]*(?:(?:on|am|le|el|op|il|den|em)\b[^\n]{4,220}?(?:\b(?:wrote|schrieb|escribió|schreef|ha scritto|skrev"
    r"|escreveu)\b|\ba écrit\b)[^\n]{0,100}?:"
    r"|[^\n]{2,90}?(?:<[^<>\s]{3,90}@[^<>\s]{3,90}>|\([^()\s]{3,60}@[^()\s]{3,60}\))[^\n]{0,60}?"
    r"(?:\b(?:wrote|schrieb|writes)\b[^\n]{0,60}|a écrit\s?)?:)[ \t]*$",
    re.IGNORECASE,
)
_NAME_WROTE = re.compile(
    r"[ \t]*(?P<name>[^\W\d_][^\n:<>]{1,60}?) (?:wrote|schrieb|writes|said)(?: on [^\n:]{4,40})?:[ \t]*$", re.I
)
_OPENS = re.compile(r"[ \t]*(?:on|am|le|el|op|il|den|em)\b[^\n]{0,140}\d", re.IGNORECASE)
_SAYING = re.compile(
    r"\b(?:wrote|schrieb|a écrit|escribió|schreef|ha scritto|skrev|escreveu|writes|said)\b", re.IGNORECASE
)
_LEFT = re.compile(
    r"^\W*(?:on|am|le|el|op|il|den|em)\b|\b(?:at|um|à|uhr|om|GMT|UTC|[CEMP][ES]?[SD]?T)\b|(?:GMT|UTC)?[+-]\d{2}:?\d{2}"
    r"|\b(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Mark:
    """A new mail begins behind lines `first`..`after`. `divides`: it is a divider alone, and tells nobody's name."""

    first: int
    after: int
    name: str | None = None
    domain: str = ""
    stamp: Stamp = NO_STAMP
    subject: str = ""
    to: str = ""
    kind: str = "divider"


def marks_in(lines: list[Line]) -> dict[int, Mark]:
    """The marks by the number of their first line."""
    found: dict[int, Mark] = {}
    n = 0
    while n < len(lines):
        mark = _mark(lines, n)
        if mark is not None:
            found[n] = mark
        n = mark.after if mark is not None else n + 1
    return found


def _mark(lines: list[Line], n: int) -> Mark | None:
    line = lines[n]
    if line.blank or len(line.text) > 400:
        return None
    if _DIVIDER.fullmatch(line.text):
        m = n + 1
        while m < len(lines) and m < n + 4 and lines[m].blank:
            m += 1
        block = _block(lines, m, lone=True) if m < len(lines) else None
        if block is not None:
            return Mark(n, block.after, block.name, block.domain, block.stamp, block.subject, block.to, "divided")
        return None if line.text.strip().startswith("_") else Mark(n, n + 1)
    return _block(lines, n) or _wrote(lines, n)


def _block(lines: list[Line], n: int, lone: bool = False) -> Mark | None:
    """A header block. `lone`: behind a divider, where one line of it is enough."""
    told: dict[str, str] = {}
    at = n
    while at < len(lines) and at < n + 14 and lines[at].depth == lines[n].depth:
        match = _FIELD.match(lines[at].text[:400])
        if match is not None:
            field = _FIELD_OF.get(match["key"].lower(), "other")
            if field in told and field != "other":
                break
            told[field] = (match["value"] or "").strip(" *_")
        elif not told or lines[at].blank or not lines[at].text[:1].isspace():
            break
        at += 1
    sure = "subject" in told or "@" in told.get("from", "") + told.get("to", "")
    sure = sure or (("date" in told) and bool(stamp_of(told["date"]).time))
    if "from" not in told or not (lone or (len(told) >= 2 and sure)):
        return None
    name, domain = person(told["from"])
    return Mark(
        n, at, name, domain, stamp_of(told.get("date", "")), told.get("subject", ""), told.get("to", ""), "block"
    )


def _wrote(lines: list[Line], n: int) -> Mark | None:
    """ "On Mon, 2 Mar 2026 at 10:32, Ann Example <ann@example.com> wrote:", also where it is wrapped."""
    line = lines[n]
    words = line.text.strip()
    for more in range(3):
        last = n + more
        if more:
            if last >= len(lines) or lines[last].blank or not (_OPENS.match(line.text) or "@" in words):
                return None
            if lines[last].depth not in (line.depth, 0) or len(words) > 240:
                return None
            words += " " + lines[last].text.strip()
        if words.endswith(":") and _WROTE.match(words):
            name, domain = person(_who_wrote(words))
            return Mark(n, last + 1, name, domain, stamp_of(words), kind="wrote")
        if words.endswith(":") and more == 0:
            named, below = _NAME_WROTE.match(words), lines[n + 1] if n + 1 < len(lines) else None
            if named is not None and below is not None and below.depth > line.depth:
                return Mark(n, n + 1, named["name"].strip(), "", stamp_of(words), kind="wrote")
    return None


def _who_wrote(words: str) -> str:
    """What is left of such a line without date, time and the verb."""
    plain = _SAYING.sub(" ", words.strip().rstrip(":"))
    plain = re.sub(rf"(?<!\w){DATE}", " ", plain, flags=re.IGNORECASE)
    plain = re.sub(rf"(?<![\w@.]){TIME}", " ", plain, flags=re.IGNORECASE)
    plain = (
        _LEFT.sub(" ", plain) if "@" not in plain else _LEFT.sub(" ", plain.split("<")[0]) + " <" + plain.split("<")[-1]
    )
    return re.sub(r"^[\s,.;:–—-]+", "", " ".join(plain.split()))


def person(told: str) -> tuple[str | None, str]:
    """Name as written and domain of the address: "Ann Example <ann@example.com>". A lone address is the name."""
    address = _ADDRESS.search(told)
    name = re.sub(r"[<(\[].*", "", told).strip(" \t\"',;:*_")
    if address is not None:
        name = _ADDRESS.sub("", name).replace("mailto:", "").strip(" \t\"',;:*_") or address.group()
        return name, address["domain"].lower()
    return (name or None), ""
