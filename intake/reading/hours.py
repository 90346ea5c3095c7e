"""Hours a day: shifts, clock times, round the clock. Weeks until the machine is needed."""

import re

from intake.reading.figures import Figure
from intake.reading.scene import Draft, Question, Scene

_NUMBER = {
    "one": 1.0,
    "single": 1.0,
    "two": 2.0,
    "three": 3.0,
    "double": 2.0,
    "a": 1.0,
    "1": 1.0,
    "2": 2.0,
    "3": 3.0,
    "4": 4.0,
    "four": 4.0,
    "eight": 8.0,
    "ten": 10.0,
    "twelve": 12.0,
    "both": 2.0,
    "six": 6.0,
    "seven": 7.0,
    "nine": 9.0,
    "eleven": 11.0,
    "fourteen": 14.0,
    "fifteen": 15.0,
    "sixteen": 16.0,
    "eighteen": 18.0,
    "twenty": 20.0,
    "twenty two": 22.0,
    "twenty four": 24.0,
}
_HOURS = (
    r"(\d{1,2}(?:[.,]\d)?|\d{1,2}[ -]?½|six|seven|eight|nine|ten|eleven|twelve|fourteen|fifteen|sixteen|eighteen|twenty"
    r"(?:[ -](?:two|four))?)"
)
_COUNT = r"(one|single|two|three|four|double|[1-4])"
_SHIFTS_OF = re.compile(
    rf"\b{_COUNT}\s+(?:\w+\s+)?(?:shifts?|crews?|teams?|gangs?)\b\W*(?:a day\W*|per day\W*|daily\W*)?(?:of|at|per|,|\(|are|x|each"
    rf"|,?\s*each)?\s*(?:about\s+)?{_HOURS}(?:\s*-?\s*(?:h|hrs?|hours?)\b|(?<=\d)(?=\s*(?:$|[.,;)])))"
)
_HOUR_SHIFTS = re.compile(
    rf"\b{_COUNT}\s+(?:x\s+|\*\s*)?{_HOURS}\s*-?\s*(?:h|hrs?|hours?)\s*-?\s*shifts?\b"
    rf"|\b([1-3])\s*x\s*{_HOURS}\s*-?\s*(?:h|hrs?|hours?)\b"
)
_SHIFTS_BACK = re.compile(
    rf"\b{_HOURS}\s*-?\s*(?:h|hrs?|hours?)\s*-?\s*shifts?[ ,(x*-]+(?:\w+\s+){{0,2}}?{_COUNT}\b(?!\s*(?:lb|kg|ft|in|m"
    rf"|cases?|days?|weeks?|lines?))"
)
_ONE_SHIFT = re.compile(rf"\b(?:a|an|one|single)\s+(?:\w+\s+)?{_HOURS}\s*-?\s*(?:h|hrs?|hours?)\s*-?\s*shift\b")
_A_DAY = re.compile(
    rf"\b{_HOURS}\s*-?\s*(?:h|hrs?|hours?)\.?\s*(?:-|a|per|/|each|every|out of the|working|production|operating"
    rf"|in the)?\s*-?\s*(?:d|days?|daily)\b"
)
_OVER = re.compile(
    rf"\b(?:a|per|each|every|/) ?day,? (?:\w+ ){{0,2}}?(?:over|in|across|of|at|on|running|for|during) (?:about "
    rf"|a )?{_HOURS}"
    r"\s*-?\s*(?:h|hrs?|hours?)\b"
)
_FROM_TO = re.compile(
    r"\b(?:hours?|open|run|running|work|working|production|produce|shifts?)\W+(?:is |are |from |of "
    r"|between )*(\d{1,2}) ?(?:h|:00|\.00)?"
    r" ?(?:-|to|till|until|and) ?(\d{1,2}) ?(?:h|:00|\.00|o'clock|uhr)\b"
)
_HOURS_OF = re.compile(
    rf"\bhours?\b(?: of operation| of work| of production)?\W+(?:is |are )?{_HOURS} ?(?:h|hours?)? ?(?:a|per"
    rf"|each|every|/) ?day\b"
)
_A_DAY_ASKED = re.compile(rf"^\W*(?:about |approx |roughly |some |~ ?)?{_HOURS} ?(?:a|per|/|each|every) ?day\b")
_TENS = re.compile(r"\b(one|two|three|1|2|3)\s+(8|9|10|12|eight|ten|twelve)(?:'?s|es)\b")
_FOUR_DIGITS = re.compile(
    r"\b([01]\d|2[0-3])([0-5]\d)(?: ?h(?:rs?|ours)?)? ?(?:-|to|until|till|thru) ?([01]\d|2[0-4])([0-5]\d)\b(?! ?(?:mm|kg|lb|v\b|m\b|cases|in\b))"
)
_CLOCK = re.compile(
    r"\b(?:from\s+)?(\d{1,2})(?::(\d{2}))?\s*(am|pm|a\.m\.?|p\.m\.?|a|p|o'clock|in the morning)?\s*(?:-|to|til"
    r"|till|until|through|thru)\s*"
    r"(\d{1,2}|midnight|noon)(?::(\d{2}))?\s*(am|pm|a\.m\.?|p\.m\.?|p|at night|in the (?:evening"
    r"|afternoon))?\b(?!\s*(?:lb|kg|ft|in\b|inch|m\b|mm|cm|cases?|per|/|a minute|c\b|f\b|\"|'|°|deg|weeks?|days?"
    r"|boxes|min|minutes))"
)
_ROUND_CLOCK = re.compile(
    r"\b24\s*/\s*7\b|\b(?:a?round)\s+the\s+clock\b|\b24\s*x\s*7\b|\btwenty[ -]four[ -]seven\b|\b24/[5-7]\b"
    r"|\b24\s*-?\s*(?:h|hrs?|hours?)\b(?=\W*(?:a day|per day|/|operation|production|$|\.|,|running|plant|around"
    r"|daily))|\bday and night\b"
)
_RUNNING = re.compile(
    r"\b(?:hrs|hours?|shift|shifts|run|runs|running|work|works|operat\w+|open|production|produc\w+|hours|staffed|crew|day)\b"
)


