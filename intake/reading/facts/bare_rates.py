"""Rates whose unit stands elsewhere: in a heading, or at the rate before or behind."""

import re
from dataclasses import replace

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.size_labels import label_behind
from intake.reading.amounts.units import UNITS, Unit
from intake.reading.facts.peaks import PEAK, STRONG_PEAK
from intake.reading.message.scene import Scene


def share_before(scene: Scene) -> None:
    """ "Normal 32, peak 40 cpm": the bare number before takes the unit of the rate behind."""
    for figure, following in zip(scene.figures, scene.figures[1:], strict=False):
        if (
            figure.kind == "number"
            and following.kind == "rate"
            and following.per is not None
            and scene.live(figure.first)
        ):
            between = scene.words(figure.end, following.begin)
            before = scene.before(figure)[-40:]
            joined = re.fullmatch(
                r"(?:,|;|and|/|or|with|but|\.|normal|average|peak|max|at peak|,? ?(?:and )?(?:with )?(?:a"
                r" )?peak(?:s|ing)?(?: of| at| to|:)?|\s)*(?:\w+ ){0,5}(?:\w+)?",
                between,
            )
            cue = re.search(
                r"(?:normal|nominal|average|avg|typical|usual|usually|steady|rate|speed|peak|max|run|running|at"
                r"|about|throughput|typically|normally|do|make)(?: (?:is|are|of|at|about|around|maybe|we|do|run"
                r"|speed|rate|:))*\W*$",
                before,
            )
            if joined and cue and len(between) < 40 and (PEAK.search(between) or STRONG_PEAK.search(before)):
                give_unit(figure, following.per.unit)


_HEADED = re.compile(
    r"(?:^|[,;(.] ?|\b)(?:\w+ )?(\w+) ?(?:/|per|an?) ?(minute|min|hour|hr|h|sec|second)\b(?: \(?(?:normal"
    r"|average|nominal|peak|max)\)?)? ?(?:[:=]|is|are|-|=|\|)* ?(?:about |approx |around |~ |peak |max |normal"
    r" )*$"
)
_TIME = {"minute": "1/min", "min": "1/min", "hour": "1/h", "hr": "1/h", "h": "1/h", "sec": "1/s", "second": "1/s"}


_PER_FIRST = re.compile(
    r"\b(?:per|every|each|in one|in an?|peak|busiest|best) (minute|min|hour|h)\b ?[,:|]? ?(?:[\w']+ ){0,4}$"
)


_PER_SHIFT = re.compile(
    r"\b(?:per|every|each|an?|in an?) (\d{1,2}) ?-? ?(?:h|hr|hour)s? ?-? ?shift,? (?:(?:is|are|of|:|=|we|make"
    r"|run|do|need|about|output) ?){0,4}$"
)


def headed(scene: Scene, figure: Figure) -> None:
    """ "Crates/hour: 720", "per hour we fill 420": the unit stands in the heading or before."""
    shift = _PER_SHIFT.search(scene.before(figure)[-60:] + " ")
    if shift is not None and figure.value > 0 and scene.group_of(figure) is None:
        give_unit(figure, Unit("1/shift", "rate", 1.0 / (60.0 * float(shift.group(1)))))
        return
    first = _PER_FIRST.search(scene.before(figure)[-60:] + " ")
    noun = re.match(r"^\W*(?:people|operators?|shifts?|breaks?|times|machines?)\b", scene.after(figure))
    if first is not None and figure.value > 0 and scene.group_of(figure) is None and not noun and not figure.tags:
        give_unit(figure, UNITS[_TIME[first.group(1)]])
        return
    match = _HEADED.search(scene.before(figure)[-60:])
    if match is not None and figure.value > 0 and scene.group_of(figure) is None:
        if figure.bound == "least" and match.group(2) == "min":
            figure.bound, figure.begin = "", figure.first  # the minute of the heading, no minimum
        give_unit(figure, UNITS[_TIME[match.group(2)]])
        if figure.per is not None:
            figure.per = replace(figure.per, noun=match.group(1))


