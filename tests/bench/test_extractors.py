"""Our reader of quantities beside general-purpose extractors, on the same texts in one run; ratios, not times.

`pytest -m bench -s tests/bench/test_extractors.py` reads our own 150 invented texts. More by the environment:
RIVALS_PYTHON, an interpreter with recognizers-text-suite (needs emoji<2), quantulum3, unit-parse and pint, from the
package registry; QUANTITIES_FILE, JSON lines of {"text", "quantities": [{"kind", "low", "high"}]} from elsewhere, with
"also" for a second value that counts and "ignore" for kinds that count neither way.
"""

import json
import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

pytestmark = pytest.mark.bench

HERE = Path(__file__).with_name("extractors")
OWN_TEXTS = HERE / "texts.jsonl"
OTHERS = ("with_quantulum3", "with_recognizers", "with_unit_parse")
KINDS = frozenset(
    {"length", "mass", "temperature", "rate", "pressure", "force", "voltage", "angle", "speed", "duration", "power"}
)
Row = dict[str, Any]


@dataclass
class Score:
    """How one extractor did. `ready`: processor time for importing it and reading a first text [s]."""

    right: int = 0
    extra: int = 0
    missed: int = 0
    on_negatives: int = 0
    ready: float = 0.0
    texts_a_second: float = 0.0

    @property
    def precision(self) -> float:
        return self.right / max(1, self.right + self.extra)

    @property
    def recall(self) -> float:
        return self.right / max(1, self.right + self.missed)

    @property
    def f1(self) -> float:
        return 2.0 * self.right / max(1, 2 * self.right + self.extra + self.missed)


def near(meant: float, got: float, kind: str) -> bool:
    return abs(meant - got) <= 0.005 * abs(meant) + (0.05 if kind == "temperature" else 1e-12)


def is_right(meant: Row, got: Row) -> bool:
    """Kind and both ends within half a percent. Of an open end the end that is said: not all know open ends."""
    if meant["kind"] != got["kind"]:
        return False
    if meant["low"] is None or meant["high"] is None:
        end = meant["low"] if meant["low"] is not None else meant["high"]
        ends = [got[name] for name in ("low", "high") if got[name] is not None]
        return bool(ends) and all(near(end, one, meant["kind"]) for one in ends)
    if got["low"] is None or got["high"] is None:
        return False
    said = [meant, *meant.get("also", ())]
    return any(all(near(way[end], got[end], meant["kind"]) for end in ("low", "high")) for way in said)


def judge(rows: list[Row], answers: list[list[Row]]) -> Score:
    score = Score()
    for row, answer in zip(rows, answers, strict=True):
        left = [got for got in answer if got["kind"] in KINDS]
        for meant in row["quantities"]:
            if meant["kind"] not in KINDS:
                continue
            hit = next((got for got in left if is_right(meant, got)), None)
            if hit is None:
                score.missed += 1
            else:
                left.remove(hit)
                score.right += 1
        left = [got for got in left if got["kind"] not in row.get("ignore", ())]
        score.extra += len(left)
        score.on_negatives += 0 if row["quantities"] else len(left)
    return score


def run(python: str, runner: str, rows: list[Row]) -> Score:
    """One runner over all texts."""
    given = "".join(json.dumps({"text": row["text"]}) + "\n" for row in rows)
    command = [python, str(HERE / f"{runner}.py")]
    done = subprocess.run(command, input=given, capture_output=True, text=True, check=True, encoding="utf-8")
    *answers, times = [json.loads(line) for line in done.stdout.splitlines()]
    score = judge(rows, answers)
    score.ready, score.texts_a_second = times["ready"], len(rows) / times["seconds"]
    return score


FILES = [OWN_TEXTS, *[Path(name) for name in [os.environ.get("QUANTITIES_FILE")] if name]]


def shown(name: str, score: Score, ours: Score) -> str:
    found = f"precision {score.precision:.3f}  recall {score.recall:.3f}  F1 {score.f1:.3f}"
    speed = f"{score.texts_a_second:6.0f} texts/s (ours x {ours.texts_a_second / score.texts_a_second:.1f})"
    ready = f"ready in {score.ready:.2f} s (ours x {ours.ready / score.ready:.2f})"
    return f"  {name:16s} {found}  on negatives {score.on_negatives:3d}  {speed}  {ready}"


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_our_reader_is_ahead_of_general_purpose_extractors(file: Path) -> None:
    rows = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]
    negatives = sum(not row["quantities"] for row in rows)
    ours = run(sys.executable, "ours", rows)
    print(f"\n{file.name}: {len(rows)} texts, {negatives} of them without a quantity")
    print(shown("ours", ours, ours))
    assert ours.f1 > 0.95
    if not os.environ.get("RIVALS_PYTHON"):
        pytest.skip("RIVALS_PYTHON names no interpreter with the other extractors: ours alone was measured")
    for name in OTHERS:
        theirs = run(os.environ["RIVALS_PYTHON"], name, rows)
        print(shown(name, theirs, ours))
        assert ours.precision > theirs.precision
        assert ours.recall > theirs.recall
        assert ours.on_negatives <= theirs.on_negatives
        assert ours.texts_a_second > theirs.texts_a_second
        assert ours.ready < theirs.ready