def hours_drafts(scene: Scene) -> list[Draft]:
    """Hours a day, the first sure reading only."""
    for pattern, reader in (
        (_SHIFTS_OF, _product(1, 2)),
        (_HOUR_SHIFTS, _hour_shifts),
        (_SHIFTS_BACK, _product(2, 1)),
        (_A_DAY, _plain),
        (_OVER, _plain),
        (_HOURS_OF, _plain),
        (_A_DAY_ASKED, _plain),
        (_TENS, _product(1, 2)),
        (_FROM_TO, _between),
        (_FOUR_DIGITS, _four_digits),
        (_ROUND_CLOCK, lambda _: 24.0),
        (_CLOCK, _clock),
        (_ONE_SHIFT, _plain),
    ):
        for match in pattern.finditer(scene.shadow):
            at = scene.token_at(match.start())
            if at is None or not scene.live(at):
                continue
            if pattern is _A_DAY_ASKED and scene.asked != ("site.hours",):
                continue
            if _in_group(scene, match.start(), match.end()):
                continue
            value = reader(match)
            if value is None or not 0 < value <= 24:
                continue
            if pattern in (_CLOCK, _FOUR_DIGITS) and not _is_working_time(scene, at):
                continue
            if pattern is _ONE_SHIFT and not (
                "site.hours" in scene.asked or "one" in match.group() or "single" in match.group()
            ):
                continue
            inside = [
                f
                for f in scene.figures
                if match.start() <= scene.tokens[f.first].start < match.end()
                and f.kind in ("number", "duration", "flow", "rate")
            ]
            scene.use(*inside)
            return [_bounded(Draft("site.hours", match.start(), match.end(), value, value, at=at, rank=6), inside)]
    return []


def _bounded(draft: Draft, inside: list[Figure]) -> Draft:
    """At least, at most, about: as the figure in it says."""
    if len(inside) == 1:
        draft.approx = inside[0].approx
        if inside[0].bound == "least":
            draft.high = None
        elif inside[0].bound == "most":
            draft.low = None
    return draft


_SHIFTS = re.compile(r"\b(two|three|2|3|both)\s+(?:full\s+)?shifts?\b")


def shifts_question(scene: Scene, said: bool) -> list[Question]:
    """ "Two shifts" without their hours."""
    match = None if said else _SHIFTS.search(scene.shadow)
    at = scene.token_at(match.start()) if match is not None else None
    if match is None or at is None or not scene.live(at):
        return []
    count = _figure(match.group(1)) or 2.0
    options = tuple(
        Draft("site.hours", match.start(), match.end(), count * hours, count * hours, at=at)
        for hours in (8.0, 10.0)
        if count * hours <= 24
    )
    return [Question("site.hours", match.start(), match.end(), "hours_of_shifts", {}, options)]


def _in_group(scene: Scene, start: int, end: int) -> bool:
    """4x24x7 in is a box, not round the clock."""
    return any(scene.tokens[g.first].start < end and start < scene.tokens[g.after - 1].end for g in scene.groups)


def _is_working_time(scene: Scene, at: int) -> bool:
    return "site.hours" in scene.asked or _RUNNING.search(scene.sentence_text(at)) is not None


def _figure(text: str | None) -> float | None:
    if text is None:
        return None
    if text.replace("-", " ") in _NUMBER:
        return _NUMBER[text.replace("-", " ")]
    return float(text.replace(",", ".").replace("½", ".5").replace(" ", "").replace("-", ""))


