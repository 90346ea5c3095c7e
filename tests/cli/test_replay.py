"""`intake replay`: conversations by name or path, and what it says of wrong ones."""

from pathlib import Path

import pytest

from intake.cli import main

TALK = """
title = "A short one"
[[turn]]
who = "visitor"
says = "cases 400x300x250 mm, 12 kg, 20/min, up 3 m"
[[turn]]
who = "visitor"
about = ["handling.squeeze"]
says = "no squeezing please"
[expect]
out = ["side_grip"]
facts = { "product.weight" = 12 }
"""


def test_without_a_name_it_lists_what_there_is(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["replay"]) == 0
    names = [line.split(":")[0] for line in capsys.readouterr().out.splitlines()]
    assert names == ["first_call", "second_thoughts", "too_cold"]


def test_a_talk_shows_words_facts_verdicts_and_the_result(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "short.toml"
    path.write_text(TALK)
    assert main(["replay", str(path)]) == 0
    said = capsys.readouterr().out
    parts = ["Visitor: cases", "Understood: weight of one product 12 kg", "Out: side-grip", "== Recommendation"]
    places = [said.index(part) for part in parts]
    assert places == sorted(places)


def test_an_expectation_that_is_not_met_is_told_with_code_2(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "short.toml"
    path.write_text(TALK.replace('"product.weight" = 12', '"product.weight" = 13').replace("no squeezing", "squeezing"))
    assert main(["replay", str(path)]) == 2
    assert "Expected otherwise: product.weight should be 13" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("text", "must_say"),
    [
        (TALK.replace('who = "visitor"', 'who = "vistor"', 1), "turn 1, who"),
        (TALK.replace("handling.squeeze", "handling.sqeeze"), 'did you mean "handling.squeeze"?'),
        (TALK.replace('"side_grip"', '"grip"'), 'no family "grip"'),
        (TALK.replace("[expect]", "[expect"), "not TOML"),
        (TALK.replace('says = "no squeezing please"', ""), "turn 2"),
    ],
)
def test_a_wrong_file_says_where_and_how_to_mend_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, must_say: str
) -> None:
    path = tmp_path / "wrong.toml"
    path.write_text(text)
    assert main(["replay", str(path)]) == 2
    err = capsys.readouterr().err
    assert must_say in err
    assert err.count("\n") == 1


def test_a_name_that_is_none_gets_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["replay", "frist_call"]) == 2
    assert 'Did you mean "first_call"?' in capsys.readouterr().err


@pytest.mark.parametrize("pace", ["nan", "-1", "fast", "1e9"])
def test_a_pace_that_is_none_is_refused(pace: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["replay", "first_call", "--speed", pace]) == 2
    assert "reading pace" in capsys.readouterr().err
