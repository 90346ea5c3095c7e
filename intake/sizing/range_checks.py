"""Checks of the range data and assumptions of a questions folder, for `intake proof`. All problems in one run."""

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from intake.sizing.result import FAMILIES
from intake.spec.folder import questions_folder
from intake.spec.problem import Problem, line_of
from intake.spec.vocabulary import nearest, vocabulary

_UNITS = ("m", "m/s", "m/s2", "s", "s/m", "kg", "kg/m", "kg/m2", "N", "N/m", "W", "Pa", "deg", "degC", "1", "1/min", "week", "h/day", "")  # fmt: skip
_SIGNED = ("degC",)
_FRICTIONS = ("belt", "high_friction_belt", "grip")


def range_problems(folder: Path) -> list[Problem]:
    """Every problem in range/*.toml and assumptions.toml: missing limits, wrong units, figures without a basis."""
    found: list[Problem] = []
    shipped = questions_folder() / "range"
    for name in ("common", *FAMILIES, "scoring"):
        table, problem = _read(folder / "range" / f"{name}.toml", f"range/{name}.toml")
        if problem is not None:
            found.append(problem)
            continue
        if name == "scoring":
            found += _scoring(table, folder)
            continue
        needed, _ = _read(shipped / f"{name}.toml", name)
        found += _limits(name, table, needed, folder)
    table, problem = _read(folder / "assumptions.toml", "assumptions.toml")
    if problem is not None:
        found.append(problem)
    else:
        found += _assumptions(table, folder)
    return found


def _read(path: Path, shown: str) -> tuple[dict[str, Any], Problem | None]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8")), None
    except FileNotFoundError:
        return {}, Problem(file=shown, line=None, what="the file is missing", mend="Copy it from the shipped folder.")
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        return {}, Problem(file=shown, line=None, what=f"not readable as TOML: {error}", mend="Mend that place.")


def _limits(name: str, table: Mapping[str, Any], needed: Mapping[str, Any], folder: Path) -> Iterator[Problem]:
    shown, path = f"range/{name}.toml", folder / "range" / f"{name}.toml"
    for key in needed:
        if key not in table:
            unit, example = needed[key]["unit"], needed[key]["is"]
            mend = f'Add {key} = {{ is = {example!r}, unit = "{unit}", basis = "..." }}.'.replace("'", '"')
            yield Problem(file=shown, line=None, what=f'the limit "{key}" is missing', mend=mend)
    for key, entry in table.items():
        line = line_of(path, f"{key} =")
        if key not in needed:
            close = nearest(key, tuple(needed))
            mend = f'Did you mean "{close}"?' if close else "Take it out: no check reads it."
            yield Problem(file=shown, line=line, what=f'no check reads "{key}"', mend=mend)
            continue
        yield from _entry(shown, line, key, entry, needed[key])


def _entry(shown: str, line: int | None, key: str, entry: Any, needed: Mapping[str, Any]) -> Iterator[Problem]:
    if not isinstance(entry, Mapping) or not {"is", "unit", "basis"} <= set(entry):
        yield Problem(
            file=shown, line=line, what=f'"{key}" needs is, unit and basis',
            mend=f'Write {key} = {{ is = ..., unit = "{needed["unit"]}", basis = "..." }}.',
        )  # fmt: skip
        return
    if entry["unit"] != needed["unit"]:
        yield Problem(
            file=shown, line=line, what=f'"{key}" is in {entry["unit"]!r}, and checks read it in {needed["unit"]!r}',
            mend="Convert the figure and write that unit.",
        )  # fmt: skip
    if not str(entry["basis"]).strip():
        yield Problem(
            file=shown, line=line, what=f'"{key}" has no basis',
            mend='Say where it is from: a published source, "common practice, no source", or "demo value".',
        )  # fmt: skip
    values = entry["is"] if isinstance(entry["is"], list) else [entry["is"]]
    for value in values:
        wants_word = isinstance(needed["is"], list) and bool(needed["is"]) and isinstance(needed["is"][0], str)
        if wants_word != isinstance(value, str) or isinstance(value, bool):
            yield Problem(file=shown, line=line, what=f'"{key}" holds {value!r}', mend="Write figures, as shipped.")
        elif not wants_word and value < 0 and entry["unit"] not in _SIGNED:
            yield Problem(file=shown, line=line, what=f'"{key}" is negative', mend="Write a figure of 0 or more.")
    if isinstance(needed["is"], list) != isinstance(entry["is"], list) or not values:
        yield Problem(
            file=shown, line=line, what=f'"{key}" is not a list where one is read', mend="Write it as shipped."
        )


