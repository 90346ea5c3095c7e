"""The signs of a sketch: box drawing, or plain ASCII. Meaning hangs on the sign alone, never on colour."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Signs:
    """One set. `shallow`: a nearly level line low, half way up and high in its cell; `corners`: of a box, clockwise."""

    shallow: tuple[str, str, str]
    rising: str
    falling: str
    upright: str
    level: str
    corners: tuple[str, str, str, str]
    ends: tuple[str, str]
    ceiling: str
    floor: str
    dash: str
    dash_upright: str
    belt: str
    product: str
    hidden: str
    frame: str
    misfit: str
    arrows: tuple[str, str, str, str]
    """Right, up, left, down."""
    towards: str
    away: str


BOXES = Signs(
    shallow=("▁", "─", "▔"), rising="╱", falling="╲", upright="│", level="─", corners=("┌", "┐", "┘", "└"),
    ends=("├", "┤"), ceiling="═", floor="_", dash="┄", dash_upright="┊", belt="░", product="■", hidden="·", frame="∙",
    misfit="!",    arrows=("▶", "▲", "◀", "▼"), towards="◉", away="⊗",
)  # fmt: skip

PLAIN = Signs(
    shallow=("_", "-", "'"), rising="/", falling="\\", upright="|", level="-", corners=("+", "+", "+", "+"),
    ends=("|", "|"), ceiling="=", floor="_", dash=".", dash_upright=".", belt=":", product="#", hidden="`", frame="'",
    misfit="!",    arrows=(">", "^", "<", "v"), towards="o", away="x",
)  # fmt: skip
