"""The shorthand of one message spelt out: which words are taken, by their guards, and what comes in their place."""

from pathlib import Path

from intake.reading.shorthand.changes import Change, changed
from intake.reading.shorthand.heights import height_pairs
from intake.reading.shorthand.line import Line, line_of
from intake.reading.shorthand.rows import Row, Shorthand, Words, shorthand_of
from intake.reading.shorthand.yes_no import OPEN, answered, to_be_asked
from intake.reading.text.fold import Folded
from intake.reading.text.tokens import Token, tokens_of

_EDGES = frozenset({".", ",", ";", "!", ":"})
_ARROWS = (">", "→")
_RATE_UNITS = frozenset({"/", "per", "cpm", "ppm", "bpm", "cph", "pph", "bph", "pm", "ph"})
_LETTERS = frozenset({"l", "w", "h", "d", "ø", "dia"})
_LEADING = frozenset({"in", "by", "within", "to", "time", "need", "needs"})
_TURNS = frozenset({"90", "180", "270"})


def spelt_out(folded: Folded, folder: Path, asked: tuple[str, ...]) -> Folded:
    """The shadow in words that the reader knows. Never raises on what somebody typed; texts without come back as is."""
    shorthand = shorthand_of(folder)
    tokens = tokens_of(folded)
    whole = _whole_answer(shorthand, tokens, asked)
    if whole is not None:
        return changed(folded, [whole])
    if not any(token.text in shorthand.first for token in tokens) and not any(a in folded.shadow for a in _ARROWS):
        return folded
    line = line_of(tokens, folded.raw, shorthand)
    changes = _changes(line, shorthand)
    return changed(folded, changes) if changes else folded


def _whole_answer(shorthand: Shorthand, tokens: list[Token], asked: tuple[str, ...]) -> Change | None:
    """A message that is nothing but the shorthand answer to what was asked."""
    first, after = 0, len(tokens)
    while after > first and tokens[after - 1].text in _EDGES | {"\n"}:
        after -= 1
    while first < after and tokens[first].text in _EDGES | {"\n"}:
        first += 1
    if after - first > 4:
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
            changes += _before(line, row, at)
        if row.then:
            changes += _then(line, row, after)
        if row.guard == "before.height":
            changes += _closed(line, row, after)
        at = after
    return changes


def _row(line: Line, shorthand: Shorthand, at: int) -> Row | None:
    """The longest entry at a token whose guard holds."""
    for row in shorthand.rows.get(line.tokens[at].text, ()):
        if _stands(line, row.words, at) and _holds(line, shorthand, row, at):
            return row
    return None


def _stands(line: Line, words: Words, at: int) -> bool:
    return len(words) == 1 or tuple(t.text for t in line.tokens[at : at + len(words)]) == words


def _holds(line: Line, shorthand: Shorthand, row: Row, at: int) -> bool:
    """Whether the guard of an entry holds at a token."""
    if row.guard == "anywhere":
        return True
    after = at + len(row.words)
    if line.prose[at] or (not line.marked[at] and row.words[0] in shorthand.english) or _joined(line, at, after):
        return False
    if row.guard == "behind.figure":
        value = line.tokens[at - 1].value if at else None
        return (value is not None and value > row.over) or _ends_rate(line, at)
    if row.guard == "behind.length":
        return line.length_before(at) is not None and not _labels_next(line, shorthand, at)
    if row.guard == "behind.turn":
        is_litre = row.words == ("l",) and not _glued(line, at) and line.amount(after) is not None
        return at > 0 and line.tokens[at - 1].text in _TURNS and not is_litre
    if row.guard == "with_type":
        return any(token.text in shorthand.types for token in line.tokens[max(0, at - 12) : at])
    if line.is_unit_of_figure(at) and not _opens_pair(line, at):
        return False  # a figure and its unit stay together
    if at and (line.tokens[at - 1].text in ("/", "per") or _glued(line, at)):
        return False  # "25/min 30#", "3ph 50hz"
    figure = line.figure_behind(after)
    if row.guard == "terse":
        return row.words != ("fl",) or not _is_floor(line, shorthand, at)
    if figure is None or row.guard == "before.figure":
        return figure is not None and not _named_behind(line, shorthand, at)
    return _is_length(line, figure) or _bare_pair(line, at)


