"""Where a case is in its life, and what waits for whom since when: read off its events, nothing else."""

from dataclasses import dataclass

from intake.spec.case import Case
from intake.spec.matters import Matter, Party

STANDINGS = (
    "talking",
    "waiting for the visitor",
    "samples asked for",
    "in test",
    "decided",
    "handed over",
    "closed",
)
"""In the order of a case's life."""

_BY_STAGE = {"samples_asked": "samples asked for", "in_test": "in test", "closed": "closed"}


@dataclass(frozen=True, slots=True)
class Waiting:
    """`who` has something to do, `since` when (ISO 8601), `due` the first day named (YYYY-MM-DD, "" for none)."""

    who: Party
    since: str
    due: str = ""


def standing_of(case: Case, *, decided: bool) -> str:
    """One of STANDINGS; handed over names its revision."""
    if case.stage in _BY_STAGE:
        return _BY_STAGE[case.stage]
    if case.stage == "handed_over":
        return f"handed over, revision {case.revision}" if case.revision else "handed over"
    if case.later or any(matter.who == "visitor" for matter in case.waiting):
        return "waiting for the visitor"
    return "decided" if decided else "talking"


def waits_of(case: Case) -> list[Waiting]:
    """Who has something to do, each once, the first due or longest waiting first."""
    since: dict[Party, list[str]] = {}
    due: dict[Party, list[str]] = {}
    for matter in case.waiting:
        since.setdefault(matter.who, []).append(matter.at)
        if matter.by:
            due.setdefault(matter.who, []).append(matter.by)
    for name in case.later:
        since.setdefault("visitor", []).append(case.later_at.get(name, ""))
    if case.stage == "samples_asked":
        since.setdefault("visitor", []).append(case.stage_at)
    if case.stage == "in_test":
        since.setdefault("works", []).append(case.stage_at)
    found = [Waiting(who, min(times), min(due.get(who, [""]))) for who, times in since.items()]
    return sorted(found, key=lambda one: (not one.due, one.due, one.since))


def overdue(matter: Matter, today: str) -> bool:
    """True for a matter that should have been done before `today` (YYYY-MM-DD)."""
    return bool(matter.by) and not matter.done and matter.by < today
