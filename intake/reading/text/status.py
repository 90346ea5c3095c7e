"""What a piece of text is about: the need itself, or a question, a supposition, the past, another machine."""

import re
from collections.abc import Mapping

from intake.reading.text.layout import Sentence
from intake.reading.text.tokens import Token

_CAPABLE = re.compile(
    r"^\W*(?:(?:hi|hello|hey|ok|okay|also|and|so|but|or|now|oh|well|btw|by the way|one more thing|just curious"
    r"|curious|quick question|question)\W+)*"
    r"(?:(?:can|could|does|do|did|is|are|will|would|should|may|has|have|must)(?:n't)?\b(?! be\b| have )"
    r"|what|how|which|when|where|why|who|whose|any (?:chance|way|problem)|what's|whats|how's|is there|are there"
    r"|possible)\b"
)
_NEED = re.compile(
    r"\b(?:our|my|ours)\b|\bfor us\b|\b(?:something|anything|a machine|machines?|equipment|solution|a lift|a"
    r" conveyor|a way|way|"
    r"options?|one|unit|product)\b.{0,30}\b(?:to|for|that can|that could|that would|which can|that|capable of) "
    r"(?:lift|mov|rais|bring|tak|carry|convey|elevat|lower|get|handl|go|do|transport|transfer)\w*"
    r"|\b(?:recommend|suggest|help|propose|quote)\b.{0,60}\b(?:for|with|to|us|me)\b"
    r"|\bhow (?:do|can|would|could|should) (?:we|i)\b|\bneed to\b|\bwe (?:have|need|want|run|make|pack|are|would"
    r" like)\b|\bwe're\b"
)
_SAYING = re.compile(
    r"\b(?:wonder(?:ing)?|curious|want to know|would like to know|tell me|let me know|ask(?:ing|ed)?|not sure"
    r"|unsure|know) (?:if|whether)\b"
    r"|\bis it (?:ok|okay|possible|a problem)\b"
)
_OPENS_QUESTION = re.compile(
    r"^\W*(?:(?:also|and|so|but|or)\W+)?(?:can|could|does|will|would|do) (?:it|they|that|this|these|those|your"
    r"|you|the machine|the lift|anyone)\b"
)
_PART_QUESTION = re.compile(
    r"(?:,|;|:| -|\(|\bbut|\band|\bor|\bso)\s+(?:and |but |so |or )?(?:can|could|does|do|is|are|will|would|what"
    r"|how|which|any chance|ok to|possible|is that|would that|doable)\b"
)
_SUPPOSED = re.compile(
    r"\bif (?:we|you|it|they|i|our|the|there|things|sales|this|that|demand|volume|management|marketing)(?:'d"
    r"|'re)? (?:\w+ ){0,2}?(?:went|go|goes|were|was|ever|add|adds|added|switch\w*|chang\w+|double\w*|"
    r"move[ds]?|got|get|gets|could|used|use|needed|need|needs|decide\w*|bought|buy|run|ran|had|would|grew|grow"
    r"|grows|make|made|take|took|put|increase\w*|want\w*|do|did|pick\w*|land\w*|win|won|choose|chose|ask\w*"
    r"|raise[ds]?|tried|try|drop\w*|started|start|swap\w*|comes?|came|can|stay\w*|expand\w*|bump\w*)\b"
    r"|\bwhat if\b|\bwhat about\b|\bhow about\b|\bsuppos\w+\b|\bhypothetical\w*|\bsomeday\b|\bsome day\b|\bone"
    r" day\b|\bimagine\b|\bsay we\b|\blet's say\b|\blets say\b|\bwere to\b|\bin case we\b"
    r"|\b(?:we|they|i|management|marketing|boss|sales|owner|somebody|someone)(?:'ve|'re|'d)? (?:have |had |has "
    r"|are |were |was |is |been |once |also |even |did |briefly )*(?:thought|thinking|think|talked|talking"
    r"|consider\w*|toyed|toying|looked|dream\w*|discuss\w*|debat\w+|played|joke\w*) (?:about|of|with|at|into"
    r"|going|switching|adding|moving|a|an|the|[a-z]+ing)\b"
    r"|\bmight (?:go|add|switch|change|move|someday|eventually|one day|later|want to go|get|need to go|expand"
    r"|bump|increase)\b|\bmay (?:switch|add|change|move) (?:to|later)\b"
    r"|\bwould (?:be nice|love|rather) (?:to|if)\b|\bin theory\b|\bunless we\b|\bcould (?:switch|change|move|go)"
    r" to\b|\bwish\b|\bpossibly later\b|\bdown the road\b"
)
_BENIGN_IF = re.compile(
    r"\bif (?:that|it) helps\b|\bif possible\b|\bif it matters\b|\bif i (?:remember|recall)\b|\bif (?:you|u)"
    r" (?:ask|need|want|must)\b"
)
_PAST = re.compile(
    r"\bused to\b|\b(?:last|previous|past) (?:year|month|week|time|quote|quarter|season|summer|winter|job"
    r"|project|machine|vendor|supplier|plant|owner|spring|fall|decade)\b|\bpreviously\b|\bformerly\b|\bin the"
    r" past\b"
    r"|\b(?:years|months|weeks|days|decades) ago\b|\bback (?:in|then|when)\b|\boriginally\b|\bthe (?:old"
    r"|previous|former|earlier|original) (?:machine|line|lift|unit|ones?|conveyor|elevator|spiral|system"
    r"|plant|boxes|box|case|cases|spec|setup|quote|vendor|building|bags?|trays?|layout|drawing|manual"
    r"|contraption|hoist|product|incline)\b"
    r"|\bour (?:old|previous|former|last) \w+\b|^\W*(?:the |our )?old (?:elevator|lift|machine|line|conveyor"
    r"|hoist|unit|one|spiral|chute)\b|^\W*old \w+ (?:was|were|had|measured|weighed)\b|\b(?:the|an|that|this"
    r"|your|their) old (?:one|ones|thing|way"
    r"|days?|\w+ (?:was|were|had|did|ran|used))\b|\bin (?:19|20)\d\d\b"
    r"|\byesterday\b|\bwas (?:built"
    r"|made|bought|installed|designed|rated|quoted|sized)\b|\bbefore the (?:move|change|fire|flood|expansion)\b"
    r"|\bback home\b|\bno longer\b|\bwe had (?:a|an|one)\b|\bin the old days\b|\bbefore we\b|\bused before\b"
    r"|\b(?:our|the) record (?:is|was)\b|\bearlier\b(?: \w+){0,2} (?:was|were|said|told|wrote)\b|\bhad been\b"
    r"|\buntil (?:last|now|recently|this)\b"
)
_OTHER = re.compile(
    r"\b(?:the|our|on the|at the|an|that|their|my|your) other (?:line|lines|plant|machine|site|one|lift|building"
    r"|product|conveyor|unit|elevator|project|facility|spiral|vendor|supplier|room|side of town|job|company)\b"
    r"|\banother (?:line|plant|machine|vendor|project|site|company|supplier|building|unit|lift|one of our)\b"
    r"|\bsister (?:plant|company|site|line|factory)\b"
    r"|\bcompetitors?\b|\bcompetitor's\b|\bdifferent (?:line|plant|project|machine|building|site|job)\b"
    r"|\bneighbou?rs?\b|\b(?:existing|current|present|present day) (?:machine|lift|elevator|spiral|unit|hoist"
    r"|equipment|incline|bucket|system|one|contraption|setup|lifter|freight elevator|vertical|belt)\b|\bthe one"
    r" (?:in|at) (?:ohio|texas|iowa|our|the)\b"
    r"|\b(?:machine|line|lift|unit|conveyor|elevator|one) (?:next door|across the (?:street|hall|road|aisle)"
    r"|over there|at the (?:show|booth|trade show))\b|\byour (?:brochure|website|web site|web page|webpage"
    r"|catalog|catalogue|video|ad|flyer|colleague|demo|competitor|booth|machine at|unit at|site says|rep"
    r"|salesman|show)\b|\b(?:saw|seen|watched) (?:one|your|it|(?:a|the) (?:machine|lift|spiral|conveyor|video"
    r"|demo|unit))\b|\byour (?:stand|demo|booth|showroom|sample|test)\b|\b(?:a|my) colleague's\b"
    r"|\bfreight elevator\b(?! door| opening)|\bat home\b|\bbuilding next\b"
    r"|\b(?:at|in) (?:our|the) (?:\w+ )?(?:plant|site|facility|factory|dc"
    r"|warehouse) in \w+(?=[^:.]{0,40}\b(?:we|they|it|runs?|does|has|have|use)\b)|\bthe palletizer"
    r" (?:does|runs|is)\b|(?<!under )(?<!below )\bthe (?:wrapper|filler|packer|labeler|oven|robot|palletizer"
    r"|case packer|depalletizer"
    r"|truck|trucks|crane|compressor|boiler|silo|generator|transformer|elevator|freight elevator|hoist) (?:is"
    r"|does|has|runs at|draws|weighs|was|can|handles|itself)\b"
    r"|\b(?:the|our) (?:palleti[sz]er|wrapper|oven|robot|depalletizer|case packer) (?:can|could|eats?|takes?"
    r"|is (?:good|rated))\b|\bcompany (?:truck|van|picnic)\b|\bmy (?:truck|car|wife|desk|office|kid|son|dog"
    r"|van)\b|\bother"
    r" vendors?\b|\b(?:they|their) (?:quoted|offered|told us|promised|claim)\b"
)
_ACCORDING = re.compile(r"\b(?:going by|according to|based on|judging by|per|taken from) (?:the )?$")
_UPSTREAM = re.compile(r"the (?:wrapper|filler|packer|labeler|oven|robot|case packer|depalletizer|palletizer)\b")
_REFUSALS = frozenset({"no", "nope", "nah"})
_SHORT, _RICH = 4, 3
"""A question of so few words and no figure asks; one with so many kinds of figures describes."""
_STOPS_STATUS = frozenset({",", ";", "(", ")", "but", "now", "whereas", "while", "however", "though", "yet"})


