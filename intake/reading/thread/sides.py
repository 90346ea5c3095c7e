"""Which speakers are the visitor's side and which the staff: by their labels, else by how they speak."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from intake.reading.thread.asks import asks_something
from intake.reading.thread.chat import Message
from intake.reading.thread.own_questions import own_questions
from intake.reading.thread.turn import Side

_STAFF = re.compile(
    r"how (?:can|may|could) (?:i|we) help|help you(?: today)?\?|\bthank(?:s"
    r"| you)[^.\n]{0,12} for (?:reaching|contacting"
    r"|getting in touch|your (?:enquiry|inquiry|interest|message|mail|email|note|request|call))|welcome to\b"
    r"|(?:happy|glad) to help|let me (?:check|ask|look|see|pull"
    r"|find)[^.\n]{0,30}\b(?:you|engineer)|\bour (?:engineers?"
    r"|engineering|applications|range|showroom|sales|demo)\b|\bwe (?:can"
    r"|could) (?:offer|quote|supply|recommend|size)\b"
    r"|\bi(?:'ll| will) (?:pass (?:this|that|it)|forward|send you|get back to you|put (?:together|you))"
    r"|(?:could|can|would|please) you (?:please )?(?:tell|let|send|share|give"
    r"|confirm|describe)\b|\bplease (?:tell|let|send"
    r"|share|confirm|describe)\b|\b(?:to|for) siz(?:e|ing)\b|anything else\b|you(?:'re| are) (?:very )?welcome"
    r"|have a (?:great|nice|good|lovely) (?:day|week|one)|\b(?:may|might) (?:i"
    r"|we) ask\b|\bi(?:'d| would)? recommend\b"
    r"|\bthat helps\b|\bgot it, thank|\bnoted[.!]|take it from here|taking over"
    r"|jumping in for|\ba few (?:quick )?questions\b|\bspeaking[.!]",
    re.IGNORECASE,
)
_SURELY_STAFF = re.compile(
    r"how (?:can|may|could) (?:i|we) help|\bthank(?:s| you)[^.\n]{0,12} for (?:reaching|contacting|getting in touch"
    r"|your (?:enquiry|inquiry|interest))|welcome to (?:our|the)\b|anything else (?:i|we) can (?:help|do)"
    r"|\b(?:from|in|with|at) (?:the )?(?:sales|showroom|support|applications)(?: team| desk)?\b",
    re.IGNORECASE,
)
_YOURS = re.compile(
    r"\b(?:do|does|is|are|will|can|what|how|which|where)\b[^.?!\n]{0,60}\byour?\b[^.!\n]{0,60}\?", re.IGNORECASE
)
_VISITOR = re.compile(
    r"\b(?:we|i)(?:'re| are|'m| am|'d| would)? (?:also |just |really )?(?:need"
    r"|want|have|make|pack|run|move|ship|produce|fill"
    r"|bottle|must|look(?:ing)?|like|plan(?:ning)?|interested|trying)\b"
    r"|\blooking for\b|\bour (?:cases?|box(?:es)?|product"
    r"|products|line|plant|ceiling|cartons?|bottles?|trays?|totes?|bags?|mezzanine"
    r"|conveyor|warehouse|factory|building|room"
    r"|packer|floor|site|maintenance|production)\b|\b(?:do|can"
    r"|could) you (?:guys )?(?:make|sell|have|offer|build|supply"
    r"|do|quote|help)\b|\bhow much (?:is|does|would|do|will)\b|\b(?:price|quote|quotation|lead time|cost)\b"
    r"|\b(?:it|they|each|one) weighs?\b|\b(?:saw|found) your\b|\bon (?:our|my) (?:end|side)\b",
    re.IGNORECASE,
)
_VISITOR_ASKS = re.compile(
    r"\b(?:do|can|could) you (?:guys )?(?:make|sell|have|offer|build|supply|do"
    r"|quote|handle|lift|help)\b|\bhow much (?:is|does|would)\b"
    r"|\b(?:price|quote|lead time|cost)\b|\b(?:can|could|will|would) (?:it|your|the machine)\b",
    re.IGNORECASE,
)
_FIGURE = re.compile(
    r"\d\s?(?:\"|'|mm|cm|m|in|inch(?:es)?|ft|feet|kg|kgs|lbs?|pounds|kilos?|/ ?min|per|an?|cpm|x \d|degrees|°)(?!\w)",
    re.IGNORECASE,
)
_OPENING = re.compile(
    r"\b(?:we|i)(?:'re| are|'m| am|'d| would)? (?:need|want|look|have|make|trying|like)|looking for|interested in",
    re.IGNORECASE,
)


@dataclass(slots=True)
class _Voice:
    role: str | None = None
    domains: set[str] = field(default_factory=set)
    first: int = 0
    lean: int = 0
    """Above zero for the staff's side."""
    count: int = 0


