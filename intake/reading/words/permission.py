"""What may be done to the product: held by its sides, turned over. The deed is named, and the words around "
"give leave."""

import re
from dataclasses import dataclass

from intake.reading.message.denial import hedges_in
from intake.reading.message.lexicon import SWALLOWED
from intake.reading.message.plain import Plain, plain
from intake.reading.message.scene import Draft, Scene

_SIDES = r"(?:sides?|flanks?|walls?|waist|laterally|sidewalls?|left and right|both sides|body)"
_SQUEEZE = re.compile(
    r"\b(?:squeez(?:e|es|ed|ing)|sqz|sqeeze\w*|grip(?:s|ped|ping)?|side (?:grip\w*|clamp\w*|pressure|load|loads"
    r"|force|squeeze)|clamp(?:s|ed|ing)?"
    r"|pinch(?:ed|ing)?|hug(?:ged|ging)?|lateral (?:force|clamping|grip\w*|pressure|load|holding)|(?:hold|held"
    r"|holding|grab|grabbed|grabbing|press|pressed"
    r"|pressing|push|pushed|pick|picked|carry|carried|touch|touched|lift|lifted|grasp|grasped|taking"
    r"|taking hold|take hold|lifting|touching|carrying|take|taken|handle"
    r"|handled) (?:\S+ ){0,4}"
    + _SIDES
    + r"|(?:never|not|only|nothing) (?:\S+ ){0,3}(?:by|from|on|at) (?:\S+ ){0,2}(?:sides|flanks|walls)"
    r"|side belts? (?:may|can|could|should) touch\w*|pressing (?=is|permitted|allowed|not))\b"
)
_NOT_SQUEEZED = re.compile(
    r"(?:lids?|caps?|rings?|bungs?|tops?|covers?|closed|locked|tight|truck|trucks|robot|palletizer|hose|pipe"
    r"|spring|c|toggle) (?:is |are |get |gets )?(?:\S+ )?$"
)
_NOT_SQUEEZED_BEHIND = re.compile(
    r" (?:on\b(?! (?:the|its|their|both))|shut|closed|ring|lid|top|cap|bottle|pouch|tube|pack|truck|tape"
    r"|it in|in\b|into|past|through|strip|us\b|handle)"
)
_INVERT = re.compile(
    r"\b(?:upside (?:down|dwn)|invert(?:ed|ing|s)?(?!er)|inversion|flip(?:ped|ping|s)?(?! (?:chart|flop|flops"
    r"|top|side|lid|phone|cap))|overturn(?:ed|ing)?"
    r"|(?:turn|turned|turning|roll|rolled|rolling|tipp?ed|tip|tipping|flip|go|goes) (?:\S+ ){0,3}(?:over"
    r"|onto (?:its|their) (?:heads?|tops?|lids?))(?! (?:to|the|here|there|\d))"
    r"|bottom - up|bottom up|on (?:its|their) heads?|somersault\w*|end over end|head over heels|topsy - turvy"
    r"|capsiz\w+|turning over|tumbl(?:e|ed|ing))\b"
)
_UPRIGHT = re.compile(
    r"\b(?:upright|right (?:way|side) up|(?:this|label|print|lid|top|face|correct|same) (?:side |way )up"
    r"|standing up|level)\b"
)
_KEEP = re.compile(
    r"\b(?:must|has to|have to|need\w*|keep|kept|stay\w*|remain\w*|always|only|please|at all times?"
    r"|all the time|entire|whole|required|throughout|shall|should|be|travel\w*|arrive\w*)\b|^\W*upright"
)
_NO_TROUBLE = re.compile(
    r"\b(?:no|not an?|without(?: an?| any)?|never an?|zero|nothing) (?:\w+ )?(?:problems?|prob|issues?|worr\w+"
    r"|troubles?|harm|damage|objections?|restrictions?|marks?|traces?|dents?|risk"
    r"|limits?|matter|drama|big deal|against)\b|\bn't (?:mind|matter|care|hurt|harm|object)|\b(?:doesn't|don't"
    r"|dont|doesnt|won't|wouldn't|not) (?:mind|matter|care|hurt|harm|object)\w*"
    r"|\bfor all (?:i|we) care|\bwhy not\b|\bsee why not"
)
_NO = re.compile(
    r"\b(?:not|never|no|nobody|none|nothing|cannot|cant|dont|doesnt|mustnt|shouldnt|wont|forbidden|prohibited"
    r"|avoid\w*|refrain|inadmissible|impossible|out of the question|disallowed|rule[sd] out"
    r"|off the table|(?:is|are|would be) out(?= *(?:$|,))|nope|taboo|banned|hate|refus\w+|allergic)\b|n't\b"
)
_YES = re.compile(
    r"\b(?:can|could|may|might|ok|okay|okey|allow\w*|permit\w*|permissible|accept\w*|fine|possible|happy|safe"
    r"|suitable|all (?:you|we) (?:like|want)|as (?:\w+ )?as you (?:like|want)|by all means|feel free|welcome"
    r"|sure|good|tolerat\w+|withstand\w*|surviv\w+|endure\w*|stands?|takes?|handles?|all right|alright|go ahead"
    r"|no problem|yes|free to|works|up to \d\S* (?:n|lbf|lb|kgf|kg|newtons?|pounds?)|please do|easily|already"
    r"|all day|every day"
    r"|approved|tested|how we|the way we|strong enough|firm enough)\b"
)
_HARM = re.compile(
    r"\b(?:break|breaks|broken|burst\w*|crush\w*|crumpl\w+|dent\w*|pop|pops|buckl\w+|collaps\w+|crumbl\w+"
    r"|deform\w*|bulg\w+|squash\w*|leak\w*|spill\w*|damag\w+|ruin\w*|scuff\w*|crack\w*|split\w*|tear|tears|mark"
    r"|marks|mess"
    r"|destroy\w*|fall out|fall off|falls? apart|cave in|caves in|disaster|kills?|slosh\w*|spoil\w*|shift\w*"
    r"|wrinkl\w+|creas\w+)\b"
)
_BEYOND = re.compile(
    r"\b(?:above|over|beyond|more than|from|past|at|hard|harder|too) (?:\S+ ){0,2}(?:\d|hard"
    r"|much|tight|firm)"
)
_WALL = re.compile(
    r"[.!?;()]|, (?!and never|not|never|please|ok|that's|which is|no )| (?:but|whereas|while"
    r"|though|although|because|since|so|otherwise) "
)
_QUICK = re.compile(
    r"squee|sqz|sqee|grip|clamp|pinch|hug|lateral|sides?\b|flank|wall|waist|upside|invert|inversion|flip|over\b"
    r"|bottom|head|somersault|capsiz|tumbl|upright|way up|side up|pressing"
)
_ANSWER_BEHIND = re.compile(
    r"^[\s:=,\-?.]*(?:that's |that is |is |would be |it's |for us |in our case |definitely "
    r"|absolutely )*(?P<word>yes|yep|yeah|ok|okay|fine|allowed|permitted|sure|no problem|possible|no|nope|never"
    r"|not|forbidden|prohibited|n)\b"
)


