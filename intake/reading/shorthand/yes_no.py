"""Labels with their answer: "no sq", "w/o lid", "air y", "inv n", "sq ok"; and "sq?", which is still to be asked."""

from intake.reading.shorthand.changes import Change
from intake.reading.shorthand.line import Line
from intake.reading.shorthand.rows import Label, Shorthand

OPEN = ";"
"""What stands where something is still to be asked: nothing that a fact could be read from."""
_YES = frozenset({"y", "yes", "ok", "yep", "okay"})
_NO = frozenset({"n", "no", "nope"})
_BEFORE = (("no",), ("non",), ("w", "/", "o"), ("without",), ("not",), ("zero",))
_SIGNS = frozenset({":", "=", "-"})


def answered(line: Line, shorthand: Shorthand, at: int) -> tuple[Change, int] | None:
    """The label that begins at a token, or the "no" before one, with its answer; and the token behind both."""
    for before in _BEFORE:
        if tuple(token.text for token in line.tokens[at : at + len(before)]) == before:
            label = _label(line, shorthand, at + len(before))
            if label is not None:
                after = at + len(before) + len(label.words)
                if _goes_on(line, shorthand, label, after):
                    return None
                if to_be_asked(line, after):
                    return Change(line.tokens[at].start, line.tokens[after].end, OPEN), after + 1
                return Change(line.tokens[at].start, line.tokens[after - 1].end, label.no), after
    label = _label(line, shorthand, at)
    return None if label is None else _behind(line, shorthand, label, at)


def _goes_on(line: Line, shorthand: Shorthand, label: Label, after: int) -> bool:
    """ "No food contact": a plain English word with another behind it is left to the reader."""
    behind = line.tokens[after] if after < len(line.tokens) else None
    if behind is None or behind.kind != "word" or shorthand.english.isdisjoint(label.words):
        return False
    return behind.text not in shorthand.first | shorthand.marks and behind.text not in {words[0] for words in _BEFORE}


def to_be_asked(line: Line, after: int) -> bool:
    """True where a question mark stands directly behind a word."""
    tokens = line.tokens
    return 0 < after < len(tokens) and tokens[after].text == "?" and tokens[after].start == tokens[after - 1].end


def _label(line: Line, shorthand: Shorthand, at: int) -> Label | None:
    if at >= len(line.tokens):
        return None
    for label in shorthand.labels.get(line.tokens[at].text, ()):
        if tuple(token.text for token in line.tokens[at : at + len(label.words)]) == label.words:
            return label
    return None


def _behind(line: Line, shorthand: Shorthand, label: Label, at: int) -> tuple[Change, int] | None:
    tokens, after = line.tokens, at + len(label.words)
    if to_be_asked(line, after):
        return Change(tokens[at].start, tokens[after].end, OPEN), after + 1
    if after < len(tokens) and tokens[after].text in _SIGNS:
        after += 1
    if after >= len(tokens) or tokens[after].text not in _YES | _NO:
        return None
    stands_alone = any(row.words == label.words for row in shorthand.rows.get(label.words[0], ()))
    if stands_alone and tokens[after].text == "no" and _label(line, shorthand, after + 1) is not None:
        return None  # "clsd no sq": closed, and not to be squeezed
    if to_be_asked(line, after + 1):
        return Change(tokens[at].start, tokens[after + 1].end, OPEN), after + 2
    says = label.yes if tokens[after].text in _YES else label.no
    return (Change(tokens[at].start, tokens[after].end, says), after + 1) if says else None
