"""Who writes: name, company, mail and phone. Personal: such facts never reach the sizing."""

import re

from intake.reading.message.scene import Draft, Scene

_MAIL = re.compile(r"\b[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{1,63}){1,4}\b")
_PHONE = re.compile(
    r"(?<![\w.,/-])(?:\+\d{1,3}[ .-]?)?(?:\(\d{1,4}\)[ .-]?)?\d{2,4}[ .-]\d{2,4}(?:[ .-]\d{2,4}){0,3}(?:,?"
    r" ?(?:ext|x|extension)\.? ?\d{1,5})?(?![\w/-])"
)
_PHONE_WORD = re.compile(
    r"\b(?:phone|call|tel|telephone|cell|mobile|number is|reach me|ph|fax|ring|direct|office|t:|m:|p:)\b"
)
_NAME = r"([A-ZÀ-Ý][\w'’-]{1,24}(?: (?:van |von |de |der |la )?[A-ZÀ-Ý][\w'’-]{1,24}){0,2})"
_COMPANY = r"((?:[A-Z][\w&'’.-]{0,30})(?: (?:&|and|of|[A-Z0-9][\w&'’.-]{0,30})){0,4})"
_INTRO = re.compile(
    rf"\b(?:[Tt]his is|[Mm]y name is|[Mm]y name's|I am|I'm|I’m|[Nn]ame is) {_NAME}\b(?: (?:here )?(?:from|at"
    rf"|with|of|over at) {_COMPANY})?"
)
_WITH = re.compile(
    rf"\b(?:I am|I'm|I’m|[Ww]e are|[Ww]e're|[Ww]e’re|[Ii]m) (?:with|from|at|calling from|writing from) {_COMPANY}"
)
_HERE = re.compile(
    rf"(?:^|[.,!?;\n-] ?|\b[Hh]i,? |\b[Hh]ello,? |\b[Hh]ey,? |again,? ){_NAME} here\b(?: (?:from|at|with) {_COMPANY})?"
)
_FROM = re.compile(rf"^From: {_NAME}(?:, {_COMPANY})?[^\S\n]*(?:<[^>\n]*>)?[^\S\n]*$", re.M)
_NOT_NAMES = frozenset(
    [
        "We", "The", "Our", "It", "They", "There", "This", "That", "Hi", "Hello", "Good", "Thanks", "Just", "From",
        "Please", "Quick", "Very", "Also", "New", "Interested", "Looking", "Sure", "Not", "Monday", "Tuesday",
        "Wednesday", "Thursday", "Friday", "Regards", "Cheers", "Sincerely", "Best", "Kind", "Warm", "Many", "Yours",
        "Cordially", "Respectfully", "Greetings", "Warmly", "Wishes", "Thank",
    ]
)  # fmt: skip
_ROLE = re.compile(
    r"\b(?:manager|engineer|director|quality|packaging|maintenance|production|operations|plant|purchasing"
    r"|supervisor|lead|buyer|head of)\b",
    re.I,
)


def contact_drafts(scene: Scene) -> list[Draft]:
    """Facts about who writes, each at most once."""
    raw = scene.folded.raw[:20_000]
    found: dict[str, Draft] = {}
    for pattern in (_FROM, _INTRO, _HERE):
        match = pattern.search(raw)
        if match is None or match.group(1).split()[0] in _NOT_NAMES or _quoted(scene, match.start()):
            continue
        _put(found, scene, "contact.name", match.start(1), match.end(1))
        if match.group(2):
            end = match.end(2) - (1 if raw[match.end(2) - 1] in ".," else 0)
            _put(found, scene, "contact.company", match.start(2), end)
    company = _WITH.search(raw)
    if company is not None and not _quoted(scene, company.start()):
        _put(found, scene, "contact.company", company.start(1), company.end(1) - (raw[company.end(1) - 1] in ".,"))
    _signature(scene, found, raw)
    mail = _MAIL.search(raw)
    if mail is not None and not _quoted(scene, mail.start()):
        _put(found, scene, "contact.email", mail.start(), mail.end())
    for phone in _PHONE.finditer(raw):
        digits = sum(sign.isdigit() for sign in phone.group())
        near = scene.shadow[max(0, phone.start() - 40) : phone.start()]
        named = _PHONE_WORD.search(near) is not None or any(a <= phone.start() < b for a, b in scene.signed)
        if 7 <= digits <= 18 and (named or phone.group().startswith("+")) and not _quoted(scene, phone.start()):
            _put(found, scene, "contact.phone", phone.start(), phone.end())
            break
    return list(found.values())


def _quoted(scene: Scene, place: int) -> bool:
    return any(a <= place < b for a, b in scene.quoted)


def _signature(scene: Scene, found: dict[str, Draft], raw: str) -> None:
    """The first short capitalised line of a signature is a name, the next without a role may be the company."""
    for start, end in scene.signed[:1]:
        place = start
        for n, line in enumerate(raw[start:end].splitlines(keepends=True)[:6]):
            words = line.strip(" \t\r\n,-")
            begin = place + line.find(words) if words else place
            place += len(line)
            if n == 0 or not words:
                continue
            name = re.fullmatch(_NAME, words)
            if name and "contact.name" not in found and words.split()[0] not in _NOT_NAMES:
                _put(found, scene, "contact.name", begin, begin + len(words))
            elif "contact.name" in found and str(found["contact.name"].value).startswith(words.split()[0]):
                continue
            elif "contact.name" in found and "contact.company" not in found:
                last = words.rpartition(", ")[2] if _ROLE.search(words) else words
                if last and not _ROLE.search(last) and re.fullmatch(_COMPANY, last):
                    at = begin + words.rfind(last)
                    _put(found, scene, "contact.company", at, at + len(last))


def _put(found: dict[str, Draft], scene: Scene, name: str, start: int, end: int) -> None:
    if name not in found:
        found[name] = Draft(name, start, end, value=scene.folded.said(start, end), at=scene.token_at(start) or 0)
