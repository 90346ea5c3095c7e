"""Commands under test keep their cases in a book of their own, and see a plain environment."""

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def plain_environment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book" / "cases.sqlite3"))
    for name in ("INTAKE_QUESTIONS", "INTAKE_DEBUG"):
        monkeypatch.delenv(name, raising=False)
