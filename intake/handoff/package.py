"""The package as it stands on disk (`spec.json`), checked on the way out and on the way back in."""

from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, ValidationError, field_validator

from intake.spec import Spec, SpecError


class HandoffError(Exception):
    """A hand-off that cannot be read or written. The message says where and how to mend it."""


class _Part(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Said(_Part):
    """One fact with its origin. `shown`: the value as people read it, in both unit systems."""

    field: str
    size: int = 1
    value: Any
    unit: str
    shown_us: str
    shown_si: str
    who: Literal["visitor", "staff", "works"]
    at: str
    said: str
    sure: Literal["exact", "about", "hedged"]
    spread: bool = False


class OpenPoint(_Part):
    """One thing that engineering should not take for settled. `settle`: the photo, drawing or test that does."""

    kind: Literal["follow_up", "doubt", "conflict", "not_known", "visitor_checks", "visitor_asks"]
    field: str | None
    test: str | None = None
    why: str
    settle: str = ""
    changes_best: float | None = None


class Summary(_Part):
    """The result in short; `result.json` beside it has the whole."""

    best: str | None
    second: str | None
    refer_out: str | None
    direction: str | None
    decided: bool | None
    share: float | None
    verdicts: dict[str, Literal["fits", "depends", "out"]]
    flags: list[str]


class Package(_Part):
    """What engineering receives. `spec` is a flat spec that `intake size` takes back."""

    format: Literal["rise-intake hand-off"] = "rise-intake hand-off"
    format_version: Literal[1] = 1
    case: str
    title: str
    revision: str
    written: str
    units: Literal["us", "si"]
    spec: dict[str, Any]
    facts: list[Said]
    assumptions: list[dict[str, Any]]
    derived: list[dict[str, Any]]
    open_points: list[OpenPoint]
    notes: list[str]
    changes: list[str]
    result: Summary
    cautions: list[str]
    data: dict[str, str]
    contact_included: bool

    @field_validator("spec")
    @classmethod
    def _is_a_spec(cls, flat: dict[str, Any]) -> dict[str, Any]:
        try:
            Spec.from_flat(flat)
        except SpecError as fault:
            raise ValueError(str(fault)) from fault
        return flat


def read_package(path: Path) -> Package:
    """The package of a `spec.json`. Raises HandoffError that names the part that is wrong."""
    try:
        return Package.model_validate_json(path.read_text(encoding="utf-8"))
    except OSError as fault:
        raise HandoffError(f"{path}: cannot be read ({fault.strerror}). Name the spec.json of a hand-off.") from fault
    except ValidationError as fault:
        first = fault.errors(include_url=False)[0]
        place = ".".join(str(part) for part in first["loc"]) or "the file"
        raise HandoffError(
            f"{path}: {place}: {first['msg']}. Write the hand-off again with: intake handoff CASE --to FOLDER"
        ) from fault
