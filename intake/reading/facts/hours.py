"""Hours a day: shifts times their hours, clock times, round the clock."""

import re
from collections.abc import Callable

from intake.reading.amounts.figures import Figure
from intake.reading.message.scene import Draft, Question, Scene

_WORDS = {
    "one": 1.0, "single": 1.0, "a": 1.0, "two": 2.0, "double": 2.0, "both": 2.0, "three": 3.0, "four": 4.0, "five": 5.0,
    "six": 6.0, "seven": 7.0, "eight": 8.0, "nine": 9.0, "ten": 10.0, "eleven": 11.0, "twelve": 12.0, "thirteen": 13.0,
    "fourteen": 14.0, "fifteen": 15.0, "sixteen": 16.0, "seventeen": 17.0, "eighteen": 18.0, "nineteen": 19.0,
    "twenty": 20.0, "twenty one": 21.0, "twenty two": 22.0, "twenty three": 23.0, "twenty four": 24.0,
}  # fmt: skip
_COUNT = r"(one|single|two|three|four|double|both|[1-4])"
_N = (
    r"(\d{1,2}(?:[.,]\d)?|\d{1,2}[ -]?½|twenty[ -](?:one|two|three|four)|twenty|(?:thir|four|fif|six|seven|eigh"
    r"|nine)teen|twelve"
    r"|eleven|ten|nine|eight|seven|six|five|four)"
)
_HALF = r"((?:\d{1,2}|four|five|six|seven|eight|nine|ten|eleven|twelve) and a half|\d{1,2} ?½)"
_HOUR = r"(?:h|hrs?|hours?)\b\.?"
_SHIFT = r"(?:shifts?|crews?|teams?|gangs?)"
_GAP = r"(?:a day|per day|daily|every day|running|each|of about|of|at|per|are|is|x|@|,|\(|:|about|=|-|with|on|for)"
_WORK = r"(?:running|operating|production|working|machine|net|productive|line|run)"
_SHIFTS_OF = re.compile(
    rf"\b{_COUNT}\s+(?:\w+\s+)?{_SHIFT}\b(?:\s*{_GAP}){{0,4}}\s*{_N}(?:\s*-?\s*{_HOUR}|(?<=\d)(?=\s*(?:$"
    rf"|[.,;)]))|(?<=[a-z])(?=\s*(?:$|[.,;)])))"
)
_HOUR_SHIFTS = re.compile(
    rf"\b{_COUNT}\s+(?:x\s+|\*\s*)?{_N}\s*-?\s*{_HOUR}\s*-?\s*shifts?\b|\b([1-3])\s*[x*]\s*{_N}\s*-?\s*{_HOUR}"
)
_SHIFTS_BACK = re.compile(
    rf"\b{_N}\s*-?\s*{_HOUR}\s*-?\s*shifts?[ ,(x*-]+(?:\w+\s+){{0,2}}?{_COUNT}\b(?!\s*(?:lb|kg|ft|in|m|cases?"
    rf"|days?|weeks?|lines?))"
)
_EACH_SHIFT = re.compile(rf"\b{_N}\s*-?\s*{_HOUR}\s*-?\s*shift\b[^.;]{{0,50}}?\b{_COUNT} shifts?\b")
_HALVES = re.compile(
    rf"\b(?:{_COUNT} )?(?:\w+ )?(?:shifts? (?:of|at|,) )?{_HALF}[ -]?{_HOUR}(?: ?(?:a|per|each|every"
    rf"|/)? ?(?:shift|day))?"
)
_ONE_SHIFT = re.compile(rf"\b(?:a|an|one|single)\s+(?:\w+\s+)?{_N}\s*-?\s*{_HOUR}\s*-?\s*shift\b")
_A_DAY = re.compile(
    rf"\b{_N}\s*-?\s*(?:{_WORK}\s+)?{_HOUR}\s*(?:-|of (?:the|each|every)|a|per|/|each|every|out of (?:the|each"
    rf"|every)?|in (?:the|a|each)?"
    rf"|{_WORK})?\s*-?\s*(?:{_WORK}\s*)?(?:d\b|days?\b|daily\b|twenty[- ]four\b|24\b(?!\s*(?:/|x|lb|kg|in|v)))"
)
_OVER = re.compile(
    rf"\b(?:a|per|each|every|/) ?day,? (?:\w+ ){{0,2}}?(?:over|in|across|of|at|on|running|for|during) (?:about "
    rf"|a )?{_N}\s*-?\s*{_HOUR}"
)
_HOURS_OF = re.compile(
    rf"\bhours?\b(?: of (?:operation|work|production))?\W+(?:is |are )?{_N} ?(?:{_HOUR})? ?(?:a|per|each|every"
    rf"|/) ?day\b"
)
_A_DAY_ASKED = re.compile(rf"^\W*(?:about |approx |roughly |some |~ ?)?{_N} ?(?:a|per|/|each|every) ?day\b")
_TENS = re.compile(r"\b(one|two|three|1|2|3)\s+(8|9|10|12|eight|ten|twelve)(?:'?s|es)\b")
_FROM_TO = re.compile(
    r"\b(?:hours?|open|run|running|work|working|production|produce|shifts?)\W+(?:is |are |from |of "
    r"|between )*(\d{1,2}) ?"
    r"(?:h|:00|\.00)? ?(?:-|to|till|until|and) ?(\d{1,2}) ?(?:h|:00|\.00|o'clock|uhr)\b"
)
_FOUR_DIGITS = re.compile(
    r"\b([01]\d|2[0-3])([0-5]\d)(?: ?h(?:rs?|ours)?)? ?(?:-|to|until|till|thru) ?([01]\d|2[0-4])([0-5]\d)\b"
    r"(?! ?(?:mm|kg|lb|v\b|m\b|cases|in\b))"
)
_T = (
    r"(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|midnight|noon)(?:[:.h](\d{2}))?\s*"
    r"(am|pm|a\.m\.?|p\.m\.?|a\b|p\b|o'clock|h\b|uhr|in the (?:morning|afternoon|evening)|at night)?"
)
_CLOCK = re.compile(
    rf"\b(?:from\s+)?{_T}(?:,? ?(?:straight |right )?(?:-|to|til|till|until|through|thru)|, (?:last|finish\w*"
    rf"|stop\w*|done|end\w*)"
    rf"[\w ]{{0,16}}?(?: at| about)?)\s*{_T}(?![\w/])(?!\s*(?:lb|kg|ft|in\b(?! the)|inch|m\b|mm|cm|cases?|per|/"
    rf"|a minute|c\b|f\b|\"|'|°|deg"
    r"|weeks?|days?|boxes|min|minutes|%))"
)
_ROUND_CLOCK = re.compile(
    r"\b24\s*/\s*7\b|\b(?:a?round)\s+the\s+clock\b|\b24\s*x\s*7\b|\btwenty[ -]four[ -]seven\b|\b24/[5-7]\b"
    r"|\bday and night\b"
    r"|\b24\s*-?\s*(?:h|hrs?|hours?)\b(?=\W*(?:a day|per day|/|operation|production|$|\.|,|running|plant|around|daily))"
    r"|\bthree shifts?,? (?:\w+ )?(?:continuous\w*|non ?-?stop|without a break|all day)\b"
    r"|\bcontinuous (?:operation|running|production)\b"
    r"|\b(?:run|runs|running|operate|operates) (?:continuously|non ?-?stop)\b"
)
_RUNNING = re.compile(
    r"\b(?:hrs|hours?|shift|shifts|run|runs|running|work|works|operat\w+|open|production|produc\w+|pack|bake"
    r"|fill|move|start\w*"
    r"|staffed|crew|day|manned)\b"
)


