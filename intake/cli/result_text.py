"""A sizing result in plain lines: the recommendation, then every family."""

from collections.abc import Iterator
from shutil import get_terminal_size

from intake.advice import Brief, reach, reach_lines, recommendation
from intake.desk.sketch import sketch_lines
from intake.desk.talk_text import family_lines
from intake.sizing.result import Result
from intake.spec import Spec
from intake.spec.display import System


def result_lines(result: Result, spec: Spec, system: System) -> Iterator[str]:
    """What `intake size` prints without --json."""
    yield "== Recommendation"
    yield from recommendation(result, spec, system)
    yield ""
    yield "== Families"
    yield from family_lines(result, system)


def reach_text(result: Result, spec: Spec, system: System) -> Iterator[str]:
    """What `intake size --reach` prints besides."""
    yield ""
    yield "== How high, how fast, and what would let the others stand"
    yield from reach_lines(reach(Brief(spec=spec, sized=result, system=system)))


_SKETCH = (100, 40)
"""Columns where no terminal says how many it has, and rows."""


def sketch_text(result: Result, spec: Spec, system: System, ascii: bool) -> Iterator[str]:
    """What `intake size --sketch` prints besides, as wide as the terminal is."""
    yield ""
    yield "== Sketch"
    brief = Brief(spec=spec, sized=result, system=system)
    yield from sketch_lines(brief, get_terminal_size(_SKETCH).columns, _SKETCH[1], ascii=ascii)