@dataclass(frozen=True, slots=True)
class _Deed:
    field: str
    value: bool
    first: int
    after: int
    hedged: bool


def permission_drafts(scene: Scene) -> list[Draft]:
    """Facts on squeezing and turning over, one for each field: the first that the words decide."""
    if _QUICK.search(scene.shadow) is None:
        return []
    swallowed = [
        (hit.first, hit.after)
        for hit in scene.hits
        if hit.value == SWALLOWED and hit.field in ("handling.squeeze", "handling.invert")
    ]
    found: dict[str, Draft] = {}
    for sentence in scene.sentences:
        if sentence.after - sentence.first < 2 or sentence.after - sentence.first > 120:
            continue
        words = plain(scene, sentence.first, min(len(scene.tokens), sentence.after + 9))
        inside = (
            words.starts[sentence.after - sentence.first]
            if sentence.after - sentence.first < len(words.starts)
            else len(words.text)
        )
        for deed in _deeds(scene, words, inside):
            if any(first <= deed.first < after for first, after in swallowed) or deed.field in found:
                continue
            start, end = scene.tokens[deed.first].start, scene.tokens[deed.after - 1].end
            found[deed.field] = Draft(
                deed.field, start, end, value=deed.value, at=deed.first, hedged=deed.hedged, rank=1
            )
    return list(found.values())