def hours_drafts(scene: Scene) -> list[Draft]:
    """Hours a day, the first sure reading only."""
    shadow = scene.shadow
    for pattern, reader in _READERS:
        for match in pattern.finditer(shadow):
            at = scene.token_at(match.start())
            value = reader(match)
            if value is None and pattern is _CLOCK and scene.asked == ("site.hours",):
                value = _backwards(match)
            if at is None or value is None or not 0 < value <= 24 or not scene.live(at):
                continue
            if not _counts(scene, pattern, match, at):
                continue
            inside = [
                figure
                for figure in scene.figures
                if match.start() <= scene.tokens[figure.first].start < match.end()
                and figure.kind in ("number", "duration", "flow", "rate")
            ]
            scene.use(*inside)
            return [
                (_plainly if pattern is _OVER else _bounded)(
                    Draft("site.hours", match.start(), match.end(), value, value, at=at, rank=6), inside
                )
            ]
    return []


def _counts(scene: Scene, pattern: re.Pattern[str], match: re.Match[str], at: int) -> bool:
    """False for a pair of figures in a size, a clock time of no work, and the like."""
    if _in_group(scene, match.start(), match.end()):
        return False
    if pattern is _A_DAY_ASKED:
        return scene.asked == ("site.hours",)
    if pattern in (_CLOCK, _FOUR_DIGITS):
        return "site.hours" in scene.asked or _RUNNING.search(scene.sentence_text(at)) is not None
    if pattern is _ONE_SHIFT:
        return "site.hours" in scene.asked or "one" in match.group() or "single" in match.group()
    return True


