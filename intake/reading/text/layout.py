"""How a message is laid out: wrapped lines joined, sentences cut, quoted mail and signatures set apart."""

import re
from dataclasses import dataclass

from intake.reading.text.tokens import Token

_BULLET = re.compile(r"\s*(?:[-*•·–+>]\s|\(?\d{1,2}[.)]\s|\(?[a-h]\)\s|>)")
_KEYED = re.compile(r"\s*[^\W\d][^:\n?!.]{0,40}:(?=\s|$)")
_CONTINUES = re.compile(r"\s*(?:to|and|or|at|per|from|by|with|of|on|in|up|down|but|then|which|that|so|for)\b")
_WRAPPED_FROM = 60
_QUOTED_HEAD = re.compile(
    r"^\s*(?:on .{4,120}wrote:\s*$|-{2,}\s*(?:original|forwarded) message|_{10,}\s*$|begin forwarded message|"
    r"(?:from|sent): .{3,100}\n(?:sent|to|date|from): )",
    re.M,
)
_SIGN_OFF = re.compile(
    r"^\s*(?:(?:best|kind|warm|kindest|many|with best|with kind)?\s*(?:regards|wishes)|best|cheers|thanks|thank"
    r" you|thx|"
    r"many thanks|thanks again|thank you very much|thanks a lot|sincerely|yours(?: truly| sincerely| faithfully)?|rgds|"
    r"br|mfg|cordially|respectfully|greetings|warmly|--|tia|thanks in advance|thanks and regards|thanks & regards|"
    r"thank you and best regards|brgds|sent from my .*)\s*[,.!]*\s*(?:/?[^\W\d_]+)?\s*$",
    re.M,
)
_AFTERWORD = re.compile(r"^\s*p\.?\s?p?\.?s\b\.?", re.M)
_NO_STOP_AFTER = frozenset(
    [
        "elev", "diff", "rev", "av", "mtrs", "wd", "lg", "min", "tot", "el", "approx", "aprox", "appx", "ft", "in",
        "no", "dia", "diam", "max", "min", "lb", "lbs", "oz", "hr", "hrs", "wt", "ht", "dim", "dims", "incl", "e.g",
        "i.e", "temp", "qty", "vs", "etc", "fl", "ca", "abt", "est", "avg", "nr", "cu", "sq", "gal", "wgt", "hgt",
        "st", "mr", "mrs", "ms", "dr", "inc", "co", "ltd", "p", "s", "a", "m", "g", "e", "i", "kgs", "mtr", "sec",
        "pcs", "ea",
    ]
)  # fmt: skip


_UNIT_STOPS = frozenset(["ft", "in", "lb", "lbs", "oz", "hr", "hrs", "kgs", "mtr", "pcs", "sec", "ea"])
"""Behind these a point and a number begin a new sentence, unless one figure holds both."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """Tokens `first`..`after`; `question`: it ends with a question mark."""

    first: int
    after: int
    question: bool


def unwrapped(tokens: list[Token], shadow: str) -> list[Token]:
    """The tokens without those line ends that only wrap a line; the rest end a sentence."""
    kept: list[Token] = []
    line_start = 0
    for n, token in enumerate(tokens):
        if token.kind != "line":
            kept.append(token)
            continue
        end = shadow.find("\n", token.end)
        following = shadow[token.end : end if end >= 0 else len(shadow)][:200]
        line = shadow[line_start : token.start]
        line_start = token.end
        if not _wraps(line, following) or (n + 1 < len(tokens) and kept and kept[-1].kind == "line"):
            kept.append(token)
    return kept


def _wraps(line: str, following: str) -> bool:
    if not line.strip() or not following.strip() or _BULLET.match(following) or _KEYED.match(following):
        return False
    if _CONTINUES.match(following) and not line.rstrip().endswith((".", "?", "!", ":")):
        return True
    return len(line) >= _WRAPPED_FROM and not line.rstrip().endswith(":")


def sentences_of(tokens: list[Token], raw: str, inside: frozenset[int]) -> list[Sentence]:
    """The sentences in order. A figure's own point (9 ft. 10 in) ends none: `inside` are the tokens of figures."""
    found: list[Sentence] = []
    first = 0
    for n, token in enumerate(tokens):
        if n in inside:
            continue
        if token.kind == "line" or (token.text in ".?!;" and token.kind == "sign" and _stops(tokens, n, raw)):
            if n > first:
                found.append(Sentence(first, n, token.text == "?"))
            elif found and token.text == "?":
                found[-1] = Sentence(found[-1].first, found[-1].after, True)
            first = n + 1
    if first < len(tokens):
        found.append(Sentence(first, len(tokens), False))
    return found