def _deeds(scene: Scene, words: Plain, inside: int) -> list[_Deed]:
    found: list[_Deed] = []
    for field, pattern in (("handling.squeeze", _SQUEEZE), ("handling.invert", _INVERT)):
        for match in pattern.finditer(words.text, 0, inside):
            first = words.token_at(match.start())
            if scene.status[first] not in ("", "asked") or _is_none(field, words.text, match):
                continue
            begin, end = _clause(words.text, match, inside)
            clause = words.text[begin:end]
            value = None if scene.status[first] == "asked" else _leave(clause, match.group(), field)
            if value is None:
                behind = _ANSWER_BEHIND.match(words.text, end)
                if behind is None or (
                    scene.status[first] == "asked" and "?" not in words.text[end : behind.start("word")]
                ):
                    continue
                value = behind["word"] in (
                    "yes", "yep", "yeah", "ok", "okay", "fine", "allowed", "permitted", "sure", "no problem",
                    "possible",
                )  # fmt: skip
            found.append(_Deed(field, value, first, words.token_at(match.end() - 1) + 1, hedges_in(scene, clause)))
    found += _kept_upright(scene, words, inside)
    return found


def _kept_upright(scene: Scene, words: Plain, inside: int) -> list[_Deed]:
    """ "Upright at all times" is a no to turning over."""
    for match in _UPRIGHT.finditer(words.text, 0, inside):
        first = words.token_at(match.start())
        begin, end = _clause(words.text, match, inside)
        clause = words.text[begin:end]
        if scene.status[first] not in ("", "asked") or not _KEEP.search(clause):
            continue
        if match.group() == "level" and not re.search(
            r"(?:stay|remain|keep|kept|travel)\w* level\b(?! \d)"
            r"|level at all",
            clause,
        ):
            continue
        if re.search(r"\b(?:don't|doesn't|not|no) (?:\w+ )?(?:need|have|matter|necessar\w+)", clause):
            return [_Deed("handling.invert", True, first, words.token_at(match.end() - 1) + 1, False)]
        if scene.status[first] == "asked" and not re.search(r"\b(?:stay|keep|remain)", clause):
            continue
        return [_Deed("handling.invert", False, first, words.token_at(match.end() - 1) + 1, hedges_in(scene, clause))]
    return []


def _is_none(field: str, text: str, match: re.Match[str]) -> bool:
    """Lids that are clamped on, squeeze bottles, a product that tips over on a slope."""
    if field == "handling.squeeze":
        short = match.group().startswith(("clamp", "squeez", "grip", "pinch"))
        before, behind = text[max(0, match.start() - 24) : match.start()], text[match.end() : match.end() + 12]
        return short and (
            (_NOT_SQUEEZED.search(before) is not None and match.group().startswith("clamp"))
            or _NOT_SQUEEZED_BEHIND.match(behind) is not None
        )
    if match.group().startswith(("tip", "go", "tumbl")):
        clause = text[max(0, match.start() - 30) : match.start()]
        return _NO.search(clause) is None and "may" not in clause and "can" not in clause
    return False


def _clause(text: str, match: re.Match[str], inside: int) -> tuple[int, int]:
    begin = max((wall.end() for wall in _WALL.finditer(text, 0, match.start())), default=0)
    wall = _WALL.search(text, match.end(), inside)
    return begin, wall.start() if wall else inside


def _leave(clause: str, deed: str, field: str) -> bool | None:
    """Do the words of the clause allow the deed? None where they do not say."""
    if _NO_TROUBLE.search(clause):
        return True
    rest = clause.replace(deed, " ", 1) if not deed.startswith(("never", "not", "only", "nothing")) else clause
    no, yes, harm = _NO.search(rest), _YES.search(rest), _HARM.search(rest)
    if harm is not None:
        return None if _BEYOND.search(rest) else no is not None
    if no is not None:
        return False
    if field == "handling.squeeze" and deed.startswith("only"):
        return False
    return True if yes is not None else None
