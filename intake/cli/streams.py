"""Standard input and output: UTF-8 whatever the machine's locale says, lines of bounded length, plain text."""

import contextlib
import io
import json
import os
import sys
from collections.abc import Iterator
from typing import IO, Any

LONGEST_LINE = 1_000_000
"""Bytes of one JSON line. A longer one is answered with an error, so that memory stays bounded."""


def prepare() -> None:
    """Make the output able to carry any text. A lone surrogate becomes an escape that JSON reads back."""
    for stream, errors in ((sys.stdout, "backslashreplace"), (sys.stderr, "backslashreplace")):
        if isinstance(stream, io.TextIOWrapper):
            with contextlib.suppress(ValueError, OSError):
                stream.reconfigure(encoding="utf-8", errors=errors)


def _bytes() -> IO[bytes]:
    """Standard input as bytes, also where a test has put a text in its place."""
    raw = getattr(sys.stdin, "buffer", None)
    return raw if raw is not None else io.BytesIO(sys.stdin.read().encode("utf-8", "surrogatepass"))


def read_all() -> str:
    """All of standard input. Bytes that are no UTF-8 become the replacement sign; spans count what stands here."""
    return _bytes().read().decode("utf-8", "replace")


def read_lines() -> Iterator[str | None]:
    """The lines of standard input as they come in; None for one that is too long to take."""
    source = _bytes()
    while chunk := source.readline(LONGEST_LINE + 1):
        if len(chunk) <= LONGEST_LINE or chunk.endswith(b"\n"):
            yield chunk.decode("utf-8", "replace").rstrip("\r\n")
            continue
        while chunk and not chunk.endswith(b"\n"):
            chunk = source.readline(LONGEST_LINE)
        yield None


def print_json(value: Any, *, indent: int | None = 2) -> None:
    """One JSON value on standard output; with indent None on one line, sent at once."""
    sys.stdout.write(json.dumps(value, ensure_ascii=False, indent=indent, allow_nan=False) + "\n")
    if indent is None:
        sys.stdout.flush()


def complain(line: str) -> None:
    """One line on standard error."""
    with contextlib.suppress(OSError):
        print(" ".join(line.split()), file=sys.stderr, flush=True)


def drop_output() -> None:
    """Nobody reads the output any more: send the rest nowhere, so that leaving stays quiet."""
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
