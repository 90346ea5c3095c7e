"""The figures of a family that matter in a recommendation, in the visitor's units."""

from intake.interview.reasons import shown
from intake.interview.wording import Sentences, in_force
from intake.sizing.result import FamilyResult, Figure
from intake.spec.display import System, label, show_range

_QUIET = {"slope": 0.0, "largest_tilt": 0.0, "discharge_turn": 0.0, "runs": 1.0, "motors": 1.0, "loads_per_trip": 1.0}
"""Figures that say nothing while they have this value."""

_METRIC_EVERYWHERE = frozenset({"cylinder_bore", "cylinder_stroke"})
"""Cylinders are ordered in millimetres (ISO 15552) wherever the machine goes."""

TOPICS = ("size", "travel", "pace", "load")


def figure_lines(found: FamilyResult, system: System, sentences: Sentences | None = None) -> list[str]:
    """One line a topic: "Size: floor length 3.2 m, overall height 4.1 m."; what is unknown is left out."""
    said = sentences or in_force()
    lines = []
    for topic in TOPICS:
        names = [name.strip() for name in (said.find(f"figure_topic.{topic}") or "").split(",")]
        known = [(n, found.figures[n]) for n in names if n in found.figures and found.figures[n].value is not None]
        parts = [_figure(name, figure, system, said) for name, figure in known if figure.value != _QUIET.get(name)]
        if parts:
            lines.append(said.say("advice.figures", topic=said.say(f"topic.{topic}"), figures=", ".join(parts)))
    return lines


def _figure(name: str, figure: Figure, system: System, sentences: Sentences) -> str:
    system = "si" if name in _METRIC_EVERYWHERE else system
    value = shown(_rounded(figure), figure.unit, system)
    spread = _range(figure, system)
    if spread is None or spread == value:
        return sentences.say("advice.figure", name=label(name), value=value)
    return sentences.say("advice.figure_range", name=label(name), value=value, range=spread)


def _range(figure: Figure, system: System) -> str | None:
    if figure.low is None or figure.high is None or figure.unit == "1":
        return None
    return show_range(figure.low, figure.high, figure.unit, system)


def _rounded(figure: Figure) -> float:
    """Seconds to three digits; all else is rounded as it is shown."""
    value = figure.value or 0.0
    return float(f"{value:.3g}") if figure.unit == "s" else value
