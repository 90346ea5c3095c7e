"""The worked conversations run through the real code and end as their files say."""

import pytest

from intake.cli.conversation import load, shipped
from intake.cli.player import Player

NAMES = [path.stem for path in shipped()]


@pytest.mark.parametrize("path", shipped(), ids=NAMES)
def test_a_shipped_conversation_ends_as_its_file_says(path: object) -> None:
    player = Player(load(path))  # type: ignore[arg-type]  # shipped() gives paths; ids need them as parameters
    lines = list(player.lines())
    assert player.missed() == []
    assert any("first sizing" in line.lower() for line in lines)


def test_the_three_conversations_end_in_three_different_ways() -> None:
    players = {path.stem: Player(load(path)) for path in shipped()}
    for player in players.values():
        list(player.lines())
    assert players["first_call"].talk.result().best in ("side_grip", "spiral")
    assert len(players["second_thoughts"].bests) >= 2
    assert players["too_cold"].talk.result().refer_out


def test_questions_that_were_asked_are_the_programs_own_words() -> None:
    player = Player(load(shipped()[0]))
    asked = [line for line in player.lines() if line.startswith("Desk asks: ")]
    assert len(asked) >= 5
