"""The files of `cards/` in a questions folder, good entries and bad, and the words that matching goes by."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Any

from pydantic import BaseModel, Field, StrictBool, StrictStr, ValidationError

from intake.advice.cards.card import Card
from intake.interview.complaints import complain, named
from intake.interview.model_slips import Place, shown, slips
from intake.interview.toml_file import TomlFile, read_toml
from intake.interview.tree_model import Entry, Text, Word
from intake.spec.folder import shipped_folder
from intake.spec.problem import Problem

FOLDER, WORDS = "cards", "card_words.toml"
_SAMPLES = {
    "id": '"freezer" (small letters, digits and _)',
    "asks": 'at least three ways in which people ask it: ["can it go in a freezer", "is minus 20 ok", "frozen rooms"]',
    "about": '"work in a freezer room" (one line for the staff)',
    "says": 'the templates in order, the last one without anything of a case: ["The {best} ...", "In general ..."]',
    "what_if": '{ "temperature.zone" = "freezer" }',
    "takes": '"rise.height", or "family"',
    "card": "each card under its own [[card]]",
    "passed_over": '["the", "of"]',
    "endings": '["ing", "s"]',
    "alike": 'what means the same, under [alike]: freezer = ["frozen", "cold store"]',
    "families": 'words for each family, under [families]: spiral = ["spiral", "helix"]',
}


class CardModel(Entry):
    """One [[card]] of a file."""

    id: Word
    asks: Annotated[tuple[Text, ...], Field(min_length=3)]
    about: Text
    says: Annotated[tuple[Text, ...], Field(min_length=1)]
    what_if: dict[str, StrictBool | float | StrictStr] = Field(default={})
    takes: Text | None = None


class ElsewhereModel(Entry):
    """Words that speak of another subject."""

    words: tuple[Text, ...]


class WordsModel(Entry):
    """card_words.toml: words that say nothing, endings, words that mean the same, other subjects, names of families."""

    passed_over: tuple[Text, ...]
    endings: tuple[Text, ...]
    alike: dict[Word, tuple[Text, ...]]
    elsewhere: ElsewhereModel
    families: dict[Word, tuple[Text, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A card with its place: number `at` (from 0) of `file`."""

    card: Card
    file: TomlFile
    at: int

    @property
    def owner(self) -> str:
        """How sentences call it."""
        return f"card {named(self.card.id)}"

    def line(self, needle: str) -> int | None:
        """The line of the card with these words, or the card's own line."""
        return self.file.line_in_entry("card", self.at, needle)


def has_cards(folder: Path) -> bool:
    """True where a folder has cards of its own; else those that ship with the program stand in."""
    return (folder / FOLDER).is_dir()


def read_cards(folder: Path) -> tuple[list[Placed], list[Problem]]:
    """Every card that can be read, file by file, and what is wrong with files and shapes."""
    home = folder if has_cards(folder) else shipped_folder()
    placed: list[Placed] = []
    problems: list[Problem] = []
    for path in sorted((home / FOLDER).glob("*.toml")):
        file = read_toml(path)
        if isinstance(file, Problem):
            problems.append(file)
            continue
        found, wrong = _cards(path.stem, file)
        placed += found
        problems += wrong
    return placed, problems


def read_words(folder: Path) -> tuple[WordsModel | None, TomlFile | None, list[Problem]]:
    """The words of a folder, or of the shipped one where it has none; the file, and what is wrong with it."""
    path = folder / WORDS
    file = read_toml(path if path.exists() else shipped_folder() / WORDS)
    if isinstance(file, Problem):
        return None, None, [file]
    try:
        return WordsModel.model_validate(file.data), file, []
    except ValidationError as error:
        place = _place("the file", WordsModel, lambda key: file.line_of(f"[{key}]") or file.line_of(f"{key} ="))
        return None, file, slips(error, file.name, place, _SAMPLES)


def _cards(topic: str, file: TomlFile) -> tuple[list[Placed], list[Problem]]:
    raw = file.data.get("card", [])
    problems = [
        complain("odd_key", file.name, file.line_of(key), owner="the file", key=named(key), hint="It may have card")
        for key in file.data
        if key != "card"
    ]
    if not isinstance(raw, list):
        wrong = complain("no_list", file.name, None, key="card", given=shown(raw), sample=_SAMPLES["card"])
        return [], [*problems, wrong]
    placed = []
    for at, one in enumerate(raw):
        try:
            model = CardModel.model_validate(one)
        except ValidationError as error:
            problems += slips(error, file.name, _card_place(file, at, one), _SAMPLES)
            continue
        card = Card(
            id=model.id, topic=topic, asks=model.asks, about=model.about, says=model.says,
            what_if=model.what_if, takes=model.takes,
        )  # fmt: skip
        placed.append(Placed(card=card, file=file, at=at))
    return placed, problems


def _card_place(file: TomlFile, at: int, raw: Any) -> Callable[[tuple[int | str, ...]], Place]:
    name = raw.get("id") if isinstance(raw, dict) else None
    owner = f"card {named(name)}" if isinstance(name, str) and name else f"card number {at + 1}"
    return _place(owner, CardModel, lambda key: file.line_of_key("card", at, key))


def _place(
    owner: str, model: type[BaseModel], line_of: Callable[[str], int | None]
) -> Callable[[tuple[int | str, ...]], Place]:
    def place_of(loc: tuple[int | str, ...]) -> Place:
        key = str(loc[0]) if loc else "card"
        return Place(owner=owner, key=key, line=line_of(key), model=model)

    return place_of
