"""Where it comes from and where it goes to, as floors and "
"ends: "fl -> mezz", "the outfeed sits 2 m above the infeed"."""

import re

from intake.reading.message.plain import Plain

_RANKS: tuple[tuple[int, str], ...] = (
    (-2, r"basement|cellar|vault|crypt|sub - basement|below grade"),
    (-1, r"pit"),
    (0, r"(?:the )?ground(?: floor| level)?|gf|street(?: level)?|grade|floor level|shop floor|dock(?: level)?"
    r"|loading dock|truck dock|lower(?: level| floor| deck)?|lowest|bottom(?: floor| level)?|downstairs|below"
    r"|fl|flr|floor|main floor|low level|yard"),
    (1, r"(?:first|1 st|1|one) (?:floor|level|storey|story|flr|fl)|(?:floor|level|flr|fl|storey|l) (?:1|one)"
    r"|first|mezz|mezzanine|mez"),
    (2, r"(?:second|2 nd|2|two) (?:floor|level|storey|story|flr|fl)|(?:floor|level|flr|fl|storey|l) (?:2|two)"
    r"|second|upper(?: level| floor| deck)?|platform|gallery|balcony|upstairs|top(?: floor| level)?|loft|attic"
    r"|roof|overhead|high level|above|penthouse|highest"),
    (3, r"(?:third|3 rd|3|three) (?:floor|level|storey|story|flr|fl)|(?:floor|level|flr|fl|storey|l) (?:3"
    r"|three)|third"),
    (4, r"(?:fourth|4 th|4|four) (?:floor|level|storey|story|flr|fl)|(?:floor|level|flr|fl|storey|l) (?:4|four)"
    r"|fourth"),
    (5, r"(?:fifth|sixth|seventh|eighth|5 th|6 th|7 th|8 th|[5-9]) (?:floor|level|storey|story|flr|fl)|(?:floor"
    r"|level|flr|fl|storey|l) [5-9]|fifth|sixth"),
)  # fmt: skip
_PLACE = "|".join(f"(?P<{{side}}{rank + 2}>{words})" for rank, words in _RANKS)
_FROM = _PLACE.replace("{side}", "a")
_TO = _PLACE.replace("{side}", "b")
_LEAD = r"(?:the |our |a |its |their |main |loading |storage |packing |production |processing )*"
_JOURNEY = re.compile(
    rf"(?:(?:\b(?:from|off|out of|leaves?"
    rf"|between)\b (?:\S+ ){{0,5}}?){_LEAD}(?:{_FROM})\b(?! beam)(?: \S+){{0,6}}? (?:to|onto|into|up to|down to"
    rf"|->|- >|→|and|for)"
    rf"|(?:^|(?<=[,;(:] ))(?:{_LEAD})(?:{_FROM.replace('?P<a', '?P<c')}) (?:to|- >|->|→|> ))"
    rf" (?:\S+ ){{0,4}}?{_LEAD}(?:{_TO})\b"
)
_OUT = (
    r"(?:out ?feeds?|discharges?|delivery|deliver|exit|exits|outlet|output|leaves|leave|goes out|comes out"
    r"|get off|gets off|receiving (?:conveyor|belt|end)|takeaway|take - away|off - ?feed|unload\w*|arrives"
    r"|destination|end)"
)
_IN = (
    r"(?:in ?feeds?|in - feed|intake|inlet|input|entry|entrance|enters?|entered|comes in|came in|come in"
    r"|gets on|get on|goes in|feeding (?:conveyor|belt|end)|incoming|loading (?:end|point)|start|where (?:it"
    r"|they) (?:comes?|gets?|goes) (?:in|on))"
)
_ABOVE = re.compile(
    rf"\b{_OUT}\b(?: \S+){{0,9}}? (?P<way>higher|above|lower|below)\b(?: than| the| its| our"
    rf"| where| what| that| of| it| they| our own)* {_IN}\b"
)
_BELOW = re.compile(
    rf"\b{_IN}\b(?: \S+){{0,9}}? (?P<way>higher|above|lower|below)\b(?: than| the| its| our"
    rf"| where| what| that| of| it| they)* {_OUT}\b"
)
_GOES = re.compile(
    r"\b(?:go|goes|going|come|comes|move|moved|get|gets|bring|brought|take|taken|carry|carried|convey\w*"
    r"|transport\w*|transfer\w*|send|sent|put|leave|leaves|end|ends|end up|deliver\w*|deposit\w*|need\w*"
    r"|have to|must)\b"
    r"(?: \S+){0,5}? (?:\d\S*|one|two|three|four|five|six|seven|eight|nine|ten|a) (?:\S+ ){0,3}?(?P<way>higher"
    r"|lower|further up|further down)\b(?! (?:level|floor|deck|rate|speed|than (?:\d|today|now|usual)))"
)


_STAIRS = re.compile(r"\b(?:downstairs\b.* upstairs|upstairs\b.* downstairs)\b")


def journey(words: Plain) -> list[tuple[str, int, int]]:
    """ "up" or "down" with the tokens that say it, from places named in order and from what lies above what."""
    found: list[tuple[str, int, int]] = []
    for match in _JOURNEY.finditer(words.text):
        ends = {side: int(key[1:]) - 2 for key, said in match.groupdict().items() if said for side in key[0]}
        start, end = ends.get("a", ends.get("c")), ends.get("b")
        if start is not None and end is not None and start != end:
            found.append(("up" if end > start else "down", *_tokens(words, match)))
    for pattern, turned in ((_ABOVE, False), (_BELOW, True)):
        place = pattern.search(words.text)
        if place is not None:
            up = (place["way"] in ("higher", "above")) != turned
            found.append(("up" if up else "down", *_tokens(words, place)))
            break
    stairs, goes = _STAIRS.search(words.text), _GOES.search(words.text)
    if stairs is not None:
        found.append(("up" if stairs.group().startswith("down") else "down", *_tokens(words, stairs)))
    if goes is not None:
        found.append(("up" if goes["way"].endswith(("higher", "up")) else "down", *_tokens(words, goes)))
    return found


def _tokens(words: Plain, match: re.Match[str]) -> tuple[int, int]:
    return words.token_at(match.start()), words.token_at(match.end() - 1) + 1