def status_of(
    tokens: list[Token], sentences: list[Sentence], shadow: str, kinds: Mapping[int, str], asked: tuple[str, ...] = ()
) -> list[str]:
    """One word for each token: "" (the need), "asked", "supposed", "past", "other".

    `kinds`: the kind of the figure that begins at a token. A question full of figures describes the need.
    """
    status = [""] * len(tokens)
    for sentence in sentences:
        if sentence.after <= sentence.first:
            continue
        start, end = tokens[sentence.first].start, tokens[sentence.after - 1].end
        text = shadow[start:end]
        _questions(status, tokens, sentence, text, kinds)
        for pattern, word in ((_SUPPOSED, "supposed"), (_PAST, "past"), (_OTHER, "other")):
            for match in pattern.finditer(text):
                if (
                    word == "other"
                    and _UPSTREAM.match(match.group())
                    and any(name.startswith("rate.") for name in asked)
                ):
                    continue  # asked how many come, people name the machine that sends them
                _spread(status, tokens, sentence, start + match.start(), start + match.end(), word)
    return status


def _questions(status: list[str], tokens: list[Token], sentence: Sentence, text: str, kinds: Mapping[int, str]) -> None:
    if not sentence.question and not _OPENS_QUESTION.match(text) and not _SAYING.search(text):
        return
    refused = sentence.question and sentence.after + 1 < len(tokens) and tokens[sentence.after + 1].text in _REFUSALS
    if refused and not _CAPABLE.match(text):
        for n in range(sentence.first, sentence.after):
            status[n] = "asked"
        return
    figures = {kinds[n] for n in range(sentence.first, sentence.after) if n in kinds}
    if sentence.question and not figures and sentence.after - sentence.first <= _SHORT:
        for n in range(sentence.first, sentence.after):
            status[n] = "asked"
        return
    if len(figures - {"number"}) >= _RICH and not _OPENS_QUESTION.match(text):
        return
    if _CAPABLE.match(text):
        begin = 0
    else:
        saying = _SAYING.search(text)
        part = next(reversed([*_PART_QUESTION.finditer(text)]), None)
        if saying is not None:
            begin = saying.start()
        elif part is not None and sentence.question:
            begin = part.start()
        else:
            return
    asked = text[begin:]
    if _NEED.search(asked) and not _SUPPOSED.search(asked):
        return
    base = tokens[sentence.first].start + begin
    for n in range(sentence.first, sentence.after):
        if tokens[n].start >= base:
            status[n] = "asked"


