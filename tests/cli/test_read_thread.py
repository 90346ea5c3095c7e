"""`intake read --thread`: a pasted log, as JSON and for people."""

import io
import json
import sys

import pytest

from intake.cli import main

LOG = """[2026-03-02 10:32] Ann Example: we need to raise cases by 3 m
[2026-03-02 10:33] Showroom: Thanks! How heavy is one? Others send 20 kg.
[2026-03-02 10:34] Ann Example: 12 kg. The ceiling is 5 m
[2026-03-02 10:35] Ann Example: the ceiling is 6 m, by the way
"""


def run(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], words: list[str], sent: str
) -> tuple[int, str, str]:
    monkeypatch.setattr(sys, "stdin", io.StringIO(sent))
    code = main(["read", "--thread", *words])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_json_has_turns_facts_doubts_and_unread_with_places_in_the_whole_text(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, _ = run(monkeypatch, capsys, ["--json"], LOG)
    shown = json.loads(out)
    assert code == 0
    assert list(shown) == ["turns", "facts", "doubts", "unread"]
    first = shown["turns"][0]
    assert (first["who"], first["name"], first["at"]) == ("visitor", "Ann Example", "2026-03-02T10:32")
    assert LOG[first["span"][0] : first["span"][1]] == "we need to raise cases by 3 m"
    assert [turn["who"] for turn in shown["turns"]] == ["visitor", "staff", "visitor", "visitor"]
    facts = {fact["field"]: fact for fact in shown["facts"]}
    assert facts["product.weight"]["low"] == pytest.approx(12)
    for fact in facts.values():
        start, end = fact["span"]
        assert LOG[start:end] == fact["said"]
    [doubt] = shown["doubts"]
    assert doubt["field"] == "space.ceiling"
    assert "5 m" in doubt["ask"]
    assert "6 m" in doubt["ask"]


def test_for_people_the_turns_come_first_and_the_facts_below(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, _ = run(monkeypatch, capsys, [], LOG)
    lines = out.splitlines()
    assert code == 0
    assert lines[0] == "Visitor (Ann Example, 2026-03-02T10:32): we need to raise cases by 3 m"
    assert lines[1].startswith("Staff (Showroom, 2026-03-02T10:33): Thanks!")
    assert 'weight of one product: 12 kg, from "12 kg"' in lines
    assert any(line.startswith("To ask: Earlier you wrote 5 m") for line in lines)


def test_a_lone_message_is_one_turn_of_the_visitor(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(monkeypatch, capsys, ["--json"], "cases of 12 kg, up 3 m\n")
    shown = json.loads(out)
    assert shown["turns"] == [{"who": "visitor", "name": None, "at": None, "span": [0, 22]}]


def test_nothing_at_all_is_no_turn(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(monkeypatch, capsys, ["--json"], " \n")
    assert (code, json.loads(out)) == (0, {"turns": [], "facts": [], "doubts": [], "unread": []})


@pytest.mark.parametrize("words", [["--lines"], ["--quantities"], ["--asked", "rise.height"]])
def test_options_that_do_not_go_with_a_thread_are_named(
    words: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = run(monkeypatch, capsys, words, LOG)
    assert (code, out) == (2, "")
    assert "leave out --lines" in err


def test_signs_that_a_terminal_obeys_do_not_reach_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(monkeypatch, capsys, [], "10:32 A\x1b[31mnn: cases \x1b]0;x\x07of 12 kg\n10:33 Bob: how high?\n")
    assert "\x1b" not in out
    assert "\x07" not in out
