"""One message laid open: its tokens, figures, groups, sentences and word hits, for those that give them fields."""

import re
from bisect import bisect_right
from dataclasses import dataclass, replace
from dataclasses import field as part
from pathlib import Path

from intake.reading.amounts.figures import Figure, figures_of
from intake.reading.amounts.groups import Group, groups_of
from intake.reading.message.lexicon import Hit, Lexicon, lexicon_of
from intake.reading.shorthand.spelling import spelt_out
from intake.reading.text.fold import Folded, fold, squeezed
from intake.reading.text.layout import Sentence, dead_spans, denied_lists, sentences_of, unwrapped
from intake.reading.text.status import status_of
from intake.reading.text.tables import Table, tabled
from intake.reading.text.tokens import Token, tokens_of


@dataclass(slots=True)
class Draft:
    """A fact in the making. Places are in the shadow; `low` and `high` in the field's canonical unit."""

    field: str
    start: int
    end: int
    low: float | None = None
    high: float | None = None
    value: str | bool | None = None
    approx: bool = False
    hedged: bool = False
    size: int = 1
    at: int = 0
    """The first token: what corrections and product sizes go by."""
    rank: int = 0
    """How sure the field is: a higher rank replaces a lower one."""


@dataclass(slots=True)
class Question:
    """A doubt in the making: what was said, why it is not taken, what to ask, and the readings to choose from."""

    field: str
    start: int
    end: int
    id: str
    words: dict[str, str] = part(default_factory=dict)
    options: tuple[Draft, ...] = ()


@dataclass(slots=True)
class Scene:
    """Everything that is known of a message before any field is given."""

    folded: Folded
    tokens: list[Token]
    norms: list[str]
    figures: list[Figure]
    groups: list[Group]
    sentences: list[Sentence]
    status: list[str]
    hits: list[Hit]
    asked: tuple[str, ...]
    lexicon: Lexicon
    sentence_at: list[int]
    signed: list[tuple[int, int]]
    quoted: list[tuple[int, int]]
    used: set[int] = part(default_factory=set)
    """Identities of the figures that a fact or a doubt has used, or that are none of the need."""
    used_hits: set[int] = part(default_factory=set)
    imperial: bool = False
    metric: bool = False
    windows: dict[int, tuple[int, int]] = part(default_factory=dict)
    """For each figure the tokens where its words begin and end: not beyond its neighbours and its sentence."""
    group_at: dict[int, Group] = part(default_factory=dict)
    rate_figures: list[Figure] = part(default_factory=list)
    starts: list[int] = part(default_factory=list)
    order: dict[int, int] = part(default_factory=dict)
    offset: int = 0
    tables: tuple[Table, ...] = ()

    @property
    def shadow(self) -> str:
        """The folded text."""
        return self.folded.shadow

    def sentence_of(self, at: int) -> Sentence:
        """The sentence of a token."""
        return self.sentences[self.sentence_at[at]]

    def before(self, figure: Figure) -> str:
        """The words from the figure before (or the sentence's beginning) to this one's number, in normal form."""
        return self.words(self.windows[id(figure)][0], figure.first).replace(" . ", " ")

    def after(self, figure: Figure) -> str:
        """The words between this figure's core and the next one (or the sentence's end), in normal forms."""
        return self.words(figure.after, self.windows[id(figure)][1])

    def sentence_before(self, at: int) -> str:
        """The words of the sentence up to token `at`, the nearest sixty of them."""
        return self.words(max(self.sentence_of(at).first, at - 60), at)

    def sentence_text(self, at: int) -> str:
        """The words of the sentence around token `at`, sixty each way at most."""
        sentence = self.sentence_of(at)
        return self.words(max(sentence.first, at - 60), min(sentence.after, at + 60))

    def token_at(self, place: int) -> int | None:
        """The token at or behind a place in the shadow."""
        at = bisect_right(self.starts, place)
        if at and self.tokens[at - 1].end > place:
            return at - 1
        return at if at < len(self.tokens) else None

    def span(self, start: int, end: int) -> tuple[int, int]:
        """A place in the shadow as one in the text as received."""
        first, last = self.folded.span(start, end)
        return first + self.offset, last + self.offset

    def words(self, first: int, after: int) -> str:
        """Tokens in their normal forms with single spaces."""
        return " ".join(self.norms[first:after])

    def next_figures(self, figure: Figure) -> list[Figure]:
        """The one or two figures behind this one."""
        at = self.order.get(id(figure), len(self.figures))
        return self.figures[at + 1 : at + 3]

    def group_of(self, figure: Figure) -> Group | None:
        """The group that a figure belongs to."""
        return self.group_at.get(id(figure))

    def live(self, at: int) -> bool:
        """True where token `at` speaks of the need itself."""
        return not self.status[at]

    def draft(self, name: str, figure: Figure, *, rank: int = 5) -> Draft:
        """A figure as a fact of that field, with its bound words."""
        return Draft(
            name, self.tokens[figure.begin].start, self.tokens[figure.end - 1].end, figure.low, figure.high,
            approx=figure.approx, at=figure.first, rank=rank,
        )  # fmt: skip

    def use(self, *figures: Figure) -> None:
        """Mark figures as dealt with."""
        self.used.update(id(figure) for figure in figures)

    def open_figures(self, kind: str) -> list[Figure]:
        """The figures of a kind that speak of the need and are not dealt with."""
        return [
            figure
            for figure in self.figures
            if figure.kind == kind and id(figure) not in self.used and self.live(figure.first)
        ]


