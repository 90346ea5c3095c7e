"""Priors: every kind of product has all its ranges, so that sampling never meets a hole."""

from collections.abc import Callable

import pytest

Told = Callable[..., list[str]]


@pytest.mark.parametrize(
    ("old", "new", "sentences"),
    [
        (
            "\njar = {",
            "\njra = {",
            [
                '[prior] has no "jar". Copy it from the shipped folder and change the figures.',
                '[prior] has "jra", which sampling does not read. Did you mean "jar"?',
            ],
        ),
        (
            "\njar = { length = [0.05, 0.15]",
            "\njar = { length = [0.15, 0.05]",
            [
                '"length" of the prior of "jar" is a list. '
                "Write two figures above zero that do not fall, like [0.3, 0.6].",
            ],
        ),
        (
            "\njar = { length = [0.05, 0.15], ",
            "\njar = { ",
            ['the prior of "jar" has no "length". Copy it from the shipped folder and change the figures.'],
        ),
        (
            "\nheadroom = [",
            "\nheadrom = [",
            [
                '[prior_space] has no "headroom". Copy it from the shipped folder and change the figures.',
                '[prior_space] has "headrom", which sampling does not read. Did you mean "headroom"?',
            ],
        ),
        (
            "[prior]",
            "[priors]",
            ["[prior] is missing or no table. Give it a range for each of: any and every product type."],
        ),
    ],
)
def test_a_slip_in_the_priors_is_told(told: Told, old: str, new: str, sentences: list[str]) -> None:
    problems = told("assumptions.toml", old=old, new=new)
    assert sorted(problem.split(": ", 1)[1] for problem in problems) == sorted(sentences)
    assert all(problem.startswith("assumptions.toml:") for problem in problems)
