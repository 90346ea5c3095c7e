"""Trying a family: gates before layouts, the first failure stops, the first layout that passes wins."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from intake.sizing.check_row import Row
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.job import View
from intake.sizing.range_data import Limits


@dataclass(frozen=True, slots=True)
class Trial:
    """How a family did in one view: the layout that passed, or the one that came furthest and what stopped it."""

    passes: bool
    layout: Layout | None
    variant: Variant | None
    swapped: bool
    stopped_by: tuple[str, ...]
    depth: int = 0


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


def attempt(family: Family, view: View, d: Limits, *, room: bool = True) -> Trial:
    """Try a family in one view. `room` False leaves out the checks on floor, ceiling and doors."""
    stop = first_stop(family, view, d, room=room)
    if stop is not None:
        return Trial(False, None, None, False, (stop,))
    furthest = Trial(False, None, None, False, (), -1)
    for variant in family.variants:
        blocked = [gate.id for gate in variant.gates if not gate.passes(view)]
        if not heading_passes(variant, view):
            blocked.append("turn")
        if blocked:
            if furthest.depth < 0:
                furthest = Trial(False, None, variant, False, tuple(blocked), -1)
            continue
        trial = _try_layouts(family, variant, view, d, room=room)
        if trial.passes:
            return trial
        if trial.depth > furthest.depth:
            furthest = trial
    return furthest


def first_stop(family: Family, view: View, d: Limits, *, room: bool = True) -> str | None:
    """The id of the first gate or layout-free check that fails, None when all pass."""
    for gate in family.gates:
        if not gate.passes(view):
            return gate.id
    for row in family.before:
        if not row.warns and (room or not row.is_room) and not row.passes(view, d):
            return row.id
    return None


def heading_passes(variant: Variant, view: View) -> bool:
    """True when the variant can give the heading asked for: one of those possible, or each plausible one."""
    if variant.headings is None:
        return True
    asked: Iterable[Any] = view.options["turn"]
    outcomes = [heading in variant.headings for heading in asked]
    return all(outcomes) if view.every else any(outcomes)


def _try_layouts(family: Family, variant: Variant, view: View, d: Limits, *, room: bool) -> Trial:
    best = Trial(False, None, variant, False, (), -1)
    shape = _blocking(family.rows, room)
    load = _blocking(family.load_rows, room)
    for swapped in swaps(view):
        lay(view, swapped)
        hopeless: object = None
        for layout in variant.layouts(view, d):
            if hopeless is not None and family.drive_group(layout) == hopeless:
                continue
            family.fill(view, layout, d)
            depth = _depth(shape, view, d)
            stopped = shape[depth].id if depth < len(shape) else None
            if stopped is None:
                family.load(view, layout, d)
                further = _depth(load, view, d)
                depth += further
                if further < len(load):
                    stopped, hopeless = load[further].id, family.drive_group(layout)
            if stopped is None:
                lay(view, False)
                return Trial(True, layout, variant, swapped, (), depth)
            if depth > best.depth:
                best = Trial(False, layout, variant, swapped, (stopped,), depth)
    lay(view, False)
    return best


def _blocking(rows: tuple[Row, ...], room: bool) -> list[Row]:
    return [row for row in rows if not row.warns and (room or not row.is_room)]


def _depth(rows: list[Row], view: View, d: Limits) -> int:
    """How many rows hold before the first that does not."""
    for count, row in enumerate(rows):
        if not row.passes(view, d):
            return count
    return len(rows)
