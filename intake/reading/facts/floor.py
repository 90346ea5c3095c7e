"""The floor that the machine may take, told by one figure."""

import re

from intake.reading.facts.length_labels import PRODUCT_BY_LETTER, SPACE_BY_LETTER
from intake.reading.message.topics import topic_of

_FLOOR_ALONG = re.compile(
    r"\b(?:in|along|with) (?:the )?(?:direction of travel|travel direction|conveyor direction|flow direction"
    r"|flow|line|travel"
    r"|running direction|length|belt)\b|\blengthwise\b|\blong\b|\bin length\b"
)
_FLOOR_ACROSS = re.compile(
    r"\b(?:across|sideway|sideways|crosswise|side to side|wide|in width)\b|\bin (?:the )?(?:other|cross) direction\b"
)


def along_or_across(behind: str) -> str | None:
    """ "9 ft of floor in the conveyor direction"; None where the words do not say which way."""
    clause = re.split(r"[,;.]", behind)[0]
    if _FLOOR_ALONG.search(clause):
        return "space.length"
    return "space.width" if _FLOOR_ACROSS.search(clause) else None


COMPARED = re.compile(
    r"\b(wider|longer|deeper|taller|higher|thicker|narrower|shorter) than(?: about| around| roughly)?$"
)
_REFUSED = re.compile(r"\b(?:no|none|not|can't|cannot|nothing|never|don't|shouldn't|mustn't|won't|cant|wont)\b")


_BY_COMPARISON = {
    "wider": "w", "longer": "l", "deeper": "l", "taller": "h", "higher": "h", "thicker": "h", "narrower": "w",
    "shorter": "h",
}  # fmt: skip


def no_wider(before: str, lead: str, sentence: str) -> str | None:
    """ "Can't go wider than 9 ft": the floor that the machine may take; of a product its own size."""
    text = f"{before} {lead}".strip()
    match = COMPARED.search(text)
    if match is None or not _REFUSED.search(f"{sentence} {lead}"[-80:]):
        return None
    letter = _BY_COMPARISON[match.group(1)]
    small = match.group(1) in ("narrower", "shorter")
    return PRODUCT_BY_LETTER[letter] if small or topic_of(sentence) == "product" else SPACE_BY_LETTER[letter]
