"""A sizing result in plain lines: the recommendation, then every family."""

import sys
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


def sketch_text(result: Result, spec: Spec, system: System) -> Iterator[str]:
    """What `intake size --sketch` prints besides: in plain ASCII where the output takes nothing else."""
    yield ""
    yield "== Sketch"
    width = get_terminal_size(_SKETCH).columns
    brief = Brief(spec=spec, sized=result, system=system)
    lines = sketch_lines(brief, width, _SKETCH[1])
    yield from lines if _is_shown("".join(lines)) else sketch_lines(brief, width, _SKETCH[1], ascii=True)


def _is_shown(text: str) -> bool:
    """Whether the output has all signs of a text."""
    try:
        text.encode(sys.stdout.encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return False
    return True
