"""Text from outside loses what a terminal would obey and keeps its words."""

import random

import pytest

from intake.spec.clean import clean, one_line


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        ("12\x1b[31m in", "12 in"),
        ("\x1b]52;c;cm0gLXJm\x07 30 lb", " 30 lb"),
        ("\x9b2J8 kg", "8 kg"),
        ("wide\x1b 16 in", "wide 16 in"),
        ("a\r\nb\rc", "a\nb\nc"),
        ("pay\u202e05", "pay05"),
        ("\udc80 12 ft", " 12 ft"),
        ("[/] [red]16[/red]", "[/] [red]16[/red]"),
        ("a\x1b]52;c;aGk=\x07b", "ab"),
        ("left\u202eright", "leftright"),
        ("nul\x00 and \x9b1m", "nul and "),
        ("e\u0301", "é"),
        ("open \x1b", "open "),
    ],
)
def test_control_codes_go_and_words_stay(raw: str, words: str) -> None:
    assert clean(raw) == words


def test_nothing_that_a_terminal_obeys_survives_random_text() -> None:
    draw = random.Random(20)
    signs = "\x1b[]\x9b\x9d\x07;0m\\P^_ab 12\u200b\u202e\n\t"
    for _ in range(3000):
        left = clean("".join(draw.choice(signs) for _ in range(30)))
        assert not any((ord(c) < 32 and c not in "\n\t") or 127 <= ord(c) <= 159 for c in left)


def test_a_single_line_has_no_breaks() -> None:
    assert one_line("two\nlines\tand\x1b[1m more ") == "two lines and more"
