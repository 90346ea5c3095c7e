"""What the staff's words ask for: the fields that the visitor's next words answer."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from intake.reading.message.asking import questions
from intake.reading.thread.free_questions import fields_asked, yes_means
from intake.reading.thread.offers import offered
from intake.reading.thread.own_questions import own_questions

_LONGEST = 6000
"""Characters of the staff's words that are looked at, from the end: what is asked last stands there."""
_REQUEST = re.compile(
    r"\b(?:please|could you|can you|need to know|let (?:me|us) know|tell (?:me|us)"
    r"|send (?:me|us)?|give (?:me|us)|i(?:'d| would)?"
    r" (?:also )?need|we(?:'d| would)? (?:also )?need|still need|missing"
    r"|what about|how about|next up|curious about)\b(?P<what>[^.?!\n]*)",
    re.IGNORECASE,
)
_FRAGMENT = re.compile(
    r"(?!.*\b(?:thanks|thank|got|have|is|are|was|noted|ok|okay|great|fine|good"
    r"|works|will|we|i|it|sure|perfect|about)\b)"
    r"(?:(?:and|plus|also|then|next|now|lastly|finally)\W+)*(?:the |your |their |its )?[^\d?]{3,60}",
    re.IGNORECASE,
)
"""What is asked for without a verb: "and the ceiling height"."""
_BOUND = re.compile(r"[^.?!\n]*(?:\?|[.!](?=\s|$)|\n|$)")


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked. `fields`: everything since the visitor last spoke; `last`: what the last question asks for.

    `offer`: the words of the last question, for what a bare "yes" to it says; "" where it gives ready examples only.
    """

    fields: tuple[str, ...] = ()
    last: tuple[str, ...] = ()
    offer: str = ""
    unknown: bool = False
    """The last words ask something that has no field here."""
    each: tuple[tuple[str, ...], ...] = ()
    """The fields of each single question, in order."""

    def yes(self, field: str) -> bool | None:
        """What a bare yes says of a yes-no field; None where that cannot be told for sure."""
        return yes_means(field, self.offer) if self.offer else True


def asked_in(turns: Sequence[str], folder: Path) -> Asked:
    """What these words of the staff ask for, oldest first; nothing where they ask nothing that has a field."""
    found: list[tuple[tuple[str, ...], str]] = []
    offer = ""
    for text in turns:
        pieces = _pieces(text[-_LONGEST:], folder)
        found += [(fields, words) for fields, words in pieces if fields]
        offer = pieces[-1][1] if pieces else offer
    fields = tuple(dict.fromkeys(name for names, _ in found for name in names))
    last, words = found[-1] if found else ((), "")
    unknown = not fields and bool(turns) and turns[-1].rstrip().endswith("?")
    return Asked(
        fields, last, words if found and words == offer else offer, unknown, tuple(names for names, _ in found)
    )


def asks_something(text: str) -> bool:
    """True where the words ask for a fact of the need."""
    return any(fields_asked(sentence) for sentence in re.findall(r"[^.?!\n]{3,200}\?", text[:4000]))


def _pieces(text: str, folder: Path) -> list[tuple[tuple[str, ...], str]]:
    """Each question in order: its fields, and its words where they may offer an answer."""
    own = own_questions(folder)
    whole, _ = own.in_text(text)
    if whole:
        return [(fields, "") for fields in whole] + _behind_own(text, folder)
    found: list[tuple[tuple[str, ...], str]] = []
    for sentence in (match.group().strip() for match in _BOUND.finditer(text)):
        if not sentence:
            continue
        like = own.like(sentence) if sentence.endswith("?") else ()
        if like:
            found.append((like, ""))
            continue
        found += _free(sentence, folder)
    return found


def _behind_own(text: str, folder: Path) -> list[tuple[tuple[str, ...], str]]:
    """What is asked in words of the staff's own behind a question of the folder."""
    own = own_questions(folder)
    sentences = [match.group().strip() for match in _BOUND.finditer(text) if match.group().strip()]
    found: list[tuple[tuple[str, ...], str]] = []
    for sentence in reversed(sentences):
        _, left = own.in_text(sentence)
        if not left.strip() or own.like(sentence) or not sentence.endswith("?") or _example(sentence):
            break
        if any(own_text.words.find(left.strip()) >= 0 for own_text in own.whole):
            break
        found = _free(sentence, folder) + found
    return found


def _example(sentence: str) -> bool:
    return re.search(r"\b(?:say|for example|e\.g\.)[.?]?$", sentence) is not None


def _free(sentence: str, folder: Path) -> list[tuple[tuple[str, ...], str]]:
    """The questions of one sentence in free words."""
    if sentence.endswith("?"):
        pieces = [piece.said for piece in questions(sentence)] or [sentence]
        asked = _with_their_topic([(fields_asked(piece), piece) for piece in pieces])
        if any(fields for fields, _ in asked):
            return [(fields, piece) for fields, piece in asked if fields]
        return [(fields_asked(sentence) or _of_the_offer(sentence, folder), sentence)]
    request = _REQUEST.search(sentence)
    if request is not None:
        fields = fields_asked(request["what"]) or _nouns(request["what"])
        return [(fields, "")] if fields else []
    found = [(fields, "") for piece in questions(sentence) if (fields := fields_asked(piece.said))]
    if not found and _FRAGMENT.fullmatch(sentence) and len(sentence.split()) <= 8:
        found = [(fields, "") for fields in [fields_asked(sentence)] if fields]
    return found


_BARE = re.compile(r"^\W*(?:and |so )?how (?P<way>high|tall|wide|broad|long|deep)\W*$", re.IGNORECASE)
_WAYS = {"high": "height", "tall": "height", "wide": "width", "broad": "width", "long": "length", "deep": "length"}
_SIDES = {
    "space.opening": {"height": "space.opening_height", "width": "space.opening_width"},
    "product": {"height": "product.height", "width": "product.width", "length": "product.length"},
    "space": {"height": "space.ceiling", "width": "space.width", "length": "space.length"},
}


def _with_their_topic(asked: list[tuple[tuple[str, ...], str]]) -> list[tuple[tuple[str, ...], str]]:
    """ "How wide is the door, and how high?": a bare "how high" is of what the rest of the sentence speaks of."""
    topics = [name for fields, piece in asked if not _BARE.match(piece) for name in fields]
    sides = next((row for topic, row in _SIDES.items() if topics and topics[0].startswith(topic)), None)
    if sides is None:
        return asked
    found = []
    for fields, piece in asked:
        bare = _BARE.match(piece)
        name = sides.get(_WAYS[bare["way"].lower()]) if bare is not None else None
        found.append(((name,) if name is not None else fields, piece))
    return found


def _of_the_offer(sentence: str, folder: Path) -> tuple[str, ...]:
    """ "4 m of rise?" asks for what it offers."""
    if not re.search(r"\d", sentence) or len(sentence) > 200:
        return ()
    return tuple(dict.fromkeys(fact.field for fact in offered(sentence, (), folder).facts if fact.is_number))


def _nouns(words: str) -> tuple[str, ...]:
    """A list of what is wanted: "the weight, the size and the ceiling height"."""
    parts = [part for part in re.split(r",|\band\b|;|/", words) if part.strip()]
    return tuple(dict.fromkeys(name for part in parts for name in fields_asked(part.strip() + "?")))
