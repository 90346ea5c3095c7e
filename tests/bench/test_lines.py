"""`intake size --lines`: time for each spec and memory, for few specs and for many. `pytest -m bench -s tests/bench`.

For more than these: `python tests/bench/many_specs.py 100000 | /usr/bin/time -v intake size --lines > results.jsonl`.
"""

import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

pytestmark = pytest.mark.bench

MANY = Path(__file__).with_name("many_specs.py")
FEW_LINES, MANY_LINES = 100, 1000
MEASURED = """
import resource, subprocess, sys
asked = [sys.executable, "-m", "intake", "size", "--lines"]
done = subprocess.run(asked, stdin=open(sys.argv[1]), stdout=subprocess.PIPE)
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print(used.ru_utime + used.ru_stime, used.ru_maxrss, done.stdout.count(b"\\n"), done.returncode)
"""


class Run(NamedTuple):
    seconds: float
    memory_kb: int


def run(count: int, folder: Path) -> Run:
    jobs = folder / f"{count}.jsonl"
    made = subprocess.run([sys.executable, str(MANY), str(count)], capture_output=True, check=True)
    jobs.write_bytes(made.stdout)
    done = subprocess.run(
        [sys.executable, "-c", MEASURED, str(jobs)], capture_output=True, text=True, check=True
    )  # fmt: skip
    seconds, memory, lines, code = done.stdout.split()
    assert (int(lines), int(code)) == (count, 0)
    return Run(float(seconds), int(memory))


def test_a_spec_takes_as_long_and_as_much_memory_among_many_as_among_few(tmp_path: Path) -> None:
    start = run(1, tmp_path)
    few, many = run(FEW_LINES, tmp_path), run(MANY_LINES, tmp_path)
    each_few = (few.seconds - start.seconds) / (FEW_LINES - 1)
    each_many = (many.seconds - start.seconds) / (MANY_LINES - 1)
    print(f"\n{FEW_LINES} specs: {each_few * 1e3:.1f} ms each, {few.memory_kb / 1024:.1f} MB")
    print(f"{MANY_LINES} specs: {each_many * 1e3:.1f} ms each, {many.memory_kb / 1024:.1f} MB")
    print(f"time for each x {each_many / each_few:.2f}, memory x {many.memory_kb / few.memory_kb:.3f}")
    assert each_many < 1.5 * each_few
    assert many.memory_kb < 1.1 * few.memory_kb
