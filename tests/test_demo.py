"""The worked conversations run through the real code and end as their files say."""

import pytest

from intake.cli.conversation import load, shipped
from intake.cli.player import Player

NAMES = [path.stem for path in shipped()]


@pytest.fixture(scope="module")
def played() -> dict[str, tuple[Player, list[str]]]:
    """Every conversation, played once: the player as it ended and the lines that it gave."""
    players = {path.stem: Player(load(path)) for path in shipped()}
    return {name: (player, list(player.lines())) for name, player in players.items()}


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_conversation_ends_as_its_file_says(name: str, played: dict[str, tuple[Player, list[str]]]) -> None:
    player, lines = played[name]
    assert player.missed() == []
    assert any("first sizing" in line.lower() for line in lines)


def test_the_three_conversations_end_in_three_different_ways(played: dict[str, tuple[Player, list[str]]]) -> None:
    assert played["first_call"][0].talk.result().best in ("side_grip", "spiral")
    assert len(played["second_thoughts"][0].bests) >= 2
    assert played["too_cold"][0].talk.result().refer_out


def test_questions_are_asked_in_the_programs_own_words(played: dict[str, tuple[Player, list[str]]]) -> None:
    player, lines = played["first_call"]
    asked = [line for line in lines if line.startswith("Desk asks: ")]
    assert len(asked) >= 5
    assert all(event.body["question"] for event in player.talk.events if event.kind == "asked")
