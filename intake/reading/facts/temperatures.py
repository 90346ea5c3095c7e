"""Temperatures: of the room, of the product, or neither."""

import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.units import UNITS
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.message.topics import PRODUCT_WORDS

_ROOM = re.compile(
    r"\b(?:room|indoors|hot (?:in )?there|chamber|house|cellar|vault|kitchen|shed|barn|store|area|space|plant"
    r"|building|warehouse|hall"
    r"|ambient|cooler|freezer|fridge|chiller|refrigerat\w+"
    r"|cold (?:room|store|storage|side)|chilled|"
    r"environment|air|in there|in here|inside|floor|factory|shop|site|outside|department|facility|dock|zone"
    r"|surrounding|summer|winter|year round|it's|it is|"
    r"temperature (?:is|of|:)|temp (?:is|of|:)|we're at|stay|hold|kept at|held at|(?:machine|unit|lift|it"
    r"|equipment) (?:would |will )?(?:stand"
    r"|sit|run|be))\b"
)
_PRODUCT = re.compile(
    r"\b(?:prod|product(?: temperature| temp)?|hot fill\w*|fill\w*(?: hot)?|hot|come out|coming out|out of|oven"
    r"|tunnel|retort|pasteuri\w+|cook\w*|bak\w+|core|surface temp\w*|skin|content|"
    r"they (?:are|come|leave|arrive)|they're|them|sauce|liquid|food|freshly|warm|frozen|case (?:is|are|come|at)"
    r"|product is|product are)\b"
)
_ROOM_NOUN = re.compile(
    r"\b(?:room|area|plant|building|warehouse|hall|ambient|cooler|freezer|fridge|chiller|in there|in here|factory"
    r"|environment|outside)\b"
)
_NEITHER = re.compile(
    r"\b(?:water|wash|rinse|clean\w*|steam|hose|sanitiz\w+|caustic|melt\w*|glue|motor|setpoint of the oven"
    r"|difference|rise of|drop of|outdoors?|weather|trailer|sunshine|forecast)\b"
)


def temperature_drafts(scene: Scene) -> list[Draft | Question]:
    """Facts and doubts of all temperatures that speak of the need."""
    found: list[Draft | Question] = _below_zero_bare(scene)
    _share_scale(scene)
    found += _bare_room(scene)
    for figure in scene.figures:
        if figure.kind not in ("temperature", "degrees") or id(figure) in scene.used or not scene.live(figure.first):
            continue
        name = _field(scene, figure)
        if figure.kind == "degrees":
            if name is None or not _speaks_of_heat(scene, figure):
                continue
            if not _one_scale(figure, name):
                found.append(_which_scale(scene, figure, name))
                scene.use(figure)
                continue
        if name is None and figure.kind == "temperature" and not _said_of_neither(scene, figure):
            found.append(_of_room_or_product(scene, figure))
            scene.use(figure)
        if name is None or not -200 <= figure.value <= 400:
            continue
        twin = next((d for d in found if isinstance(d, Draft) and d.field == name and _near(d, figure)), None)
        scene.use(figure)
        if twin is None:
            there = _AT_THE_MACHINE.search(f"{scene.before(figure)[-50:]} {scene.after(figure)[:40]}")
            found.append(scene.draft(name, figure, rank=7 if there and name == "temperature.product" else 5))
    return found


_NO_ROOM = 46.0
"""No room of a plant is that hot, in degrees Celsius."""
_SEASON = re.compile(
    r"^\W*(?:in|by|during) (?:the )?(?:january|february|july|august|summer|winter|december|june|dead of)\b"
)
_OUT_OF = re.compile(r"\b(?:from|out of|off) (?:the |our |a )?$")
"""A fridge that product comes from is no room of the machine."""
_OUTDOORS = re.compile(r"^\W*(?:outside|outdoors|out in the yard)\b(?! of)")
_AT_THE_MACHINE = re.compile(
    r"\b(?:reach (?:your|the|this) (?:lift|machine|conveyor|unit|equipment)|when (?:it|they) (?:get|reach"
    r"|arrive|come) (?:there|to)|on (?:the|your) machine"
    r"|at (?:the|your) in ?feed|by the time|onto (?:your|the) (?:machine|lift|conveyor)|as they arrive"
    r"|enter (?:the|your) (?:lift|machine))\b"
)
_BARE_ROOM = re.compile(
    r"\b(?:room|area|plant|building|hall|warehouse|cooler|freezer|ambient|product|they|it|in there|outside|temp\w*)"
    r"(?:'s|'re| is| are| at| held| kept| under| over| below| above| runs?| stays?| sits?| of| about| around"
    r"| roughly| maybe| :|:| ,){1,4}$"
)


