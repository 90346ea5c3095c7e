"""Checks of the limits of a questions folder, for `intake proof`. All problems in one run."""

import re
import tomllib
from collections.abc import Iterator, Mapping
from math import isfinite
from pathlib import Path
from typing import Any

from intake.sizing.result import FAMILIES
from intake.spec.folder import questions_folder
from intake.spec.problem import Problem, line_of
from intake.spec.vocabulary import nearest

_SIGNED = ("degC",)
_AT_LINE = re.compile(r"\s*\(at line (\d+), column (\d+)\)$")


def range_problems(folder: Path) -> list[Problem]:
    """Every problem in range/*.toml: missing limits, wrong units, figures without a basis."""
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
    return found


def _read(path: Path, shown: str) -> tuple[dict[str, Any], Problem | None]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8")), None
    except FileNotFoundError:
        return {}, Problem(file=shown, line=None, what="the file is missing", mend="Copy it from the shipped folder.")
    except OSError as error:
        return {}, Problem(file=shown, line=None, what=f"cannot be read ({error.strerror})", mend="Check the file.")
    except UnicodeDecodeError as error:
        return {}, Problem(file=shown, line=None, what=f"byte {error.start} is no UTF-8 text", mend="Save it as UTF-8.")
    except tomllib.TOMLDecodeError as error:
        place = _AT_LINE.search(str(error))
        why = _AT_LINE.sub("", str(error))
        return {}, Problem(
            file=shown,
            line=int(place[1]) if place else None,
            what=f"this is not TOML: {why[:1].lower()}{why[1:]}",
            mend=f"Mend it at line {place[1]}, column {place[2]}." if place else "Mend it at its end.",
        )


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
        is_plain = isinstance(value, str if wants_word else int | float) and not isinstance(value, bool)
        if not is_plain or (not wants_word and not isfinite(value)):
            yield Problem(file=shown, line=line, what=f'"{key}" holds {value!r}', mend="Write figures, as shipped.")
        elif not wants_word and value < 0 and entry["unit"] not in _SIGNED:
            yield Problem(file=shown, line=line, what=f'"{key}" is negative', mend="Write a figure of 0 or more.")
    if isinstance(needed["is"], list) != isinstance(entry["is"], list) or not values:
        yield Problem(
            file=shown, line=line, what=f'"{key}" is not a list where one is read', mend="Write it as shipped."
        )


def _scoring(table: Mapping[str, Any], folder: Path) -> Iterator[Problem]:
    shown = "range/scoring.toml"
    for section in ("weights", "penalty", "scale", "simplicity", "handling", "handling_shift"):
        if section not in table:
            yield Problem(file=shown, line=None, what=f"the table [{section}] is missing", mend="Copy it as shipped.")
    for section in ("simplicity", "handling"):
        for family in FAMILIES:
            rows = table.get(section, {})
            if not isinstance(rows, Mapping) or family not in rows:
                yield Problem(
                    file=shown, line=None, what=f"[{section}] says nothing of {family}", mend=f"Add {family} = 0.5."
                )