def _product(first: int, second: int):  # type: ignore[no-untyped-def]  # a small factory of readers, typed by its users
    def read(match: re.Match[str]) -> float | None:
        a, b = _figure(match.group(first)), _figure(match.group(second))
        return a * b if a is not None and b is not None else None

    return read


def _hour_shifts(match: re.Match[str]) -> float | None:
    groups = [group for group in match.groups() if group]
    values = [_figure(group) for group in groups]
    return (values[0] or 0.0) * (values[1] or 0.0) if len(values) == 2 else None


def _plain(match: re.Match[str]) -> float | None:
    return _figure(match.group(1))


def _four_digits(match: re.Match[str]) -> float | None:
    """0700-1530 is 8.5."""
    begin, end = (float(match.group(n)) + float(match.group(n + 1)) / 60 for n in (1, 3))
    span = (end - begin) % 24 or 24.0
    return span if 3 <= span <= 24 else None


def _between(match: re.Match[str]) -> float | None:
    """6-22h is 16; 22 to 6 h is 8."""
    begin, end = float(match.group(1)), float(match.group(2))
    return (end - begin) % 24 if max(begin, end) <= 24 and max(begin, end) > 12 else None


def _clock(match: re.Match[str]) -> float | None:
    """7 to 3:30 is 8.5; 6am to 10pm is 16; 22 to 6 is 8."""
    begin = float(match.group(1)) + float(match.group(2) or 0) / 60
    last = {"midnight": 24.0, "noon": 12.0}.get(match.group(4))
    end = last if last is not None else float(match.group(4)) + float(match.group(5) or 0) / 60
    if (
        begin > 24
        or end > 24
        or not (match.group(2) or match.group(5) or match.group(3) or match.group(6) or last or "shift" in match.string)
    ):
        return None
    morning, evening = match.group(3) or "", match.group(6) or ""
    if morning.startswith("p") and begin < 12:
        begin += 12
    if evening.startswith(("p", "at night", "in the")) and end < 12:
        end += 12
    span = end - begin
    if span <= 0:
        span += 12 if not evening and not morning.startswith("p") and begin <= 12 and end <= 12 else 24
    return span if 3 <= span <= 24 else None


_NEEDED = re.compile(
    r"\b(?:need|needed|deliver\w*|delivery|lead ?time|install\w*|start ?up|deadline|ready|running|in place"
    r"|commission\w*|from now|out|away|until|within|in|by|before|timeline|schedule|time frame|timeframe|"
    r"want it|must have|turnaround|target|go live|order|ship\w*|shutdown|left|on site|latest|at the latest"
    r"|project|asap|opening|aro|a r o|lead|term)\b"
)
_NOT_NEEDED = re.compile(
    r"\b(?:every|each|per|a|once|last|ago|vacation|away on|holiday|shelf life|warranty|quote valid|valid for"
    r"|back from|gone for|out of office|out for|old|trial|lasts?|been|took|payment|net|age[ds]?|days a|stored?"
    r"|storage|for the past|since|off for)\b"
)


def weeks_drafts(scene: Scene) -> list[Draft | Question]:
    """Weeks until the machine is needed; two different ones are asked back."""
    found: list[Draft] = []
    asked = "project.weeks" in scene.asked
    for figure in scene.open_figures("duration"):
        if figure.unit is None or figure.unit.name not in ("week", "month", "day", "year"):
            continue
        before, behind = scene.before(figure), scene.after(figure)
        around = f"{before[-50:]} {behind[:40]}"
        if re.match(
            r"^\W*(?:ago|old|a (?:year|month|week)|per|of (?:storage|inventory|vacation|training|supply|stock)"
            r"|shelf|holiday|vacation|warranty)\b",
            behind,
        ):
            continue
        if _NOT_NEEDED.search(before[-18:]) or (figure.unit.name == "day" and not asked):
            continue
        if figure.unit.name == "year" and not asked:
            continue
        also = bool(found) and scene.sentence_at[figure.first] == scene.sentence_at[found[-1].at]
        if not asked and not also and not _NEEDED.search(around):
            continue
        scene.use(figure)
        found.append(_in_weeks(scene, figure))
    values = [draft.high or draft.low or 0.0 for draft in found]
    if len(found) < 2 or max(values) <= 1.03 * min(values):
        return list(found[-1:])
    return [Question("project.weeks", found[-1].start, found[-1].end, "two_values", {}, (found[0], found[-1]))]


def _in_weeks(scene: Scene, figure: Figure) -> Draft:
    draft = scene.draft("project.weeks", figure)
    if draft.low is not None:
        draft.low /= 604800.0
    if draft.high is not None:
        draft.high /= 604800.0
    words = scene.words(figure.begin, figure.first)
    if words.strip() in ("within",) and draft.low is not None and draft.high is not None:
        draft.low = None
    return draft
