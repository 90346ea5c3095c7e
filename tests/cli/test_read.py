"""`intake read`: one message or many, as JSON and for people."""

import io
import json
import sys
from typing import Any

import pytest

from intake.cli import main

MESSAGE = (
    "we need to lift 16x12x10 inch taped cases, 30 lb, 25 a minute, from 30 inches to 14 feet, "
    "forklifts drive underneath"
)


def run(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], words: list[str], sent: str
) -> tuple[int, str, str]:
    monkeypatch.setattr(sys, "stdin", io.StringIO(sent))
    code = main(["read", *words])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_a_first_message_gives_its_facts_with_their_words(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, _ = run(monkeypatch, capsys, ["--json"], MESSAGE)
    facts: dict[str, dict[str, Any]] = {fact["field"]: fact for fact in json.loads(out)["facts"]}
    assert code == 0
    assert facts["product.type"]["value"] == "case"
    assert facts["product.length"]["low"] == pytest.approx(16 * 0.0254)
    assert facts["product.width"]["low"] == pytest.approx(12 * 0.0254)
    assert facts["product.height"]["low"] == pytest.approx(10 * 0.0254)
    assert facts["product.weight"]["low"] == pytest.approx(30 * 0.45359237)
    assert facts["rate.normal"]["low"] == pytest.approx(25)
    assert facts["rise.infeed_height"]["low"] == pytest.approx(30 * 0.0254)
    assert facts["rise.discharge_height"]["low"] == pytest.approx(14 * 0.3048)
    assert facts["rise.direction"]["value"] == "up"
    assert facts["space.passage"]["value"] == "forklift"
    for fact in facts.values():
        start, end = fact["span"]
        assert MESSAGE[start:end] == fact["said"]


def test_without_json_each_fact_is_one_line_with_its_words(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, _ = run(monkeypatch, capsys, [], MESSAGE)
    assert code == 0
    assert any(line.startswith("weight of one product: 30 lb, from ") for line in out.splitlines())


def test_what_was_asked_gives_a_bare_answer_its_field(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(monkeypatch, capsys, ["--asked", "rise.height", "--json"], "3.2 m")
    [fact] = json.loads(out)["facts"]
    assert (fact["field"], fact["low"]) == ("rise.height", pytest.approx(3.2))


def test_a_field_that_is_none_is_named_with_the_nearest(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, _, err = run(monkeypatch, capsys, ["--asked", "rise.hieght"], "3 m")
    assert code == 2
    assert 'Did you mean "rise.height"?' in err


def test_lines_are_answered_one_by_one_and_a_wrong_one_does_not_stop_them(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    sent = "\n".join(
        [
            '{"id": 1, "asked": null, "text": "30 lb"}',
            '{"id": 2, "asked": ["product.weight"], "text": "14 kg"}',
            '{"id": 3, "asked": "no.such", "text": "30 lb"}',
            '{"id": 4, "text": 5}',
            '{"id": 5, "text": ""}',
        ]
    )
    code, out, _ = run(monkeypatch, capsys, ["--lines"], sent)
    got = [json.loads(line) for line in out.splitlines()]
    assert code == 2
    assert [row["id"] for row in got] == [1, 2, 3, 4, 5]
    assert ["error" in row for row in got] == [False, False, True, True, False]
    assert got[4] == {"id": 5, "facts": [], "doubts": [], "unread": []}


def test_quantities_need_no_field(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(monkeypatch, capsys, ["--quantities", "--lines"], '{"id": 1, "text": "3 ft 6 in at 40 psi"}')
    found = json.loads(out)["quantities"]
    assert code == 0
    assert [(q["kind"], q["said"]) for q in found] == [("length", "3 ft 6 in"), ("pressure", "40 psi")]
    assert found[0]["low"] == pytest.approx(42 * 0.0254)


def test_control_codes_of_a_message_never_reach_the_terminal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(monkeypatch, capsys, [], "30 \x1b[31mlb\x1b]0;x\x07 cases 12 foo")
    assert "\x1b" not in out
    assert "\x07" not in out
