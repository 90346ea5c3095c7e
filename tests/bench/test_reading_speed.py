"""How fast messages are read, and that time grows with length and not faster: `pytest -m bench -s tests/bench`.

Ratios of processor time in one run. Seconds are printed, and held to nothing: they say more of the machine.
"""

from collections.abc import Callable
from time import process_time
from typing import Any

import pytest

from intake.reading import quantities, read

pytestmark = pytest.mark.bench

MESSAGES = [
    "Hi, we need to take cases up to a mezzanine. 16x12x10 in, 30 lb, 25 a minute, peak 32.",
    "Infeed 30 in, discharge 14 ft 2 in, corrugated, taped. Ceiling 19 ft. Forklifts drive underneath.",
    "totes 600x400x300 mm, 8-14 kg, 900/h, cold room at 4 °C, headroom 3,6 m, no washdown",
    "480 V 3 phase, 60 Hz, about 90 psi of air. We run 16 hours a day, 5 days a week.",
    "not sure about the weight, maybe 12 kg, I will ask",
    "yes",
    'Jars, glass, 3 1/4" across and 5½" tall, one every 2 seconds, in by week 34, budget is $80k.',
    "The quote was PO 44812 of 3/14/2025; call me on (414) 555-0142 between 9 and 11 am.",
]
ODD = {
    "a message again and again": "Cases 16x12x10 in, 30 lb, 25 a minute, from 30 in to 14 ft, no forklifts.\n",
    "one sentence without an end": "cases 16x12x10 in and 30 lb and 25 a minute and then ",
    "digits": "7",
    "digits and points": "1.2.",
    "thousands": "1,234,567,",
    "fractions": "1/2/3-",
    "times signs": "12x",
    "feet and inches": "12'6\" ",
    "inch marks": "\"'",
    "hyphens": "-",
    "brackets": "([{",
    "spaces": " ",
    "line ends": "\n",
    "tabs between figures": "12\t14\t",
    "rows of a table": "| 12 | 14 kg | case |\n",
    "one letter": "a",
    "articles": "a an a half ",
    "number words": "one hundred and twenty thousand and ",
    "ranges": "from 8 to 14 to ",
    "bounds": "at least about no more than ",
    "rates": "per minute per hour 12 per ",
    "units": "kg lb in ft ",
    "denials": "not no never without ",
    "corrections": "sorry I mean no wait actually ",
    "zero-width signs": "\u200b\u200f",
    "accents": "é",
    "emoji": "📦👍",
    "quotes of quotes": "> > > ",
    "full stops": ". . ",
    "letters beyond the table": "\U00010400漢",
}  # fmt: skip
LENGTHS = (20_000, 40_000, 80_000)
STEEPEST = 8.0
"""Four times the text: four times the time, with room for a rough clock. Growth by the square would show as 16."""


def seconds(work: Callable[[], Any], rounds: int = 1) -> float:
    """The least processor time that a piece of work takes."""
    found = []
    for _ in range(rounds):
        begin = process_time()
        work()
        found.append(process_time() - begin)
    return min(found)


def of_length(unit: str, length: int) -> str:
    return (unit * (length // len(unit) + 1))[:length]


def test_messages_read_in_a_second() -> None:
    for message in MESSAGES:
        read(message)
    whole = seconds(lambda: [read(message) for message in MESSAGES], rounds=20)
    figures = seconds(lambda: [quantities(message) for message in MESSAGES], rounds=20)
    signs, count = sum(map(len, MESSAGES)), len(MESSAGES)
    print(
        f"\nread: {count / whole:.0f} messages/s ({signs / count:.0f} signs each), {whole / signs * 1e6:.2f} us a sign"
    )
    print(f"quantities: {count / figures:.0f} messages/s; read takes x {whole / figures:.1f} as long")


@pytest.mark.parametrize("odd", ODD)
@pytest.mark.parametrize("reader", [read, quantities])
def test_time_grows_with_length_and_not_with_its_square(reader: Callable[[str], Any], odd: str) -> None:
    texts = [of_length(ODD[odd], length) for length in LENGTHS]
    short, middle, long = (seconds(lambda text=text: reader(text), rounds=2) for text in texts)  # type: ignore[misc]
    ratios = f"x {middle / short:.2f}, x {long / short:.2f}"
    print(f"\n{reader.__name__:10s} {odd:28s} {long * 1e3:8.1f} ms for {LENGTHS[-1]} signs; {ratios}")
    assert long < STEEPEST * max(short, 0.002)


@pytest.mark.parametrize("odd", ["a message again and again", "times signs", "rows of a table", "emoji"])
def test_a_megabyte_takes_as_long_as_ten_times_a_tenth_of_it(odd: str) -> None:
    tenth = seconds(lambda: read(of_length(ODD[odd], 100_000)))
    whole = seconds(lambda: read(of_length(ODD[odd], 1_000_000)))
    print(f"\nread       {odd:28s} {whole:6.2f} s a megabyte; x {whole / (10 * tenth):.2f} of ten times a tenth of it")
    assert whole < 2.0 * 10 * tenth
