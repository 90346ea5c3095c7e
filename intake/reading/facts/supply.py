"""Volts, phases and hertz; pressures of washing and of compressed air."""

import re

from intake.reading.message.scene import Draft, Scene

_SUPPLY = re.compile(r"\b(\d{3}) ?(?:v|volt|vac)? ?/ ?([13])(?: ?(?:ph|phase|ø))? ?/ ?(50|60)\b")
_TWO_VOLTAGES = re.compile(r"\b(\d{3}) ?/ ?(\d{3}) ?(?:v|volt|volts|vac)\b")
_PHASES = re.compile(
    r"\b(3|1|three|single|one|tri) ?-? ?(?:ph|phase|phases|ø)\b(?!\s*\d\s*of)|\b3 ?x ?(?=\d{3} ?/? ?\d{0,3} ?v)"
    r"|\b3 ?n? ?~|(?<=v )\biii\b|(?<=v, )\biii\b"
)
_SPOKEN = re.compile(
    r"\b(one|two|three|four|five|six)[ -](?:(?:oh|o|zero)[ -](eight)|(ten|twelve|fifteen|twenty|thirty|forty|fifty"
    r"|sixty|seventy|eighty|ninety)(?:[ -](five|seven))?)\b(?! ?(?:lb|kg|ft|in|mm|cm|case|box|tray|per|a|an) ?\b)"
)
_SPELT = {
    "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0, "ten": 10.0,
    "twelve": 12.0, "fifteen": 15.0, "twenty": 20.0, "thirty": 30.0, "forty": 40.0, "fifty": 50.0, "sixty": 60.0,
    "seventy": 70.0, "eighty": 80.0, "ninety": 90.0,
}  # fmt: skip
_BEHIND_SPOKEN = re.compile(r"^[ ,/-]*(?:v\b|volt|vac\b|three|3|single|1 ?ph|power)")
_MAINS_LEAST, _MAINS_MOST = 90.0, 700.0
_WASH = re.compile(
    r"\b(?:wash\w*|hos\w+|spray\w*|rins\w+|clean\w*|nozzle|jet|pressure washer|sanit\w+|foam\w*|water)\b"
)
_AIR = re.compile(r"\b(?:air|compressed|pneumatic\w*|compressor|cylinder)\b")


def supply_drafts(scene: Scene) -> list[Draft]:
    """Facts of electricity and pressure that speak of the need."""
    return [*_electric(scene), *_pressures(scene)]


def _electric(scene: Scene) -> list[Draft]:
    found: list[Draft] = []
    for match in _SUPPLY.finditer(scene.shadow):
        at = scene.token_at(match.start())
        if at is None or not scene.live(at):
            continue
        for n, name in enumerate(("site.voltage", "site.phases", "site.frequency"), 1):
            value = float(match.group(n))
            found.append(Draft(name, match.start(n), match.end(n), value, value, at=at, rank=7))
        scene.use(
            *[figure for figure in scene.figures if match.start() <= scene.tokens[figure.first].start < match.end()]
        )
    found += _two_voltages(scene) or _volts_and_hertz(scene)
    done = {draft.field for draft in found}
    for figure in scene.open_figures("voltage"):
        before, behind = scene.before(figure), scene.after(figure)
        if not _MAINS_LEAST <= figure.value <= _MAINS_MOST or re.match(
            r"^\W*(?:battery|batteries|dc|control|motor on|lamp|bulb|tool)", behind
        ):
            continue
        if re.search(r"\b(?:battery|control|sensor|plc)\W*$", before) or "site.voltage" in done:
            continue
        found.append(scene.draft("site.voltage", figure))
        scene.use(figure)
    for figure in scene.open_figures("frequency"):
        if 45 <= figure.value <= 65 and "site.frequency" not in done:
            found.append(scene.draft("site.frequency", figure))
            scene.use(figure)
    if not any(draft.field == "site.voltage" for draft in found):
        found += _bare_mains(scene) or _spoken(scene)
    if not {draft.field for draft in found} & {"site.frequency"}:
        found += _cycles(scene)
    if "site.phases" not in done:
        found += _phases(scene)
    return found


_MAINS = frozenset(
    {
        110.0,
        115.0,
        120.0,
        200.0,
        208.0,
        220.0,
        230.0,
        240.0,
        277.0,
        347.0,
        380.0,
        400.0,
        415.0,
        440.0,
        460.0,
        480.0,
        575.0,
        600.0,
        690.0,
    }
)
"""Mains voltages in use, low voltage, IEC 60038 and ANSI C84.1 (common practice, from memory)."""


def _bare_mains(scene: Scene) -> list[Draft]:
    """ "3 phase 480", "480 three phase": a mains voltage right beside the phases."""
    for figure in scene.open_figures("number"):
        if figure.value not in _MAINS or figure.is_range:
            continue
        before, behind = scene.before(figure), scene.after(figure)
        beside = re.search(
            r"(?:phase|ph|ø|power|supply|voltage|electric\w*)\W*(?:is |of |at |, |: )*$", before
        ) or re.match(r"^\W*(?:/ ?|, ?|- ?)?(?:3|three|single|1|tri|$)? ?-? ?(?:phase|ph|ø)\b", behind)
        following = scene.next_figures(figure)
        three = (
            following
            and following[0].first - figure.after <= 2
            and re.match(r"^\W*(?:phase|ph|ø)\b", scene.after(following[0]))
        )
        if beside or three or (re.search(r"(?:phase|ph)$", before.strip())):
            scene.use(figure)
            return [scene.draft("site.voltage", figure)]
    return []


