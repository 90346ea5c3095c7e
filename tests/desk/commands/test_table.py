"""Whatever is typed behind a slash comes to lines without control codes, or to a slip that says how to mend it."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from intake.desk.commands import table
from intake.desk.effect import Effect, Slip
from intake.desk.steps import Steps
from intake.desk.work import Work
from intake.spec.clean import LONGEST
from intake.spec.events import Event
from intake.spec.labels import labels
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

MESSAGE = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up 3 m. can it go in a freezer?"
HOSTILE = (
    "\x1b[31mred\x1b[0m", "\x1b]0;title\x07", "\u202ekcab", "[red]x[/red]", "<b>x</b>", "=cmd()", "%s{x}", "\x00",
    "'; drop table event;--", "\ud800", "\n/quit\n", "9" * 5000, "²", "٣", "NaN", "1e999", "@9999",
)  # fmt: skip
SAID = (
    "nothing", "on", "off", "us", "by friday", "by hand", "yes", "no idea", "back", "sorry, 45", "45/min", "40 lb",
    "300 mm", "22 deg", "today", "with 3 cartons", "by me", "on a pallet", "side grip", "slip", "visitor:", "works:",
    "1", "2", "2-3", "3-1", "0", ":", "=", "product.weight@2", '"12 kg"', "60 a minute", "freezer",
)  # fmt: skip
rests = st.lists(
    st.sampled_from([*SAID, *HOSTILE, *vocabulary(), *labels().values()]) | st.text(max_size=20), max_size=5
).map(" ".join)


@cache
def begun() -> tuple[Event, ...]:
    """The events of a case in which something stands."""
    talk = Interview()
    talk.hear(MESSAGE)
    talk.ask()
    return tuple(talk.events)


def shown(effect: Effect) -> Iterator[str]:
    yield from effect.lines
    if effect.page is not None:
        yield effect.page.title
        yield from effect.page.text.split("\n")
    yield from effect.copy.split("\n")


def has_codes(line: str) -> bool:
    return any(ord(sign) < 32 or 127 <= ord(sign) < 160 or "\u202a" <= sign <= "\u202e" for sign in line)


@pytest.fixture
def nowhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder deep in one of this test's own, to work in: what commands write by these words, they write there."""
    inner = tmp_path / "a" / "b" / "c"
    inner.mkdir(parents=True)
    monkeypatch.chdir(inner)
    monkeypatch.setenv("HOME", str(tmp_path))
    return tmp_path


def without_ways_out(rest: str) -> str:
    """The words without what leads from one folder to another."""
    return rest.replace("/", "|").replace("~", "-").replace("\\", "|")


@pytest.mark.parametrize("word", [one.word for one in table.COMMANDS])
@settings(max_examples=6, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(rest=rests)
def test_any_words_behind_any_command_come_to_lines_or_a_slip(
    bare: None, own_book: object, nowhere: Path, word: str, rest: str
) -> None:
    work = Work(Interview.from_events(begun()))
    steps = Steps(work)
    steps.work.question = work.talk.current
    try:
        done = steps.command(f"/{word} {without_ways_out(rest)}")
        lines = [*done.lines, *(shown(done.effect) if done.effect is not None else ())]
    except Slip as slip:
        lines = [str(slip) or "\x00 a slip without words"]
    finally:
        work.close()
    assert not any(has_codes(line) for line in lines)
    assert Interview.from_events(work.talk.events).spec() == work.talk.spec()


@settings(max_examples=30, deadline=None, derandomize=True)
@given(line=st.text(max_size=60))
def test_a_line_that_is_no_command_is_a_slip(bare: None, line: str) -> None:
    with pytest.raises(Slip, match="/help lists them"):
        table.run(Work(Interview()), f"/\N{SNOWMAN}{line}")


def test_a_misspelt_command_is_told_the_nearest() -> None:
    with pytest.raises(Slip, match="Did you mean /promise"):
        table.run(Work(Interview()), "/promis call back")


def test_what_is_longer_than_a_message_is_not_cut_in_silence() -> None:
    with pytest.raises(Slip, match="Send it in parts"):
        table.run(Work(Interview()), "/note " + "a" * LONGEST)


def test_no_two_commands_share_a_word_and_each_says_what_it_does() -> None:
    words = [one.word for one in table.COMMANDS]
    assert len(set(words)) == len(words)
    assert all(one.does and one.group for one in table.COMMANDS)


def test_help_lists_every_command_under_its_head_and_tells_one_by_name() -> None:
    _, effect = table.run(Work(Interview()), "/help")
    assert all(any(line.startswith(f"/{one.word}") for line in effect.lines) for one in table.COMMANDS)
    _, effect = table.run(Work(Interview()), "/help mend")
    assert len(effect.lines) == 1
    assert effect.lines[0].startswith("/mend ")


def test_completing_finds_what_starts_so() -> None:
    assert {one.word for one in table.starting("/un")} == {"unknown", "undo", "units"}
