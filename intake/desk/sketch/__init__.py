"""A sketch of a machine in rows of text, to scale: from the side and from above. No screen library in here."""

from itertools import zip_longest
from typing import Protocol

from intake.advice import Brief
from intake.advice.missing import nothing_leads
from intake.advice.outline import Outline, outline
from intake.desk.sketch.above import plan_picture
from intake.desk.sketch.picture import Picture
from intake.desk.sketch.side import side_picture
from intake.desk.sketch.signs import BOXES, PLAIN, Signs
from intake.desk.sketch.words import Words, wrapped

__all__ = ["LEAST_COLUMNS", "LEAST_ROWS", "sketch_lines"]

LEAST_COLUMNS, LEAST_ROWS = 30, 10
SIDE_BY_SIDE = 76
"""From so many columns on both views stand beside each other."""
_BETWEEN = 3
_ROOMY = 14
"""From so many rows on the family has one of its own, and the length stands under the floor."""
_LEAST_ROWS_OF_A_VIEW, _FOR_BOTH = 6, 14
"""Rows, title and dimension with it."""


class _Talk(Protocol):
    @property
    def brief(self) -> Brief: ...


def sketch_lines(
    given: Brief | _Talk, width: int, height: int, *, family: str | None = None, ascii: bool = False
) -> list[str]:  # fmt: skip
    """The sketch of a family, of the leading one where none is named, in at most `height` rows of `width` columns.

    Plain text, the same for the same case. A sentence instead where nothing leads, no layout is worked out or the room
    is too small. Raises KeyError for a family that there is not.
    """
    brief = given if isinstance(given, Brief) else given.brief
    words = Words(brief)
    if width < LEAST_COLUMNS or height < LEAST_ROWS:
        return _instead(
            words.say("too_small", width=str(LEAST_COLUMNS), height=str(LEAST_ROWS)), width, height
        )  # fmt: skip
    found = brief.family(family)
    if found is None:
        return _instead(nothing_leads(brief), width, height)
    drawn = outline(brief, family)
    if drawn is None:
        return _instead(words.say("no_layout", family=words.family(found.family)), width, height)
    out = found.verdict == "out"
    lines = _sketch(drawn, words, width, height, PLAIN if ascii else BOXES, out)
    return lines or _instead(words.say("too_slender"), width, height)


def _instead(text: str, width: int, height: int) -> list[str]:
    return wrapped(text, max(1, width))[: max(0, height)]


def _sketch(drawn: Outline, words: Words, width: int, height: int, signs: Signs, out: bool) -> list[str]:
    roomy = height >= _ROOMY
    warnings = [words.say("out_of_question")] if out else []
    warnings += [words.note(note) for note in drawn.notes if note.warns]
    told = [row for text in warnings for row in wrapped(f"{signs.misfit} {text}", width)]
    caution = words.say("caution")
    must = wrapped(caution if len(caution) <= width else words.say("caution_short"), width)
    heading = [words.titles(drawn.family)[1][:width]] if roomy else []
    room = height - len(must) - len(heading)
    kept = [*told, *wrapped(words.floor(drawn, short=not roomy), width)][: room - _LEAST_ROWS_OF_A_VIEW]
    views: list[Picture] = []
    for spare in (_for_more(height), 0):
        views = views or _views(drawn, words, width, room - len(kept) - spare, signs, roomy=roomy)
    if not views:
        return []
    lines = _joined(views, width)
    left = room - len(kept) - len(lines)
    return [*heading, *lines, *_more(drawn, views, words, signs, width)[:left], *kept, *must]


def _more(drawn: Outline, views: list[Picture], words: Words, signs: Signs, width: int) -> list[str]:
    """The legend, and what is not known or not drawn."""
    notes = [words.note(note) for note in drawn.notes if not note.warns]
    notes += [words.say("space_goes_on")] if any(view.goes_on for view in views) else []
    thinned = max(view.thinned for view in views)
    notes += [words.say("thinned", count=str(thinned))] if thinned > 1 else []
    return [*_legend(views, words, signs, width), *(row for text in notes for row in wrapped(text, width))]


def _for_more(height: int) -> int:
    """Rows for the legend and what is not known."""
    return 0 if height < _ROOMY else 2 if height < 24 else 4


def _views(drawn: Outline, words: Words, width: int, rows: int, signs: Signs, *, roomy: bool) -> list[Picture]:
    """Both views, or the side view alone; [] where not even that can be drawn."""

    def side_view(columns: int, high: int) -> Picture | None:
        return side_picture(drawn, words, columns, high, signs, titled=roomy, measured=roomy)

    if width >= SIDE_BY_SIDE:
        side = side_view((width - _BETWEEN) // 2, rows)
        plan = None if side is None else plan_picture(drawn, words, width - _BETWEEN - side.width, rows, signs)
    else:
        plan = plan_picture(drawn, words, width, rows // 2 - 1, signs) if rows >= _FOR_BOTH else None
        side = side_view(width, rows - (len(plan.lines) + 1 if plan is not None else 0))
        if side is None and plan is not None:
            plan, side = None, side_view(width, rows)
    return [] if side is None else [side] if plan is None else [side, plan]


def _joined(views: list[Picture], width: int) -> list[str]:
    """The views beside each other where there is room, else one below the other."""
    if len(views) == 1:
        return views[0].lines
    side, plan = views
    if width < SIDE_BY_SIDE:
        return [*side.lines, "", *plan.lines]
    at = side.width + _BETWEEN
    pairs = zip_longest(side.lines, plan.lines, fillvalue="")
    return [f"{left:<{at}}{right}".rstrip() for left, right in pairs]


def _legend(views: list[Picture], words: Words, signs: Signs, width: int) -> list[str]:
    """What the signs mean, those that were used."""
    shown = set().union(*(view.shows for view in views))
    space = "".join(dict.fromkeys((signs.dash, signs.dash_upright)))
    meanings = {
        "path": signs.belt if len(views) > 1 else signs.shallow[1], "product": signs.product,
        "ceiling": signs.ceiling, "space": space, "misfit": signs.misfit,
        "towards": signs.towards, "away": signs.away, "hidden": signs.hidden,
        "frame": signs.frame,
    }  # fmt: skip
    rows: list[str] = []
    for key, sign in meanings.items():
        if key not in shown:
            continue
        entry = f"{sign} {words.say(f'legend_{key}')}"
        if rows and len(rows[-1]) + 2 + len(entry) <= width:
            rows[-1] += f"  {entry}"
        else:
            rows.append(entry[:width])
    return rows
