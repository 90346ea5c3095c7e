"""The limits of the maker's range, the assumptions and the weights: read once from the questions folder, made SI."""

import hashlib
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from math import pi
from pathlib import Path
from sys import intern
from typing import TYPE_CHECKING, Any

from intake.sizing.result import FAMILIES
from intake.spec.folder import questions_folder, shipped_folder

COMMON = "common"
_SI_UNIT = {"deg": "rad", "degC": "K", "1/min": "1/s", "": "1"}
_TO_SI = {"deg": (pi / 180.0, 0.0), "degC": (1.0, 273.15), "1/min": (1.0 / 60.0, 0.0)}


class RangeError(Exception):
    """The range data cannot be read. The message names the file and what to do."""


class Limits:
    """Limits of one family with the common ones behind them, in SI and radians: `d.weight_most`, `d["weight_most"]`.

    `accel_greatest` is added: the greatest of ramped start, ramped stop and stop on loss of power [m/s2].

    No `__getattr__` here, and names interned: checks read limits all the time, and this way it takes a third of it.
    """

    def __init__(
        self, family: str, entries: Mapping[str, Any], homes: Mapping[str, str], bases: Mapping[str, str],
        units: Mapping[str, str],
    ):  # fmt: skip
        self.family, self.homes, self.bases, self.units = family, homes, bases, units
        self.keys = tuple(entries)
        self.__dict__.update({intern(key): entry for key, entry in entries.items()})
        if "accel_start" in entries:
            self.accel_greatest = max(d for key, d in entries.items() if key.startswith("accel_"))

    if TYPE_CHECKING:

        def __getattr__(self, key: str) -> Any: ...

    def __getitem__(self, key: str) -> Any:
        return getattr(self, key)

    def origin(self, key: str) -> str:
        """The key as named in results: "range spiral.weight_most"."""
        return f"range {self.homes.get(key, self.family)}.{key}"


