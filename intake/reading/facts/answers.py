"""The answer to the question just asked: a bare number whose unit is safe, a figure without other words."""

import re
from dataclasses import replace

from intake.reading.amounts.compounds import amount_at
from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.numbers import number_at
from intake.reading.amounts.units import UNITS
from intake.reading.facts.answers_in_words import at_the_floor, counted_in_words, phases_in_words
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.words.yes_or_no import unknown, yes_or_no
from intake.spec.vocabulary import vocabulary

_KIND = {
    "m": "length", "kg": "mass", "1/min": "rate", "degC": "temperature", "Pa": "pressure", "N": "force", "V": "voltage",
    "Hz": "frequency", "deg": "angle", "week": "duration", "h/day": "duration", "1": "number",
}  # fmt: skip
_BARE = {
    "site.voltage": (90.0, 700.0), "site.frequency": (45.0, 65.0), "site.phases": (1.0, 3.0),
    "project.weeks": (1.0, 300.0),
    "site.hours": (1.0, 24.0), "product.sizes": (1.0, 200.0), "product.pieces": (1.0, 500.0),
    "rise.levels": (1.0, 30.0),
    "project.machines": (1.0, 50.0), "rate.normal": (0.0, 300.0), "rate.peak": (0.0, 300.0),
    "rate.pieces": (0.0, 3000.0),
}  # fmt: skip
"""Fields whose question names the unit, so that a bare number within these ends is safe."""
_CHOICES_OF_UNIT = {
    "m": ("in", "mm", "cm"), "kg": ("lb", "kg"), "degC": ("degF", "degC"), "Pa": ("psi", "bar"), "N": ("lbf", "N"),
    "1/min": ("1/min", "1/h"),
}  # fmt: skip
_FEET_FIELDS = frozenset(
    {
        "rise.infeed_height", "rise.discharge_height", "rise.height", "space.ceiling", "space.length", "space.width",
        "space.opening_width", "space.opening_height",
    }
)  # fmt: skip


def answer_drafts(scene: Scene, found: list[Draft | Question]) -> list[Draft | Question]:
    """What the message says to the fields asked that nothing else in it has said."""
    if not scene.asked:
        return []
    said = {item.field for item in found}
    open_fields = [name for name in scene.asked if name in vocabulary() and name not in said]
    if not open_fields:
        return []
    answers: list[Draft | Question] = []
    answers += yes_or_no(scene, open_fields)
    answers += (
        counted_in_words(scene, open_fields) + phases_in_words(scene, open_fields) + at_the_floor(scene, open_fields)
    )
    told = any(f.kind != "number" and (f.bound or f.approx) and id(f) not in scene.used for f in scene.figures)
    vague = unknown(scene)
    if told or not vague:
        answers += _figures(scene, open_fields)
        answers += _bare_choice(scene, open_fields, {item.field for item in answers})
        answers += _text(scene, open_fields)
    for answer in answers:
        if vague and isinstance(answer, Draft) and answer.value is None:
            answer.hedged = True  # "not sure, maybe 5 m"
    return answers


