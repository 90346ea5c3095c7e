"""A worked conversation as a file: who says what, and what should come of it."""

import tomllib
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, ValidationError, model_validator

from intake.sizing.result import FAMILIES
from intake.spec import demo_folder, nearest, vocabulary

Deed = Literal["unknown", "later", "undo", "back", "note"]


class ConversationError(Exception):
    """A conversation that cannot be played: which file, where, how to mend it."""


class _Entry(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Turn(_Entry):
    """One turn. `about`: the fields that it answers; the question for them is asked first, in the program's words.

    `does`: what the staff does instead of typing the visitor's words; with "note", `says` is the note.
    """

    who: Literal["visitor", "staff"]
    says: str = ""
    about: tuple[str, ...] = ()
    does: Deed | None = None

    @model_validator(mode="after")
    def _says_or_does(self) -> "Turn":
        if not self.says and self.does is None:
            raise ValueError('a turn has "says" or "does"')
        for name in self.about:
            if name not in vocabulary():
                close = nearest(name)
                raise ValueError(f'there is no field "{name}"' + (f'; did you mean "{close}"?' if close else ""))
        return self


class Expect(_Entry):
    """What should come of it. `facts`: entries of the flat spec; `out`: families ruled out at the end."""

    best: str | None = None
    refers_out: bool = False
    out: tuple[str, ...] = ()
    standing: tuple[str, ...] = ()
    flags: tuple[str, ...] = ()
    facts: dict[str, Any] = {}
    changes_best: bool = False

    @model_validator(mode="after")
    def _known_families(self) -> "Expect":
        for name in (*self.out, *self.standing, *([self.best] if self.best else [])):
            if name not in FAMILIES:
                raise ValueError(f'there is no family "{name}"; there are {", ".join(FAMILIES)}')
        return self


class Conversation(_Entry):
    """The whole file. `scenario` sets the scene in a line or two."""

    title: str
    scenario: str = ""
    turn: tuple[Turn, ...]
    expect: Expect = Expect()


def shipped() -> list[Path]:
    """The conversations that come with the program, by name."""
    return sorted(demo_folder().glob("*.toml"))


def find(name: str) -> Path:
    """A conversation by path, or by the name of one that comes with the program."""
    path = Path(name)
    if path.is_file():
        return path
    known = {found.stem: found for found in shipped()}
    stem = path.name.removesuffix(".toml")
    if stem in known and path.parent == Path():
        return known[stem]
    close = nearest(stem, tuple(known))
    hint = f'Did you mean "{close}"? ' if close else ""
    raise ConversationError(f"{name}: no such conversation. {hint}There are: {', '.join(known)}")


def load(path: Path) -> Conversation:
    """Read and check the file. Raises ConversationError for the first thing that is wrong with it."""
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except UnicodeDecodeError:
        raise ConversationError(f"{path}: not UTF-8 text. Save it as UTF-8.") from None
    except (tomllib.TOMLDecodeError, RecursionError) as fault:
        raise ConversationError(f"{path}: not TOML: {fault}") from None
    try:
        return Conversation.model_validate(data)
    except ValidationError as fault:
        first = fault.errors(include_url=False)[0]
        place = _place(first["loc"])
        raise ConversationError(f"{path}: {place}: {first['msg'].removeprefix('Value error, ')}") from None


def _place(parts: tuple[int | str, ...]) -> str:
    """ "turn 3, who": turns counted from 1, as people count."""
    words = [f"{parts[n - 1]} {part + 1}" if isinstance(part, int) else str(part) for n, part in enumerate(parts)]
    return ", ".join(w for n, w in enumerate(words) if not (n + 1 < len(parts) and isinstance(parts[n + 1], int)))