class LimitsWithHoles(Limits):
    """Limits of a folder that lacks an entry of the shipped one: whoever reads that one is told what to do."""

    def __getattr__(self, key: str) -> Any:  # only reached for an entry that is not there
        raise RangeError(
            f"range/{self.family}.toml: no entry {key!r}. Add it, with its unit and basis (intake proof lists all)."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AssumptionRule:
    """One entry of assumptions.toml. Figures are in the canonical unit of the field, or shares of the field `of`."""

    id: str
    field: str | None
    friction: str | None
    of: str | None
    when: Mapping[str, tuple[str | bool, ...]]
    low: float
    typical: float
    high: float
    possible: tuple[float, float]
    values: tuple[Any, ...] | None
    test: str | None
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RangeData:
    """Everything that sizing reads from the folder."""

    folder: Path
    families: Mapping[str, Limits]
    common: Limits
    weights: Mapping[str, float]
    weights_together: float
    penalty: Mapping[str, float]
    simplicity: Mapping[str, float]
    scale: Mapping[str, float]
    handling: Mapping[str, float]
    handling_shift: Mapping[str, float]
    rules: tuple[AssumptionRule, ...]
    odds: Mapping[str, tuple[tuple[Any, float], ...]]
    priors: Mapping[str, Mapping[str, tuple[float, float]]]
    prior_space: Mapping[str, tuple[float, float]]
    approx: Mapping[str, float]
    sentences: Mapping[str, Mapping[str, str]]
    hash: str
    version: str = "1"


def load_range(questions: Any = None) -> RangeData:
    """The range data of a questions folder (the shipped one by default). Raises RangeError, FolderError."""
    return _load(questions_folder(questions))


@cache
def _load(folder: Path) -> RangeData:
    digest = hashlib.sha256()
    files = {name: _toml(folder / "range" / f"{name}.toml", digest) for name in (COMMON, *FAMILIES, "scoring")}
    assumptions = _toml(folder / "assumptions.toml", digest)
    sentences = _toml(folder / "sentences" / "sizing.toml") | _toml(folder / "sentences" / "families.toml")
    common, common_bases, common_units = _entries(COMMON, files[COMMON])
    families: dict[str, Limits] = {}
    for family in FAMILIES:
        own, bases, units = _entries(family, files[family])
        homes = {key: COMMON for key in common} | {key: family for key in own}
        families[family] = _limits(
            family, {**common, **own}, homes, {**common_bases, **bases}, {**common_units, **units}
        )
    scoring = files["scoring"]
    return RangeData(
        folder=folder,
        families=families,
        common=_limits(COMMON, common, {}, common_bases, common_units),
        weights=_floats(scoring["weights"]),
        weights_together=sum(_floats(scoring["weights"]).values()),
        penalty=_floats(scoring["penalty"]),
        simplicity=_floats(scoring["simplicity"]),
        scale=_floats(scoring["scale"]),
        handling=_floats(scoring["handling"]),
        handling_shift=_floats(scoring["handling_shift"]),
        rules=tuple(_rule(entry) for entry in assumptions["assumption"]),
        odds=_odds(assumptions.get("odds", ())),
        priors={kind: {k: _pair(v) for k, v in prior.items()} for kind, prior in assumptions["prior"].items()},
        prior_space={key: _pair(pair) for key, pair in assumptions["prior_space"].items()},
        approx=_floats(assumptions["approx"]),
        sentences=sentences,
        hash=digest.hexdigest()[:16],
    )


def _limits(
    family: str, entries: Mapping[str, Any], homes: Mapping[str, str], bases: Mapping[str, str],
    units: Mapping[str, str],
) -> Limits:  # fmt: skip
    kind = Limits if entries.keys() >= _shipped_keys(family) else LimitsWithHoles
    return kind(family, entries, homes, bases, units)


@cache
def _shipped_keys(family: str) -> frozenset[str]:
    """The entries that the checks of a family read: those of the folder that ships with the program."""
    files = {name: _toml(shipped_folder() / "range" / f"{name}.toml") for name in (COMMON, family)}
    return frozenset(key for entries in files.values() for key in entries)


def _odds(entries: Iterable[Mapping[str, Any]]) -> dict[str, tuple[tuple[Any, float], ...]]:
    """By field: its rare words with their shares."""
    found: dict[str, tuple[tuple[Any, float], ...]] = {}
    for entry in entries:
        found[entry["field"]] = (*found.get(entry["field"], ()), (entry["word"], float(entry["share"])))
    return found


def _toml(path: Path, digest: Any = None) -> dict[str, Any]:
    try:
        raw = path.read_bytes()
        if digest is not None:
            digest.update(raw)
        return tomllib.loads(raw.decode("utf-8"))
    except FileNotFoundError:
        raise RangeError(f"{path}: the file is missing. Copy it from the folder that ships with the program.") from None
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise RangeError(f"{path}: not readable as TOML ({error}). Mend it; intake proof shows the line.") from None


def _entries(name: str, table: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, str], dict[str, str]]:
    values: dict[str, Any] = {}
    bases: dict[str, str] = {}
    units: dict[str, str] = {}
    for key, entry in table.items():
        try:
            values[key] = to_si(entry["is"], entry["unit"])
            bases[key] = str(entry["basis"])
            units[key] = _SI_UNIT.get(entry["unit"], entry["unit"])
        except (TypeError, KeyError):
            raise RangeError(
                f'range/{name}.toml: "{key}" needs is, unit and basis. Write {key} = {{ is = 1.0, unit = "m", '
                'basis = "demo value" }.'
            ) from None
    return values, bases, units


def to_si(value: Any, unit: str) -> Any:
    """A figure, or a list of them, from its unit in the file to SI and radians; words stay."""
    if isinstance(value, list):
        return tuple(to_si(entry, unit) for entry in value)
    if isinstance(value, str):
        return value
    factor, offset = _TO_SI.get(unit, (1.0, 0.0))
    return float(value) * factor + offset


def _floats(table: Mapping[str, Any]) -> dict[str, float]:
    return {key: float(value) for key, value in table.items()}


def _pair(pair: Any) -> tuple[float, float]:
    return float(pair[0]), float(pair[1])


def _rule(entry: Mapping[str, Any]) -> AssumptionRule:
    values = entry.get("values")
    possible = entry.get("possible", [0.0, 0.0])
    return AssumptionRule(
        id=entry["id"],
        field=entry.get("field"),
        friction=entry.get("friction"),
        of=entry.get("of"),
        when={key: tuple(words) for key, words in entry.get("when", {}).items()},
        low=float(entry.get("low", 0.0)),
        typical=float(entry.get("typical", 0.0)),
        high=float(entry.get("high", 0.0)),
        possible=_pair(possible),
        values=None if values is None else tuple(values),
        test=entry.get("test"),
        basis=entry["basis"],
    )