def _share_scale(scene: Scene) -> None:
    """ "140 F out of the tunnel, room's about 75": the scale was stated once."""
    units = {figure.unit.name for figure in scene.figures if figure.unit is not None and figure.kind == "temperature"}
    if len(units) != 1:
        return
    scale = UNITS[units.pop()]
    for figure in scene.open_figures("number"):
        same = any(
            one.kind == "temperature" and scene.sentence_at[one.first] == scene.sentence_at[figure.first]
            for one in scene.figures
        )
        near = _BARE_ROOM.search(scene.before(figure).strip()) or (
            same and re.search(r"\bat\W*$", scene.before(figure))
        )
        if near and not scene.after(figure).strip()[:1].isalnum() and scene.group_of(figure) is None:
            give_unit(figure, scale)


def _below_zero_bare(scene: Scene) -> list[Draft | Question]:
    """ "Freezer, minus 10": cold, and no scale."""
    for figure in scene.open_figures("number"):
        low = figure.low if figure.low is not None else figure.high
        if low is None or not -60 <= low < 0 or not _speaks_of_heat(scene, figure):
            continue
        if re.match(r"^\W*(?:\w+)", scene.after(figure)) and not re.match(
            r"^\W*(?:or|in|inside|all|year|is|and|but|there|here|out|the)\b", scene.after(figure)
        ):
            continue
        scene.use(figure)
        return [_which_scale(scene, figure, _field(scene, figure) or "temperature.room")]
    return []


_ROOM_BEFORE = re.compile(
    r"\b(?:(?:room|ambient|plant|area|hall|warehouse|air|shop) (?:temp(?:erature)?s?)"
    r"|temp(?:erature)?s? in the \w+|ambient"
    r"|cooler|(?:it )?(?:gets?|hits?|runs?) (?:to|up to)?)(?: \w+){0,2}\W*$"
)
_ROOM_BEHIND = re.compile(
    r"^\W*(?:in (?:there|here|the (?:plant|warehouse|room|shop|building|hall|summer|winter))|ambient|year round"
    r"|inside)\b"
)


def _bare_room(scene: Scene) -> list[Draft | Question]:
    """ "Room temp 65-80", "about 95 in there": no room is that hot in Celsius; less is asked back."""
    found: list[Draft | Question] = []
    for figure in scene.open_figures("number"):
        ends = [end.value for end in figure.ends]
        named = _ROOM_BEFORE.search(scene.before(figure)[-50:]) and "temp" in scene.before(figure)
        behind = _ROOM_BEHIND.match(scene.after(figure)) and _speaks_of_heat(scene, figure)
        if not (named or behind) or scene.group_of(figure) is not None or not min(ends) >= -40 or max(ends) > 130:
            continue
        scene.use(figure)
        if min(ends) >= 50:
            give_unit(figure, UNITS["degF"])
            found.append(scene.draft("temperature.room", figure))
        else:
            found.append(_which_scale(scene, figure, "temperature.room"))
    return found


def _near(draft: Draft, figure: Figure) -> bool:
    """The same temperature in the other scale."""
    return all(
        (a is None) == (b is None) and (a is None or b is None or abs(a - b) < 0.6)
        for a, b in ((draft.low, figure.low), (draft.high, figure.high))
    )


