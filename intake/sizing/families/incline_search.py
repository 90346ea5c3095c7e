"""The search for runs of belts: slopes from the steepest down, in one line or side by side in plan."""

from collections import Counter
from collections.abc import Callable, Iterator
from math import inf
from typing import NamedTuple

from intake.sizing.check_row import as_good_as
from intake.sizing.job import View
from intake.sizing.physics.envelope import run_plan_length
from intake.sizing.physics.friction import steepest_slope
from intake.sizing.physics.helix import width_in_curve
from intake.sizing.range_data import Limits
from intake.sizing.stability import crest_step, footing


class Runs(NamedTuple):
    """A layout: lanes side by side in plan (1: one line), runs in series in each lane, slope [rad]."""

    lanes: int
    series: int
    slope: float


class Lane(NamedTuple):
    """What no slope changes: width of the belt, radius at the inside of its curves [m]."""

    belt: float
    inside: float


def belt_for(view: View, d: Limits) -> float:
    """The narrowest belt of the range that takes the product with its clearance; the widest when none does [m]."""
    return belt_over(view.most("W"), d)


def belt_over(product_width: float, d: Limits) -> float:
    """The same for one width of product [m]."""
    need = product_width + 2.0 * d.side_clearance
    widths: tuple[float, ...] = d.belt_widths
    return next((w for w in widths if w >= need - 1e-9), widths[-1])


def lane_of(view: View, lanes: int, d: Limits) -> Lane:
    """The belt and the curves of a line, or of lanes side by side."""
    inside = d.curve_radius_per_product_width * view.most("Wp")
    swept = [width_in_curve(inside, hi.W, hi.L) if lanes > 1 else hi.W for hi, _ in view.sizes]
    return Lane(belt_over(max(swept), d), inside)


def slopes_to_try(view: View, d: Limits, friction: str, lateral: float, stopped: Counter[str]) -> list[float]:
    """The slopes of the range that neither slip nor tip, steepest (least floor) first; the others are counted.

    The flattest is always among them, so that there is a layout to show what stops it.
    """
    steepest, by = inf, "slope"
    for one, low in view.sizes:
        if friction:
            held = steepest_slope(getattr(low, friction) / d.slip_safety, d.accel_greatest, lateral)
            steepest, by = min((steepest, by), (held, "slip"))
        stands = steepest_slope(footing(one, low, d), d.accel_greatest, lateral)
        steepest, by = min((steepest, by), (stands, "tip"), (d.crest_steps * crest_step(one, low, d), "crest"))
    found = [slope for slope in d.slopes if slope <= steepest + 1e-9]
    if len(found) < len(d.slopes):
        stopped[by] += len(d.slopes) - len(found)
    return found or [d.slopes[-1]]


def runs_on(lanes: int) -> Callable[[View, Limits, Counter[str]], Iterator[Runs]]:
    """Runs in one line (lanes 1), or as many side by side in plan.

    One of many samples only asks whether a layout passes: those that have no room on the floor are then dropped before
    they are laid out.
    """

    def layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Runs]:
        hi, lo = view.sizes[0]
        quick, lane, end = view.quick, Lane(0.0, 0.0), 0.0
        if quick:
            lane, end = lane_of(view, lanes, d), end_length(view, d)
            if not as_good_as(plan_width(lanes, lane, d), lo.ly, True):
                return
        slopes = slopes_to_try(view, d, "mu", 0.0, stopped)
        for place, slope in enumerate(slopes):
            plan = run_plan_length(hi.rise, slope)
            series = max(1, -int(-plan // d.run_most)) if lanes == 1 else 1
            if (lanes == 1 and series > d.runs_in_line_most) or (lanes > 1 and plan / lanes > d.run_most):
                stopped["run_length"] += len(slopes) - place
                if place:
                    break
            lay = Runs(lanes, series, slope)
            if not quick or as_good_as(plan_length(plan / (lanes * series), lay, end, lane, d), lo.lx, True):
                yield lay
            if plan / lanes > lo.lx:  # flatter is longer still
                stopped["room_length"] += len(slopes) - place - 1
                break

    return layouts


def end_length(view: View, d: Limits) -> float:
    """Length of a level end [m]: the longest product stands on it."""
    return float(max(d.level_end, view.most("L")))


def plan_length(run: float, lay: Runs, end: float, lane: Lane, d: Limits) -> float:
    """Length on the floor [m] of runs that are each as long as `run` on plan."""
    if lay.lanes == 1:
        return float(lay.series * run + 2.0 * end + (lay.series - 1) * d.joint)
    reach = lane.inside + lane.belt + d.frame_margin
    return float(run + reach + (max(end, reach) if lay.lanes == 3 else end))


def plan_width(lanes: int, lane: Lane, d: Limits) -> float:
    """Width on the floor [m]."""
    return float((lanes - 1) * (2.0 * lane.inside + lane.belt) + lane.belt + 2.0 * d.frame_margin)
