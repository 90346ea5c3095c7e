"""The core in one call: a flat spec to verdicts, a ranking, figures, assumptions and follow-ups."""

from collections.abc import Collection, Iterable, Mapping
from typing import Any

from intake.sizing.all_families import ALL
from intake.sizing.appraise import appraise, standing, verdict_of
from intake.sizing.engine import attempt
from intake.sizing.flags import flags
from intake.sizing.follow_up import follow_ups
from intake.sizing.job import Job, view
from intake.sizing.range_data import load_range
from intake.sizing.ranking import rank, why_best
from intake.sizing.resolve import resolve
from intake.sizing.result import FAMILIES, Conflict, FamilyResult, Result, Verdict
from intake.sizing.score import reasons, total
from intake.sizing.sentences import Words, figure
from intake.sizing.unknowns import TYPICAL
from intake.sizing.worth import Worth, worth_of
from intake.spec.flat import Spec


def size(spec: Mapping[str, Any] | Spec, *, worth: bool = False, questions: Any = None) -> Result:
    """Size a flat spec.

    Args:
        spec: the JSON shape {"product.length": 0.4, ...} in canonical units, or a Spec.
        worth: add what sampling gives: decided, share, changes_best of the follow-ups.
        questions: a folder of one's own in place of the shipped one.

    Raises SpecError for a key or figure that cannot be taken, RangeError or FolderError for the data.
    """
    flat = spec if isinstance(spec, Spec) else Spec.from_flat(spec)
    data = load_range(questions)
    job = resolve(flat, data)
    words = Words(data)
    families = {name: appraise(job, ALL[name], words) for name in FAMILIES}
    best, second = rank(job, families)
    blocked = _blocked(job, families, best)
    raised = flags(job, best, families, blocked)
    sampled: Worth | None = worth_of(job, families, best) if worth else None
    return Result(
        best=best,
        second=second,
        why_best=why_best(best, second, families, data.weights, words),
        refer_out=_refer_out(families, raised, words),
        direction=None if job.choices["direction"].is_open else job.choices["direction"].typical,
        families=families,
        flags=raised,
        follow_ups=follow_ups(job, families, best, raised, words, sampled),
        assumptions=tuple(sorted(job.assumptions.values(), key=lambda a: a.id)),
        derived=job.derived,
        conflicts=tuple(
            Conflict(fields=c.fields, why=words.say("conflict", c.why), taken=c.taken) for c in job.conflicts
        ),
        cautions=_cautions(job, raised, best, families, words),
        decided=sampled.decided if sampled is not None else None,
        share=sampled.share if sampled is not None else None,
        data={"version": data.version, "hash": data.hash},
        samples=sampled.samples if sampled is not None else None,
    )


def verdicts(spec: Spec, *, questions: Any = None, families: Iterable[str] = FAMILIES) -> dict[str, Verdict]:
    """The verdicts alone, by bounds: no records, no text. `families`: only these."""
    job = resolve(spec, load_range(questions))
    return {name: verdict_of(job, ALL[name]) for name in families}


def looks_out(spec: Spec, family: str, *, questions: Any = None) -> bool:
    """True when a family fails over all that is plausible, whether or not it is out for certain."""
    return standing(resolve(spec, load_range(questions)), ALL[family]).likely_out


_FLOOR = frozenset({"room_length", "room_width", "doorway_split"})
_HEADROOM = frozenset({"ceiling", "passage"})
_ROOM = _FLOOR | _HEADROOM
_PACE = frozenset({"rate", "speed", "feed_speed"})
_DRIVEN = _PACE | {"curve", "power"}


def _blocked(job: Job, families: Mapping[str, FamilyResult], best: str | None) -> tuple[str, ...]:
    """Room or rate as what stands in the way of the family that would have been best."""
    if job.missing_basics:
        return ()
    failing = {name: set(found.fails) for name, found in families.items()}
    found: list[str] = []
    shut_out = [name for name, ids in failing.items() if families[name].verdict == "out" and ids & _ROOM]
    would = _would_be_best(job, shut_out)
    if would is not None and failing[would] & _FLOOR:
        found.append("space_conflict")
    if would is not None and failing[would] & _HEADROOM:
        found.append("ceiling_conflict")
    if best is None and any(ids and ids <= _DRIVEN for ids in failing.values()):
        found.append("rate_too_high")
    return tuple(found)


def _would_be_best(job: Job, among: Collection[str]) -> str | None:
    """Which of some families would lead all others if floor, ceiling and doors were no matter; None where none."""
    scores = _scores_without_room(job, among)
    if not scores:
        return None  # the others need not be tried
    scores |= _scores_without_room(job, [name for name in FAMILIES if name not in among])
    leading = max(FAMILIES, key=lambda name: scores.get(name, -1.0))
    return leading if leading in among else None


def _scores_without_room(job: Job, names: Iterable[str]) -> dict[str, float]:
    """The scores of the families named that pass at the design point, floor, ceiling and doors left out."""
    scores: dict[str, float] = {}
    for name in names:
        family, d = ALL[name], job.data.families[name]
        seen = view(job, TYPICAL)
        trial = attempt(family, seen, d, room=False)
        if trial.passes:
            scores[name] = total(reasons(family, seen, trial.firmness, d, job.data), job.data)
    return scores


def _refer_out(families: Mapping[str, FamilyResult], raised: tuple[str, ...], words: Words) -> str | None:
    if any(found.verdict != "out" for found in families.values()):
        return None
    failing = {name: set(found.fails) for name, found in families.items()}
    for reason in ("rise", "hazard", "temperature_zone", "temperature", "weight"):
        if all(reason in ids for ids in failing.values()) or (
            reason == "temperature_zone" and "freezer_refer_out" in raised
        ):
            return words.say("refer", reason)
    if any(ids and ids <= _ROOM for ids in failing.values()) or "space_conflict" in raised:
        return words.say("refer", "room")
    if any(ids and ids <= _PACE for ids in failing.values()):
        return words.say("refer", "rate")
    nearest = min(families.values(), key=lambda found: len(found.fails))
    return words.say("refer", "other", why="; ".join(nearest.because[:2]))


def _cautions(
    job: Job, raised: tuple[str, ...], best: str | None, families: Mapping[str, FamilyResult], words: Words
) -> tuple[str, ...]:
    said = [words.say("flag", flag) for flag in raised]
    if job.choices["direction"].typical in ("down", "both") and not job.choices["direction"].is_open:
        said.append(words.say("caution", "lowering"))
    if best is not None:
        said += _held(best, families[best], words)
    if job.choices["passage"].typical not in ("none", None):
        said.append(words.say("caution", "passage"))
    said += [words.say("caution", key) for key in ("general", "riding", "standards", "price")]
    return tuple(said)


def _held(best: str, found: FamilyResult, words: Words) -> list[str]:
    """What has to be held on loss of power, and braked while running, by the leading machine."""
    said: list[str] = []
    pull, power, drives = (found.figures[name].value for name in ("holding_pull", "brake_power", "motors"))
    name = words.family(best)
    if pull:
        each = words.say("caution", "each_drive") if drives is not None and drives > 1.0 else ""
        said.append(words.say("caution", "holding", best=name, pull=figure(pull, "N"), each=each))
    if power:
        said.append(words.say("caution", "braking", best=name, power=figure(power, "W")))
    return said
