"""The command as a whole: codes, one-line complaints, no traceback."""

import contextlib
import io
import subprocess
import sys

import pytest

from intake.cli import COMMANDS, main


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself_with_an_example(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, "--help"]) == 0
    said = capsys.readouterr().out
    assert "example" in said
    assert f"intake {command}" in said.split("example", 1)[1]


def test_help_lists_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--help"]) == 0
    said = capsys.readouterr().out
    assert all(f"\n    {command} " in said for command in COMMANDS)


def one_line(err: str) -> str:
    assert err.count("\n") == 1, err
    assert "Traceback" not in err
    return err


@pytest.mark.parametrize("words", [["sice"], ["size", "--frob"], ["handoff", "x"], ["replay", "a", "--speed", "-1"]])
def test_wrong_words_get_one_line_and_code_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(words) == 2
    assert "--help" in one_line(capsys.readouterr().err)


def test_the_desk_without_a_terminal_points_to_ask(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([]) == 2
    assert "intake ask" in one_line(capsys.readouterr().err)


def test_an_unexpected_fault_is_one_line_and_shows_itself_only_when_asked(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("intake.reading.read", broken)
    monkeypatch.setattr(sys, "stdin", io.StringIO("30 lb"))
    monkeypatch.delenv("INTAKE_DEBUG", raising=False)
    assert main(["read"]) == 1
    assert "INTAKE_DEBUG=1" in one_line(capsys.readouterr().err)
    monkeypatch.setenv("INTAKE_DEBUG", "1")
    monkeypatch.setattr(sys, "stdin", io.StringIO("30 lb"))
    assert main(["read"]) == 1
    assert "ZeroDivisionError" in capsys.readouterr().err


def test_stopping_by_the_keyboard_says_so(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("intake.reading.read", stopped)
    monkeypatch.setattr(sys, "stdin", io.StringIO("30 lb"))
    assert main(["read"]) == 130
    assert one_line(capsys.readouterr().err) == "intake: stopped.\n"


def test_a_folder_of_questions_that_is_none_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: object
) -> None:
    monkeypatch.setenv("INTAKE_QUESTIONS", str(tmp_path))
    monkeypatch.setattr(sys, "stdin", io.StringIO('{"rate.peak": 40}'))
    assert main(["size", "-"]) == 2
    assert str(tmp_path) in one_line(capsys.readouterr().err)


def test_a_reader_that_leaves_early_gets_no_complaint() -> None:
    lines = "".join(f'{{"id": {n}, "text": "30 lb"}}\n' for n in range(3000))
    command = [sys.executable, "-m", "intake", "read", "--quantities", "--lines"]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as run:
        assert run.stdin is not None
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdout.close()
        with contextlib.suppress(BrokenPipeError):
            run.stdin.write(lines.encode())
            run.stdin.close()
        assert run.stderr.read() == b""
        assert run.wait() == 0
