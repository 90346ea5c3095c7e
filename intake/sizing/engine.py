"""Trying a family: gates before layouts, the first failure stops, the first layout that passes wins."""

from collections import Counter
from typing import Any, NamedTuple

from intake.sizing.check_row import FIRM_MARGIN, walk
from intake.sizing.family import Blocking, Family, Layout, Variant
from intake.sizing.job import View
from intake.sizing.range_data import Limits


class Trial(NamedTuple):
    """How a family did in one view: the layout that passed, or the one that came furthest and what stopped it.

    `turned`: fed with its other side leading. `firmness`: the tightest margin of the layout that passed, FIRM_MARGIN at
    most. `stopped`: how many layouts each check stopped before that.
    """

    passes: bool
    layout: Layout | None
    variant: Variant | None
    swapped: bool
    stopped_by: tuple[str, ...]
    depth: int = 0
    firmness: float = FIRM_MARGIN
    turned: bool = False
    stopped: Counter[str] | None = None


def swaps(view: View) -> tuple[bool, ...]:
    """The machine is laid along the infeed; turned by 90 degrees too only while the heading is unknown."""
    return (False,) if view.every or len(view.options["turn"]) < 2 else (False, True)


def lay(view: View, swapped: bool) -> None:
    """Turn the floor by 90 degrees, or back."""
    if view.swap != swapped:
        for hi, lo in view.sizes:
            hi.lx, hi.ly = hi.ly, hi.lx
            if lo is not hi:
                lo.lx, lo.ly = lo.ly, lo.lx
        view.swap = swapped


def feeds(view: View) -> tuple[bool, ...]:
    """As it was described first; with the other side leading too where it may be turned and that makes a difference."""
    words = view.options["turn_flat"]
    if not (all(words) if view.every else any(words)):
        return (False,)
    for hi, lo in view.sizes:
        if hi.L != hi.W or lo.L != lo.W or hi.b != hi.bw or lo.b != lo.bw:
            return (False, True)
    return (False,)


_SIDES = (("L", "W"), ("Lp", "Wp"), ("b", "bw"), ("h", "hx"))


def feed(view: View, turned: bool) -> None:
    """Turn the product by 90 degrees on its base, or back."""
    if view.turned != turned:
        for pair in view.sizes:
            for num in {id(num): num for num in pair}.values():
                figures = num.__dict__
                for along, across in _SIDES:
                    figures[along], figures[across] = figures[across], figures[along]
        view.turned = turned


def attempt(family: Family, view: View, d: Limits, *, room: bool = True) -> Trial:
    """Try a family in one view. `room` False leaves out the checks on floor, ceiling and doors."""
    rows = family.blocking if room else family.blocking_without_room
    for gate in family.gates:
        if not gate.passes(view):
            return Trial(False, None, None, False, (gate.id,))
    furthest: Trial | None = None
    for turned in feeds(view):
        if turned:
            feed(view, True)
        trial = _attempt_fed(family, view, d, rows)
        if trial.passes:
            if turned:
                feed(view, False)
                return trial._replace(turned=True)
            return trial
        if furthest is None or (view.options["turn_flat"] == (True,) and trial.depth > furthest.depth):
            furthest = trial._replace(turned=turned)
    feed(view, False)
    assert furthest is not None  # feeds() gives one way at least
    return furthest


def _attempt_fed(family: Family, view: View, d: Limits, rows: Blocking) -> Trial:
    """The rows and layouts of a family whose gates have passed, with the product fed as the view has it."""
    depth, tightest = walk(rows.before, view, d)
    if depth < len(rows.before):
        return Trial(False, None, None, False, (rows.before[depth].id,))
    furthest = Trial(False, None, None, False, (), -1)
    stopped: Counter[str] = Counter()
    for variant in family.variants:
        blocked = [gate.id for gate in variant.gates if not gate.passes(view)]
        if not heading_passes(variant, view):
            blocked.append("turn")
        if blocked:
            if furthest.depth < 0:
                furthest = Trial(False, None, variant, False, tuple(blocked), -1)
            continue
        trial = _try_layouts(family, variant, view, d, rows, tightest, stopped)
        if trial.passes:
            return trial
        if trial.depth > furthest.depth:
            furthest = trial
    return furthest


def heading_passes(variant: Variant, view: View) -> bool:
    """True when the variant can give the heading asked for: one of those possible, or each plausible one."""
    if variant.headings is None:
        return True
    asked: tuple[Any, ...] = view.options["turn"]
    if len(asked) == 1:
        return asked[0] in variant.headings
    outcomes = [heading in variant.headings for heading in asked]
    return all(outcomes) if view.every else any(outcomes)


def _try_layouts(
    family: Family, variant: Variant, view: View, d: Limits, rows: Blocking, before: float, stopped: Counter[str]
) -> Trial:
    best = Trial(False, None, variant, False, (), -1)
    shape, load = rows.shape, rows.load
    for swapped in swaps(view):
        lay(view, swapped)
        hopeless: object = None
        for layout in variant.layouts(view, d, stopped):
            if hopeless is not None and family.drive_group(layout) == hopeless:
                continue
            family.fill(view, layout, d)
            depth, tightest = walk(shape, view, d)
            by: str | None = shape[depth].id if depth < len(shape) else None
            if by is None and load:
                family.load(view, layout, d)
                further, least = walk(load, view, d)
                depth, tightest = depth + further, min(tightest, least)
                if further < len(load):
                    by, hopeless = load[further].id, family.drive_group(layout)
            if by is None:
                lay(view, False)
                return Trial(
                    True, layout, variant, swapped, (), depth, min(tightest, before), stopped=stopped
                )  # fmt: skip
            stopped[by] += 1
            if depth > best.depth:
                best = Trial(False, layout, variant, swapped, (by,), depth, stopped=stopped)
    lay(view, False)
    return best