def _two_voltages(scene: Scene) -> list[Draft]:
    """400/230 V, 480/277 V: between the phases, and to neutral."""
    for match in _TWO_VOLTAGES.finditer(scene.shadow):
        at = scene.token_at(match.start())
        high = max(float(match.group(1)), float(match.group(2)))
        if at is None or not scene.live(at) or high not in _MAINS:
            continue
        scene.use(*[f for f in scene.figures if match.start() <= scene.tokens[f.first].start < match.end()])
        return [Draft("site.voltage", match.start(), match.end(), high, high, at=at, rank=7)]
    return []


_VOLTS_HERTZ = re.compile(r"\b(\d{3}) ?(?:v|vac|volts?)? ?/ ?(50|60)\b(?! ?/)(?! ?\d)")


def _volts_and_hertz(scene: Scene) -> list[Draft]:
    """460/60."""
    for match in _VOLTS_HERTZ.finditer(scene.shadow[:20_000]):
        at = scene.token_at(match.start())
        if at is None or not scene.live(at) or float(match.group(1)) not in _MAINS:
            continue
        scene.use(*[f for f in scene.figures if match.start() <= scene.tokens[f.first].start < match.end()])
        return [
            Draft(name, match.start(n), match.end(n), float(match.group(n)), float(match.group(n)), at=at, rank=7)
            for n, name in enumerate(("site.voltage", "site.frequency"), 1)
        ]
    return []


_CYCLES = re.compile(r"\b(50|60|fifty|sixty)[ -]?(?:cycles?|c/s|cps)\b(?! (?:per|a|/|an) ?(?:min|h))")


def _cycles(scene: Scene) -> list[Draft]:
    """ "Sixty cycle", "50 c/s"."""
    for match in _CYCLES.finditer(scene.shadow[:20_000]):
        at = scene.token_at(match.start())
        if at is not None and scene.live(at):
            value = 50.0 if match.group(1) in ("50", "fifty") else 60.0
            scene.use(*[f for f in scene.figures if match.start() <= scene.tokens[f.first].start < match.end()])
            return [Draft("site.frequency", match.start(), match.end(), value, value, at=at)]
    return []


def _spoken(scene: Scene) -> list[Draft]:
    """ "Four eighty, three phase", "two oh eight": a mains voltage as people say it."""
    for match in _SPOKEN.finditer(scene.shadow):
        hundreds, below, tens, ones = (_SPELT.get(word or "", 0.0) for word in match.groups())
        value = 100.0 * hundreds + below + tens + ones
        at = scene.token_at(match.start())
        if value not in _MAINS or at is None or not scene.live(at):
            continue
        if "site.voltage" not in scene.asked and not _BEHIND_SPOKEN.match(scene.shadow[match.end() : match.end() + 20]):
            continue
        scene.use(*[f for f in scene.figures if match.start() <= scene.tokens[f.first].start < match.end()])
        return [Draft("site.voltage", match.start(), match.end(), value, value, at=at, rank=6)]
    return []


def _phases(scene: Scene) -> list[Draft]:
    for match in _PHASES.finditer(scene.shadow):
        at = scene.token_at(match.start())
        if at is None or not scene.live(at):
            continue
        after = scene.shadow[match.end() : match.end() + 20]
        if re.match(r"\W*(?:of|project|plan|expansion|approach|rollout|trial|roll-out)\b|s? of\b", after):
            continue
        value = 3.0 if match.group(1) in ("3", "three", "tri", None) else 1.0
        scene.use(
            *[
                figure
                for figure in scene.figures
                if match.start() <= scene.tokens[figure.first].start < match.end() and figure.kind == "number"
            ]
        )
        return [Draft("site.phases", match.start(), match.end(), value, value, at=at, rank=6)]
    return []


def _pressures(scene: Scene) -> list[Draft]:
    found: list[Draft] = []
    for figure in scene.open_figures("pressure"):
        sentence = scene.sentence_text(figure.first)
        near = f"{scene.before(figure)[-60:]} {scene.after(figure)[:40]}"
        if figure.unit is not None and figure.unit.name in ("GPa", "inHg", "N/mm2", "ksi", "atm"):
            continue
        if any(name.startswith("cleaning.") for name in scene.asked) or _WASH.search(near):
            name = "cleaning.pressure"
        elif "site.air_pressure" in scene.asked or _AIR.search(near):
            name = "site.air_pressure"
        elif _WASH.search(sentence):
            name = "cleaning.pressure"
        elif _AIR.search(sentence):
            name = "site.air_pressure"
        else:
            continue
        if (
            name == "cleaning.pressure"
            and _AIR.search(near)
            and not re.search(r"\b(?:wash\w*|hos\w+|rins\w+|water)\b", near)
        ):
            name = "site.air_pressure"
        found.append(scene.draft(name, figure))
        scene.use(figure)
    return found