def _figures(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    numbers = [name for name in fields if vocabulary()[name].is_number]
    if not numbers:
        return []
    spoken = _feet_spoken(scene, numbers)
    if spoken:
        return spoken
    left = [
        f
        for f in scene.figures
        if id(f) not in scene.used
        and scene.live(f.first)
        and f.kind not in ("flow", "volume")
        and not _no_answer(scene, f)
    ]
    answers: list[Draft | Question] = []
    listed = _dimension_list(scene, numbers, left)
    if listed:
        return listed
    doubt = _feet_or_range(scene, numbers, left)
    if doubt is not None:
        return [doubt]
    for kind in dict.fromkeys(_KIND[vocabulary()[name].unit] for name in numbers):
        same = [name for name in numbers if _KIND[vocabulary()[name].unit] == kind]
        fitting = [f for f in left if _fits(f, kind, same[0])]
        if fitting and (len(same) == 1 or len(fitting) == len(same)):
            for name, figure in zip(same, fitting, strict=False):
                scene.use(figure)
                answers.append(_as_answer(scene, name, figure))
    for name in numbers:
        if any(answer.field == name for answer in answers):
            continue
        bare = [f for f in left if f.kind == "number" and id(f) not in scene.used and "list" not in f.tags]
        if not bare or (len(bare) > 1 and len(numbers) == 1):
            bare = [f for f in bare if f.first <= 3 and len(bare) <= 2][:1]
        for figure in bare:
            answer = _bare_answer(scene, name, figure, len(numbers) > 1)
            if answer is not None:
                scene.use(figure)
                answers.append(answer)
                break
    return answers


def _dimension_list(scene: Scene, numbers: list[str], left: list[Figure]) -> list[Draft | Question]:
    """Bare figures to a question about length, width and height: millimetres where nothing else can be, else asked."""
    names = [name for name in numbers if name.startswith("product.") and vocabulary()[name].unit == "m"]
    bare = [f for f in left if f.kind == "number" and not f.is_range]
    if len(names) < 2 or len(bare) != len(names):
        return []
    start, end = scene.tokens[bare[0].first].start, scene.tokens[bare[-1].after - 1].end
    scene.use(*bare)
    if min(f.value for f in bare) >= 100:
        for figure in bare:
            give_unit(figure, UNITS["mm"])
        return [scene.draft(name, figure, rank=4) for name, figure in zip(names, bare, strict=True)]
    options = []
    for unit in ("in", "cm", "mm"):
        value = UNITS[unit].worth(bare[0].value)
        options.append(Draft(names[0], start, end, value, value, at=bare[0].first))
    return [Question(names[0], start, end, "unit_of_group", {}, tuple(options))]


def _feet_or_range(scene: Scene, numbers: list[str], left: list[Figure]) -> Question | None:
    """ "12-6" to a question about a height: feet and inches, or from one to the other?"""
    names = [name for name in numbers if name in _FEET_FIELDS]
    if len(names) != 1 or len(left) != 2 or any(f.kind != "number" for f in left):
        return None
    first, second = left
    between = [token.text for token in scene.tokens[first.after : second.first]]
    if between != ["-"] or not 0 <= second.value < 12 or first.value <= second.value:
        return None
    value = UNITS["ft"].worth(first.value) + UNITS["in"].worth(second.value)
    start, end = scene.tokens[first.first].start, scene.tokens[second.after - 1].end
    scene.use(first, second)
    return Question(
        names[0], start, end, "feet_or_range", {}, (Draft(names[0], start, end, value, value, at=first.first),)
    )


def _no_answer(scene: Scene, figure: Figure) -> bool:
    """Figures about something else: "2 machines", "10 people", a time of day."""
    if figure.kind != "number":
        return False
    behind = scene.after(figure)
    if "product.sizes" in scene.asked and re.match(r"^\W*of (?:them|those)\b", behind):
        return False
    if re.match(
        r"^\W*(?:in the (?:morning|evening|afternoon)|am\b|pm\b|people|machine|line|time|plant|o'clock|year"
        r"|percent|%|guy|person|shift|day|hour|question|thing"
        r"|reason|quote|month|of (?:us|them|our)|option|call|more than that)\b",
        behind,
    ):
        return True
    return scene.sentence_of(figure.first).first > 0 and scene.sentence_at[figure.first] > 1


def _fits(figure: Figure, kind: str, name: str) -> bool:
    if figure.kind == kind:
        if name == "project.weeks":
            return figure.unit is not None and figure.unit.name in ("week", "month", "day", "year")
        if name == "site.hours":
            return figure.unit is not None and figure.unit.name == "h"
        return kind != "number"
    return (name == "handling.squeeze_limit" and figure.kind == "mass") or (
        kind == "angle" and figure.kind == "degrees"
    )


def _as_answer(scene: Scene, name: str, figure: Figure) -> Draft | Question:
    draft = scene.draft(name, figure, rank=4)
    field = vocabulary()[name]
    scale = {"week": 1 / 604800.0, "h/day": 1 / 3600.0}.get(field.unit, 1.0)
    if name == "handling.squeeze_limit" and figure.kind == "mass":
        scale = UNITS["kgf"].factor
    draft.low = None if draft.low is None else draft.low * scale
    draft.high = None if draft.high is None else draft.high * scale
    if name == "handling.squeeze_limit" and figure.bound == "most":
        draft.low = draft.high
    if (
        name in _FEET_FIELDS
        and not figure.is_range
        and figure.bound
        and scene.words(figure.begin, figure.first) in ("over", "above", "up to", "under", "below")
    ):
        draft.low = draft.high = draft.high if draft.high is not None else draft.low
    if (name == "rate.normal" and figure.bound == "most") or (name == "rate.peak" and figure.bound == "most"):
        draft.field = "rate.peak"
        draft.low = draft.high
    return draft


def _bare_answer(scene: Scene, name: str, figure: Figure, several: bool) -> Draft | Question | None:
    field = vocabulary()[name]
    value = figure.value
    ends = _BARE.get(name)
    start, end = scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end
    if ends is not None:
        if ends[0] <= value <= ends[1] and not (name == "site.phases" and value == 2.0):
            draft = scene.draft(name, figure, rank=4)
            if figure.bound == "most" and name.startswith("rate."):
                draft = replace(draft, field="rate.peak" if name != "rate.pieces" else name, low=draft.high)
            return draft
        if not name.startswith("rate.") or value <= 0:
            return None
    if name == "temperature.room" and 50 <= value <= 130:  # no room is that hot in Celsius
        give_unit(figure, UNITS["degF"])
        return scene.draft(name, figure, rank=4)
    if value == 0 and name == "rise.height":
        return scene.draft(name, figure, rank=4)
    if field.unit == "m" and figure.kind == "number":
        only = "mm" if value >= (150.0 if name.startswith("product.") else 1500.0) and value < 30_000 else ""
        if only:
            give_unit(figure, UNITS["mm"])
            return scene.draft(name, figure, rank=4)
    units = _CHOICES_OF_UNIT.get(field.unit)
    if units is None or (several and len(scene.figures) > 1):
        return None
    if field.unit == "m" and name in _FEET_FIELDS:
        units = ("in", "cm", "mm") if name == "rise.infeed_height" and value > 15 else ("ft", "m", "in")
    options = []
    for unit in units:
        low, high = (None if v is None else UNITS[unit].worth(v) for v in (figure.low, figure.high))
        options.append(Draft(name, start, end, low, high, approx=figure.approx, at=figure.first))
    names = " or ".join(_UNIT_NAMES[unit] for unit in units)
    return Question(
        name, start, end, "which_unit", {"figure": scene.folded.said(start, end), "units": names}, tuple(options)
    )


_UNIT_NAMES = {
    "in": "inches", "mm": "millimetres", "cm": "centimetres", "ft": "feet", "m": "metres", "lb": "pounds",
    "kg": "kilograms",
    "degF": "Fahrenheit", "degC": "Celsius", "psi": "psi", "bar": "bar", "lbf": "pounds", "N": "newtons",
    "1/min": "per minute", "1/h": "per hour",
}  # fmt: skip


def _feet_spoken(scene: Scene, numbers: list[str]) -> list[Draft | Question]:
    """ "12 six" and "12 6" to a question about a height: feet and inches."""
    names = [name for name in numbers if name in _FEET_FIELDS]
    if len(names) != 1 or len(scene.tokens) > 12:
        return []
    for at, token in enumerate(scene.tokens[:6]):
        if token.kind not in ("number", "word"):
            continue
        feet = number_at(scene.tokens, at)
        if (
            feet is None
            or not feet.whole
            or not 3 <= feet.value <= 60
            or amount_at(scene.tokens, at, scene.folded.raw) is None
        ):
            continue
        if feet.after >= len(scene.tokens):
            return []
        inches = number_at(scene.tokens, feet.after)
        if inches is None or not 0 <= inches.value < 12:
            return []
        after = scene.tokens[inches.after].text if inches.after < len(scene.tokens) else ""
        if after not in ("", ".", ",", "off", "above", "from", "or", "to", "i", "about", "at", "high", "up", '"'):
            return []
        value = UNITS["ft"].worth(feet.value) + UNITS["in"].worth(inches.value)
        start, end = scene.tokens[at].start, scene.tokens[inches.after - 1].end
        scene.use(*[f for f in scene.figures if at <= f.first < inches.after])
        return [Draft(names[0], start, end, value, value, at=at, rank=6)]
    return []


def _bare_choice(scene: Scene, fields: list[str], said: set[str]) -> list[Draft | Question]:
    """The stored word of a choice itself, as an answer: "dry", "hot", "none"."""
    found: list[Draft | Question] = []
    for name in fields:
        field = vocabulary()[name]
        if field.kind != "choice" or name in said:
            continue
        for choice in field.choices:
            words = choice.split("_")
            for at in range(min(len(scene.norms), 12)):
                if scene.norms[at : at + len(words)] == words and scene.live(at) and choice != "other":
                    before = scene.norms[at - 1] if at else ""
                    if before not in ("not", "no", "never", "isn't"):
                        start, end = scene.tokens[at].start, scene.tokens[at + len(words) - 1].end
                        found.append(Draft(name, start, end, value=choice, at=at, rank=2))
    once: dict[str, set[object]] = {}
    for item in found:
        if isinstance(item, Draft):
            once.setdefault(item.field, set()).add(item.value)
    return [item for item in found if len(once.get(item.field, ())) == 1]


def _text(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    """A field that is kept as said takes the whole answer."""
    names = [name for name in fields if vocabulary()[name].kind == "text" and not vocabulary()[name].personal]
    if len(names) != 1 or len(fields) != 1:
        return []
    shadow = scene.shadow
    start = len(shadow) - len(shadow.lstrip())
    end = len(shadow.rstrip())
    if start >= end or end - start > 300:
        return []
    return [Draft(names[0], start, end, value=scene.folded.said(start, end), at=0)]