def scene_of(text: str, asked: tuple[str, ...], folder: Path, offset: int = 0, *, shorthand: bool = False) -> Scene:
    """Lay a message open. `offset`: where it begins in a longer text. `shorthand`: spell out that of staff first."""
    typed = spelt_out(fold(text), folder, asked) if shorthand else fold(text)
    folded, tables = tabled(typed)
    wide, folded = folded, squeezed(folded)
    if folded.places is not None and wide.shadow != folded.shadow:
        tables = tuple(table.moved(wide, folded) for table in tables)
    lexicon = lexicon_of(folder)
    tokens = unwrapped(tokens_of(folded), folded.shadow)
    quoted, signed = dead_spans(folded.shadow)
    figures = figures_of(tokens, folded)
    _not_kilometres(figures, tokens)
    inside = frozenset(n for figure in figures for n in range(figure.first, figure.after))
    sentences = sentences_of(tokens, folded.raw, inside)
    status = status_of(tokens, sentences, folded.shadow, {figure.first: figure.kind for figure in figures}, asked)
    _mark(status, tokens, denied_lists(folded.shadow), "other")
    _mark(status, tokens, quoted, "quoted")
    _mark(status, tokens, signed, "signed")
    norms = [lexicon.norm(token.text) if token.kind == "word" else token.text for token in tokens]
    groups = groups_of(tokens, figures, folded.raw)
    sentence_at = [0] * len(tokens)
    for n, sentence in enumerate(sentences):
        for at in range(sentence.first, min(sentence.after + 1, len(tokens))):
            sentence_at[at] = n
    scene = Scene(
        folded, tokens, norms, figures, groups, sentences or [Sentence(0, 0, False)], status,
        lexicon.find(tokens, norms, asked), asked, lexicon, sentence_at, signed, quoted,
    )  # fmt: skip
    names = {figure.unit.name for figure in figures if figure.unit is not None}
    scene.imperial = bool(names & {"lb", "oz", "ft", "in", "degF", "psi"})
    scene.metric = bool(names & {"kg", "g", "mm", "cm", "m", "degC", "bar"})
    scene.windows = _windows(figures, sentences, sentence_at)
    scene.order = {id(figure): n for n, figure in enumerate(figures)}
    scene.offset, scene.tables = offset, tables
    scene.starts = [token.start for token in tokens]
    scene.rate_figures = [figure for figure in figures if figure.per is not None]
    scene.group_at = {id(figure): group for group in groups for figure in group.figures}
    return scene


def _not_kilometres(figures: list[Figure], tokens: list[Token]) -> None:
    """A height of 2,415 m in a plant is two metres and a bit, typed with a comma."""
    for figure in figures:
        if figure.unit is None or figure.unit.name != "m" or figure.is_range or figure.value < 1000:
            continue
        if re.fullmatch(r"\d{1,2},\d{3}", tokens[figure.ends[0].first].text):
            figure.ends = (replace(figure.ends[0], value=figure.ends[0].value / 1000.0),)
            figure.low = None if figure.low is None else figure.low / 1000.0
            figure.high = None if figure.high is None else figure.high / 1000.0


def _mark(status: list[str], tokens: list[Token], spans: list[tuple[int, int]], word: str) -> None:
    at = 0
    for start, end in sorted(spans):
        while at < len(tokens) and tokens[at].start < start:
            at += 1
        while at < len(tokens) and tokens[at].start < end:
            status[at] = word
            at += 1


def _windows(figures: list[Figure], sentences: list[Sentence], sentence_at: list[int]) -> dict[int, tuple[int, int]]:
    found: dict[int, tuple[int, int]] = {}
    for n, figure in enumerate(figures):
        sentence = sentences[sentence_at[figure.first]]
        begin, end = sentence.first, sentence.after
        if n:
            begin = max(begin, figures[n - 1].end)
        if n + 1 < len(figures):
            end = min(end, figures[n + 1].first)
        found[id(figure)] = (min(begin, figure.first), max(end, figure.after))
    return found
