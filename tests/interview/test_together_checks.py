"""What is asked in one breath, and rare words: questions and fields that there are, each once, shares that can be."""

from collections.abc import Callable
from pathlib import Path

import pytest

from intake.interview.proof import prove
from intake.interview.together import together_rows
from intake.spec.folder import shipped_folder

Told = Callable[..., list[str]]

ROW = """\
[[together]]
questions = ["space_passage", "space_opening"]
say = "What passes underneath, and what is the smallest door?"
why = "Both are seen on one walk."

"""
ODDS = """\
[[odds]]
field = "product.rigidity"
word = "soft"
share = 0.05
basis = "common practice, no source"

"""


def test_one_more_sound_row_is_welcome(told: Told) -> None:
    assert told("together.toml", ROW) == []
    assert told("assumptions.toml", ODDS) == []


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            '"space_passage"',
            '"space_pasage"',
            'together.toml:2: together number 1 joins "space_pasage", which is no question of the tree. '
            'Did you mean "space_passage"?',
        ),
        (
            '"space_opening"',
            '"space_passage"',
            'together.toml:2: together number 1 names "space_passage" twice. Take one of them out.',
        ),
        (
            ', "space_opening"',
            "",
            "together.toml:2: together number 1 joins fewer than two questions. "
            "Name at least two, or take the row out.",
        ),
        (
            'questions = ["space_passage", "space_opening"]\n',
            "",
            'together.toml:1: together number 1 has no questions. Add questions = ["product_type", "product_size"].',
        ),
        (
            'say = "What passes underneath, and what is the smallest door?"\n',
            "",
            'together.toml:1: together number 1 has no say. Add say = "How high does it go, 10 ft or 3 m, say?".',
        ),
        (
            'why = "Both are seen on one walk."',
            'why = " "',
            'together.toml:4: why of together number 1 is empty. Write "what the answer decides".',
        ),
        (
            "why =",
            "wyh =",
            'together.toml:4: together number 1 has "wyh", which it cannot have. Did you mean "why"?',
        ),
    ],
)
def test_a_slip_in_what_is_asked_together_is_told_with_file_and_line(
    told: Told, old: str, new: str, sentence: str
) -> None:
    assert old in ROW
    assert sentence in told("together.toml", ROW.replace(old, new, 1))


def test_a_table_of_another_name_is_told(told: Told) -> None:
    (problem,) = told("together.toml", ROW.replace("[[together]]", "[[togehter]]"))
    assert problem.endswith('the file has "togehter", which it cannot have. Did you mean "together"?')


def test_a_question_taken_out_of_the_tree_is_missed_in_the_row(told: Told) -> None:
    problems = told("tree/rise.toml", old='id = "rise_turn"', new='id = "rise_corner"')
    assert [one for one in problems if one.startswith("together.toml:") and '"rise_turn"' in one]


def test_a_folder_without_the_file_has_the_shipped_rows(told: Told, folder: Path) -> None:
    (folder / "together.toml").unlink()
    assert told("tree/rate.toml") == []
    assert prove(folder).is_sound
    assert together_rows(folder) == together_rows(shipped_folder()) != ()


def test_a_file_that_is_no_toml_is_told_with_its_line(told: Told) -> None:
    assert told("together.toml", "questions = oops\n")[0].startswith("together.toml:1: this is not TOML: ")


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            '"product.rigidity"',
            '"product.rigidty"',
            'assumptions.toml:2: odds number 1 names "product.rigidty", which fields.toml does not have. '
            'Did you mean "product.rigidity"?',
        ),
        (
            '"soft"',
            '"sotf"',
            'assumptions.toml:3: odds number 1 has the word "sotf", which its field cannot have. Did you mean "soft"?',
        ),
        (
            '"product.rigidity"\nword = "soft"',
            '"site.air"\nword = "no"',
            'assumptions.toml:3: odds number 1 has the word "no", which its field cannot have. Accepted: true, false.',
        ),
        (
            '"product.rigidity"',
            '"product.weight"',
            'assumptions.toml:3: odds number 1 has the word "soft", which its field cannot have. It is a figure.',
        ),
        *(
            (
                "share = 0.05",
                f"share = {share}",
                f"assumptions.toml:4: odds number 1 has the share {share}. "
                "Write a share above 0 and below 0.5, like 0.03.",
            )
            for share in ("0.0", "0.5", "-0.1", "1.2")
        ),
        (
            "share = 0.05",
            'share = "rare"',
            'assumptions.toml:4: share of odds number 1 is "rare". Write a share above 0 and below 0.5, like 0.03.',
        ),
        (
            'basis = "common practice, no source"\n',
            "",
            'assumptions.toml:1: odds number 1 has no basis. Add basis = "common practice, no source", or the source.',
        ),
        (
            'word = "soft"\n',
            "",
            "assumptions.toml:1: odds number 1 has no word. "
            "Add word = a word of the field in quotes, or true or false.",
        ),
    ],
)
def test_a_slip_in_the_rare_words_is_told_with_file_and_line(told: Told, old: str, new: str, sentence: str) -> None:
    assert old in ODDS
    assert sentence in told("assumptions.toml", ODDS.replace(old, new, 1))


def test_the_same_rare_word_twice_is_told_at_the_second(told: Told) -> None:
    problems = told("assumptions.toml", ODDS + ODDS)
    assert problems == [
        'assumptions.toml:9: odds number 2 draws "soft" of "product.rigidity" a second time. Leave one of the two.'
    ]


def test_rare_words_that_are_most_of_all_jobs_together_are_told(told: Told) -> None:
    first = ODDS.replace("0.05", "0.3")
    second = first.replace('"soft"', '"semi_rigid"')
    assert any(
        problem.startswith('assumptions.toml:10: the rare words of "product.rigidity" have half of all jobs or more')
        for problem in told("assumptions.toml", first + second)
    )