def sides_of(messages: Sequence[Message], folder: Path) -> list[Side]:
    """The side of each message. Messages without a name are each a voice of their own, against the one before."""
    keys = [message.key or f"?{n}" for n, message in enumerate(messages)]
    voices: dict[str, _Voice] = {}
    for n, (key, message) in enumerate(zip(keys, messages, strict=True)):
        voice = voices.setdefault(key, _Voice(first=n))
        voice.role = voice.role or message.role
        voice.domains |= {message.domain} - {""}
        if voice.count < 40:
            words = message.text[:4000]
            voice.lean += _lean(words, n == 0, folder)
            if voice.role is None and _SURELY_STAFF.search(words) and not (n == 0 and _OPENING.search(words)):
                voice.role = "staff"
        if 0 < n < 400 and keys[n - 1] != key and _answers(messages[n - 1].text[-600:], message.text[:300]):
            voice.lean -= 1
            voices[keys[n - 1]].lean += 1
        voice.count += 1
    side = _decided(voices, messages)
    return [side[key] for key in keys]


def _answers(asked: str, said: str) -> bool:
    """True where the first asks for a fact, and the second tells a figure."""
    return asked.rstrip().endswith("?") and "?" not in said and any(s.isdigit() for s in said) and asks_something(asked)


def _lean(text: str, opens: bool, folder: Path) -> int:
    own, _ = own_questions(folder).in_text(text)
    if own:
        return 6
    staff = 2 * len(_STAFF.findall(text)) + len(_YOURS.findall(text))
    asking = [sentence for sentence in re.findall(r"[^.?!\n]*\?", text) if not _VISITOR_ASKS.search(sentence)]
    staff += sum(2 * asks_something(sentence) for sentence in asking[:6])
    told = re.sub(r"[^.?!\n]*\?|[^.?!\n]*\b(?:say|for example)\.", " ", text)
    visitor = len(_VISITOR.findall(text)) + min(len(_FIGURE.findall(told)), 1)
    visitor += 3 if opens and _OPENING.search(text) else 0
    return max(min(staff, 8), 0) - max(min(visitor, 8), 0)


def _decided(voices: Mapping[str, _Voice], messages: Sequence[Message]) -> dict[str, Side]:
    side: dict[str, Side] = {}
    for key, voice in voices.items():
        if voice.role == "visitor" or voice.role == "staff":
            side[key] = "visitor" if voice.role == "visitor" else "staff"
    named = [key for key in voices if not key.startswith("?")]
    selves = [key for key in named if voices[key].role == "self"]
    if len(selves) == 1 and selves[0] not in side:
        _place_self(selves[0], named, voices, side)
    _by_domain(voices, side)
    _by_lean(named, voices, side)
    _by_domain(voices, side)
    for key in named:
        if key not in side:
            side[key] = "staff" if voices[key].lean > 0 else "visitor"
    _nameless(voices, messages, side)
    return side


def _place_self(me: str, named: Sequence[str], voices: Mapping[str, _Voice], side: dict[str, Side]) -> None:
    """ "You" and "Me" are whoever saved the log: the staff, unless the others are."""
    others = {side[key] for key in named if key in side}
    if others == {"staff"}:
        side[me] = "visitor"
    elif others == {"visitor"}:
        side[me] = "staff"
    else:
        rest = max((voices[key].lean for key in named if key != me), default=0)
        side[me] = "staff" if voices[me].lean >= rest - 1 else "visitor"


def _by_lean(named: Sequence[str], voices: Mapping[str, _Voice], side: dict[str, Side]) -> None:
    """Who leans most to a side that nobody has taken yet takes it; of two, the other is the other side."""
    loose = [key for key in named if key not in side]
    if not loose:
        return
    taken = set(side.values())
    if not taken and len(loose) > 1:
        staff = max(loose, key=lambda key: (voices[key].lean, voices[key].first))
        side[staff] = "staff"
        visitor = min((key for key in loose if key != staff), key=lambda key: (voices[key].lean, voices[key].first))
        side[visitor] = "visitor"
    elif taken == {"staff"}:
        side[min(loose, key=lambda key: (voices[key].lean, voices[key].first))] = "visitor"
    elif taken == {"visitor"} and (len(loose) == 1 or max(voices[key].lean for key in loose) > 0):
        side[max(loose, key=lambda key: (voices[key].lean, -voices[key].first))] = "staff"


_PUBLIC = frozenset(
    [
        "gmail.com", "outlook.com", "hotmail.com", "yahoo.com", "icloud.com", "aol.com", "gmx.de", "web.de",
        "proton.me", "live.com",
    ]
)  # fmt: skip


def _by_domain(voices: Mapping[str, _Voice], side: dict[str, Side]) -> None:
    """People of one mail domain are on one side."""
    of: dict[str, set[Side]] = {}
    for key, voice in voices.items():
        for domain in voice.domains - _PUBLIC:
            if key in side:
                of.setdefault(domain, set()).add(side[key])
    for key, voice in voices.items():
        told = {one for domain in voice.domains for one in of.get(domain, ())}
        if key not in side and len(told) == 1:
            side[key] = next(iter(told))


def _nameless(voices: Mapping[str, _Voice], messages: Sequence[Message], side: dict[str, Side]) -> None:
    """A message without a name is by the side that it sounds like, else by the other side than the one before."""
    before: Side | None = None
    for n, message in enumerate(messages):
        key = message.key or f"?{n}"
        if key not in side:
            lean = voices[key].lean
            after = side.get(messages[n + 1].key) if n + 1 < len(messages) else None
            near = before or ({"visitor": "staff", "staff": "visitor"}[after] if after else None)
            if lean >= 2 or (lean == 1 and near != "staff"):
                side[key] = "staff"
            elif lean <= -2 or near != "visitor":
                side[key] = "visitor"
            else:
                side[key] = "staff"
        before = side[key]
