"""How long a sizing takes, as ratios measured in one run: `pytest -m bench -s tests/bench` prints them.

Times by themselves say more of the machine than of the program, so nothing here is held to a number of seconds.
"""

from collections.abc import Callable
from math import ceil, cos, pi, sin, tan
from time import process_time
from typing import Any

import pytest

from intake.sizing.all_families import ALL
from intake.sizing.appraise import verdict_of
from intake.sizing.engine import Trial, attempt
from intake.sizing.job import Job, view
from intake.sizing.physics.cover import cover_force, cover_needed_ratio
from intake.sizing.physics.flow import pitch_curved
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.friction import friction_needed
from intake.sizing.physics.grip import bend_accel, grip_needed
from intake.sizing.physics.helix import slope_of, width_in_curve
from intake.sizing.physics.lift import feed_speed_needed, reciprocating_cycle
from intake.sizing.physics.motion import trapezoid_time
from intake.sizing.physics.pneumatics import bore_needed, next_bore
from intake.sizing.physics.power import motor_power_needed
from intake.sizing.physics.tension import Strand, guide_rate, loop_tensions
from intake.sizing.physics.tipping import tipping_share, tipping_share_lateral
from intake.sizing.quick import QuickPass
from intake.sizing.range_data import load_range
from intake.sizing.resolve import resolve
from intake.sizing.sampling import Sampler
from intake.sizing.score import reasons, total
from intake.sizing.unknowns import TYPICAL
from intake.spec.flat import Spec

pytestmark = pytest.mark.bench

HALF_WAY = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "rate.peak": 25.0, "rise.height": 3.2, "rise.direction": "up", "handling.squeeze": True, "space.length": 9.0,
    "space.width": 3.0,
}  # fmt: skip


def fastest(work: Callable[[], Any], rounds: int = 200) -> float:
    """The least time that a piece of work takes [s]."""
    found = []
    for _ in range(rounds):
        start = process_time()
        work()
        found.append(process_time() - start)
    return min(found)


def evaluate(job: Job) -> dict[str, float]:
    """All nine families at the design point: verdict, tightest margin, score; no records, no text."""
    scores: dict[str, float] = {}
    seen = view(job, TYPICAL)
    for name, family in ALL.items():
        d = job.data.families[name]
        trial = attempt(family, seen, d)
        if trial.passes:
            scores[name] = total(reasons(family, seen, trial.firmness, d, job.data), job.data)
    return scores


@pytest.fixture
def job(case_up: dict[str, Any]) -> Job:
    return resolve(Spec.from_flat(case_up), load_range())


def loop(load: float, back: float, slope: float, mu: float, b: float, length: float, level: float, least: float) -> Any:
    drag, lift = mu * cos(slope), sin(slope)
    strands = (
        Strand(back * mu, 0.0, level), Strand(back * (drag - lift), 0.0, length),
        Strand(load * (drag + lift), b, length), Strand(load * mu, 0.0, level),
    )  # fmt: skip
    return loop_tensions(strands, 3, least)


