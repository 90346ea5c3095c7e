"""What a model refused, as sentences: which entry, which key, what to write instead."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel, ValidationError

from intake.interview.complaints import complain, listed, named
from intake.spec.problem import Problem
from intake.spec.vocabulary import nearest

SAMPLES: Mapping[str, str] = {
    "id": '"rise_heights" (small letters, digits and _)',
    "fields": '["rise.height"]',
    "say": '"How high does it go, 10 ft or 3 m, say?"',
    "why": '"what the answer decides"',
    "cost": "1 (said at once), 2 (looked up) or 3 (measured)",
    "unknown_ok": '"what to say when they do not know"',
    "settle": '"the photo, drawing or test that gives the answer"',
    "wordings": "each other wording under its own [[question.wordings]]",
    "when": '[{ field = "product.type", any_of = ["case"] }]',
    "asks": '["rise.height"]',
    "field": '"product.type"',
    "any_of": '["case", "tray"]',
    "low": "a plain number",
    "typical": "a plain number",
    "high": "a plain number",
    "possible": "two plain numbers, [0.0, 10.0]",
    "values": "the plausible values, the typical one first: [true, false]",
    "basis": '"common practice, no source", or the source',
    "friction": '"belt", "high_friction_belt" or "grip"',
    "of": '"rate.normal"',
    "test": '"test.slip_angle"',
    "known": '["rate.normal"]',
    "unless_known": '["rate.pieces"]',
    "is": '{ "product.sizes" = [1] }',
    "questions": '["product_type", "product_size"]',
    "word": "a word of the field in quotes, or true or false",
    "share": "a share above 0 and below 0.5, like 0.03",
    "question": "each question under its own [[question]]",
    "plausible": 'each range under its own [plausible."rise.height"]',
    "words": 'the words of a field under [words."product.type"]',
}
"""By key: what may stand there, shown to whoever got it wrong."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a slip is: whose entry, which of its keys, on which line, and the model of that entry."""

    owner: str
    key: str
    line: int | None
    model: type[BaseModel]


def slips(
    error: ValidationError,
    file: str,
    place_of: Callable[[tuple[int | str, ...]], Place],
    samples: Mapping[str, str] = SAMPLES,
) -> list[Problem]:
    """One problem for each key that a model refused. `samples`: by key, what may stand there."""
    found: dict[tuple[str, str], Problem] = {}
    for detail in error.errors(include_url=False, include_context=False):
        place = place_of(detail["loc"])
        found.setdefault((place.owner, place.key), _slip(detail["type"], detail["input"], file, place, samples))
    return list(found.values())


def _slip(kind: str, given: Any, file: str, place: Place, samples: Mapping[str, str]) -> Problem:
    sample = samples.get(place.key, "words in quotes")
    if kind == "missing":
        return complain("missing_key", file, place.line, owner=place.owner, key=place.key, sample=sample)
    if kind == "extra_forbidden":
        known = tuple(place.model.model_fields)
        close = nearest(place.key, known)
        hint = f"Did you mean {named(close)}?" if close else f"It may have {listed(known)}"
        return complain("odd_key", file, place.line, owner=place.owner, key=named(place.key), hint=hint)
    return complain(
        "wrong_value", file, place.line, owner=place.owner, key=place.key, given=shown(given), sample=sample
    )


def shown(given: Any) -> str:
    """A value as the person may have written it, short."""
    if isinstance(given, bool):
        return "true" if given else "false"
    if isinstance(given, str):
        return "empty" if not given.strip() else named(given if len(given) <= 40 else given[:39] + "…")
    if isinstance(given, int | float):
        return str(given)
    if isinstance(given, Mapping):
        return "a table"
    return ("an empty list" if not given else "a list") if isinstance(given, Sequence) else "of the wrong kind"
