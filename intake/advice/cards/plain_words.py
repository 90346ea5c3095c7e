"""A question as a set of plain words: folded, put right, without what says nothing, figures by their kind."""

import re
from collections.abc import Iterable, Mapping

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA

from intake.reading import Quantity, quantities

_WORD = re.compile(r"#\w+|[^\W\d_]+(?:'[^\W\d_]+)*")
_MONEY = re.compile(
    r"[$€£¥]\s?\d[\d.,]*\s?[km]?\b|\b\d[\d.,]*\s?[km]?\s?(?:dollars|bucks|euros?|pounds sterling|usd|eur|gbp)\b"
)
_ALIKE_FROM = 85.0
"""Least ratio of two words of four letters or more that are one word, misspelt."""
_SHORTEST_STEM = 3
_DEGREES = ((0.0, "#freezing"), (14.0, "#cold"), (35.0, "#mild"), (60.0, "#hot"))
"""Temperatures [degC] below which a figure is called that; any other is "#scalding"."""
_WEEK = 5 * 86400.0
"""From how long [s] a time is told in weeks; less is how long something takes."""
_PHRASE_MOST = 4
_BETWEEN = frozenset({"it", "them", "this", "that", "the"})
"""Words that may stand inside a phrase: "wash it down" is "wash down"."""


class PlainWords:
    """Turns texts into tokens by the words of a folder.

    A token is a word without its endings, the name of a group of words that mean the same, or "#length" for a figure.
    """

    def __init__(self, passed_over: Iterable[str], endings: Iterable[str], alike: Mapping[str, Iterable[str]]) -> None:
        self._endings = tuple(endings)
        self._groups: dict[tuple[str, ...], str] = {}
        self._known: set[str] = set()
        self.clashes: list[tuple[str, str, str]] = []
        self._with_digits: list[tuple[re.Pattern[str], str]] = []
        for name, phrases in alike.items():
            for phrase in (name.replace("_", " "), *phrases):
                if re.search(r"\d", phrase):
                    sought = re.compile(rf"(?<!\w){re.escape(_folded(phrase))}(?!\w)")
                    self._with_digits.append((sought, f" #{name} "))
                    continue
                words = [word for word in _WORD.findall(_folded(phrase)) if word not in _BETWEEN]
                self._known.update(words)
                first = self._groups.setdefault(tuple(self.stem(word) for word in words), name)
                if first != name:
                    self.clashes.append((phrase, first, name))
        self._known |= _BETWEEN
        self._named = frozenset(f"#{name}" for name in alike)
        self._passed_over = frozenset(word for text in passed_over for word in _WORD.findall(_folded(text)))
        self._known |= self._passed_over
        self._stems: frozenset[str] = frozenset()
        self._misspelt: dict[str, str] = {}

    def learn(self, texts: Iterable[str]) -> None:
        """Words of these texts are spelt right: others are compared with them."""
        for text in texts:
            self._known.update(self._words(text))
        self._stems = frozenset(self.stem(word) for word in self._known)
        self._misspelt.clear()

    def stem(self, word: str) -> str:
        """A word without its endings, each taken off once: "washing", "washed" -> "wash"."""
        if word.startswith("#"):
            return word
        for ending in self._endings:
            rest = word.removesuffix(ending)
            if len(rest) >= _SHORTEST_STEM and not (ending == "s" and rest.endswith("s")):
                word = rest
        return word[:-1] if len(word) > _SHORTEST_STEM and word[-1] == word[-2] else word

    def tokens(self, text: str) -> list[str]:
        """The tokens of a text in their order, what says nothing left out."""
        words = [self._put_right(word) for word in self._words(text) if word not in _BETWEEN]
        stems = [self.stem(word) for word in words]
        found: list[str] = []
        at = 0
        while at < len(stems):
            for length in range(min(_PHRASE_MOST, len(stems) - at), 0, -1):
                group = self._groups.get(tuple(stems[at : at + length]))
                if group is not None:
                    found.append(group)
                    at += length
                    break
            else:
                if words[at] not in self._passed_over:
                    found.append(stems[at].removeprefix("#") if stems[at] in self._named else stems[at])
                at += 1
        return found

    def plain(self, text: str) -> list[str]:
        """The words of a text put right and without endings, none left out."""
        return [self.stem(self._put_right(word)) for word in self._words(text)]

    def _words(self, text: str) -> list[str]:
        folded = _folded(text)
        for sought, token in self._with_digits:
            folded = sought.sub(token, folded)
        return _WORD.findall(_without_figures(folded))

    def _put_right(self, word: str) -> str:
        """The known word that a misspelt one must be, else the word itself."""
        if len(word) < 4 or word in self._known or word.startswith("#") or self.stem(word) in self._stems:
            return word
        if word not in self._misspelt:
            if len(self._misspelt) > 10_000:
                self._misspelt.clear()
            self._misspelt[word] = self._nearest(word)
        return self._misspelt[word]

    def _nearest(self, word: str) -> str:
        pool = [known for known in self._known if len(known) >= 4]
        close = process.extractOne(word, pool, scorer=fuzz.ratio, score_cutoff=_ALIKE_FROM)
        if close is not None:
            return close[0]
        letters = sorted(word)
        swapped = (one for one in pool if len(one) == len(word) and sorted(one) == letters)
        return next((one for one in sorted(swapped) if OSA.distance(one, word) == 1), word)


def _folded(text: str) -> str:
    plain = text.casefold().replace("’", "'").replace("‘", "'")
    plain = re.sub(r"(?<=[^\W\d])-(?=[^\W\d])", " ", plain)
    return re.sub(r"'(?:s|re|d|ll|ve|m)\b", "", plain).replace("n't", "nt")


def _without_figures(text: str) -> str:
    """Figures by their kind: "up 20 ft" -> "up #length"; bare numbers go."""
    text = _MONEY.sub(" #money ", text)
    parts, at = [], 0
    for one in quantities(text):
        first, last = one.span
        parts += [text[at:first], f" {_called(one)} "]
        at = last
    return "".join([*parts, text[at:]])


def _called(one: Quantity) -> str:
    if one.kind == "number":
        return "#freezing" if (one.high or 0.0) < 0.0 else ""
    if one.kind == "duration":
        return "#weeks" if (one.high or one.low or 0.0) >= _WEEK else "#moment"
    if one.kind != "temperature":
        return f"#{one.kind}"
    degrees = one.high if one.high is not None else one.low or 0.0
    return next((name for below, name in _DEGREES if degrees < below), "#scalding")