def flat(job: Job, tried: dict[str, Trial]) -> list[float]:
    """The relations of the layouts found, called one after the other on plain floats: nothing else."""
    one = view(job, TYPICAL).sizes[0][0]
    L, W, H, m, R, rise, h, b, bw = one.L, one.W, one.H, one.m, one.R, one.rise, one.h, one.b, one.bw
    out: list[float] = []
    for name in ("spiral", "washdown_spiral"):
        d, lay = job.data.families[name], tried[name].layout
        r = lay.inside + lay.belt / 2.0
        p = pitch_curved(L, d.gap, d.least_gap, r, lay.inside)
        v, th = R * p, slope_of(2.0 * r, rise / lay.turns)
        s, qb = lay.turns * pi * 2.0 * r / cos(th), d.belt_mass_per_area * lay.belt
        side = v * v / r
        tiers = 1.0 if name == "spiral" else ceil(lay.turns)
        rub = guide_rate(d.guide_friction, th, r)
        for q in (qb + m / p, qb + m / L):
            back = qb * G if tiers == 1.0 else 0.0
            t = loop(q * G, back, th, d.belt_friction, rub, s / tiers, 2 * d.level_end / tiers, d.take_up_tension)
            out += [t.greatest, motor_power_needed((t.tight - t.slack) * v, d.efficiency)]
        out += [width_in_curve(lay.inside, W, L), friction_needed(th, d.accel_greatest)]
        out += [friction_needed(th, d.accel_greatest, side), tipping_share(th, d.accel_greatest, h, b)]
        out += [tipping_share_lateral(th, side, h, bw), 2.0 * (lay.inside + lay.belt + d.frame_margin)]
    for name in ("incline", "cover_belt", "cleated_incline"):
        d, lay = job.data.families[name], tried[name].layout
        th, runs = lay.slope, float(getattr(lay, "lanes", 1) * getattr(lay, "series", 1))
        p = L + d.gap
        v, s, qb = R * p, rise / sin(th) / runs, d.belt_mass_per_area * 0.4
        for q in (qb + m / p, qb + m / L):
            t = loop(q * G, qb * G, th, d.belt_friction, 0.0, s, 2 * d.level_end / runs, d.take_up_tension)
            out += [t.greatest, motor_power_needed((t.tight - t.slack) * v, d.efficiency)]
        out += [friction_needed(th, d.accel_greatest), tipping_share(th, d.accel_greatest, h, b), rise / tan(th)]
        if name == "cover_belt":
            n = cover_force(d.cover_mass_per_m2 * 0.4 * G, p, th, d.hold_down)
            out += [n / (L * W), cover_needed_ratio(m, th, d.accel_greatest, n, d.cover_drag, d.slip_safety)]
    d = job.data.families["side_grip"]
    p = L + d.gap
    v = R * p
    need = grip_needed(m, one.mu_grip, d.grip_safety, d.accel_greatest, bend_accel(v, d.bend_radius))
    chain, arc, climb = d.chain_mass_per_m * G, d.bend_radius * pi / 2.0, rise - 2.0 * d.bend_radius
    for pitch in (p, L):
        press, share = need / pitch, m / pitch * G / 2.0
        level, up = d.track_friction * (press + chain + share), d.track_friction * press + share + chain
        grow = d.bend_friction / d.bend_radius
        strands = (
            Strand(-chain, 0.0, rise), Strand(level, 0.0, d.level_end), Strand(up, grow, arc), Strand(up, 0.0, climb),
            Strand(up, grow, arc), Strand(level, 0.0, d.level_end),
        )  # fmt: skip
        t = loop_tensions(strands, 5, d.take_up_tension)
        out += [t.greatest, motor_power_needed((t.tight - t.slack) * v, d.efficiency)]
    d, pitch = job.data.families["index_lift"], tried["index_lift"].layout.pitch
    cycle = trapezoid_time(pitch, d.speed_most, d.accel, d.accel) + max(d.load_time, d.push_time_per_m * W)
    aboard = ceil(rise / pitch)
    own = d.chain_mass_per_m * rise + d.carrier_mass * aboard
    out += [60.0 / cycle, (aboard * m + own) * (G + d.accel) + d.take_up_tension]
    out.append(next_bore(bore_needed(d.push_safety * d.push_friction * m * G, one.pair)) or 0.0)
    d, pitch = job.data.families["continuous_lift"], tried["continuous_lift"].layout.pitch
    own = rise * (d.chain_mass_per_m + d.carrier_mass_per_area * L * W / pitch)
    out += [feed_speed_needed(L, R * pitch, pitch - H - d.carrier_clearance)]
    out += [(rise / pitch * m + own) * (G + d.accel_greatest), motor_power_needed(m * R * rise * G, d.efficiency)]
    d = job.data.families["reciprocating_lift"]
    load = d.load_time_fixed + L / d.transfer_speed
    out += [reciprocating_cycle(rise, d.speed_most, d.accel, load, load), (m + d.platform_mass_per_area * L * W) * G]
    return out


def test_an_evaluation_as_a_multiple_of_its_relations_called_flat(job: Job) -> None:
    tried = {name: attempt(family, view(job, TYPICAL), job.data.families[name]) for name, family in ALL.items()}
    assert sum(trial.passes for trial in tried.values()) >= 7  # a job that leaves few families would show little
    layouts = sum(1 + sum((trial.stopped or {}).values()) for trial in tried.values())
    plain, whole = fastest(lambda: flat(job, tried)), fastest(lambda: evaluate(job))
    print(f"\nrelations called flat {plain * 1e6:.0f} us; one evaluation {whole * 1e6:.0f} us: x {whole / plain:.2f}")
    print(f"layouts looked at or passed over on the way: {layouts}")
    assert whole < 10.0 * plain  # a guard against slips of an order of magnitude, not an aim


def test_256_quick_passes_as_a_multiple_of_one_evaluation(job: Job) -> None:
    half = resolve(Spec.from_flat(HALF_WAY), load_range())
    sampler = Sampler(half, 256)
    quick = QuickPass(half, ALL, sampler.view(0))
    views = fastest(lambda: [sampler.view(index) for index in range(256)], 5)
    seen = [sampler.view(index) for index in range(256)]
    passes = fastest(lambda: [quick.leader(one) for one in seen], 7)
    bounds = fastest(lambda: [verdict_of(half, family) for family in ALL.values()], 7)
    whole = fastest(lambda: evaluate(job))
    print(
        f"\n256 quick passes {passes * 1e3:.1f} ms = {passes / whole:.0f} evaluations; drawing them {views * 1e3:.1f}"
    )
    print(f"nine verdicts by bounds, half of the job open: {bounds * 1e3:.2f} ms = {bounds / whole:.1f} evaluations")
    assert passes < 256 * whole  # a quick pass costs less than an evaluation
