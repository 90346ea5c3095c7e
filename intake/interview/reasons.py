"""Why a family is where it is, in one line: from its checks, by templates in data."""

from collections.abc import Sequence

from intake.interview.wording import Sentences, fill, joined
from intake.sizing.result import Check, FamilyResult, Plain, Result
from intake.spec.display import System, label, show
from intake.spec.vocabulary import vocabulary

_CHOSEN_TO_JUST_PASS = frozenset(
    {"slope", "grip", "carrier_pitch", "cleat_height", "width", "tier_clearance", "tilt", "round", "rise"}
)
"""Checks that a layout is laid out by: their margin tells nothing of how firmly it stands."""


def family_name(family: str, sentences: Sentences) -> str:
    """What the trade calls a family."""
    return sentences.find(f"family.{family}") or family.replace("_", " ")


def short_family_name(family: str, sentences: Sentences) -> str:
    """What the trade calls a family, where room is short."""
    return sentences.find(f"family_short.{family}") or family.replace("_", " ")


def failing_reason(check: Check, sentences: Sentences, system: System) -> str:
    """Why this check shuts a family out: "140/min is over its limit of 120/min"."""
    # A missing fact leaves no figure to tell; it fails all the same.
    group = "fail" if check.value is not None or check.sense == "must_be" else "fail_open"
    template = sentences.find(*(f"{group}.{id}" for id in _shorter(check.id)), f"{group}.other") or "{check}"
    return fill(
        template,
        check=check.id.replace("_", " "),
        value=shown(check.value, check.unit, system),
        limit=shown(check.limit, check.unit, system),
    )


def out_reason(found: FamilyResult, sentences: Sentences, system: System) -> str:
    """Why a family is out; the sizing's own words where no failed check tells."""
    if found.failed:
        return failing_reason(found.failed[0], sentences, system)
    first = next((check for id in found.because if (check := found.check(id)) is not None), None)
    if first is not None:
        return failing_reason(first, sentences, system)
    return found.because[0].replace("_", " ") if found.because else ""


def open_matters(found: FamilyResult, result: Result) -> list[str]:
    """What a family's verdict depends on, as people call it, each once."""
    about = {assumption.id: assumption for assumption in result.assumptions}
    names: list[str] = []
    for id in found.depends_on:
        assumption = about.get(id)
        fields = (id,) if assumption is None else assumption.about or ((assumption.test,) if assumption.test else ())
        names.extend(label(name) if name in vocabulary() else name.replace("_", " ") for name in fields or (id,))
    return list(dict.fromkeys(names))


def verdict_reason(found: FamilyResult, result: Result, sentences: Sentences, system: System) -> str:
    """One line without the verdict's word: what shuts it out, what it waits for, or how much room is left."""
    if found.verdict == "out":
        return out_reason(found, sentences, system)
    if found.verdict == "depends":
        return few(open_matters(found, result))
    return room_left(found, sentences)


def room_left(found: FamilyResult, sentences: Sentences) -> str:
    """The tightest check that tells of room to spare, and how much: "tightest: ceiling, 7 % to spare"; "" for none."""
    tightest = min(
        (check for check in found.checks if check.shows_room and _tells_room(check)),
        key=lambda check: check.margin or 0.0,
        default=None,
    )
    if tightest is None or tightest.margin is None:
        return ""
    name, margin = check_name(tightest.id, sentences), tightest.margin
    if margin < 0.0:
        return sentences.say("verdict.room_short", check=name, margin=percent(-margin))
    return sentences.say("verdict.room_left", check=name, margin=percent(margin))


def check_name(id: str, sentences: Sentences) -> str:
    """What people call a check: "pull" for pull_backed_up too, unless it has a name of its own."""
    return sentences.find(*(f"check_name.{part}" for part in _shorter(id))) or id.replace("_", " ")


def few(names: Sequence[str], most: int = 3) -> str:
    """The first few of a list: "wall, weight, height and 2 more"."""
    if len(names) <= most + 1:
        return joined(list(names))
    return joined([*names[:most], f"{len(names) - most} more"])


def percent(share: float) -> str:
    """A share as whole percent.

    >>> percent(0.124)
    '12 %'
    """
    return f"{share * 100:.0f} %"


def shown(value: Plain, unit: str, system: System) -> str:
    """A check's value or limit for people; "not known" where there is none."""
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value.replace("_", " ").replace(" deg", "°")
    if unit == "1":
        return f"{value:.2g}" if abs(value) < 10 else f"{value:.0f}"
    return show(value, unit, system)


def _tells_room(check: Check) -> bool:
    """A share of kelvin, too, is no room to spare that anybody would recognise."""
    return check.id not in _CHOSEN_TO_JUST_PASS and check.unit != "K"


def _shorter(id: str) -> list[str]:
    """An id and what is left as its suffixes go: slip_start, slip."""
    parts = id.split("_")
    return ["_".join(parts[:n]) for n in range(len(parts), 0, -1)]
