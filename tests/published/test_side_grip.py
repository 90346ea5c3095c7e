"""The side grip, against textbooks."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.grip import grip_needed

G = STANDARD_GRAVITY


def test_a_book_between_two_hands_takes_the_printed_squeeze(as_printed: Callable[..., Any]) -> None:
    # Cutnell and Johnson, Physics, 10th ed., Ch. 4, Problem 99: weight 31 N, mu_s 0.40.
    assert grip_needed(31.0 / G, 0.40, safety=1.0) == as_printed("39", share=0.0)


def test_a_block_held_with_fifty_newtons_a_side_needs_the_printed_friction() -> None:
    # Homework question-and-answer page (secondary), question 36552: 4 kg, g 9.8; printed 0.4, unrounded 0.392.
    assert grip_needed(4.0, 0.392, safety=1.0) == pytest.approx(50.0, rel=1e-3)


@pytest.mark.parametrize(("accel", "printed"), [(1.20, "825"), (0.0, "735")])
def test_a_load_that_speeds_up_weighs_the_printed_force(
    accel: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    # OpenStax UP1 6.1 Ex 6.3: 75.0 kg in a lift. With mu = 0.5 a side carries all that the other pushes.
    assert grip_needed(75.0, 0.5, safety=1.0, accel=accel) == as_printed(printed)
