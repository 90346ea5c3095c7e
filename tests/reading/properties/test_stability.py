"""The same facts whatever the case, the spaces, the line ends and the small talk around them."""

import re
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import strategies as st

from intake.reading import read

MESSAGES = [
    "Cases 16x12x10 in, 30 lb, 25 a minute, up 12 ft 6 in.",
    "totes 600x400x300 mm, 18 kg, from 0.8 m to 4,2 m, 12 per minute with peaks of 16",
    "We have corrugated boxes, 14 x 10 x 8 in, taped, 19 lb each, going down from the mezzanine at 12'-6\" to 30 in.",
    'Glass jars, 3 1/4" in diameter and 5½" tall, 1.4 lb apiece, 110 per minute, no washdown.',
    "trays 400x300x120mm, 8-14 kg, 900/h, cold room at 4 °C, headroom 3,6 m",
    "Supply is 480 V 3 phase, 60 Hz, 90 psi of air, ceiling 15 ft 8 in, doorway 94 inches high by 70 inches wide",
    "bags of dog food, 40#, 32 x 18 x 6 in, 8 a minute, must be installed in 14 weeks",
    "It runs 16 hours a day, 5 days a week, freezer at minus 18 degrees C, forklifts drive underneath.",
    "cartons between 8 and 14 kg, one every 2 seconds, up 20 feet\nwe turn 90 degrees to the right at the top",
    "length 24 in\nwidth 16 in\nheight 12 in\nweight 35 lb\nrate 20 per minute",
    "max 25 kg, at least 15 a minute, about 3.5 m up; floor space 3 m x 4 m",
    'pails, 12" across and 14.5" tall, 45 lb full, 6/min, lowering about 11 feet, wipe down only',
]
GREETINGS = [
    "Hello there!", "Hi,", "Hi all,", "Good morning!", "Good afternoon,", "Hey,", "Dear Sir or Madam,", "Hello,",
    "Good day,", "Hi team,", "Greetings.",
    "Thanks for the quick reply.", "Hope you are well.", "Thank you for calling back.", "Nice talking to you.",
    "As discussed:", "Here you go:",
    "Sure, here it is:", "OK so", "Sorry for the delay.",
]  # fmt: skip
FAREWELLS = [
    "Thanks!", "Thank you.", "Best regards", "Kind regards,\nJo", "Cheers", "Let me know.",
    "Looking forward to hearing from you.", "Regards, Sam Pell",
    "Bye", "Have a nice day!", "Talk soon.", "Please advise.", "Any thoughts?", "Does that help?",
    "That is all I have.", "Hope this helps.",
    "Many thanks in advance", "Sincerely,\nKim Harrow", "Thx", "What do you think?",
]  # fmt: skip
TYPED: dict[str, Callable[[str], str]] = {
    "capitals": str.upper,
    "small letters": str.lower,
    "doubled spaces": lambda text: text.replace(" ", "  "),
    "spaces around": lambda text: f"  \t {text} \n ",
    "line ends of Windows": lambda text: text.replace("\n", "\r\n"),
    "a line end behind": lambda text: text + "\r\n",
    "hard spaces": lambda text: text.replace(" ", "\u00a0"),
    "typographic quotes": lambda text: re.sub(r"(?<=\d|½)\"", "”", re.sub(r"(?<=\d)'", "’", text)),
    "primes": lambda text: re.sub(r"(?<=\d|½)\"", "″", re.sub(r"(?<=\d)'", "′", text)),
    "long dashes": lambda text: re.sub(r"(?<=\d)-(?=\d)", "–", text),
    "times signs": lambda text: re.sub(r"(?<=[\d ])x(?=[\d ])", "×", text),
    "a full stop behind": lambda text: text.rstrip(".") + ".",
    "brackets around": lambda text: f"({text})",
    "quoted": lambda text: "\n".join(f"> {line}" for line in text.split("\n")),
    "zero-width signs": lambda text: text.replace(" ", " \u200b"),
}
MIXED = sorted(TYPED.keys() - {"brackets around"})
"""A bracket before the sign of a quote is no way to type."""


def meaning(text: str) -> tuple[set[Any], set[str]]:
    """Facts without their words and places, and the fields in doubt."""
    heard = read(text)
    facts = {
        (
            f.field,
            f.size,
            f.low,
            f.high,
            f.value if not isinstance(f.value, str) else f.value.lower(),
            f.approx,
            f.hedged,
            f.spread,
        )
        for f in heard.facts
        if not f.field.startswith("contact.")
    }
    return facts, {doubt.field for doubt in heard.doubts}


@pytest.mark.parametrize("message", MESSAGES, ids=range(len(MESSAGES)))
@pytest.mark.parametrize("way", TYPED)
def test_facts_do_not_hang_on_how_a_message_is_typed(way: str, message: str) -> None:
    facts, doubts = meaning(message)
    assert len(facts) >= 4
    typed_facts, typed_doubts = meaning(TYPED[way](message))
    assert typed_facts ^ facts == set()
    assert typed_doubts == doubts


def test_small_talk_around_a_message_changes_no_fact(for_all: Any) -> None:
    def law(message: str, before: str, behind: str, joined: str) -> None:
        assert meaning(f"{before}{joined}{message}{joined}{behind}")[0] ^ meaning(message)[0] == set()

    drawn = (
        st.sampled_from(MESSAGES),
        st.sampled_from(GREETINGS),
        st.sampled_from(FAREWELLS),
        st.sampled_from([" ", "\n", "\n\n", "\r\n"]),
    )
    for_all(law, *drawn, tries=120)


def test_small_talk_alone_gives_no_fact() -> None:
    assert {text: meaning(text) for text in GREETINGS + FAREWELLS if meaning(text) != (set(), set())} == {}


def test_a_mix_of_ways_to_type_changes_no_fact(for_all: Any) -> None:
    def law(message: str, ways: list[str]) -> None:
        typed = message
        for way in ways:
            typed = TYPED[way](typed)
        assert meaning(typed)[0] ^ meaning(message)[0] == set()

    for_all(
        law,
        st.sampled_from(MESSAGES),
        st.lists(st.sampled_from(MIXED), min_size=2, max_size=4, unique=True),
        tries=80,
    )
