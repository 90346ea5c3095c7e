"""The proof of `shorthand.toml`: each slip with its file and line."""

from pathlib import Path

import pytest

from intake.interview.shorthand_checks import shorthand_problems
from intake.interview.toml_file import read_toml
from intake.spec.folder import shipped_folder
from intake.spec.problem import Problem

_HEAD = 'prose = ["the"]\nenglish = ["in", "up"]\n'


def _problems(tmp_path: Path, body: str) -> list[tuple[int | None, str]]:
    path = tmp_path / "shorthand.toml"
    path.write_text(_HEAD + body, encoding="utf-8")
    file = read_toml(path)
    assert not isinstance(file, Problem)
    return [(problem.line, f"{problem.what}. {problem.mend}") for problem in shorthand_problems(file)]


def test_the_shipped_file_is_sound() -> None:
    file = read_toml(shipped_folder() / "shorthand.toml")
    assert not isinstance(file, Problem)
    assert shorthand_problems(file) == []


@pytest.mark.parametrize(
    ("body", "line", "says"),
    [
        ('[anywhere]\n"in" = "infeed"', 4, '"in" is a unit as well'),
        ('[anywhere]\n"kg" = "keg"', 4, '"kg" is a unit as well'),
        ('[anywhere]\n"up" = "upwards"', 4, '"up" is a plain English word as well'),
        ('[anywhere]\n"the" = "there"', 4, "plain English"),
        ('[anywhere]\n"cases" = "case"', 4, "the reader knows already"),
        ('[anywhere]\n"qq" = ""', 4, '"qq" stands for empty'),
        ('[anywhere]\n"qq" = 7', 4, '"qq" stands for 7'),
        ('[anywhere]\n"  " = "case"', 4, "entry without a word"),
        ('[anywhere]\n"qq" = { says = "case", than = "x" }', 4, '"than", which it cannot have here'),
        ('[behind.figure]\n"qq" = { says = "size", over = "12" }', 4, "over of"),
        ('[anywhere]\n"qq" = "case"\n[terse]\n"qq" = "tote"', 6, "is never reached"),
        ('[terse]\n"q q" = "case"\n"Q  Q" = "tote"', 5, "twice"),
        ('[tersely]\n"qq" = "case"', 3, 'no table "tersely"'),
        ('[before.hight]\n"qq" = "case"', 3, 'Did you mean "before.height"?'),
        ('[answers."rate.peek"]\n"qq" = "40"', 3, 'Did you mean "rate.peak"?'),
        ('[answers."rise.turn"]\n"qq" = "purple"', 4, "answers nothing about"),
        ('[yes_no]\n"qq" = { yes = "fragile" }', 4, "has no text for no"),
        ('[yes_no]\n"qq" = { yes = "fragile", no = "fragile" }', 4, "stand for the same"),
        ('[yes_no]\n"qq" = { yes = "fragile", no = "purple" }', 4, "nothing that the reader knows"),
    ],
)
def test_a_slip_is_told_with_its_line(tmp_path: Path, body: str, line: int, says: str) -> None:
    found = _problems(tmp_path, body)
    assert len(found) == 1, found
    assert found[0][0] == line
    assert says in found[0][1]


def test_a_list_that_is_none_is_told(tmp_path: Path) -> None:
    assert "types" in _problems(tmp_path, 'types = "case"\n')[0][1]


def test_one_word_may_mean_two_things_under_two_guards(tmp_path: Path) -> None:
    assert _problems(tmp_path, '[terse]\n"qq" = "full"\n[before.height]\n"qq" = "floor space"') == []