def _stops(tokens: list[Token], at: int, raw: str) -> bool:
    token = tokens[at]
    if at + 1 >= len(tokens) or tokens[at + 1].kind == "line":
        return True
    following = tokens[at + 1]
    if token.text in "?!;":
        return True
    if following.start == token.end:
        return following.text in ".?!)\"'" or following.text == ".."
    if following.kind == "number" and at and tokens[at - 1].text in _UNIT_STOPS:
        return True
    if at and tokens[at - 1].text in _NO_STOP_AFTER and tokens[at - 1].end == token.start:
        typed = raw[following.start : following.end]
        capital = typed[:1].isupper() and following.kind == "word" and not (len(typed) > 1 and typed.isupper())
        return capital and tokens[at - 1].text not in ("no", "vs", "approx", "mr", "mrs", "ms", "dr", "st", "nr", "e.g")
    return True


def dead_spans(shadow: str) -> tuple[list[tuple[int, int]], list[tuple[int, int]]]:
    """Places in the shadow of quoted older mail, and of signatures."""
    quoted: list[tuple[int, int]] = []
    head = _QUOTED_HEAD.search(shadow)
    limit = len(shadow)
    if head is not None and (head.start() > 0 or not head.group().lstrip().startswith(("from", "sent"))):
        quoted.append((head.start(), len(shadow)))
        limit = head.start()
    quoted += _marked_lines(shadow[:limit])
    signed: list[tuple[int, int]] = []
    for match in _SIGN_OFF.finditer(shadow, 0, limit):
        after = shadow[match.end() : limit]
        if match.start() == 0 or after.count("\n") > 12 or not _is_signature(after):
            continue
        more = _AFTERWORD.search(shadow, match.end(), limit)
        signed.append((match.start(), more.start() if more else limit))
        break
    return quoted, signed


_NOT_WANTED = re.compile(
    r"^[^\S\n(]*\(?(?:(?:what )?we do(?:n't| not) have|not (?:required|needed|wanted|in scope|applicable"
    r"|part of (?:this|it))|excluded"
    r"|exclusions|out of scope|no need for)"
    r"[^\n:]{0,30}:[^\S\n]*\n((?:[^\S\n]*(?:[-*•·–]|\d[.)])[^\n]*\n?)+)",
    re.M,
)


def denied_lists(shadow: str) -> list[tuple[int, int]]:
    """The bullets under "not required:" and the like."""
    return [match.span(1) for match in _NOT_WANTED.finditer(shadow)]


_MEASURED = re.compile(
    r"\d ?(?:\"|'|in\b|inch|ft\b|feet|mm\b|cm\b|m\b|kgs?\b|lbs?\b|#|/ ?min|/ ?h|per |a min|cpm|pounds)"
)


def _marked_lines(shadow: str) -> list[tuple[int, int]]:
    """Lines behind ">": older mail, unless all figures of the message stand there (a spec that is handed on)."""
    marked: list[tuple[int, int]] = []
    own: list[str] = []
    place = 0
    for line in shadow.splitlines(keepends=True):
        if line.lstrip().startswith(">"):
            marked.append((place, place + len(line)))
        else:
            own.append(line)
        place += len(line)
    if marked and not _MEASURED.search("".join(own)) and not re.search(r"\bwrote:", "".join(own)):
        return []
    return marked


def _is_signature(after: str) -> bool:
    """Short lines without sentences."""
    lines = [line for line in after.splitlines() if line.strip() and not _AFTERWORD.match(line)]
    more = next((n for n, line in enumerate(after.splitlines()) if _AFTERWORD.match(line)), None)
    if more is not None:
        lines = [line for line in after.splitlines()[:more] if line.strip()]
    return all(len(line) < 80 for line in lines)
