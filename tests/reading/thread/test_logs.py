"""Pasted logs and mails: who said what and when, and which facts stand of it in the end."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from intake.interview.threads import Thread
from intake.talk import Interview

LOGS = tomllib.loads((Path(__file__).parent / "logs.toml").read_text(encoding="utf-8"))["log"]
UNITS = {
    "lb": 0.45359237,
    "kg": 1.0,
    "in": 0.0254,
    "ft": 0.3048,
    "m": 1.0,
    "mm": 0.001,
    "/min": 1.0,
    "C": 1.0,
    "V": 1.0,
    "Hz": 1.0,
}


@pytest.fixture(scope="module")
def played() -> dict[str, Thread]:
    return {log["id"]: Interview().take_thread(log["text"]) for log in LOGS}


def wanted_value(said: str) -> Any:
    """ "30 lb" as a number in canonical units; "yes" and "no" as truth; anything else as the word it is."""
    if said in ("yes", "no"):
        return said == "yes"
    number, _, unit = said.partition(" ")
    try:
        return float(number) * UNITS.get(unit, 1.0)
    except ValueError:
        return said


@pytest.mark.parametrize("log", LOGS, ids=lambda log: log["id"])
def test_a_log_is_cut_into_what_each_side_said(log: dict[str, Any], played: dict[str, Thread]) -> None:
    turns = played[log["id"]].turns
    shown = [f"{turn.who}|{turn.name or ''}|{turn.at or ''}|{turn.text.replace(chr(10), ' / ')}" for turn in turns]
    assert len(shown) == len(log["turns"]), shown
    for got, want in zip(shown, log["turns"], strict=True):
        assert got.startswith(want[:-1]) if want.endswith("…") else got == want


@pytest.mark.parametrize("log", LOGS, ids=lambda log: log["id"])
def test_the_facts_of_a_log_are_the_visitors(log: dict[str, Any], played: dict[str, Thread]) -> None:
    stands = {fact.field: fact for fact in played[log["id"]].facts}
    for row in log["facts"]:
        if row.startswith("no "):
            assert row[3:] not in stands
            continue
        name, said = row.split(" = ")
        value = wanted_value(said)
        fact = stands[name]
        if isinstance(value, float):
            assert fact.high == pytest.approx(value), name
        else:
            assert fact.value == value, name


@pytest.mark.parametrize("log", LOGS, ids=lambda log: log["id"])
def test_every_place_cuts_its_words(log: dict[str, Any], played: dict[str, Thread]) -> None:
    thread, text = played[log["id"]], log["text"]
    visitor = [piece for turn in thread.turns if turn.who == "visitor" for part in turn.parts for piece in part.pieces]
    for fact in thread.facts:
        assert fact.span is not None
        start, end = fact.span
        assert text[start:end] == fact.said
        assert any(first <= start and start < last for first, last in visitor), fact
    for turn in thread.turns:
        start, end = turn.span
        assert text[start:end].split()[0] == turn.text.split()[0]
        assert text[start:end].split()[-1] == turn.text.split()[-1]


@pytest.mark.parametrize("log", [log for log in LOGS if "doubts" in log], ids=lambda log: log["id"])
def test_what_nobody_took_back_is_asked_with_both_readings(log: dict[str, Any], played: dict[str, Thread]) -> None:
    doubts = {doubt.field: doubt for doubt in played[log["id"]].doubts}
    for name in log["doubts"]:
        assert name in doubts
        assert "Which of the two holds?" in doubts[name].ask
