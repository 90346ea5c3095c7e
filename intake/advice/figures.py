"""The figures of a family that matter in a recommendation, in the visitor's units."""

from intake.interview.reasons import shown
from intake.interview.wording import Sentences, in_force
from intake.sizing.result import FamilyResult, Figure
from intake.spec.display import System, label, show_range

TOPICS = ("size", "travel", "pace", "load")


def figure_lines(found: FamilyResult, system: System, sentences: Sentences | None = None) -> list[str]:
    """One line a topic: "Size: floor length 3.2 m, overall height 4.1 m."; what is unknown is left out."""
    said = sentences or in_force()
    lines = []
    for topic in TOPICS:
        names = [name.strip() for name in (said.find(f"figure_topic.{topic}") or "").split(",")]
        known = [(name, found.figures[name]) for name in names if name in found.figures]
        parts = [_figure(name, figure, system, said) for name, figure in known if figure.value is not None]
        if parts:
            lines.append(said.say("advice.figures", topic=said.say(f"topic.{topic}"), figures=", ".join(parts)))
    return lines


def _figure(name: str, figure: Figure, system: System, sentences: Sentences) -> str:
    value = shown(figure.value, figure.unit, system)
    spread = _range(figure, system)
    if spread is None or spread == value:
        return sentences.say("advice.figure", name=label(name), value=value)
    return sentences.say("advice.figure_range", name=label(name), value=value, range=spread)


def _range(figure: Figure, system: System) -> str | None:
    if figure.low is None or figure.high is None or figure.unit == "1":
        return None
    return show_range(figure.low, figure.high, figure.unit, system)
