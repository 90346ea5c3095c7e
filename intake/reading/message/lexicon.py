"""The words of a questions folder: phrases that stand for a choice, found in the tokens of a message."""

import tomllib
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from rapidfuzz import fuzz, process

from intake.reading.text.tokens import Token

_FILLERS = frozenset(
    [
        "the", "a", "an", "our", "their", "its", "my", "your", "them", "it", "these", "those", "this", "that", "'em",
        "em", "some", "any", "both", "of", "all",
    ]
)  # fmt: skip
_LEFT_OUT = _FILLERS - {"some", "any", "both", "of", "all"}
"""What phrases of the data are read without; the rest of the fillers count where a phrase has them."""
_SOFT_SIGNS = frozenset({"-", "'", '"', "&", "\n", "*"})
_GAP_MOST = 6
_FUZZY_FROM, _FUZZY_CUT, _FUZZY_TARGET = 5, 85.0, 6
_FUZZY_APART = 5.0
_IN_THE_FIELDS = [
    "ceiling", "mezzanine", "conveyor", "discharge", "infeed", "outfeed", "minute", "height", "weight", "length",
    "diameter", "doorway", "opening", "temperature", "voltage", "product", "different", "underneath", "forklift",
    "pallet", "overhead",
]  # fmt: skip
SWALLOWED = ""
"""The value of a hit that looks like a word of its field and is none."""