def _scoring(table: Mapping[str, Any], folder: Path) -> Iterator[Problem]:
    shown = "range/scoring.toml"
    for section in ("weights", "penalty", "simplicity", "handling", "handling_shift"):
        if section not in table:
            yield Problem(file=shown, line=None, what=f"the table [{section}] is missing", mend="Copy it as shipped.")
    for section in ("simplicity", "handling"):
        for family in FAMILIES:
            if family not in table.get(section, {}):
                yield Problem(
                    file=shown, line=None, what=f"[{section}] says nothing of {family}", mend=f"Add {family} = 0.5."
                )


def _assumptions(table: Mapping[str, Any], folder: Path) -> Iterator[Problem]:
    shown, path = "assumptions.toml", folder / "assumptions.toml"
    seen: set[str] = set()
    last: dict[str, bool] = dict.fromkeys(_FRICTIONS, False)
    for entry in table.get("assumption", []):
        id = str(entry.get("id", ""))
        line = line_of(path, f'id = "{id}"') if id else None
        if not id or id in seen:
            yield Problem(file=shown, line=line, what=f"an assumption with no id of its own ({id!r})", mend="Name it.")
        seen.add(id)
        field, friction = entry.get("field"), entry.get("friction")
        if field is not None and field not in vocabulary():
            close = nearest(field)
            mend = f'Did you mean "{close}"?' if close else "The fields are listed by intake proof --fields."
            yield Problem(file=shown, line=line, what=f'"{id}" names "{field}", which is no field', mend=mend)
        if (field is None) == (friction is None):
            yield Problem(
                file=shown, line=line, what=f'"{id}" needs a field or a friction, one of them', mend="Say which."
            )
        if friction is not None and friction not in _FRICTIONS:
            yield Problem(
                file=shown,
                line=line,
                what=f'"{id}" is about friction "{friction}"',
                mend=f"One of: {', '.join(_FRICTIONS)}.",
            )
        if friction in last and not entry.get("when"):
            last[friction] = True
        yield from _assumed(shown, line, id, entry)
    for friction, there in last.items():
        if not there:
            yield Problem(
                file=shown, line=None, what=f'friction "{friction}" has no assumption without conditions',
                mend="Add one at the end, wide enough for all the others.",
            )  # fmt: skip


def _assumed(shown: str, line: int | None, id: str, entry: Mapping[str, Any]) -> Iterator[Problem]:
    if not str(entry.get("basis", "")).strip():
        yield Problem(file=shown, line=line, what=f'"{id}" has no basis', mend="Say where it is from.")
    if "values" in entry:
        field = vocabulary().get(entry.get("field", ""))
        odd = [w for w in entry["values"] if field is not None and field.choices and w not in field.choices]
        if odd:
            yield Problem(file=shown, line=line, what=f'"{id}": {odd[0]!r} is not one of the choices', mend="Mend it.")
        return
    missing = [key for key in ("low", "typical", "high", "possible") if key not in entry]
    if missing:
        yield Problem(file=shown, line=line, what=f'"{id}" lacks {", ".join(missing)}', mend="Give all four.")
        return
    least, most = entry["possible"]
    if not least <= entry["low"] <= entry["typical"] <= entry["high"] <= most:
        yield Problem(
            file=shown, line=line, what=f'"{id}": low, typical, high do not lie in this order within possible',
            mend="Order them: possible low <= low <= typical <= high <= possible high.",
        )  # fmt: skip
    for field in entry.get("when", {}):
        if field not in vocabulary():
            close = nearest(field)
            mend = f'Did you mean "{close}"?' if close else "Take the condition out."
            yield Problem(
                file=shown, line=line, what=f'"{id}" has a condition on "{field}", which is no field', mend=mend
            )
