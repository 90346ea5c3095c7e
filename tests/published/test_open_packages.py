"""Packages of open data, against what is assumed of packages, and through the core.

Two sources, by their published figures only; no data file is part of this repository:
- Elhedhli, Gzara and Yildiz, Three-Dimensional Bin Packing and Mixed-Case Palletization, INFORMS Journal on
  Optimization, 2019: how 166 407 cases of a grocery trade are shaped. Second hand: the figures stand in the open
  slides and code of a university project that rebuilt that data (github Wadaboa/3d-bpp).
- A Brazilian e-commerce public dataset, table of products: 32 951 parcels. Medians and extremes were read off an open
  copy (github datacamp/Market-Basket-Analysis-in-python-live-training, data/olist_products_dataset.csv).
"""

from functools import cache
from math import cos, exp, hypot, radians, sin
from typing import Any

import numpy as np
import pytest
from scipy.stats import lognorm, norm

from intake import size
from intake.sizing import load_range
from intake.spec.flat import SpecError

DEPTH_OVER_WIDTH = norm(0.695, 0.118)
HEIGHT_OVER_WIDTH = lognorm(s=0.453, scale=exp(-0.654))
LITRES = lognorm(s=0.705, scale=exp(2.568))
CLASSES = [  # volume from, to [dm3], how many cases
    (2.72, 12.04, 72037), (12.05, 20.23, 55436), (20.28, 32.42, 26254), (32.44, 54.08, 9304), (54.31, 100.21, 3376),
]  # fmt: skip
G = 9.80665  # m/s2, standard gravity: NIST SP 811, Appendix B


@cache
def cases(count: int) -> Any:
    """Length, width, height [m] of so many cases, drawn from the published shares with a fixed seed."""
    rng = np.random.default_rng(20190101)
    litres = LITRES.rvs(count, random_state=rng)
    depth = np.clip(DEPTH_OVER_WIDTH.rvs(count, random_state=rng), 0.35, 1.0)
    height = HEIGHT_OVER_WIDTH.rvs(count, random_state=rng)
    longest = (litres / 1e3 / (depth * height)) ** (1 / 3)
    return np.column_stack([longest, longest * depth, longest * height])


def test_the_published_classes_and_the_published_curve_are_the_same_cases() -> None:
    # Guards the figures above against a slip of the pen: two forms of one thing.
    total = sum(count for _, _, count in CLASSES)
    assert total == 166_407
    below = 0
    for _, end, count in CLASSES[:-1]:
        below += count
        assert LITRES.cdf(end) == pytest.approx(below / total, abs=0.04)


@pytest.mark.parametrize(
    ("name", "published"), [("width", DEPTH_OVER_WIDTH), ("height", HEIGHT_OVER_WIDTH)], ids=["width", "height"]
)
def test_what_is_usual_for_a_case_holds_most_published_cases(name: str, published: Any) -> None:
    low, high = load_range().priors["case"][name]
    assert low < published.median() < high
    assert published.cdf(high) - published.cdf(low) > 0.5


def test_the_usual_length_of_a_case_holds_most_published_cases() -> None:
    low, high = load_range().priors["case"]["length"]
    longest = cases(20_000)[:, 0]
    assert low < float(np.median(longest)) < high
    assert float(((longest > low) & (longest < high)).mean()) > 0.5


def test_what_is_usual_for_a_carton_holds_the_median_parcel() -> None:
    # Medians: 25 cm long, 20 cm wide, 13 cm high, 700 g.
    usual = load_range().priors["carton"]
    for name, value in [
        ("length", 0.25),
        ("width", 20 / 25),
        ("height", 13 / 25),
        ("density", 0.7 / (0.25 * 0.20 * 0.13)),
    ]:
        low, high = usual[name]
        assert low <= value <= high, name


def test_the_parcel_that_weighs_nothing_is_refused_by_name() -> None:
    # The dataset holds parcels of 0 g: bad data, to be caught and not to be sized.
    parcel = {"product.type": "carton", "product.length": 0.25, "product.width": 0.20, "product.height": 0.13}
    with pytest.raises(SpecError, match=r"product\.weight"):
        size(parcel | {"product.weight": 0.0})


def test_the_heaviest_parcel_is_too_much_for_the_light_builds(job: dict[str, Any]) -> None:
    # 40.425 kg: beyond what the range lets a light spiral, a grip or a cleated belt carry.
    found = size(job | {"product.type": "carton", "product.weight": 40.425})
    for name, limits in load_range().families.items():
        weight = found.families[name].check("weight")
        assert weight is not None
        assert (weight.passes is False) == (limits.weight_most < 40.425), name
    assert found.families["spiral"].verdict == "out"


@pytest.mark.parametrize("index", range(40))
def test_no_published_case_is_sent_where_a_textbook_says_that_it_slides_tips_or_hangs_over(
    index: int, job: dict[str, Any]
) -> None:
    # mu = tan(slope): OpenStax UP1 6.2; the plumb line inside the base: 12.1; the outer corner: Pythagoras. The
    # density is our own. Friction is the lowest that is assumed for board.
    length, width, height = (float(round(x, 3)) for x in cases(40)[index])
    sized = {"product.length": length, "product.width": width, "product.height": height}
    turned_flat_never = {"handling.turn_flat": False, "handling.press_top": False}
    found = size(job | sized | turned_flat_never | {"product.weight": round(350.0 * length * width * height, 3)})
    lowest = next(rule.low for rule in load_range().rules if rule.id == "belt_friction_board")
    for name in ("spiral", "washdown_spiral", "incline"):
        family = found.families[name]
        if family.verdict != "fits":
            continue
        figures = {key: one.value for key, one in family.figures.items()}
        slope = radians(figures["slope"] or 0.0)
        assert sin(slope) < lowest * cos(slope), name
        assert sin(slope) * height / 2 < cos(slope) * length / 2, name
        if "path_diameter" in figures:
            inside = (figures["path_diameter"] or 0.0) / 2 - (figures["belt_width"] or 0.0) / 2
            assert hypot(inside + width, length / 2) < inside + (figures["belt_width"] or 0.0), name


def test_the_published_cases_are_not_all_alike_to_the_core(job: dict[str, Any]) -> None:
    # Else the test above could pass with nothing that fits, or nothing that does not.
    verdicts = set()
    for length, width, height in cases(40)[:12]:
        sized = {"product.length": length, "product.width": width, "product.height": height}
        weight = round(350.0 * length * width * height, 3)
        found = size(job | sized | {"product.weight": weight, "handling.turn_flat": False})
        verdicts.add(found.families["spiral"].verdict)
    assert {"fits", "out"} <= verdicts
