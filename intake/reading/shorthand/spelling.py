"""The shorthand of one message spelt out: which words are taken, and what comes in their place."""

from pathlib import Path

from intake.reading.shorthand.beside_figures import before, closed, then
from intake.reading.shorthand.changes import Change, changed
from intake.reading.shorthand.guards import holds
from intake.reading.shorthand.heights import ARROWS, height_pairs
from intake.reading.shorthand.line import Line, line_of
from intake.reading.shorthand.rows import Row, Shorthand, Words, shorthand_of
from intake.reading.shorthand.yes_no import OPEN, answered, to_be_asked
from intake.reading.text.fold import Folded
from intake.reading.text.tokens import Token, tokens_of

_EDGES = frozenset({".", ",", ";", "!", ":", "\n"})
_ANSWER_MOST = 4
"""Words of an answer that is nothing but shorthand."""


def spelt_out(folded: Folded, folder: Path, asked: tuple[str, ...]) -> Folded:
    """The shadow in words that the reader knows. Never raises on what somebody typed; texts without come back as is."""
    shorthand = shorthand_of(folder)
    tokens = tokens_of(folded)
    whole = _whole_answer(shorthand, tokens, asked)
    if whole is not None:
        return changed(folded, [whole])
    if not any(token.text in shorthand.first for token in tokens) and not any(a in folded.shadow for a in ARROWS):
        return folded
    line = line_of(tokens, folded.raw, shorthand)
    changes = _changes(line, shorthand)
    return changed(folded, changes) if changes else folded


def _whole_answer(shorthand: Shorthand, tokens: list[Token], asked: tuple[str, ...]) -> Change | None:
    """A message that is nothing but the shorthand answer to what was asked."""
    first, after = 0, len(tokens)
    while after > first and tokens[after - 1].text in _EDGES:
        after -= 1
    while first < after and tokens[first].text in _EDGES:
        first += 1
    if after - first > _ANSWER_MOST:
        return None
    words = tuple(token.text for token in tokens[first:after])
    for name in asked:
        says = shorthand.answers.get(name, {}).get(words)
        if says is not None and words:
            return Change(tokens[first].start, tokens[after - 1].end, says)
    return None


def _changes(line: Line, shorthand: Shorthand) -> list[Change]:
    changes, taken = height_pairs(line)
    at = 0
    while at < len(line.tokens):
        token = line.tokens[at]
        if at in taken or token.kind in ("number", "line"):
            at += 1
            continue
        found = None if line.prose[at] else answered(line, shorthand, at)
        if found is not None:
            changes.append(found[0])
            at = found[1]
            continue
        row = _row(line, shorthand, at)
        if row is None:
            at += 1
            continue
        after = at + len(row.words)
        if not line.prose[at] and to_be_asked(line, after):
            changes.append(Change(token.start, line.tokens[after].end, OPEN))
            at = after + 1
            continue
        if row.says:
            changes.append(Change(token.start, line.tokens[after - 1].end, row.says))
        if row.before:
            changes += before(line, row, at)
        if row.then:
            changes += then(line, row, after)
        if row.guard == "before.height":
            changes += closed(line, row, after)
        at = after
    return changes


def _row(line: Line, shorthand: Shorthand, at: int) -> Row | None:
    """The longest entry at a token whose guard holds."""
    for row in shorthand.rows.get(line.tokens[at].text, ()):
        if _stands(line, row.words, at) and holds(line, shorthand, row, at):
            return row
    return None


def _stands(line: Line, words: Words, at: int) -> bool:
    return len(words) == 1 or tuple(t.text for t in line.tokens[at : at + len(words)]) == words
