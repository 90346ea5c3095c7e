"""A desk killed at any moment loses nothing that it said was kept."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

KILLS, SEED = 200, 20260302


@pytest.mark.skipif(not hasattr(os, "fork"), reason="this system cannot fork")
def test_a_desk_killed_at_two_hundred_moments_loses_nothing_that_was_confirmed(tmp_path: Path) -> None:
    run = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("crash_run.py")), str(tmp_path), str(KILLS), str(SEED)],
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(path for path in sys.path if path)},
    )
    sys.stdout.write(run.stdout)
    assert run.returncode == 0, run.stdout + run.stderr
    inside = int(run.stdout.split(" ms: ")[1].split()[0])
    assert inside > KILLS // 10  # else the moments would prove little