def bare_rate(scene: Scene, figure: Figure, last: Figure) -> None:
    """ "18 per min, peak 26": the bare number takes the unit of the rate before."""
    near = scene.sentence_at[figure.first] - scene.sentence_at[last.first]
    if near > 1 or figure.first - last.after > 14 or last.per is None or figure.value <= 0 or "list" in figure.tags:
        return
    if scene.group_of(figure) is not None or label_behind(scene.tokens, figure.after)[0]:
        return
    before, behind = scene.before(figure)[-50:], scene.after(figure)[:30]
    cue = re.search(
        r"(?:pk|peak(?:s|ing)?|surge|burst|max(?:imum)?|top|up to|could hit|can hit|hit|hitting|spike|as high as"
        r"|busy|campaign|season|next year|ready for|headroom to|headroom for|future|growing to|going to|going up to"
        r"|go to|goe to|jump to|climb"
        r" to|normal|normally"
        r"|average|usually|run|running|tops out|top out|reach|worst|limit|expect|expecting|at peak|at best|day"
        r"|quarter end|christmas?|design for|planned)\W*(?:(?:more|like|closer|nearer|at|of|to|is|about|around"
        r"|be|for|it|maybe|say|hour"
        r"|time|:|\(|we|at about|period|do|see|rate|the|a|can|are|go|goe|with|than|,|-) ?){0,4}$",
        before,
    )
    after_cue = re.match(
        r"^\W*(?:is |at |on |in |as |the |a |for |when |during |durring |over |around )*(?:xmas?|christmas?"
        r"|peak|design|nominal|maximum|max|tops?|surge|burst|busy|next year|season|in"
        r" season|at peak|future|worst|normal|average|usually)\b",
        behind,
    )
    typed = max(end.value for end in last.ends)
    ratio = figure.value / typed if typed else 0.0
    told = 0.2 <= ratio <= 5.0 and (
        (_WHEN_BEHIND.match(behind) and _LEADS_ON.search(before)) or _WHEN_BEFORE.search(before)
    )
    closes = (
        re.match(
            r"^\W*(?:$|[,.;)]|steady|now|remains?|stays?|holds?|and\b|but\b|or so\b|as (?:the )?peak"
            r"|at the top)",
            behind,
        )
        is not None
    )
    capped = figure.bound == "most" and ratio > 1
    now = closes and 0.2 <= ratio <= 5.0 and (_NOW.search(before) or PEAK.search(before) or capped)
    plain = closes and 0.3 <= ratio <= 4.0 and _RATE_WORDS.search(re.split(r"[,;]", scene.before(figure)[-60:])[-1])
    if not (cue or after_cue or told or now or plain):
        return
    noun = re.match(r"^\W*(?:line|machine|shift|week|month|day|people|hour|year|size|sku|percent|%|x )", behind)
    if noun:
        return
    if figure.ends[0].maybe_thousands and typed >= 1000:
        figure.ends = tuple(replace(end, value=end.value * 1000.0) for end in figure.ends)
    give_unit(figure, last.per.unit)
    if figure.per is not None and last.per is not None:
        figure.per = replace(figure.per, noun=last.per.noun, hours=last.per.hours, each=last.per.each)


_WHEN_BEHIND = re.compile(
    r"^\W*(?:when|whenever|while|if|once|after|during|otherwise|before|on (?:a |the )?(?:good|bad|busy|slow"
    r"|quiet|heavy|big|peak"
    r"|mon|tues|wednes|thurs|fri|satur|sun|week|some|most)\w*|in (?:the )?(?:run - up|regular|normal|ordinary|everyday"
    r"|usual|season|summer|winter|fall|autumn"
    r"|spring|future|worst|rush"
    r"|run up|high|busy|low|quiet|january|february|march|april|may|june|july|august|september|october|november"
    r"|december|week|harvest)"
    r"|with (?:the |both|two|all|a second)|at (?:night|times|xmas?|christmas?|the (?:end|weekend|most))"
    r"|for (?:the )?(?:harvest|season|peak|busy|rush|holiday|xmas?|christmas?|easter)"
    r"|(?:every )?now and then|some (?:days?|times?|weeks?)|most (?:days?|times?|weeks?)|other days?|the rest"
    r"|flat out|is the most|by (?:next|20)"
    r"|later|eventually|tomorrow|going forward|long term|down to|from (?:next|january)|per the plan)\b"
)
_WHEN_BEFORE = re.compile(
    r"\b(?:mon|tues|wednes|thurs|fri|satur|sun)days?,? (?:it's|its|even|up to|we (?:do|hit|see|run)|more like"
    r"|nearer|,)\W*$|"
    r"\b(?:in|on|during|at|over|around|for) (?:the |our |a )?(?:spring|summer|autumn|fall|winter|jan|feb|mar"
    r"|apr|may|june?|july?|aug|sept?|oct"
    r"|nov|dec)?(?:\w{2,12})?"
    r"(?: (?:weeks?|days?|months?|time|season|break|run))? ?(?:it's|its|we (?:do|hit|see|run|make|need)|even"
    r"|up to|maybe|about|perhaps|more like"
    r"|like|nearly|almost|around|it goes to|it is|then)\W*$|\b(?:when|if|once) [\w' ]{3,40}?(?:it's|even"
    r"|more like|,|up to|then)\W*$"
)
_RATE_WORDS = re.compile(
    r"\b(?:rate|minute|hour|peak|busy|busiest|normal\w*|average\w*|ordinar\w+|usual\w*|regular\w*|run|runs|does"
    r"|do|see|hit|push|want|wants"
    r"|size|sized|plan|send|handle|pace|speed|throughput|max|tops?|nearer|closer|more like|better than"
    r"|more than|will be|it'll be|take|as high as"
    r"|grow|climb|reach|design|target|capacity|sized for|size for)\b"
)
_NOW = re.compile(
    r"\b(?:only|just|actually|really|otherwise|else|rest of (?:the )?(?:time|year|day|week)|new one|now|today"
    r"|these days|this one|ours|has to (?:take|do|handle)"
    r"|must (?:take|do|handle)|needs? to (?:take|do|handle)|get|gives? us|sends? (?:us|it)|feeds? (?:us"
    r"|it))\b(?: \w+){0,4}\W*$"
)
_LEADS_ON = re.compile(
    r"(?:^|[,;:(/-]|\b(?:and|but|or|to|maybe|then|about|sometimes|like|it's|is|at|do|does|be|run|runs|hit|hits"
    r"|see|say|even|only|just"
    r"|need|make|around|roughly|perhaps|probably|nearly|almost|over|reach))\W*$"
)
