"""What the checks of all files with rows share: each sound row with its number, names that exist, words that fit."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from math import isfinite
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from intake.interview.complaints import complain, named
from intake.interview.hints import KINDS, did_you_mean
from intake.interview.model_slips import Place, shown, slips
from intake.interview.toml_file import TomlFile
from intake.spec.problem import Problem
from intake.spec.vocabulary import Field, vocabulary

Model = TypeVar("Model", bound=BaseModel)


def entries(file: TomlFile, key: str, model: type[Model], problems: list[Problem]) -> Iterator[tuple[int, Model]]:
    """Each sound entry with its number; what is wrong with the others goes into `problems`."""
    raw = file.data.get(key, [])
    if not isinstance(raw, list):
        problems.append(complain("no_list", file.name, key=key, given=shown(raw), sample=f"each entry under [[{key}]]"))
        return
    for at, one in enumerate(raw):
        try:
            yield at, model.model_validate(one)
        except ValidationError as error:
            problems.extend(slips(error, file.name, _places(file, key, at, one, model)))


def _places(
    file: TomlFile, key: str, at: int, raw: Any, model: type[BaseModel]
) -> Callable[[tuple[int | str, ...]], Place]:
    id = raw.get("id") if isinstance(raw, Mapping) else None
    owner = f"{key} {named(id)}" if isinstance(id, str) else f"{key} number {at + 1}"

    def place_of(loc: tuple[int | str, ...]) -> Place:
        name = str(loc[0]) if loc else key
        return Place(owner=owner, key=name, line=file.line_of_key(key, at, name), model=model)

    return place_of


def unknown_fields(file: TomlFile, key: str, at: int, owner: str, names: Iterable[str]) -> list[Problem]:
    """Each name that is no field, at its line."""
    return [
        complain(
            "unknown_field",
            file.name,
            file.line_in_entry(key, at, f'"{name}"'),
            owner=owner,
            field=named(name),
            hint=did_you_mean(name),
        )
        for name in names
        if name not in vocabulary()
    ]


def may_be(field: Field, word: Any) -> bool:
    """True when the field can have this value."""
    if field.kind == "choice":
        return word in field.choices
    if field.kind == "yes_no":
        return isinstance(word, bool)
    return field.is_number and isinstance(word, int | float) and not isinstance(word, bool) and isfinite(word)


def accepted(field: Field, word: Any) -> str:
    """What the field can have, the nearest spelling where one is near."""
    if field.kind == "choice":
        return did_you_mean(str(word), field.choices)
    return "Accepted: true, false" if field.kind == "yes_no" else f"It is a {KINDS[field.kind]}"
