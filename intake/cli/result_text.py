"""A sizing result in plain lines: the recommendation, then every family."""

from collections.abc import Iterator

from intake.advice import Brief, reach, reach_lines, recommendation
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