def _joined(line: Line, at: int, after: int) -> bool:
    """Tied to its neighbours by a sign: "fl->mezz"."""
    around = (line.tokens[at - 1 : at] or line.tokens[:0]) + line.tokens[after : after + 2]
    return any(token.text in (*_ARROWS, "@") for token in around)


def _glued(line: Line, at: int) -> bool:
    """A word that hangs on a number: its unit, or part of a code."""
    return line.is_number(at - 1) and line.tokens[at - 1].end == line.tokens[at].start


def _is_floor(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "fl 20x10" and "2nd fl" are floors, "fl 5m" may be one; "fl 30#" is full."""
    led = line.tokens[at - 2].text if at > 1 else ""
    if line.is_number(at - 1) and not any(row.guard == "before.figure" for row in shorthand.rows.get(led, ())):
        return True
    if at and line.tokens[at - 1].text in ("st", "nd", "rd", "th"):
        return True
    amount = line.amount(at + 1)
    if amount is None or (amount.unit is not None and amount.unit.kind != "length"):
        return False
    behind = line.tokens[amount.after].text if amount.after < len(line.tokens) else ""
    second = line.amount(amount.after + 1) if behind == "x" else None
    if second is None:
        return amount.unit is not None and behind not in (*_ARROWS, "-", "=")
    return second.after >= len(line.tokens) or line.tokens[second.after].text != "x"


def _labels_next(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "l 400mm w 300mm": letters belong to the figures behind them where the row of both begins with a letter."""
    tokens = line.tokens
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    if behind is not None and (
        behind.text in ("=", ":") or (behind.kind == "number" and behind.start == tokens[at].end)
    ):
        return True
    first = line.length_before(at)
    while first is not None:
        before = tokens[first - 1].text if first else ""
        if before not in _LETTERS:
            return any(row.guard.startswith("before.") for row in shorthand.rows.get(before, ()))
        first = line.length_before(first - 1)
    return True


def _letters_first(line: Line, at: int) -> bool:
    """ "L 30\" W 16\" H 13\"" from the letter at a token: the row ends with a figure."""
    tokens = line.tokens
    while at < len(tokens) and tokens[at].text in _LETTERS:
        amount = line.amount(at + 1)
        if amount is None or amount.unit is None or amount.unit.kind != "length":
            return False
        at = amount.after
    return True


def _bare_pair(line: Line, at: int) -> bool:
    """ "in 800 out 4200": no unit, but both words and both figures."""
    tokens = [token.text for token in line.tokens[max(0, at - 2) : at + 4]]
    own = tokens[min(at, 2) :]
    if own[0] == "in":
        return len(own) == 4 and own[2] == "out" and line.is_number(at + 1) and line.is_number(at + 3)
    return (
        own[0] == "out" and len(tokens) > 4 and tokens[0] == "in" and line.is_number(at - 1) and line.is_number(at + 1)
    )


def _is_length(line: Line, figure: int) -> bool:
    """A length with its unit, or the first of several that share one: 22 x 9 ft."""
    amount = line.amount(figure)
    while amount is not None:
        if amount.unit is not None:
            return amount.unit.kind == "length"
        if amount.after >= len(line.tokens) or line.tokens[amount.after].text not in ("x", "*", "by", "-"):
            return False
        amount = line.amount(amount.after + 1)
    return False


def _opens_pair(line: Line, at: int) -> bool:
    """ "pk 32 in 30\" out 14'": a height in and a height out leave no figure for the inches before them."""
    figure = line.figure_behind(at + 1)
    amount = line.amount(figure) if figure is not None else None
    if amount is None or amount.after >= len(line.tokens):
        return False
    if amount.unit is not None and amount.unit.kind != "length":
        return False
    return line.tokens[amount.after].text in ("out", "outf", "outfd", "disch") and (
        line.figure_behind(amount.after + 1) is not None
    )


def _ends_rate(line: Line, at: int) -> bool:
    """ "30/m nrm": a figure per minute or per hour ends before the token."""
    return at >= 3 and line.tokens[at - 2].text in ("/", "per") and line.is_number(at - 3)


def _closed(line: Line, row: Row, after: int) -> list[Change]:
    """The same sign behind the figures that belong to a label as before it, where a word or figure follows at once."""
    amount = line.amount(line.figure_behind(after) or after)
    while amount is not None and amount.after < len(line.tokens):
        behind = line.tokens[amount.after]
        further = line.amount(amount.after + 1) if behind.text in ("x", "by", "-") else None
        if further is None:
            end = line.tokens[amount.after - 1].end
            sign = row.says[:1]
            follows = behind.kind in ("word", "number") and behind.start > end
            follows = follows and (behind.text not in _LETTERS or _letters_first(line, amount.after))
            follows = follows or (behind.text == "," and sign == ";")
            return [Change(end, end, sign, behind=True)] if follows and sign in (",", ";") else []
        amount = further
    return []


def _before(line: Line, row: Row, at: int) -> list[Change]:
    """What goes before the figure that an entry stands behind, where no word leads to it yet."""
    first = at - 1
    if first > 1 and line.tokens[first - 1].text in ("-", "to") and line.is_number(first - 2):
        first -= 2
    if first and line.tokens[first - 1].text in _LEADING and not line.is_number(first - 2):
        return []
    return [Change(line.tokens[first].start, line.tokens[first].start, row.before + " ")]


def _named_behind(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "22/m nrm 70/m pk 5 mach": the first rate had its name behind it, so this name belongs to what it follows."""
    names = {word for word, rows in shorthand.rows.items() if any(row.guard == "behind.figure" for row in rows)}
    return _ends_rate(line, at) and any(
        line.tokens[n].text in names and _ends_rate(line, n) for n in range(max(0, at - 8), at)
    )


def _then(line: Line, row: Row, after: int) -> list[Change]:
    """What goes behind the figure: nothing where it has a unit or another figure of the line tells what it is per."""
    figure = line.figure_behind(after)
    number = figure + 1 if figure is not None else None
    if number is None or figure is None:
        return []
    tokens = line.tokens
    behind = tokens[number] if number < len(tokens) else None
    if behind is not None and behind.text in ("-", "to") and line.is_number(number + 1):
        number += 2
        behind = tokens[number] if number < len(tokens) else None
    end = tokens[number - 1].end
    opens_pair = behind is not None and _opens_pair(line, number)
    if behind is not None and not opens_pair:
        is_apart = line.is_number(number) or (behind.text in _LETTERS and behind.start > end)
        amount = None if is_apart else line.amount(number - 1)
        if (behind.text in _RATE_UNITS and row.then != "hours") or (amount is not None and amount.unit is not None):
            return []
        if behind.start == end and behind.kind != "line" and behind.text not in (",", ";", ".", ")", "/"):
            return []
    if row.then.startswith("per") and any(_per_other(line, n) for n in range(len(tokens))):
        return []
    return [Change(end, end, row.then + "," * (behind is None or behind.text != "/"), behind=True)]


def _per_other(line: Line, at: int) -> bool:
    """A rate per something else than a minute: the bare figure beside it may be per that."""
    if line.tokens[at].text not in ("/", "per") or not line.is_number(at - 1) or at + 1 >= len(line.tokens):
        return False
    return line.tokens[at + 1].text in ("h", "hr", "hour", "d", "day", "shift", "shft", "s", "sec", "wk", "week")
