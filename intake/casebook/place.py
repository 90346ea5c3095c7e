"""Where the book lies, readable by its owner only."""

import contextlib
import os
import stat
from pathlib import Path

_FOLDER, _FILE = "rise-intake", "cases.sqlite3"


def book_path() -> Path:
    """INTAKE_BOOK (a file), or cases.sqlite3 in the user's data folder."""
    named = os.environ.get("INTAKE_BOOK")
    if named:
        return Path(named).expanduser()
    return _data_home() / _FOLDER / _FILE


def _data_home() -> Path:
    # XDG Base Directory Specification: a relative path there is to be ignored.
    given = Path(os.environ.get("XDG_DATA_HOME") or os.environ.get("LOCALAPPDATA") or "")
    return given if given.is_absolute() else Path.home() / ".local" / "share"


def prepare(path: Path) -> None:
    """Make folder (0700) and file (0600) where they are not there yet, and take others' rights from the file.

    A folder that was there keeps its rights: it may be shared for other reasons. Raises OSError.
    """
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    with contextlib.suppress(FileExistsError):
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    if stat.S_IMODE(path.stat().st_mode) & 0o077:
        with contextlib.suppress(OSError):  # not ours to change: the owner has decided
            path.chmod(0o600)
