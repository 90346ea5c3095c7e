"""Labels told in one go: "400 x 300 x 200 (L x W x H)"."""

import re

from intake.reading.amounts.size_labels import LABELS
from intake.reading.text.tokens import Token


def order_end(tokens: list[Token], at: int) -> int:
    """Where labels joined by x end, three of them at least; -1 where there are none."""
    here, count = at, 0
    while here < len(tokens) and tokens[here].text in LABELS:
        count += 1
        here += 1
        if here + 1 < len(tokens) and tokens[here].text in ("x", "*") and tokens[here + 1].text in LABELS:
            here += 1
        else:
            break
    return here if count >= 3 else -1


def order_at(tokens: list[Token], at: int, end: int | None = None) -> list[str]:
    """The labels "L x W x H" at token `at`, up to `end` where that is told; an empty list where none stand."""
    here = at + 1 if at < len(tokens) and tokens[at].text in ("(", "[") else at
    bracket = here > at
    if here < len(tokens) and _ORDER.fullmatch(tokens[here].text) and (bracket or end is not None):
        return [LABELS.get(letter, "") for letter in tokens[here].text.split("x")] if end in (None, here + 1) else []
    labels: list[str] = []
    while here < len(tokens) and tokens[here].text in LABELS:
        labels.append(LABELS[tokens[here].text])
        here += 1
        if here < len(tokens) and tokens[here].text in ("x", "*", "/", ",", "by", "-"):
            here += 1
        else:
            break
    whole = here == end if end is not None else bracket and here < len(tokens) and tokens[here].text in (")", "]")
    return labels if whole and len(labels) >= 2 and len(set(labels)) == len(labels) else []


_ORDER = re.compile(r"[lwhbdt]x[lwhbdt](?:x[lwhbdt])?")
