"""Whole messages, labelled by hand before the reader saw them: every fact right, and none beside."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from intake.reading import read

MESSAGES = tomllib.loads((Path(__file__).parent / "messages.toml").read_text(encoding="utf-8"))["message"]


def near(want: Any, got: Any) -> bool:
    """Within half a percent, ends apart; a dash stands for any words."""
    if want == "-":
        return isinstance(got, str) and got != ""
    if isinstance(want, list):
        low, high = (None if end == "open" else end for end in want)
        return isinstance(got, tuple) and near(low, got[0]) and near(high, got[1])
    if isinstance(want, (bool, str)) or want is None or got is None:
        return bool(want == got) and type(want) is type(got)
    return isinstance(got, int | float) and abs(want - got) <= 0.005 * abs(want) + 1e-9


@pytest.mark.parametrize("message", MESSAGES, ids=[m["text"][:40] for m in MESSAGES])
def test_a_message_gives_its_facts_and_no_others(message: dict[str, Any], facts: Callable[..., dict[str, Any]]) -> None:
    got = facts(message["text"], message.get("asked"))
    want = message["facts"]
    wrong = {key: (want.get(key), value) for key, value in got.items() if key not in want or not near(want[key], value)}
    missed = {key: value for key, value in want.items() if key not in got}
    assert (wrong, missed) == ({}, {})


@pytest.mark.parametrize("message", [m for m in MESSAGES if "doubt" in m], ids=lambda m: m["text"][:40])
def test_what_may_mean_two_things_is_asked_back(message: dict[str, Any]) -> None:
    doubts = read(message["text"], message.get("asked")).doubts
    assert {doubt.field for doubt in doubts} == set(message["doubt"])
    assert all(doubt.ask.endswith("?") for doubt in doubts)
