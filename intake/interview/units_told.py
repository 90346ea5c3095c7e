"""A unit told afterwards: "12x10x8", "is that inches?", "yes". The figures get it at the place where they stand."""

import re
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from intake import reading
from intake.spec.facts import Doubt, Fact

_UNIT = (
    r"inch(?:es)?|in|millimet(?:re|er)s?|mm|centimet(?:re|er)s?|cm|feet|foot|ft|met(?:re|er)s?|m|pounds?|lbs?|kilos?|kgs?"
    r"|kilograms?|ounces|oz|grams?|g|fahrenheit|celsius|per (?:minute|hour)|an? (?:minute|hour)|psi|bar|newtons?"
)
_JUST_A_UNIT = re.compile(
    rf"\W*(?:(?:yes|yep|oh|ah|sorry|it's|it is|its|they're|they are|that's|that is|all|these are|in|those are)\W+)*"
    rf"(?P<unit>{_UNIT})(?:\W+(?:of course|sorry|thanks|please|all of them|i think))*\W*",
    re.IGNORECASE,
)
_NAMED = re.compile(rf"(?<!\w)(?P<unit>{_UNIT})(?!\w)", re.IGNORECASE)
_YES = re.compile(r"\W*(?:yes|yep|yeah|correct|right|exactly|that's right)\W*", re.IGNORECASE)


def unit_told(words: str, asked: str, doubts: Sequence[Doubt], folder: Path) -> tuple[Fact, ...]:
    """The facts that a bare unit makes of the newest figures that lack one; () where the words are anything else.

    `asked`: the staff's last words; a yes to one unit that they name counts too. Facts keep message, words and place of
    the figures.
    """
    unit = _unit(words, asked)
    if unit is None:
        return ()
    for doubt in reversed(doubts):
        origin = doubt.options[0] if doubt.options else None
        if origin is None or doubt.span is None or origin.message is None:
            continue
        heard = reading.read(f"{doubt.said} {unit}", asked=doubt.field, questions=folder)
        facts = [_in_place(fact, doubt, origin) for fact in heard.facts if fact.is_number]
        if not heard.doubts and any(fact.field == doubt.field for fact in facts):
            return tuple(facts)
    return ()


def _unit(words: str, asked: str) -> str | None:
    just = _JUST_A_UNIT.fullmatch(words) if len(words) < 60 else None
    if just is not None:
        return just["unit"]
    named = {match["unit"].lower() for match in _NAMED.finditer(asked[-300:])} - {"in", "m", "g"}
    return next(iter(named)) if len(named) == 1 and _YES.fullmatch(words) else None


def _in_place(fact: Fact, doubt: Doubt, origin: Fact) -> Fact:
    """The fact at the figures' own place, without the unit that came later."""
    start, end = fact.span or (0, len(doubt.said))
    end = min(end, len(doubt.said))
    first = (doubt.span or (0, 0))[0]
    return replace(
        fact, said=doubt.said[start:end], span=(first + start, first + end), message=origin.message, at=origin.at
    )
