"""Text from outside made safe."""

import pytest

from intake.reading.clean import clean


@pytest.mark.parametrize(
    ("dirty", "safe"),
    [
        ("12 in\x1b[31m wide", "12 in wide"),
        ("a\x1b]52;c;aGk=\x07b", "ab"),
        ("left\u202eright", "leftright"),
        ("one\r\ntwo\rthree", "one\ntwo\nthree"),
        ("nul\x00 and \x9b1m", "nul and "),
        ("e\u0301", "é"),
        ("plain [b]12[/b] ft", "plain [b]12[/b] ft"),
        ("open \x1b", "open "),
    ],
)
def test_codes_go_and_words_stay(dirty: str, safe: str) -> None:
    assert clean(dirty) == safe


def test_a_long_text_is_cut() -> None:
    assert len(clean("a" * 50_000)) == 20_000
