"""Dimensions that stand together: 10x8x6 in, 29" L x 16" W x 5.5" H, 30 long 16 wide 5 thick."""

from dataclasses import dataclass

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.numbers import number_at
from intake.reading.amounts.size_labels import LABELS, label_before, label_behind
from intake.reading.amounts.size_orders import order_at, order_end
from intake.reading.amounts.unit_words import unit_at
from intake.reading.amounts.units import Unit
from intake.reading.text.tokens import Token

_LONGEST_SIDE, _LONGEST_PACK = 19.0, 3.0
_TIMES = frozenset({"x", "*", "by"})
_SMALL_WORDS = frozenset(
    [
        "it", "it's", "they", "they're", "is", "are", "about", "around", "roughly", "maybe", "then", "approx",
        "overall", "total",
        "just", "only", "with", "plus", "always", "sits", "outer", "some", "say", "perhaps", "like", "and",
    ]
)  # fmt: skip
_BETWEEN = frozenset({",", "and", "&", ";", "/"})


@dataclass(slots=True)
class Group:
    """Two or three lengths. `labels`: one letter each, "" where none stands. `times`: joined by x, * or by."""

    figures: list[Figure]
    labels: list[str]
    first: int
    after: int
    times: bool

    @property
    def has_unit(self) -> bool:
        """True when at least one unit is stated, and so all have one."""
        return all(figure.unit is not None for figure in self.figures)


def groups_of(tokens: list[Token], figures: list[Figure], raw: str) -> list[Group]:
    """All groups in order; bare members take the unit of their neighbours."""
    found: list[Group] = []
    n = 0
    while n < len(figures):
        group = _times_group(tokens, figures, n, raw) or _labelled_group(tokens, figures, n, raw)
        if group is None:
            n += 1
            continue
        if len(group.figures) <= 3:
            found.append(group)
        else:
            for figure in group.figures:
                figure.tags.add("list")
        n += len(group.figures)
    for group in found:
        _named_order(group, tokens)
        _late_member(group, tokens, figures)
        _share(group, tokens, raw)
    return found


_BETWEEN_ORDER_AND_SIZES = frozenset(
    {
        ":", "=", "in", "mm", "cm", "inches", "inch", "(", ")", "[", "]", "dimensions", "dims",
    }
)  # fmt: skip


def _named_order(group: Group, tokens: list[Token]) -> None:
    """ "400 x 300 x 200 (L x W x H)", "HxBxT: 200x300x400": the labels told in the same order, behind or before."""
    if any(group.labels) or not group.times:
        return
    behind = order_at(tokens, group.after) or order_at(tokens, group.after, order_end(tokens, group.after))
    if len(behind) == len(group.figures):
        group.labels = behind
        return
    at = group.first - 1
    while at >= 0 and tokens[at].text in _BETWEEN_ORDER_AND_SIZES:
        at -= 1
    for begin in range(max(0, at - 6), at + 1):
        before = order_at(tokens, begin, at + 1)
        if len(before) == len(group.figures):
            group.labels = before
            return


_LATE = frozenset(
    [
        ",", "and", "&", "is", "are", "it", "it's", "they", "they're", "about", "around", "stands", "stand", "x",
        "by",
        "with", "a", "height", "high", "roughly", "the", "tall", "at", "-", "(", "of", "then", ";", "when", "loaded",
        "filled", "approx", "=", ":", "total", "overall", "thickness", "ht", "up", "to", "max", ".", "maximum",
        "stacked",
        "stand", "hoogte", "höhe", "hauteur", "alto", "hgt",
    ]
)  # fmt: skip
_LATE_MOST = 6


def _late_member(group: Group, tokens: list[Token], figures: list[Figure]) -> None:
    """ "16 x 12 and about 10 tall", "24x16, height 12 inches": the third figure stands apart, with its label."""
    if len(group.figures) != 2 or not group.times:
        return
    at = next(n for n, figure in enumerate(figures) if figure is group.figures[-1]) + 1
    if at >= len(figures) or not _usable(figures[at]) or figures[at].first - group.after > _LATE_MOST:
        return
    figure = figures[at]
    if any(token.text not in _LATE for token in tokens[group.after : figure.first]):
        return
    label, _ = label_before(tokens, figure.first, group.after)
    behind, end = label_behind(tokens, figure.after)
    label = label or behind
    if label not in ("h", "t", "d") or label in group.labels:
        return
    coarse = figure.unit is not None and figure.unit.name in ("ft", "m") and all(f.unit is None for f in group.figures)
    if coarse and figure.unit and max(f.value for f in group.figures) * figure.unit.factor > _LONGEST_PACK:
        figure.tags.add("own unit")
    group.figures.append(figure)
    group.labels = [*(group.labels if any(group.labels) else ("l", "w")), "h" if label == "d" else label]
    group.after = end if behind else figure.after


