"""Whether a rate is the everyday one or the peak."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.message.scene import Draft, Question, Scene

PEAK = re.compile(
    r"\b(?:peak|peaks|peaking|peaked|surge|surging|burst|bursting|rush|rushes|busy|busiest|season|seasonal|could"
    r" hit|can hit|hit|hitting|"
    r"spike|spiking|spikes|worst|top speed|top out|topping|top rate"
    r"|up to(?! (?:an?|the|our|my|their|this|that|another)\b)|as high as|as many as|quarter end|month end"
    r"|next year|headroom|in future|the future|future|later on|eventually|"
    r"designing for|design to|planning (?:for|on)|plan for|want to (?:hit|reach|go)|growing to|going (?:up )?to"
    r"|grow to|growth|ready for|design for|designed for|expansion|ramp up to|ramp to|ramping to|max"
    r"|maximum|at most|tops|never more than|no more than|"
    r"christmas?|xmas?|holiday|holidays|harvest|campaign|most (?:we|they|it)(?:'d| would| could"
    r"| will)?(?: ever)? (?:see"
    r"|do|run|make|get|hit|need)|the most|at the outside|short burst|catch up|catching up|sprint|when (?:we're|we"
    r" are) busy|limit|ceiling|flat out|full tilt|fastest|"
    r"at best|crunch|high season|goes? to|jumps? to|climbs? to|swings? to|planned|in two years|2 years|sometimes"
    r"|occasionally|at times|on a good day|on good day|black friday|summer|friday|monday|reach|reaching|someday"
    r"|expect|expected|capable of|catch-up|not exceed|exceeding)\b"
)
_NORMAL = re.compile(
    r"\b(?:normal|normally|nominal|average|avg|usual|usually|steady|typical|typically|run|running|runs|currently"
    r"|current|today|now|mostly|most of|most day|regular|regularly|everyday|standard|base|baseline|cruise"
    r"|cruising|"
    r"day to day|generally|rated|sustained|flat profile|needs?|design rate|at present|right now|usually do|make"
    r"|making|do)\b"
)
STRONG_PEAK = re.compile(
    r"\b(?:peak|xmas?|christmas?|most (?:we|they|it)|surge|burst|max|maximum|top out|top speed|busy|season"
    r"|next year|headroom|future|could hit|can hit|spike"
    r"|at most|up to(?! (?:an?|the|our|my|their|this|that|another)\b)"
    r"|rush|never more|no more than|quarter end|ready for|worst|top out|peaking|limit|as high as|as many as"
    r"|holiday)\b"
)
_PEAK_BEHIND = re.compile(
    r"\b(?:peaks?|surges?|bursts?|busy|busiest|season|next year|future|worst|rush|christmas?|holidays?|harvest|crunch"
    r"|xmas?|when \w+ \d* ?start|good day|at best|flat out|later on|eventually|after the expansion|full tilt"
    r"|when (?:we're|it's|they're|it is) busy"
    r"|when it get|short (?:spell|time)|friday|black friday|month end|quarter end|some day)\b"
)
_NORMAL_BEHIND = re.compile(r"\b(?:normal|normally|average|avg|usual|usually|typical|typically|most)\b")


def normal_or_peak(scene: Scene, figure: Figure) -> str:
    before = scene.before(figure)
    lead = scene.words(figure.begin, figure.first)
    behind = scene.after(figure)
    own = re.split(r"[,;(.]| but | and | then ", behind, maxsplit=1)
    tail = own[0][:60]
    if figure.bound == "most":
        return "rate.peak"
    if figure.bound == "least" and re.match(r"^\W*(?:has |have |is |was )?never\b", behind):
        figure.bound, figure.high = "most", figure.low  # more than 200 an hour has never happened
        return "rate.peak"
    if figure.bound == "least":
        return "rate.peak" if scene.asked == ("rate.peak",) else "rate.normal"
    text = f"{before} {lead}"[-80:]
    close = re.split(r"[;.,]" if _follows_a_rate(scene, figure) else r"[;.]", text)[-1]
    peaks, normals = list(PEAK.finditer(close)), list(_NORMAL.finditer(close))
    last_peak = peaks[-1].end() if peaks else -1
    last_normal = normals[-1].end() if normals else -1
    if _belongs_to_next(scene, figure, behind):
        tail = ""
    if re.match(
        r"^\W*(?:at |is |as |the |in |on |for |during |when )*(?:our |the |a |an )?(?:\w+ )?(?:peak|design"
        r"|height of|max|maximum"
        r"|tops?|surge|burst|busy|busiest|season|next year|future|worst case|rush|quarter end|christmas?|holiday"
        r"|high season|harvest|crunch|peaks|absolute max|limit)",
        tail,
    ):
        return "rate.peak"
    if _PEAK_BEHIND.search(tail) and not _NORMAL_BEHIND.search(tail):
        return "rate.peak"
    if re.match(
        r"^\W*(?:at |is |as |the |a |an |in |on |most |of |for )*(?:normal|normally|average|avg|nominal|usual|usually"
        r"|typical|typically|steady|now|today|currently|sustained|most day|mostly)",
        tail,
    ):
        return "rate.normal"
    if "(" in behind[:3] and re.match(r"^\s*\( ?(?:peak|max)", behind) and not re.search(r"\d", behind):
        following = scene.windows[id(figure)][1]
        if following < len(scene.tokens) and scene.tokens[following - 1].text == ")":
            return "rate.peak"
    if last_peak > last_normal:
        return "rate.peak"
    if peaks and STRONG_PEAK.search(close[peaks[-1].start() :]) and last_normal - last_peak <= 8 and last_peak >= 0:
        return "rate.peak"
    return "rate.normal"


def _follows_a_rate(scene: Scene, figure: Figure) -> bool:
    """ "Twelve a minute when it's busy, seven otherwise": the busy time is told of the rate before."""
    at = scene.order.get(id(figure), 0)
    earlier = scene.figures[at - 1] if at else None
    same = earlier is not None and scene.sentence_at[earlier.first] == scene.sentence_at[figure.first]
    return same and earlier is not None and earlier.kind == "rate"


def asked_for_peak(scene: Scene, figure: Figure, found: list[Draft | Question]) -> bool:
    """An answer to the question about the peak alone, or the second figure to a question about both."""
    if "rate.peak" not in scene.asked or figure.bound == "least":
        return False
    if "rate.normal" in scene.asked:
        return any(item.field == "rate.normal" for item in found)
    return _NORMAL_SAID.search(scene.sentence_text(figure.first)) is None


_NORMAL_SAID = re.compile(
    r"\b(?:normal|normally|nominal|average|avg|usual|usually|typical|typically|steady|regular|otherwise"
    r"|rest of (?:the )?(?:time|year|day|week)|current|currently"
    r"|today)\b"
)


def _belongs_to_next(scene: Scene, figure: Figure, behind: str) -> bool:
    """ "18 per min peak 26": the cue stands right before the next figure."""
    following = scene.windows[id(figure)][1]
    if following >= len(scene.tokens) or not any(
        f.first == following or f.begin == following for f in scene.next_figures(figure)
    ):
        return False
    return (
        re.fullmatch(
            r"\W*(?:and |but |with |or )*(?:a |the |our )?(?:\w+ )?(?:peak\w*|max|maximum|surge|burst|up|top"
            r"|normal|average)(?: rate| load| flow| demand)?(?: of| at| is| to| about| around| maybe| :|:)*\s*",
            behind,
        )
        is not None
    )
