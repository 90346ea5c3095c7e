"""What the staff's words ask for: our own questions as they are pasted, and free wording."""

import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from intake.interview.tree import load_tree
from intake.reading.thread import asked_in
from intake.spec.folder import questions_folder

ROWS = tomllib.loads((Path(__file__).parent / "asked.toml").read_text(encoding="utf-8"))["asked"]
FOLDER = questions_folder()
TREE = load_tree(FOLDER)
OWN = [(q.say, q.fields) for q in TREE.questions] + [
    (wording.say, wording.asks or q.fields) for q in TREE.questions for wording in q.wordings
]
ALL = list({say: tuple(fields) for say, fields in OWN}.items())
TOGETHER = tomllib.loads((FOLDER / "together.toml").read_text(encoding="utf-8"))["together"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["say"])
def test_free_wording_asks_for_its_fields(row: dict[str, Any]) -> None:
    assert set(asked_in([row["say"]], FOLDER).fields) == set(row["fields"])


@pytest.mark.parametrize(("say", "fields"), ALL, ids=lambda part: part[:30] if isinstance(part, str) else "")
def test_a_question_of_ours_is_known_as_it_is_or_nearly(say: str, fields: tuple[str, ...]) -> None:
    small = re.sub(r"[,:;]", "", say).lower()
    for text in (say, f"Thanks a lot! {say}", f"Got it, 30 lb then.\n{say} No rush.", small):
        assert asked_in([text], FOLDER).fields == fields, text


@pytest.mark.parametrize("row", TOGETHER, ids=lambda row: "+".join(row["questions"]))
def test_several_questions_in_one_breath_are_all_asked(row: dict[str, Any]) -> None:
    wanted = [name for id in row["questions"] for name in TREE.by_id[id].fields]
    assert set(asked_in([f"Great, thank you. {row['say']}"], FOLDER).fields) == set(wanted)


def test_the_last_question_is_told_apart_from_those_before_it() -> None:
    asked = asked_in(["How heavy is one?", "By the way: is it closed?"], FOLDER)
    assert asked.fields == ("product.weight", "product.closed")
    assert asked.last == ("product.closed",)


def test_the_examples_of_a_question_of_ours_are_no_offer() -> None:
    assert (
        asked_in(
            ["What does one weigh? 25 lb or 12 kg, say. If they differ: the lightest and the heaviest."], FOLDER
        ).offer
        == ""
    )