def _plainly(draft: Draft, inside: list[Figure]) -> Draft:
    """ "Over 16 hours": spread over them, no bound."""
    return draft


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
    inside = [g for g in scene.groups if scene.tokens[g.first].start < end and start < scene.tokens[g.after - 1].end]
    return any(len(g.figures) > 2 or any(figure.unit is not None for figure in g.figures) for g in inside)


def _figure(text: str | None) -> float | None:
    if text is None:
        return None
    word = text.replace("-", " ")
    if word in _WORDS:
        return _WORDS[word]
    return float(text.replace(",", ".").replace("½", ".5").replace(" ", "").replace("-", ""))


def _times(match: re.Match[str]) -> float | None:
    """Shifts times hours."""
    values = [_figure(group) for group in match.groups() if group]
    return (values[0] or 0.0) * (values[1] or 0.0) if len(values) == 2 else None


def _halves(match: re.Match[str]) -> float | None:
    """A single shift of seven and a half hours."""
    if "shift" not in match.group() and "day" not in match.group():
        return None
    whole = _figure(re.split(r" and a half| ?½", match.group(2))[0])
    return None if whole is None else (whole + 0.5) * (_figure(match.group(1)) or 1.0)


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
    """7 to 3:30 is 8.5; 6am to 10pm is 16; 22 to 6 is 8; six o'clock to noon is 6."""
    begin, first = _moment(match.group(1), match.group(2), match.group(3))
    end, last = _moment(match.group(4), match.group(5), match.group(6))
    told = first or last or match.group(2) or match.group(5) or match.group(1) in _NAMED or match.group(4) in _NAMED
    if begin > 24 or end > 24 or not (told or "shift" in match.string):
        return None
    if match.group(1) == "midnight":
        begin = 0.0
    span = end - begin
    if span <= 0:
        span += 12 if not last and first != "pm" and begin <= 12 and end <= 12 else 24
    return span if 3 <= span <= 24 else None


def _backwards(match: re.Match[str]) -> float | None:
    """Asked for the hours, "7 to 5" can only be clock times."""
    begin, end = _figure(match.group(1)), _figure(match.group(4))
    return end + 12 - begin if begin is not None and end is not None and 12 >= begin > end else None


_NAMED = {"midnight": 24.0, "noon": 12.0}


def _moment(hour: str, minute: str | None, half: str | None) -> tuple[float, str]:
    """The hour of the day, and "am", "pm" or "" as far as that is told."""
    if hour in _NAMED:
        return _NAMED[hour], "am" if hour == "midnight" else "pm"
    value = (_figure(hour) or 0.0) + float(minute or 0) / 60
    told = (half or "").strip()
    evening = told.startswith(("p", "at night", "in the afternoon", "in the evening"))
    morning = (told.startswith("a") and not evening) or told == "in the morning"
    return (value + 12 if evening and value < 12 else value), "pm" if evening else "am" if morning else ""


_READERS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], float | None]], ...] = (
    (_HALVES, _halves),
    (_SHIFTS_OF, _times),
    (_HOUR_SHIFTS, _times),
    (_SHIFTS_BACK, _times),
    (_EACH_SHIFT, _times),
    (_A_DAY, _plain),
    (_OVER, _plain),
    (_HOURS_OF, _plain),
    (_A_DAY_ASKED, _plain),
    (_TENS, _times),
    (_FROM_TO, _between),
    (_FOUR_DIGITS, _four_digits),
    (_ROUND_CLOCK, lambda _: 24.0),
    (_CLOCK, _clock),
    (_ONE_SHIFT, _plain),
)
