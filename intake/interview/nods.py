"""A bare yes or no of the visitor: what it says of what the staff asked or offered."""

import re
from dataclasses import dataclass, replace
from pathlib import Path

from intake.interview.question import Question
from intake.reading.thread import Asked, offered
from intake.spec.facts import Fact, Heard
from intake.spec.vocabulary import vocabulary

_SURE = (
    r"yes|yep|yeah|yup|y|correct|right|exactly|that's right|that is right|thats right"
    r"|affirmative|indeed|confirmed|it is|they are"
)
_MAYBE_YES = (
    r"sure|ok|okay|of course|absolutely|definitely|certainly|it does|they do|we do|we can|we are|it can|they can"
)
_BEHIND = (
    r"(?:it is|it's|they are|that's right|that's correct|that's it|it does|they do"
    r"|we do|we can|it can|they can|correct|exactly|right"
    r"|please|thanks|thank you|about|roughly|about that|roughly that|more or less"
    r"|pretty much|i think|i think so|i believe"
    r"|i believe so|i guess|i guess so|probably|should be|that should be right"
    r"|that sounds right|sounds right|sir|indeed)"
)
_YES = re.compile(
    rf"(?:{_SURE})(?:[\s,.!-]+{_BEHIND})*[\s.!]*|(?:i think so|i believe so|i guess so|probably|should be)[\s.!]*"
)
_ANY_YES = re.compile(rf"(?:{_SURE}|{_MAYBE_YES})(?:[\s,.!-]+{_BEHIND})*[\s.!]*")
_NO = re.compile(
    r"(?:no|nope|nah|not really|negative|it isn't|it is not|they aren't|they are not|never|not at all)"
    r"(?:[\s,.!-]+(?:it isn't|it's not|it is not|they aren't|they're not"
    r"|not really|i don't think so|i think not|sorry|thanks"
    r"|thank you|it doesn't|they don't|we don't|it can't|never|not at all|i'm afraid))*[\s.!]*"
)
_HEDGED = re.compile(r"\b(?:think|believe|guess|probably|should|more or less|pretty much|about|roughly)\b")
_SEVERAL = re.compile(r"\b(?:or|either|versus|vs)\b")
_EXAMPLE = re.compile(r"\b(?:say|for example|for instance|e\.g\.|like|such as)\b")
_BARE_FIGURE = re.compile(r"\W*\d+(?:[.,]\d+)?\W*")
_NAMED_ALONG = frozenset({"product.type", "rise.direction"})
"""Told in the same breath as a figure: "the cases are 30 lb", "going up 12 ft"."""
_GROUP = frozenset({"product.length", "product.width", "product.height"})


_NO_LABEL = re.compile(
    r"(?:\W|\d|\b(?:x|by|about|around|roughly|maybe|to|and|or|so|the|it's|is|a|an|i|think|mm|cm|m|in|inch|inches|ft|feet"
    r"|foot|metres?|meters?|kg|kgs|kilos?|lbs?|pounds?|oz|g|tons?|tonnes?|yes|no|say|approx|approximately|ca)\b|x(?=\d))+"
)


def figures_alone(words: str) -> bool:
    """True for figures with units and no word that tells what they are of: "3 x 4 m"."""
    plain = " ".join(words.casefold().split())
    return len(plain) < 60 and any(sign.isdigit() for sign in plain) and _NO_LABEL.fullmatch(plain) is not None


@dataclass(frozen=True, slots=True)
class Nod:
    """What a bare yes or no gives. `unclear`: a yes-no field of which it cannot be told which way it was meant."""

    heard: Heard
    settles: tuple[str, ...] = ()
    unclear: str | None = None


class Nods:
    """Reads bare replies against the staff's last question, for one questions folder."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def of(self, words: str, asked: Asked, question: Question | None) -> Nod | None:
        """What a bare yes or no says; None where the words are more than that, or the reader knows better."""
        plain = " ".join(words.casefold().replace("’", "'").split())
        no = _NO.fullmatch(plain) is not None
        if len(plain) > 80 or not (no or _ANY_YES.fullmatch(plain) or _YES.fullmatch(plain)):
            return None
        if question is None and not asked.offer:
            return None
        last = [name for name in asked.last if question is not None and name in question.fields]
        switches = [name for name in last if vocabulary()[name].kind == "yes_no"]
        if not asked.offer:
            return None  # a question of the folder: the reader knows what a yes to it means
        if len(switches) == 1:
            return self._switch(switches[0], words, asked, no)
        if switches or no:
            return Nod(Heard())
        return self._offered(words, plain, asked)

    def narrowed(self, words: str, asked: Asked, question: Question | None) -> Question | None:
        """The question as far as these words may answer it.

        A yes, a no or "ok" goes to what was asked last. A number without a unit answers nothing where several figures
        were asked for in different questions.
        """
        if question is None:
            return None
        plain = " ".join(words.casefold().split())
        last = tuple(name for name in asked.last if name in question.fields)
        if _ANY_YES.fullmatch(plain) or _NO.fullmatch(plain):
            return replace(question, fields=last) if last else None
        others = [name for name in question.fields if name not in last and vocabulary()[name].is_number]
        if _BARE_FIGURE.fullmatch(plain) and others and any(vocabulary()[name].is_number for name in last):
            return None
        return question

    def _switch(self, field: str, words: str, asked: Asked, no: bool) -> Nod:
        means = asked.yes(field)
        if means is None:
            return Nod(Heard(), unclear=field)
        return Nod(Heard(facts=(_fact(field, words, value=means is not no),)), settles=(field,))

    def _offered(self, words: str, plain: str, asked: Asked) -> Nod:
        """One value that the staff named, with a yes to it: the fact is the visitor's, in the visitor's word."""
        offer = asked.offer
        if not _YES.fullmatch(plain) or _SEVERAL.search(offer.casefold()) or _EXAMPLE.search(offer.casefold()):
            return Nod(Heard())
        heard = offered(offer, asked.last, self._folder)
        fields = {fact.field for fact in heard.facts}
        firm = fields - _NAMED_ALONG or fields
        one = len(firm) == 1 or firm == _GROUP
        if not one or heard.doubts or any(vocabulary()[name].personal for name in fields):
            return Nod(Heard())
        if asked.last and not fields & set(asked.last):
            return Nod(Heard())
        named = _fact("", words, value=None)
        hedged = _HEDGED.search(plain) is not None
        facts = tuple(
            replace(fact, said=named.said, span=named.span, hedged=fact.hedged or hedged) for fact in heard.facts
        )
        return Nod(Heard(facts=facts), settles=tuple(sorted(fields)))


def _fact(field: str, words: str, value: bool | None) -> Fact:
    """A fact that the whole of a short reply says."""
    start = len(words) - len(words.lstrip())
    end = len(words.rstrip(" \n\t.!"))
    hedged = _HEDGED.search(words.casefold()) is not None
    return Fact(field=field, value=value, hedged=hedged, said=words[start:end], span=(start, end))
