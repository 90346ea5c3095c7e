"""A program on a pseudo-terminal of its own: keys go in as bytes, and every byte that a terminal would get is kept."""

import fcntl
import os
import pty
import select
import signal
import struct
import termios
import time
from collections.abc import Mapping, Sequence
from types import TracebackType

_CHUNK = 65536


class Terminal:
    """Runs a command at `size` (columns, rows). `with Terminal(...) as t: t.until(b"ready"); t.write(b"abc\\r")`."""

    def __init__(
        self,
        command: Sequence[str],
        env: Mapping[str, str],
        *,
        size: tuple[int, int] = (80, 24),
        cwd: str | None = None,
    ) -> None:
        self.began = time.perf_counter()
        self.pid, self._end = pty.fork()
        if self.pid == 0:  # the child becomes the command
            try:
                if cwd is not None:
                    os.chdir(cwd)
                os.execvpe(command[0], list(command), dict(env))
            finally:
                os._exit(127)
        fcntl.ioctl(self._end, termios.TIOCSWINSZ, struct.pack("HHHH", size[1], size[0], 0, 0))
        self.bytes = bytearray()
        """All that has come so far."""
        self._seen = 0

    def __enter__(self) -> "Terminal":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def write(self, keys: bytes) -> float:
        """Send keys. Returns the time at which they went [s]."""
        at = time.perf_counter()
        place = 0
        while place < len(keys):
            place += os.write(self._end, keys[place : place + 1024])
            if len(keys) > 1024:
                self._read(0.0)  # a full line both ways would stand still
        return at

    def until(self, *tokens: bytes, within_s: float = 60.0) -> float:
        """Read until all the tokens have come since the last call. Returns the time at which they had [s]."""
        limit = time.perf_counter() + within_s
        while any(self.bytes.find(token, self._seen) < 0 for token in tokens):
            came = self._read(0.5)
            if time.perf_counter() > limit or not (came or self.runs()):
                raise AssertionError(f"{tokens} did not come; last bytes: {bytes(self.bytes[-600:])!r}")
        at = time.perf_counter()
        self._seen = len(self.bytes)
        return at

    def quiet(self, for_s: float = 0.15, within_s: float = 30.0) -> int:
        """Read until nothing has come for a while. Returns how many bytes came since the last call."""
        limit = time.perf_counter() + within_s
        while time.perf_counter() < limit and self._read(for_s):
            pass
        count = len(self.bytes) - self._seen
        self._seen = len(self.bytes)
        return count

    def _read(self, wait_s: float) -> bool:
        """Take what is there. False when nothing came in time, or the program is gone."""
        if not select.select([self._end], [], [], wait_s)[0]:
            return False
        try:
            came = os.read(self._end, _CHUNK)
        except OSError:  # the program has closed its side
            return False
        self.bytes += came
        return bool(came)

    def runs(self) -> bool:
        """True while the program lives."""
        try:
            return os.waitpid(self.pid, os.WNOHANG) == (0, 0)
        except ChildProcessError:
            return False

    def close(self) -> None:
        """End the program, the hard way if it must be."""
        for number in (signal.SIGTERM, signal.SIGKILL):
            limit = time.perf_counter() + 3.0
            try:
                os.kill(self.pid, number)
                while time.perf_counter() < limit:
                    if os.waitpid(self.pid, os.WNOHANG) != (0, 0):
                        raise ChildProcessError
                    self._read(0.02)
            except (ProcessLookupError, ChildProcessError):
                break
        os.close(self._end)
