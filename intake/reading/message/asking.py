"""Which pieces of a message ask us something: by a question mark, or by the words that open a question."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from intake.reading.amounts.figures import figures_of
from intake.reading.text.fold import Folded, fold, squeezed
from intake.reading.text.layout import dead_spans, sentences_of, unwrapped
from intake.reading.text.portions import portions
from intake.reading.text.tokens import tokens_of


@dataclass(frozen=True, slots=True)
class Piece:
    """Words that ask something, as received: `text[a:b] == said`.

    `sentence`: the sentence that they stand in, the words themselves where that runs on for too long to tell anything.
    """

    said: str
    span: tuple[int, int]
    sentence: str


_SENTENCE_MOST = 400
_AUX = r"(?:can|could|do|does|did|is|are|will|would|should|shall|may|has|have|must|was|were)(?:n't|nt)?"
_NAMED = r"(?:i|it|they|you|u|ya|we|there|this|that|these|those|anyone|anybody|someone|somebody|everything)"
_SUBJECT = rf"(?:{_NAMED}|its|he|she|the|your|our|my|a|an|any|people|one|all)"
_HELLO = re.compile(
    r"(?:(?:hi|hello|hey|ok|okay|also|and|so|but|or|now|oh|well|yes|no|please|thanks|sorry|great|good|morning"
    r"|afternoon|there|btw|by the way|(?:one more|another) thing|curious|quick one|(?:quick |one )?question|lastly"
    r"|finally|then|just|again|roughly|approximately|exactly|since|one)\b(?! (?:is|are|about|on)\b)[\s,.:;!-]*)+"
)
_ASKS = (
    rf"{_AUX} {_NAMED}\b"
    r"|(?:what|how|when|where|who|why)(?:'s|'re|'d|'ll| about| if| come)\b|(?:whats|hows|wheres|whos)\b"
    rf"|(?:what|how|when|where|who|why|which|wich)(?! {_SUBJECT}\b)(?: [^\W\d]+){{0,3}}? {_AUX}\b(?! not\b)"
    r"|how (?:much|many|long|soon|loud|big|tall|high|fast|heavy|quick|quickly|far|wide|often|hot|cold|small|noisy)\b"
    r"|(?:is there )?any (?:idea|chance|way|problem|trouble|issue|risk)\b|possible to\b"
)
_MID = re.compile(
    rf"(?!(?:which|when|where|who) (?:is|are|was|were|will|would|can|has|have)\b)"
    rf"(?:{_ASKS}|(?:can|could|do|does|will|would|is|are) (?:the|your|yours|our|its|anything) )"
)
"""What asks behind a comma or an "and", where a relative clause may begin as well."""
_START = re.compile(
    rf"{_ASKS}|{_AUX} {_SUBJECT}\b"
    rf"|(?:what|why|who)(?! {_SUBJECT}\b) [^\W\d]+\b|(?:does|did)(?! not\b)\b|got any\b"
    r"|(?:can|could|will|would|is|are|do) (?:[^\W\d]+ ){1,3}(?:get|go|be|fit|work|ride|stand|break|tip|have|run|come"
    r"|handle|cope|end|keep|pass|walk|drive|matter|slide|fall|possible|ok|okay|an? option|available|too|safe|suitable"
    r"|enough|included|needed|required|allowed)\b"
    r"|(?:can|could|will|would|do) [^\W\d]*[^\W\ds]s\b"
)
_NO_QUESTION = re.compile(
    rf"(?:{_AUX} )?(?:what|how|when|where|who|which|why)(?: [^\W\d]+){{0,2}} ?:|(?:can|could|will|would|may|must) be\b"
    r"|which (?:is|are|means|was|were)\b|(?:do|did|does|can|will) not\b"
)
_SAYING = re.compile(
    r"\b(?:wonder(?:ing)?|curious|(?:want|need|like|love|good|nice|interested) to (?:know|hear|learn|find out)|tell me"
    r"|let (?:me|us) know|ask(?:ing)?|please (?:advise|confirm|explain|clarify)|not sure|unsure|don't know|know)"
    r" (?:if|whether|how|what|when|where|who|which|why)\b"
    r"|\b(?:another|one|my|our|a|the|only|quick) question (?:is|about|on)\b|\bis it (?:ok|okay|possible|a problem)\b"
)
_IF_FIRST = re.compile(rf"(?:if|when|once|after) .{{3,80}}? {_AUX} (?:{_NAMED}|the|product|products|boxes|cases)\b")
_JOINT = re.compile(r"(?:[,;:(]|\.\s|\s-|\b(?:and|but|so|then|plus)\b)\s*(?:(?:also|then|so|and|but|or|please)\s+)*")


def questions(text: str) -> tuple[Piece, ...]:
    """The pieces that ask something, in the order of the message. Never raises on what somebody typed.

    >>> [one.said for one in questions("Cases of 12 kg, up 3 m. can it go in a freezer? and how long is delivery")]
    ['can it go in a freezer', 'how long is delivery']
    """
    found: list[Piece] = []
    for offset, portion in portions(text):
        folded = squeezed(fold(portion))
        for (first, last), whole in _places(folded):
            start, end = folded.span(first, last)
            said = folded.said(first, last)
            sentence = folded.said(*whole) if whole[1] - whole[0] <= _SENTENCE_MOST else said
            found.append(Piece(said, (start + offset, end + offset), sentence))
    return tuple(found)


def _places(folded: Folded) -> Iterator[tuple[tuple[int, int], tuple[int, int]]]:
    """Places in the shadow: of each piece that asks, and of its sentence."""
    tokens = unwrapped(tokens_of(folded), folded.shadow)
    inside = frozenset(n for figure in figures_of(tokens, folded) for n in range(figure.first, figure.after))
    dead = [span for spans in dead_spans(folded.shadow) for span in spans]
    for sentence in sentences_of(tokens, folded.raw, inside):
        if sentence.after <= sentence.first:
            continue
        start, end = tokens[sentence.first].start, tokens[sentence.after - 1].end
        if any(first <= start < last for first, last in dead):
            continue
        for first, last in _asking(folded.shadow[start:end], sentence.question):
            yield (start + first, start + last), (start, end)


def _asking(text: str, marked: bool) -> list[tuple[int, int]]:
    """The parts of one sentence that ask. `marked`: it ends with a question mark, so that something in it does."""
    greeting = _HELLO.match(text)
    begin = greeting.end() if greeting is not None else 0
    if begin >= len(text):
        return []
    starts = [begin] if _START.match(text, begin) and not _NO_QUESTION.match(text, begin) else []
    joints = [(joint.start(), joint.end()) for joint in _JOINT.finditer(text, begin + 1)]
    opened = [(cut, at) for cut, at in joints if _MID.match(text, at) and not _NO_QUESTION.match(text, at)]
    starts += [at for _, at in opened]
    if not starts:
        asks = marked or _SAYING.search(text, begin) or _IF_FIRST.match(text, begin)
        return [(begin, len(text))] if asks else []
    cuts = {at: cut for cut, at in opened}
    ends = [*(cuts[at] for at in starts[1:]), len(text)]
    spans = zip(starts, ends, strict=True)
    return [(first, first + len(text[first:last].rstrip(" .,;:-("))) for first, last in spans if last > first]