def _relabelled(tokens: list[Token], figure: Figure) -> str:
    """L, W, H behind a number in a group are labels, not litres, watts or hours."""
    letter = tokens[figure.after - 1].text
    if letter == ")" and figure.after >= 2:
        letter = tokens[figure.after - 2].text
    if figure.unit is not None and figure.kind in ("volume", "power", "duration") and letter in ("l", "w", "h", "d"):
        figure.unit, figure.kind = None, "number"
        figure.ends = tuple(end.with_unit(None) for end in figure.ends)  # type: ignore[arg-type]  # a bare number again
        values = [end.value for end in figure.ends]
        figure.low, figure.high = min(values), max(values)
        return letter
    return ""


def _usable(figure: Figure) -> bool:
    return figure.kind in ("length", "number") and figure.value > 0


def _times_group(tokens: list[Token], figures: list[Figure], n: int, raw: str) -> Group | None:
    members, labels = [figures[n]], [""]
    first_label, begin = label_before(tokens, figures[n].first, max(0, figures[n].first - 3))
    if first_label and begin and tokens[begin - 1].text in ("x", "*"):
        first_label = ""  # L x W x H: 400 x 300 x 200
    times = False
    last_after = figures[n].after
    slashed = _by_slash(tokens, figures, n)
    while True:
        figure = members[-1]
        letter = ""
        here = figure.after
        if n + len(members) < len(figures) or figure.kind not in ("length", "number"):
            joined = _joined_at(tokens, here) or tokens[here - 1].text in ("l", "w", "h", "d", ")")
            letter = _relabelled(tokens, figure) if joined and (times or _joined_at(tokens, here)) else ""
        label, here = (letter, here) if letter else label_behind(tokens, here)
        if not _usable(figure):
            break
        trailing = trailing_unit(tokens, here, raw) if label and figure.unit is None and here < len(tokens) else None
        if trailing is not None and trailing[0].kind == "length":
            give_unit(figure, trailing[0])
            here = trailing[1]
        if label and order_end(tokens, figure.after) > 0:
            label, here = "", figure.after  # 42 x 38 x 4 in L x W x H
        labels[-1] = label or labels[-1]
        last_after = here
        joins = _joined_at(tokens, here) or (slashed and here < len(tokens) and tokens[here].text == "/")
        if len(members) + n >= len(figures) or not joins:
            break
        following = figures[n + len(members)]
        begins = label_before(tokens, following.first, here + 1)
        if following.first != here + 1 and not (begins[0] and begins[1] == here + 1):
            break
        members.append(following)
        labels.append(begins[0])
        times = True
    members = [member for member in members if _usable(member)]
    labels = labels[: len(members)]
    if len(members) < 2:
        return None
    if first_label and not labels[0]:
        labels[0] = first_label
    return Group(members, labels, min(begin, members[0].first) if first_label else members[0].first, last_after, True)


def _by_slash(tokens: list[Token], figures: list[Figure], n: int) -> bool:
    """600/400/220 is a group of three."""
    three = figures[n : n + 3]
    if len(three) < 3 or any(figure.kind not in ("number", "length") or figure.is_range for figure in three):
        return False
    a, b, c = three
    before = tokens[a.first - 1].text if a.first else ""
    behind = tokens[c.after].text if c.after < len(tokens) else ""
    if "/" in (before, behind):
        return False
    measured = all(figure.unit is not None for figure in three)
    told_last = c.unit is not None and a.unit is None and b.unit is None
    ends = (
        tokens[a.after].text if a.after < len(tokens) else "",
        tokens[b.after].text if b.after < len(tokens) else "",
    )
    return (
        ends == ("/", "/")
        and b.first == a.after + 1
        and c.first == b.after + 1
        and (measured or told_last or min(f.value for f in three) >= 4)
    )


def _joined_at(tokens: list[Token], at: int) -> bool:
    return at + 1 < len(tokens) and tokens[at].text in _TIMES


def _labelled_group(tokens: list[Token], figures: list[Figure], n: int, raw: str) -> Group | None:
    """Figures one after another, each with its label."""
    members: list[Figure] = []
    labels: list[str] = []
    here = begin = figures[n].first
    after_style = False
    for figure in figures[n : n + 4]:
        if members:
            gap = here
            while (
                gap < len(tokens)
                and gap < figure.first
                and (tokens[gap].text in _BETWEEN or tokens[gap].text in _TIMES or tokens[gap].text in _SMALL_WORDS)
            ):
                gap += 1
        else:
            gap = figure.first
        label, start = label_before(tokens, figure.first, max(gap, 0) if members else max(0, figure.first - 3))
        if label and _relabelled(tokens, figure):
            figure.after = figure.end = figure.after - 1  # "L 12.5 W 9.25": the W is the next one's label
        behind, end = label_behind(tokens, figure.after)
        if not behind and not label and (after_style or _labelled_next(tokens, figures, figure)):
            behind, end = _relabelled(tokens, figure), figure.after
        beside = label and begin_of(tokens, figure) and behind and _stands_before_next(tokens, figures, figure)
        if behind and not label and order_end(tokens, figure.after) > 0:
            behind, end = "", figure.after
        if label and behind and (beside or _next_begins(tokens, figures, figure, end)):
            behind, end = "", figure.after  # "height 190 mm diameter 225 mm": the diameter is the next one's
        held = figure.first and (
            tokens[figure.first - 1].text in ("=", ":") or tokens[figure.first - 1].end == tokens[figure.first].start
        )
        if not members and label and behind and held:
            behind, end = "", figure.after
        if members and not after_style and label and start == gap:
            behind, end = "", figure.after
        if members and after_style and behind:
            label, start = "", figure.first
        if members and figure.first != gap and not (label and start == gap):
            break
        if not _usable(figure) or not (label or behind):
            break
        if not members:
            begin, after_style = (figure.first, True) if behind else (start, False)
            label = behind or label
        else:
            label = (behind if after_style else label) or behind or label
        here = end if behind else figure.after
        if figure.unit is None and behind:
            trailing = trailing_unit(tokens, here, raw)
            if trailing is not None and trailing[0].kind == "length":
                give_unit(figure, trailing[0])
                here = trailing[1]
        members.append(figure)
        labels.append(label)
    if len(members) < 2 or len(set(labels)) < len(labels):
        return None
    return Group(members, labels, begin, here, False)


