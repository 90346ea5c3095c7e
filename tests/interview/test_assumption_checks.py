"""Assumptions and needless facts: a basis everywhere, figures in order, names that exist."""

from collections.abc import Callable

import pytest

Told = Callable[..., list[str]]

SOUND = """\
[[assumption]]
id = "extra"
field = "rate.peak"
of = "rate.normal"
low = 1.0
typical = 1.3
high = 1.6
possible = [1.0, 9.0]
basis = "common practice, no source"

"""


def test_one_more_sound_assumption_changes_nothing(told: Told) -> None:
    assert told("assumptions.toml", SOUND) == []


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            'basis = "common practice, no source"\n',
            "",
            'assumptions.toml:2: assumption "extra" has no basis. '
            'Add basis = "common practice, no source", or the source.',
        ),
        (
            '"rate.peak"',
            '"rate.paek"',
            'assumptions.toml:3: assumption "extra" names "rate.paek", which fields.toml does not have. '
            'Did you mean "rate.peak"?',
        ),
        (
            'of = "rate.normal"',
            'when = { "product.type" = ["crete"] }',
            'assumptions.toml:4: assumption "extra" waits for "product.type" to be "crete", which is not one of its '
            'choices. Did you mean "crate"?',
        ),
        (
            "low = 1.0",
            "low = 1.5",
            'assumptions.toml:2: the figures of assumption "extra" are out of order (1, 1.5, 1.3, 1.6, 9). '
            "They rise from possible[0] over low, typical and high to possible[1].",
        ),
        (
            "low = 1.0",
            'low = "one"',
            'assumptions.toml:5: low of assumption "extra" is "one". Write a plain number.',
        ),
        (
            "typical = 1.3\n",
            "",
            'assumptions.toml:2: assumption "extra" has no typical. Add typical = a plain number.',
        ),
        (
            "typical = 1.3",
            'test = "test.slip"\ntypical = 1.3',
            'assumptions.toml:6: assumption "extra" names "test.slip", which fields.toml does not have. '
            'Did you mean "test.grip_slip"?',
        ),
        (
            "typical = 1.3",
            "typicl = 1.3",
            'assumptions.toml:6: assumption "extra" has "typicl", which it cannot have. Did you mean "typical"?',
        ),
        (
            'field = "rate.peak"\n',
            "",
            'assumptions.toml:2: assumption "extra" must be about either a field or a friction. Keep one of the two.',
        ),
        (
            'id = "extra"',
            'id = "runs_full"',
            'there is an assumption "runs_full" already. Give this one another id.',
        ),
    ],
)
def test_a_slip_in_an_assumption_is_told(told: Told, old: str, new: str, sentence: str) -> None:
    assert old in SOUND
    problems = told("assumptions.toml", SOUND.replace(old, new))
    assert any(problem == sentence or problem.endswith(f": {sentence}") for problem in problems)


def test_a_value_that_is_no_choice_of_its_field_is_told(told: Told) -> None:
    text = '[[assumption]]\nid = "extra"\nfield = "product.fill"\nvalues = ["ful"]\nbasis = "demo value"\n\n'
    assert (
        'assumptions.toml:2: assumption "extra" has the value "ful", which its field cannot have. '
        'Did you mean "full"?' in told("assumptions.toml", text)
    )


@pytest.mark.parametrize(
    ("entry", "sentence"),
    [
        (
            '"rate.paek" = 0.1',
            'there is an approximate share for "rate.paek", which is neither a field, a unit nor other. '
            'Did you mean "rate.peak"?',
        ),
        (
            '"rise.height" = 1.5',
            'the approximate share of "rise.height" is 1.5. Write a share above 0 and below 1, like 0.1.',
        ),
        (
            '"rise.height" = "5 %"',
            'the approximate share of "rise.height" is "5 %". Write a share above 0 and below 1, like 0.1.',
        ),
    ],
)
def test_an_approximate_share_that_cannot_be_is_told_on_its_line(told: Told, entry: str, sentence: str) -> None:
    problems = told("assumptions.toml", old="[approx]\n", new=f"[approx]\n{entry}\n")
    assert [problem.split(": ", 1)[1] for problem in problems] == [sentence]
    assert problems[0].split(": ")[0].startswith("assumptions.toml:")


def test_a_missing_share_for_everything_else_is_told(told: Told) -> None:
    problems = told("assumptions.toml", old="\nother = ", new='\n"rise.height" = ')
    assert [problem.split(": ", 1)[1] for problem in problems] == [
        "there is no [approx] table with a share for other. Add [approx] with other = 0.1."
    ]


def test_a_needless_row_on_a_field_that_does_not_exist_is_told(told: Told) -> None:
    row = '[[needless]]\nfield = "site.air_presure"\nis = { "site.air" = ["no"] }\nwhy = "there is none"\n\n'
    assert told("needless.toml", row) == [
        'needless.toml:2: row 1 names "site.air_presure", which fields.toml does not have. '
        'Did you mean "site.air_pressure"?',
        'needless.toml:3: row 1 waits for "site.air" to be "no", which is not one of its choices. '
        "Accepted: true, false.",
    ]


def test_a_needless_row_without_a_reason_is_told(told: Told) -> None:
    row = '[[needless]]\nfield = "site.air_pressure"\nis = { "site.air" = [false] }\n\n'
    assert told("needless.toml", row)[0].startswith("needless.toml:1: needless number 1 has no why. Add why = ")


def test_a_friction_that_only_holds_under_conditions_is_told(told: Told) -> None:
    problems = told(
        "assumptions.toml",
        old='id = "grip_friction_dry"\nfriction = "grip"',
        new='id = "grip_friction_dry"\nfriction = "grip"\nwhen = { "product.wet" = [false] }',
    )
    assert problems == [
        'assumptions.toml: friction "grip" has no assumption without conditions. '
        "Add one below the others, wide enough for all of them."
    ]