def _spread(status: list[str], tokens: list[Token], sentence: Sentence, start: int, end: int, word: str) -> None:
    """Give the word to the clause around a cue: back to its beginning, on to its end."""
    first = next((n for n in range(sentence.first, sentence.after) if tokens[n].end > start), sentence.after - 1)
    last = next((n for n in range(first, sentence.after) if tokens[n].end >= end), sentence.after - 1)
    if word == "supposed" and _BENIGN_IF.match("".join(t.text + " " for t in tokens[first : first + 4]).strip()):
        return
    begin = first
    while begin > sentence.first and not _stops(tokens, begin - 1, sentence, word):
        begin -= 1
    after = last + 1
    opens = begin <= sentence.first + 1
    lists = (
        word == "other" and opens and first <= sentence.first + 2 and not _OURS.search(_rest(tokens, sentence, last))
    )
    while after < sentence.after and (
        ((word == "supposed" and opens) or lists) or not _stops(tokens, after, sentence, word)
    ):
        if opens and word == "supposed" and tokens[after].text in ("but", "now", ";", "today"):
            break
        after += 1
    for n in range(begin, after):
        if not status[n]:
            status[n] = word


_OURS = re.compile(r"\b(?:we|our|ours|us|i|mine|but|ok|this|here)\b")


def _rest(tokens: list[Token], sentence: Sentence, last: int) -> str:
    return " ".join(token.text for token in tokens[last + 1 : min(sentence.after, last + 60)])


def _stops(tokens: list[Token], at: int, sentence: Sentence, word: str) -> bool:
    text = tokens[at].text
    if text in _STOPS_STATUS:
        return True
    if text == "and" and at + 1 < sentence.after:
        return tokens[at + 1].text in (
            "we", "i", "now", "need", "must", "this", "it", "our", "the", "they", "these", "here", "today",
        )  # fmt: skip
    return (
        text == "-"
        and at + 1 < sentence.after
        and tokens[at].start > tokens[at - 1].end
        and tokens[at].end < tokens[at + 1].start
    )
