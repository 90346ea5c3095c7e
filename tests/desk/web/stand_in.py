"""Stands in for a desk: speaks its protocol and writes down how it was started. Run as a script.

    stand_in.py FOLDER MANNER SITTING

MANNER: polite (leaves when asked), stubborn (hears neither asking nor SIGTERM, and has a child), broken (ends at once),
leaving (ends by itself after the first key).
"""

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path


def main() -> None:
    folder, manner, sitting = Path(sys.argv[1]), sys.argv[2], sys.argv[3]
    child = 0
    if manner == "stubborn":
        signal.signal(signal.SIGTERM, signal.SIG_IGN)
        child = subprocess.Popen(
            [sys.executable, "-c", "import time; time.sleep(600)"], stdout=subprocess.DEVNULL, stdin=subprocess.DEVNULL
        ).pid
    told = {"pid": os.getpid(), "child": child, "sitting": sitting, "argv": sys.argv, "environment": dict(os.environ)}
    beside = folder / f".{os.getpid()}"
    beside.write_text(json.dumps(told))
    beside.rename(folder / f"{os.getpid()}.json")
    if manner == "broken":
        sys.exit("a fault")
    write(b"__GANGLION__\n")
    say(f"hello {os.environ['COLUMNS']}x{os.environ['ROWS']}")
    while packet := read():
        kind, payload = packet
        if kind == b"M" and json.loads(payload)["type"] == "quit" and manner != "stubborn":
            break
        say(f"got {kind.decode()} {payload.decode()}")
        if manner == "leaving":
            break
    if manner == "stubborn":
        time.sleep(600)
    meta = b'{"type": "exit"}'
    write(b"M" + len(meta).to_bytes(4, "big") + meta)


def say(words: str) -> None:
    write(b"D" + len(words.encode()).to_bytes(4, "big") + words.encode())


def write(piece: bytes) -> None:
    sys.stdout.buffer.write(piece)
    sys.stdout.buffer.flush()


def read() -> tuple[bytes, bytes] | None:
    kind = sys.stdin.buffer.read(1)
    if not kind:
        return None
    return kind, sys.stdin.buffer.read(int.from_bytes(sys.stdin.buffer.read(4), "big"))


if __name__ == "__main__":
    main()
