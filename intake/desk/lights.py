"""What of a message was understood, as places in its own words: lit while it is typed and after it was sent."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from intake.spec import Case, Fact
from intake.spec.bodies import doubt_from_body, fact_from_body
from intake.spec.clean import one_line
from intake.spec.display import System, label, show_value
from intake.spec.events import Event
from intake.spec.facts import Doubt

if TYPE_CHECKING:  # the answer line stands before the interview is loaded
    from intake.interview.hearing import Preview
    from intake.talk import Interview

Tone = Literal["fact", "doubt", "unread", "ask"]


@dataclass(frozen=True, slots=True)
class Light:
    """A piece of a message from `start` to `end`, and what became of it; `means` says it in words."""

    start: int
    end: int
    tone: Tone
    means: str
    field: str = ""


@dataclass(frozen=True, slots=True)
class Lit:
    """Words with the pieces that were understood, in the order in which they stand, none over another."""

    words: str
    lights: tuple[Light, ...] = ()


def lit_preview(preview: "Preview", system: System) -> Lit:
    """A message that is not sent yet."""
    asks = [Light(*one.span, "ask", f'they ask: "{one_line(one.text, 60)}"') for one in preview.asks]
    heard = preview.heard
    return Lit(preview.words, _lights(preview.words, heard.facts, heard.doubts, heard.unread, asks, system))


def lit_message(case: Case, heard: Event, system: System) -> Lit:
    """A message of the case, as it was understood. `heard`: the event that says so."""
    number = int(heard.body["message"])
    words = case.messages.get(number, ("", ""))[0]
    told = (fact_from_body(body, case.messages) for body in heard.body.get("facts", ()))
    here = [fact for fact in told if fact.message == number]
    read = [doubt_from_body(body, number, case.messages) for body in heard.body.get("doubts", ())]
    doubts = [doubt for doubt in read if any(_same(doubt, one) for one in case.doubts)]
    asks = [Light(*one.span, "ask", "they ask") for one in case.inquiries if one.message == number]
    return Lit(words, _lights(words, here, doubts, heard.body.get("unread", ()), asks, system))


def lit_last(talk: "Interview", system: System) -> Lit | None:
    """The last message of a talk that was read for facts, as it was understood; None where there is none."""
    last = talk.last_heard
    return lit_message(talk.case, last, system) if last is not None else None


def _same(one: Doubt, other: Doubt) -> bool:
    return (one.field, one.span, one.said) == (other.field, other.span, other.said)


def _lights(
    words: str,
    facts: Iterable[Fact],
    doubts: Iterable[Doubt],
    unread: Iterable[str],
    asks: Iterable[Light],
    system: System,
) -> tuple[Light, ...]:
    """All of it in order; where two lie over each other, the first in this order of weight is lit."""
    found: list[Light] = []
    for fact in facts:
        if fact.span is not None:
            found.append(Light(*fact.span, "fact", fact_words(fact, system), fact.field))
    merged = _merged(found)
    rest = [Light(*d.span, "doubt", one_line(d.why), d.field) for d in doubts if d.span is not None]
    for light in (*rest, *asks):
        if not _covered(light, merged):
            merged.append(light)
    for piece in unread:
        places = (Light(place, place + len(piece), "unread", "not used") for place in _places(words, piece))
        free = next((light for light in places if not _covered(light, merged)), None)
        merged += [free] if free is not None else []
    return tuple(sorted((one for one in merged if 0 <= one.start < one.end <= len(words)), key=lambda one: one.start))


def _merged(lights: list[Light]) -> list[Light]:
    """Facts of the same or overlapping words as one light that says all of them."""
    merged: list[Light] = []
    for light in sorted(lights, key=lambda one: (one.start, -one.end)):
        last = merged[-1] if merged else None
        if last is not None and light.start < last.end:
            means = last.means if light.means in last.means.split("; ") else f"{last.means}; {light.means}"
            merged[-1] = Light(last.start, max(last.end, light.end), "fact", means, last.field)
        else:
            merged.append(light)
    return merged


def _covered(light: Light, others: Iterable[Light]) -> bool:
    return any(light.start < other.end and other.start < light.end for other in others)


def _places(words: str, piece: str) -> Iterator[int]:
    """Where a piece of a message stands in it; the reader tells only its words."""
    place = words.find(piece) if piece else -1
    while place >= 0:
        yield place
        place = words.find(piece, place + 1)


def fact_words(fact: Fact, system: System) -> str:
    """A fact in short: "product length 400 mm"."""
    colon = ":" if fact.size > 1 else ""  # "size 2 15 3/4 in" would be read as one figure
    return f"{label(fact.field, fact.size)}{colon} {show_value(fact.field, fact, system)}"


def reading_line(lit: Lit) -> str:
    """All that was understood in one line, for below the words that are typed."""
    parts = []
    for light in lit.lights:
        said = one_line(lit.words[light.start : light.end], 40)
        if light.tone == "unread":
            parts.append(f'not used "{said}"')
        elif light.tone == "doubt":
            parts.append(f'? "{said}": {light.means}')
        else:
            parts.append(light.means)
    return "  |  ".join(parts)
