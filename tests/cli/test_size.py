"""`intake size`: files, kept shapes, lines, and what it says of wrong ones."""

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from intake import size
from intake.cli import main

SPEC: dict[str, Any] = {
    "product.type": "case",
    "product.length": 0.4,
    "product.width": 0.3,
    "product.height": 0.25,
    "product.weight": 12,
    "rate.normal": 18,
    "rise.height": 3.2,
    "rise.direction": "up",
}


def lines_out(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], sent: str) -> tuple[int, list[Any]]:
    monkeypatch.setattr(sys, "stdin", io.StringIO(sent))
    code = main(["size", "--lines"])
    return code, [json.loads(line) for line in capsys.readouterr().out.splitlines()]


def test_json_and_toml_files_give_what_the_core_gives(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    as_json, flat_toml, table_toml = tmp_path / "a.json", tmp_path / "b.toml", tmp_path / "c.toml"
    as_json.write_text(json.dumps(SPEC))
    flat_toml.write_text("\n".join(f'"{key}" = {json.dumps(value)}' for key, value in SPEC.items()))
    product = "\n".join(f"{k[8:]} = {json.dumps(v)}" for k, v in SPEC.items() if k.startswith("product."))
    rest = "\n".join(f"{k} = {json.dumps(v)}" for k, v in SPEC.items() if not k.startswith("product."))
    table_toml.write_text(f"{rest}\n[product]\n{product}\n")
    wanted = json.loads(json.dumps(size(SPEC).to_json()))
    for path in (as_json, flat_toml, table_toml):
        assert main(["size", str(path), "--json"]) == 0
        assert json.loads(capsys.readouterr().out) == wanted


def test_the_plain_text_names_the_best_family_and_every_verdict(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "job.json"
    path.write_text(json.dumps(SPEC))
    assert main(["size", str(path)]) == 0
    said = capsys.readouterr().out
    assert sum(line.startswith(("+ ", "? ", "- ")) for line in said.splitlines()) == 9
    assert "\x1b" not in said


@pytest.mark.parametrize(
    ("name", "text", "must_say"),
    [
        ("a.json", '{"product.lenght": 1}', 'Did you mean "product.length"?'),
        ("a.json", '{"rate.peak": -3}', "rate.peak"),
        ("a.json", '{"rate.peak": NaN}', "NaN"),
        ("a.json", '{"rate.peak": 1e999}', "rate.peak"),
        ("a.json", "[1, 2]", "not a spec"),
        ("a.json", "{", "not JSON"),
        ("a.json", "[" * 100_000, "nested too deep"),
        ("a.toml", "rate = ", "not TOML"),
    ],
)
def test_a_wrong_file_is_answered_in_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, text: str, must_say: str
) -> None:
    path = tmp_path / name
    path.write_text(text)
    assert main(["size", str(path)]) == 2
    err = capsys.readouterr().err
    assert must_say in err
    assert err.count("\n") == 1


def test_a_name_that_is_neither_file_nor_case_says_how_to_list_them(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", "no_such_job"]) == 2
    assert "intake cases" in capsys.readouterr().err


def test_lines_come_back_in_order_each_with_its_id(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    sent = "".join(json.dumps({"id": name, "spec": SPEC}) + "\n" for name in ("b", 7, "a", None))
    code, got = lines_out(monkeypatch, capsys, sent)
    assert code == 0
    assert [row["id"] for row in got] == ["b", 7, "a", None]
    assert got[0]["families"] == json.loads(json.dumps(size(SPEC).to_json()))["families"]


def test_a_wrong_line_gets_its_error_and_the_others_their_result(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    sent = "\n".join(
        [
            '{"id": "good", "spec": {"rate.peak": 40}}',
            '{"id": "key", "spec": {"rate.paek": 40}}',
            "not json",
            '{"id": "none"}',
            "[]",
            "",
            '{"id": "huge", "spec": {"rate.peak": 1' + "0" * 400 + "}}",
            '{"id": "last", "spec": {}}',
        ]
    )
    code, got = lines_out(monkeypatch, capsys, sent)
    assert code == 2
    assert [row["id"] for row in got] == ["good", "key", None, "none", None, "huge", "last"]
    assert ["error" in row for row in got] == [False, True, True, True, True, True, False]
    assert set(got[1]["error"]) == {"field", "what", "mend"}
    assert got[1]["error"]["field"] == "rate.paek"
    assert "rate.peak" in got[1]["error"]["mend"]
    assert "line 3" in got[2]["error"]["what"]


def test_a_line_without_end_is_refused_and_the_next_one_is_read(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, got = lines_out(monkeypatch, capsys, '{"id": "' + "x" * 2_500_000 + '"}\n{"id": "next", "spec": {}}\n')
    assert code == 2
    assert "too long" in got[0]["error"]["what"]
    assert got[1]["id"] == "next"


def test_worth_adds_what_sampling_gives(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO(json.dumps(SPEC)))
    assert main(["size", "-", "--json", "--worth"]) == 0
    sampled = json.loads(capsys.readouterr().out)
    assert isinstance(sampled["decided"], bool)
    assert 0.0 <= sampled["share"] <= 1.0


def test_reach_says_how_high_how_fast_and_what_would_help(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "job.json"
    job.write_text(json.dumps(SPEC))
    assert main(["size", str(job), "--reach", "--json"]) == 0
    reach = json.loads(capsys.readouterr().out)["reach"]
    assert reach["index_lift"]["rate"]["value"] == pytest.approx(31.0, rel=1e-5)
    assert reach["index_lift"]["rate"]["stops"] == ["rate"]
    assert {change["field"] for change in reach["reciprocating_lift"]["changes"]} >= {"rate.peak"}
    assert main(["size", str(job), "--reach"]) == 0
    assert "could run at 31/min" in capsys.readouterr().out


def test_reach_is_not_for_lines(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    assert main(["size", "--lines", "--reach"]) == 2
    assert "one job at a time" in capsys.readouterr().err


def test_a_sketch_of_the_leading_machine_stands_under_the_result(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    job = tmp_path / "job.json"
    job.write_text(json.dumps(SPEC))
    monkeypatch.setenv("COLUMNS", "70")
    assert main(["size", str(job), "--sketch"]) == 0
    result, sketch = capsys.readouterr().out.split("== Sketch\n")
    assert "== Families" in result
    assert "No drawing for construction" in sketch
    assert max(map(len, sketch.splitlines())) <= 70
    assert "│" in sketch
    assert main(["size", str(job), "--sketch", "--ascii"]) == 0
    assert capsys.readouterr().out.split("== Sketch\n")[1].isascii()


def test_a_sketch_is_neither_for_json_nor_for_lines(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "job.json"
    job.write_text(json.dumps(SPEC))
    assert main(["size", str(job), "--sketch", "--json"]) == 2
    assert "not both" in capsys.readouterr().err
    assert main(["size", "--lines", "--sketch"]) == 2
    assert "one job at a time" in capsys.readouterr().err