Element = frozenset[str] | None
"""The words that serve at one place of a phrase; None is a gap of up to six words."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """One way to say a value of a field."""

    field: str
    value: str
    elements: tuple[Element, ...]
    only_asked: bool = False
    """It counts only as an answer to a question about the field."""

    @property
    def weight(self) -> int:
        """How many words it demands: the more, the surer."""
        return sum(element is not None for element in self.elements)


@dataclass(frozen=True, slots=True)
class Hit:
    """A phrase found at the tokens `first`..`after`."""

    field: str
    value: str
    first: int
    after: int
    weight: int


@dataclass(slots=True)
class Lexicon:
    """All phrases by their first words, and the spellings that a misspelt word may have meant."""

    index: dict[str, list[Phrase]] = field(default_factory=dict)
    known: frozenset[str] = frozenset()
    targets: tuple[str, ...] = ()
    short: dict[str, str] = field(default_factory=dict)
    seen: dict[str, str] = field(default_factory=dict)
    lists: dict[str, tuple[tuple[str, ...], ...]] = field(default_factory=dict)
    """Plain lists by name: hedges, deny, correct, yes, no, unknown."""
    deny: frozenset[tuple[str, ...]] = frozenset()
    words: dict[str, frozenset[str]] = field(default_factory=lambda: defaultdict(frozenset))
    """Plain sets of single words by name: verbs of moving, verbs that go with "up" and mean something else."""

    def norm(self, word: str) -> str:
        """The word without its plural, short forms spelt out, a near miss put right."""
        found = self.seen.get(word)
        if found is None:
            found = self._norm(word)
            if len(self.seen) < 50_000:
                self.seen[word] = found
        return found

    def _norm(self, word: str) -> str:
        plain = singular(self.short.get(word, word))
        if plain in self.known or len(plain) < _FUZZY_FROM or not plain.isalpha() or len(plain) > 20:
            return plain
        if word in self.known:
            return plain
        close = process.extract(plain, self.targets, scorer=fuzz.ratio, score_cutoff=_FUZZY_CUT, limit=2)
        close = [hit for hit in close if _may_be_typo(plain, str(hit[0]))]
        if not close or (len(close) > 1 and close[0][1] - close[1][1] < _FUZZY_APART):
            return plain
        return str(close[0][0])

    def find(self, tokens: list[Token], norms: list[str], asked: tuple[str, ...] = ()) -> list[Hit]:
        """All hits in order, for each field without overlap: the first begun and longest wins."""
        hits: list[Hit] = []
        taken: dict[str, int] = {}
        for at, token in enumerate(tokens):
            if token.kind == "line":
                continue
            phrases = self.index.get(norms[at], ())
            exact = self.index.get("=" + token.text)
            if not phrases and not exact:
                continue
            best: dict[str, Hit] = {}
            mere: set[str] = set()
            for phrase in (*phrases, *(exact or ())):
                if taken.get(phrase.field, 0) > at or (phrase.only_asked and phrase.field not in asked):
                    continue
                after = _match(phrase.elements, tokens, norms, at)
                if after is None:
                    continue
                hit = Hit(phrase.field, phrase.value, at, after, phrase.weight)
                other = best.get(phrase.field)
                if other is None or (hit.weight, hit.after) > (other.weight, other.after):
                    best[phrase.field] = hit
                    (mere.add if phrase.only_asked else mere.discard)(phrase.field)
            for name, hit in best.items():
                if name in mere and _better_said_of_another(hit, best.values(), asked):
                    continue
                taken[name] = hit.after
                hits.append(hit)
        return hits


def _better_said_of_another(hit: Hit, found: Iterable[Hit], asked: tuple[str, ...]) -> bool:
    """Of several things asked at once a word answers one: "a normal room" says nothing of hazards."""
    if hit.value not in ("yes", "no"):
        return False
    others = (one for one in found if one.field != hit.field and one.field in asked)
    return any(one.value not in ("yes", "no", SWALLOWED) and one.after >= hit.after for one in others)


def _may_be_typo(word: str, target: str) -> bool:
    """Same first letter, near the same length, and no other form of the same word (strong, stronger)."""
    other_form = word.startswith(target) or target.startswith(word)
    return target[0] == word[0] and abs(len(target) - len(word)) <= 2 and not other_form


_NO_PLURALS = frozenset(
    [
        "upstairs", "downstairs", "always", "perhaps", "besides", "afterwards", "towards", "sometimes", "does", "yes",
        "gas", "lens",
    ]
)  # fmt: skip


def singular(word: str) -> str:
    """The word without its plural ending, one rule for phrases and texts alike.

    >>> singular("boxes"), singular("trays"), singular("glass"), singular("pouches")
    ('box', 'tray', 'glass', 'pouch')
    """
    if word in _NO_PLURALS:
        return word
    if len(word) > 4 and word.endswith(("xes", "ches", "shes", "sses")):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is", "'s")):
        return word[:-1]
    return (
        word.removesuffix("'s")
        if len(word) > 4 and word.endswith("'s") and word not in ("that's", "what's", "it's")
        else word
    )


def _match(elements: tuple[Element, ...], tokens: list[Token], norms: list[str], at: int) -> int | None:
    """The token behind the phrase that begins at token `at`, None when it does not stand there."""
    here = at + 1
    gap = False
    for element in elements[1:]:
        if element is None:
            gap = True
            continue
        here_found = _next(element, tokens, norms, here, _GAP_MOST if gap else 0)
        if here_found is None:
            return None
        here, gap = here_found + 1, False
    return here


def _next(element: frozenset[str], tokens: list[Token], norms: list[str], here: int, gap: int) -> int | None:
    """Where the element stands, over fillers and up to `gap` other words."""
    skipped = 0
    while here < len(tokens):
        token = tokens[here]
        if norms[here] in element or "=" + token.text in element or token.text in element:
            return here
        if token.kind == "line" or (token.kind == "sign" and token.text not in _SOFT_SIGNS):
            return None
        if token.text not in _FILLERS and token.text not in _SOFT_SIGNS:
            skipped += 1
            if skipped > gap:
                return None
        here += 1
    return None


def phrase_elements(phrase: str, left_out: frozenset[str] = frozenset()) -> tuple[Element, ...]:
    """A phrase of the data files as elements. The first one is always words."""
    elements: list[Element] = []
    for part in phrase.casefold().replace("-", " ").split():
        if part == "..":
            elements.append(None)
        elif part not in left_out:
            elements.append(frozenset(word if word.startswith("=") else singular(word) for word in part.split("|")))
    while elements and elements[0] is None:
        elements.pop(0)
    return tuple(elements)


@cache
def lexicon_of(folder: Path) -> Lexicon:
    """The lexicon of a questions folder, built once. Raises OSError where the folder cannot be read."""
    lexicon = Lexicon()
    shared = _toml(folder / "words.toml")
    lexicon.short = {str(short): str(long) for short, long in shared.get("short", {}).items()}
    rows: list[tuple[str, str, str, bool]] = []
    for file in sorted((folder / "tree").glob("*.toml")):
        for name, table in _toml(file).get("words", {}).items():
            rows += [(name, str(value), phrase, False) for value, phrases in table.items() for phrase in phrases]
    for name, table in shared.get("asked", {}).items():
        for each in name.split():
            rows += [(each, str(value), phrase, True) for value, phrases in table.items() for phrase in phrases]
    rows += [
        (name, SWALLOWED, phrase, False) for name, phrases in shared.get("swallow", {}).items() for phrase in phrases
    ]
    words: set[str] = set(_IN_THE_FIELDS)
    for name, value, phrase, only_asked in rows:
        elements = phrase_elements(phrase, frozenset() if value == SWALLOWED else _LEFT_OUT)
        if not elements or elements[0] is None:
            continue
        for word in elements[0]:
            lexicon.index.setdefault(word, []).append(Phrase(name, value, elements, only_asked))
        words.update(word.lstrip("=") for element in elements if element for word in element)
    answers, manner = shared.get("answers", {}), shared.get("manner", {})
    lexicon.lists = {name: _lists(phrases) for name, phrases in (answers | manner).items()}
    lexicon.deny = frozenset(lexicon.lists.get("deny", ()))
    lexicon.words.update({name: frozenset(words) for name, words in shared.get("sets", {}).items()})
    plain = {str(word) for word in manner.get("plain_words", ())}
    lexicon.known = frozenset(words | plain | {singular(word) for word in plain})
    lexicon.targets = tuple(sorted(word for word in words if len(word) >= _FUZZY_TARGET and word.isalpha()))
    return lexicon


def _lists(phrases: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    """Alternatives spelt out; longest first."""
    spelt: set[tuple[str, ...]] = set()
    for phrase in phrases:
        ways: list[tuple[str, ...]] = [()]
        for part in phrase.split():
            ways = [(*way, word) for way in ways for word in part.split("|")]
        spelt.update(ways)
    return tuple(sorted(spelt, key=lambda words: (-len(words), words)))


def _toml(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return {}