def trailing_unit(tokens: list[Token], at: int, raw: str) -> tuple[Unit, int] | None:
    """The unit behind a label: "200 high in millimetres", "12 L in"."""
    if at < len(tokens) and tokens[at].text == "in":
        named = unit_at(tokens, at + 1, raw)
        if (
            named is not None
            and named[0].kind == "length"
            and tokens[at + 1].kind == "word"
            and len(tokens[at + 1].text) > 1
        ):
            return named
    return unit_at(tokens, at, raw)


def begin_of(tokens: list[Token], figure: Figure) -> bool:
    """True where a label stands right before the figure."""
    return figure.first > 0 and tokens[figure.first - 1].text in LABELS


def _stands_before_next(tokens: list[Token], figures: list[Figure], figure: Figure) -> bool:
    """ "L 400 mm W 300 mm H 200 mm": the label behind this figure stands right before the next one."""
    at = next((n for n, one in enumerate(figures) if one is figure), 0) + 1
    return at < len(figures) and figures[at].first == figure.after + 1


def _next_begins(tokens: list[Token], figures: list[Figure], figure: Figure, end: int) -> bool:
    """True where the label behind this figure stands right before the next one, which has no label behind it."""
    at = next((n for n, one in enumerate(figures) if one is figure), 0) + 1
    if at >= len(figures):
        return False
    lead = [token.text for token in tokens[end : figures[at].first]]
    plain = all(word in (":", "=", "is", "of", "about", "approx", ".") for word in lead)
    return plain and len(lead) <= 2 and not label_behind(tokens, figures[at].after)[0]


def _labelled_next(tokens: list[Token], figures: list[Figure], figure: Figure) -> bool:
    """ "24 L 15 W 12 H": the L is no litre where a W or H follows."""
    at = next((n for n, one in enumerate(figures) if one is figure), 0) + 1
    if at >= len(figures) or figures[at].first - figure.after > 1:
        return False
    last = figures[at].after - 1
    last -= tokens[last].text == ")"
    letters = {"w", "h", "d", "l"}
    return tokens[last].text in letters or (last + 1 < len(tokens) and tokens[last + 1].text in letters)


def _share(group: Group, tokens: list[Token], raw: str) -> None:
    """Units from the next member, else from the one before, else behind the group after a comma or in brackets."""
    figures = group.figures
    if all(figure.unit is None for figure in figures):
        at = group.after
        if at < len(tokens) and tokens[at].text in (",", "(", "all", "-"):
            at += 1
        if at < len(tokens) and tokens[at].text in ("all", "in", "dimensions", "dims") and at + 1 < len(tokens):
            ahead = unit_at(tokens, at + 1, raw)
            at = at + 1 if ahead is not None and ahead[0].kind == "length" else at
        unit = unit_at(tokens, at, raw) if at < len(tokens) and number_at(tokens, at) is None else None
        if unit is None or unit[0].kind != "length" or (tokens[at].text == "in" and not _lone_inch(tokens, unit[1])):
            return
        for figure in figures:
            give_unit(figure, unit[0])
        return
    for n in range(len(figures) - 1, -1, -1):
        if figures[n].unit is None:
            near = [*figures[n + 1 :], *reversed(figures[:n])]
            units = [f.unit for f in near if f.unit is not None and "own unit" not in f.tags]
            unit_of = next(
                (u for u in units if u.worth(figures[n].value) <= _LONGEST_PACK), units[0] if units else None
            )
            if unit_of is not None:
                if unit_of.worth(figures[n].value) > _LONGEST_SIDE:
                    continue
                give_unit(figures[n], unit_of)


def _lone_inch(tokens: list[Token], after: int) -> bool:
    """ "16x12x10 in" and then the end, a comma or a noun; not "in a row"."""
    return after >= len(tokens) or tokens[after].text not in ("a", "the", "an", "our", "each", "every", "one", "stock")
