"""What waits for whom in a case, in lines."""

from collections.abc import Iterable

from intake.spec.clean import one_line
from intake.spec.matters import Matter
from intake.spec.standing import overdue

NAMES = {"us": "we", "visitor": "the visitor", "works": "the works"}


def waiting_lines(waiting: Iterable[Matter], today: str) -> tuple[str, ...]:
    """What waits, numbered as `/done` takes it."""
    lines = []
    for number, matter in enumerate(waiting, 1):
        kind = "engineering asks" if matter.kind == "question" else NAMES[matter.who]
        due = f", by {matter.by}{', OVERDUE' if overdue(matter, today) else ''}" if matter.by else ""
        lines.append(f"{number}. {kind}: {one_line(matter.what)}{due}")
    return tuple(lines) or ("Nothing is promised or asked back.",)
