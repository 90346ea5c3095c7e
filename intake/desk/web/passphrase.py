"""The passphrase: where it comes from, and how a try is compared with it."""

import hmac
import os
import secrets
import stat
import unicodedata
from pathlib import Path

VARIABLE = "INTAKE_PASSPHRASE"
SHORTEST, LONGEST = 12, 1000
"""Characters of a passphrase."""

# No letters that look like others on paper; five groups of four carry 99 bits.
_SIGNS = "abcdefghjkmnpqrstuvwxyz23456789"
_GROUPS, _GROUP = 5, 4


class PassphraseError(Exception):
    """A passphrase that cannot be taken; the message says why and what to do."""


class Passphrase:
    """Keeps no passphrase, only a keyed digest that holds for this run."""

    def __init__(self, words: str) -> None:
        kept = _tidy(words)
        if not SHORTEST <= len(kept) <= LONGEST:
            raise PassphraseError(f"the passphrase needs {SHORTEST} to {LONGEST} characters, and this has {len(kept)}")
        self._key = secrets.token_bytes(32)
        self._digest = self._digest_of(kept)

    def matches(self, words: str) -> bool:
        """True for the passphrase. Takes as long for a near miss as for a far one."""
        return hmac.compare_digest(self._digest, self._digest_of(_tidy(words[: LONGEST + 2])))

    def _digest_of(self, words: str) -> bytes:
        return hmac.digest(self._key, words.encode("utf-8", "surrogatepass"), "sha256")


def made_up() -> str:
    """A passphrase for one run, in groups that can be read out."""
    return "-".join("".join(secrets.choice(_SIGNS) for _ in range(_GROUP)) for _ in range(_GROUPS))


def given(file: str | None) -> str | None:
    """The passphrase out of a file, else out of the environment, which forgets it; None where there is neither.

    Raises PassphraseError for a file that cannot be read, or that others may read.
    """
    in_environment = os.environ.pop(VARIABLE, None)  # so that no process started from here inherits it
    if file is None:
        return in_environment
    path = Path(file).expanduser()
    try:
        if os.name == "posix" and stat.S_IMODE(path.stat().st_mode) & 0o077:
            raise PassphraseError(f"others may read {path}; take that from them: chmod 600 {path}")
        with path.open(encoding="utf-8") as lines:
            return lines.readline(LONGEST + 2)
    except (OSError, UnicodeDecodeError) as fault:
        why = fault.strerror if isinstance(fault, OSError) else "it is not UTF-8 text"
        raise PassphraseError(f"{path} cannot be read: {why}") from fault


def _tidy(words: str) -> str:
    """The same letters however they were typed in: one Unicode form, no space or line end around them."""
    return unicodedata.normalize("NFC", words.strip())
