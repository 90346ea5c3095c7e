"""Checks on the blanks of a card's templates: that each can be filled from something that there is."""

from collections.abc import Iterable

from intake.advice import topics
from intake.advice.cards.blanks import BLANK, FREE_GROUPS, GROUPS, OF_CASE, OF_SUPPOSED
from intake.advice.cards.card import FAMILY
from intake.advice.cards.card_file import Placed
from intake.advice.cards.limits_shown import GREATEST, LEAST, having, limits_of
from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.sizing.figures import units as figure_units
from intake.sizing.range_data import COMMON, RangeData
from intake.sizing.result import FAMILIES
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary


def needs_case(blank: str) -> bool:
    """True for a blank that only a case can fill."""
    group, _, rest = blank.partition(".")
    return group not in FREE_GROUPS or rest.startswith("best.")


def blank_problems(one: Placed, template: str, data: RangeData | None) -> list[Problem]:
    """Every blank of one template that nothing can fill. `data`: None where the range itself cannot be read."""
    problems = []
    for blank in dict.fromkeys(BLANK.findall(template)):
        wrong = _wrong(one, blank, data)
        if wrong is not None:
            line = one.line(f"{{{blank}}}")
            problems.append(
                complain("card_blank", one.file.name, line, owner=one.owner, blank=named(blank), hint=wrong)
            )
    return problems


def _wrong(one: Placed, blank: str, data: RangeData | None) -> str | None:
    """What to do about a blank that cannot be filled, None for a good one."""
    group, point, rest = blank.partition(".")
    if not point:
        return _plain(one, blank)
    if group == "then":
        if rest not in OF_SUPPOSED:
            return _among(rest, OF_SUPPOSED)
        return None if one.card.supposes else "It needs a card with what_if, or with takes and a field"
    if group not in GROUPS:
        return _among(group, (*GROUPS, "then"))
    if group in ("limit", GREATEST, LEAST, "having"):
        return _of_range(group, rest, data) if data is not None else None
    return _of_case(group, rest, data)


def _plain(one: Placed, blank: str) -> str | None:
    if blank not in OF_CASE:
        return _among(blank, (*OF_CASE, *(f"{group}." for group in (*GROUPS, "then"))))
    if blank == "asked" and one.card.takes in (None, FAMILY):
        return "It needs a card that takes a field"
    if blank in ("named", "why_not") and one.card.takes != FAMILY:
        return 'It needs a card with takes = "family"'
    return None


def _of_case(group: str, rest: str, data: RangeData | None) -> str | None:
    if group == "figure":
        return None if rest in figure_units() else _among(rest, figure_units())
    if group == "topic":
        return None if rest in topics.NAMES else _among(rest, topics.NAMES)
    if group == "assumed":
        known = [rule.id for rule in data.rules] if data is not None else [rest]
        return None if rest in known else _among(rest, known)
    field = vocabulary().get(rest)
    if field is None:
        return did_you_mean(rest)
    return "Facts kept in the visitor's own words are not said back" if field.kind == "text" else None


def _of_range(group: str, rest: str, data: RangeData) -> str | None:
    first, _, key = rest.partition(".")
    everywhere = sorted({key for limits in data.families.values() for key in limits.keys})
    if group == "limit":
        if first == "best":
            return None if key in everywhere else _among(key, everywhere)
        found = limits_of(data, first)
        if found is None:
            return _among(first, (*FAMILIES, COMMON, "best"))
        return None if key in found.keys else _among(key, found.keys)
    if first not in everywhere:
        return _among(first, everywhere)
    if group == "having":
        return None if having(data, first, key) else "No family has that word in its list"
    return None if key in ("", "family") else _among(key, ("family",))


def _among(word: str, known: Iterable[str]) -> str:
    return did_you_mean(word, known)
