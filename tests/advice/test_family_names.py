"""A machine goes by one name: the short one on a narrow screen is the full one with words left out."""

import pytest

from intake.advice import family_name, short_family_name
from intake.sizing import size


@pytest.mark.parametrize("family", list(size({}).families))
def test_the_short_name_is_the_full_one_with_words_left_out(family: str) -> None:
    full = family_name(family).replace("-", " ").split()
    short = short_family_name(family).split()
    assert short
    assert all(any(word.startswith(one) for word in full) for one in short), (short, full)
    assert len(short) <= len(full)
