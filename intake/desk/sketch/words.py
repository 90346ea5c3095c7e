"""The words of a sketch, from the sentences of the folder, with lengths in the visitor's units."""

import re
from textwrap import wrap

from intake.advice import Brief, family_name
from intake.advice.outline import Arrow, Box, Level, Note, Outline
from intake.interview.wording import by, sentence
from intake.spec.display import show

_BARS_SI = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
_BARS_US = tuple(0.3048 * feet for feet in (0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0))
_LENGTH = re.compile(r"(\d|ft) (?=(?:ft|in|mm|m|\d)\b)")


class Words:
    """Words and lengths for one brief."""

    def __init__(self, brief: Brief) -> None:
        self._sentences, self._system = brief.sentences, brief.system

    def say(self, key: str, **blanks: str) -> str:
        """A sentence of the sketch."""
        return self._sentences.say(f"sketch.{key}", **blanks)

    def size(self, metres: float) -> str:
        """A length of a machine: whole inches or centimetres."""
        return show(round(metres / 0.0254) * 0.0254 if self._system == "us" else round(metres, 2), "m", self._system)

    def over(self, metres: float) -> str:
        """How much too long something is: never nothing."""
        step = 0.0254 if self._system == "us" else 0.01
        return show(max(1, round(metres / step)) * step, "m", self._system)

    def exactly(self, metres: float) -> str:
        """A length as it was told."""
        return show(round(metres, 4), "m", self._system)

    def family(self, name: str) -> str:
        """What the trade calls it."""
        return family_name(name, self._sentences)

    def titles(self, name: str) -> list[str]:
        """The title of the side view where the family is named nowhere else, the longest first."""
        return [
            self.say("title_side_of", family=self.family(name)),
            sentence(self.family(name))[:-1],
            self.say("title_side"),
        ]

    def level(self, level: Level, outline: Outline, above: bool) -> str:
        """A height with its name, for beside the picture. above: it lies higher than the picture reaches."""
        key = level.key + ("_above" if above else "")
        if level.key == "discharge":
            arrows = [part for part in outline.elevation.of("discharge") if isinstance(part, Arrow)]
            depth = arrows[0].depth if arrows else 0
            key += {1: "_towards", -1: "_away"}.get(depth, "")
        value = self.size(level.height) if level.key == "overall" else self.exactly(level.height)
        return self.say(f"level_{key}", value=value)

    def note(self, note: Note) -> str:
        """What is said beside the picture."""
        how = {"over": self.over, "level": self.exactly}
        return self.say(note.key, **{name: how.get(name, self.size)(length) for name, length in note.lengths})

    def floor(self, outline: Outline, *, short: bool) -> str:
        """The floor that the machine takes and what there is."""
        envelope, end = outline.plan.envelope, "_short" if short else ""
        blanks = {"length": self.size(envelope.width), "width": self.size(envelope.height)}
        blanks["machine"] = by([blanks["length"], blanks["width"]])
        room = next((part for part in outline.plan.of("space") if isinstance(part, Box)), None)
        if room is None:
            return self.say(f"floor{end}", **blanks)
        told = {"length": self.exactly(room.width), "width": self.exactly(room.height)}
        told["sides"] = by([told["length"], told["width"]])
        known = {note.key for note in outline.notes}
        if "no_space_length" in known or "no_space_width" in known:
            space = self.say("space_width" if "no_space_length" in known else "space_length", **told)
        else:
            space = self.say(f"space_both{end}", **told)
        return self.say(f"floor_space{end}", space=space, **blanks)

    def bar(self, per_column: float, most: int) -> tuple[float, str]:
        """A round length [m] of two columns at least and `most` at most where there is one, and how it is told."""
        bars = _BARS_US if self._system == "us" else _BARS_SI
        fitting = [one for one in bars if 2.0 <= one / per_column <= most]
        length = fitting[-1] if fitting else min(bars, key=lambda one: abs(one / per_column - 2.0))
        return length, show(length, "m", self._system)


def wrapped(text: str, width: int) -> list[str]:
    """A sentence in rows of a width, a figure and its unit in one row."""
    held = _LENGTH.sub("\\1\N{NO-BREAK SPACE}", sentence(text))
    return [row.replace("\N{NO-BREAK SPACE}", " ") for row in wrap(held, width)]
