"""What each door of the program loads: the core stays light, and only the desk loads the screen library."""

import subprocess
import sys

import pytest

HEAVY = ("textual", "rich", "pint", "pydantic")


def loaded_after(code: str, stdin: str = "") -> set[str]:
    """The top-level names in sys.modules after `code` ran in a clean interpreter."""
    script = f"{code}\nimport sys\nprint('\\nLOADED', *sorted({{name.partition('.')[0] for name in sys.modules}}))"
    run = subprocess.run([sys.executable, "-c", script], input=stdin, capture_output=True, text=True, check=True)
    return set(run.stdout.rsplit("\nLOADED", 1)[1].split())


def test_sizing_alone_loads_no_screen_model_or_unit_library() -> None:
    loaded = loaded_after("import intake.sizing; intake.sizing.size({'rate.peak': 40})")
    assert loaded.isdisjoint(HEAVY)
    assert "intake" in loaded


@pytest.mark.parametrize(
    ("words", "stdin"),
    [
        (["--help"], ""),
        (["size", "--help"], ""),
        (["size", "--lines"], '{"id": 1, "spec": {"rate.peak": 40}}\n'),
        (["read", "--lines"], '{"id": 1, "asked": null, "text": "30 lb"}\n'),
        (["read", "--quantities", "--lines"], '{"id": 1, "text": "30 lb"}\n'),
    ],
    ids=" ".join,
)
def test_commands_for_scripts_load_neither_screen_models_nor_units(words: list[str], stdin: str) -> None:
    assert loaded_after(f"from intake.cli import main; assert main({words!r}) == 0", stdin).isdisjoint(HEAVY)


def test_the_interview_line_by_line_loads_no_screen_library() -> None:
    loaded = loaded_after("from intake.cli import main; assert main(['ask']) == 0", "12 kg cases\n/quit\n")
    assert loaded.isdisjoint({"textual", "rich"})


def test_the_desks_first_frame_waits_for_no_interview() -> None:
    code = "import intake.cli, intake.desk.app; intake.cli._parser()"
    script = f"{code}\nimport sys\nprint(*sys.modules)"
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    loaded = set(run.stdout.split())
    assert "textual.app" in loaded
    assert loaded.isdisjoint({"pydantic", "pint", "rapidfuzz", "sqlite3"})
    later = ("talk", "reading", "sizing", "interview", "advice", "casebook", "handoff")
    assert not [name for name in loaded if name.startswith(tuple(f"intake.{part}" for part in later))]