def _field(scene: Scene, figure: Figure) -> str | None:
    before, behind = scene.before(figure), scene.after(figure)
    asked = [name for name in scene.asked if name.startswith("temperature.")]
    text = before[-70:]
    if (
        _NEITHER.search(text)
        or _OUTDOORS.match(re.split(r"[,;]", scene.sentence_before(figure.first))[-1])
        or re.match(r"^\W*(?:water|wash|rinse|steam|caustic|hot water|degrees? difference)", behind)
    ):
        return None
    if re.search(r"\bthey(?:'re| are)\W*(?:\w+ )?$", text):
        return "temperature.product"
    if asked == ["temperature.product"] and "same as" in f"{text} {behind}":
        return "temperature.product"
    if asked == ["temperature.product"] and not _ROOM_NOUN.search(f"{text} {behind[:40]}"):
        return "temperature.product"
    room = [match for match in _ROOM.finditer(text) if not _OUT_OF.search(text[: match.start()])]
    product = list(_PRODUCT.finditer(text))
    words = list(PRODUCT_WORDS.finditer(re.split(r"[,;]", text)[-1]))
    last_room = room[-1].start() if room else -1
    last_product = product[-1].start() if product else -1
    tail = behind[:40]
    if re.match(
        r"^\s*(?:in (?:there|here|the (?:room|area|plant|warehouse|building|cooler|freezer|summer|winter))|room"
        r"|ambient|air|cooler|freezer|area|warehouse|environment|inside|year round|plant|building|outside|cold room"
        r"|storage)\b",
        tail,
    ):
        return "temperature.room"
    if re.match(r"^\s*(?:product|on arrival|on entry|when (?:they|it)|out of|core|off the|at the infeed|fill)\b", tail):
        return "temperature.product"
    about_room = "temperature.zone" in asked or "temperature.room" in asked
    if about_room and (last_product <= last_room or last_product < 0):
        return "temperature.room"
    if asked and asked[0] == "temperature.product" and last_room < 0:
        return "temperature.product"
    if last_product > last_room:
        return "temperature.product"
    if last_room >= 0:
        return "temperature.room"
    if re.search(r"\btemp(?:erature)?\W*(?:\w+ )?$", text + " "):
        return "temperature.room"
    if words and re.search(
        r"\b(?:is|are|at|come|go|leave)\b", text[words[-1].start() if words[-1].start() < len(text) else 0 :]
    ):
        return "temperature.product"
    if figure.kind == "temperature" and figure.value >= _NO_ROOM:
        return "temperature.product"
    sentence = scene.sentence_text(figure.first)
    if _SEASON.match(behind) or _SEASON.search(text):
        return "temperature.room"
    if _ROOM.search(sentence) and not _PRODUCT.search(sentence):
        return "temperature.room"
    return None


def _said_of_neither(scene: Scene, figure: Figure) -> bool:
    return _NEITHER.search(scene.sentence_text(figure.first)) is not None


def _of_room_or_product(scene: Scene, figure: Figure) -> Question:
    """A temperature, and no word of what."""
    options = tuple(scene.draft(name, figure) for name in ("temperature.room", "temperature.product"))
    return Question("temperature.room", options[0].start, options[0].end, "room_or_product", {}, options)


def _speaks_of_heat(scene: Scene, figure: Figure) -> bool:
    text = scene.sentence_text(figure.first)
    if re.search(r"\b(?:turn|angle|slope|incline|tilt|corner|bend|left|right|clockwise|tip)\b", text):
        return False
    return (
        any(name.startswith("temperature") for name in scene.asked)
        or re.search(
            r"\b(?:temperature|temp|hot|cold|cool|cooler|freezer|chilled|room|ambient|warm|heated|in there"
            r"|in here|summer|winter|outside|refrigerated"
            r"|plant|warehouse)\b",
            text,
        )
        is not None
    )


def _one_scale(figure: Figure, name: str) -> bool:
    """A room at 70 degrees can only be Fahrenheit; take that, and leave the rest to a question."""
    value = figure.ends[-1].value
    if name == "temperature.room" and 55 <= value <= 130:
        give_unit_anew(figure)
        return True
    return False


def give_unit_anew(figure: Figure) -> None:
    """Read plain degrees as Fahrenheit."""
    figure.ends = tuple(end.with_unit(UNITS["degF"]) for end in figure.ends)
    give_unit(figure, UNITS["degF"])


def _which_scale(scene: Scene, figure: Figure, name: str) -> Question:
    start, end = scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end
    value = figure.ends[-1].value
    options = tuple(
        Draft(name, start, end, UNITS[unit].worth(value), UNITS[unit].worth(value), at=figure.first)
        for unit in ("degF", "degC")
    )
    return Question(name, start, end, "which_scale", {"figure": f"{value:g}"}, options)
