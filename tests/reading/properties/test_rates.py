"""A rate written in any of the accepted styles reads back to itself per minute."""

from typing import Any

from hypothesis import strategies as st

PER_MINUTE = [
    "{n}/min", "{n} / min", "{n}/ min", "{n}/minute", "{n} per minute", "{n} per min", "{n} per min.", "{n} a minute",
    "{n} a min",
    "{n} each minute", "{n} every minute", "{n} cpm", "{n}cpm", "{n} CPM", "{n} ppm", "{n} bpm",
    "{n} upm", "{n} p/min", "{n}/m", "{n} PER MINUTE", "{n}-per-minute", "({n} per minute)", "We run {n} per minute.",
]  # fmt: skip
NOUNS = [
    "case", "cases", "boxes", "cartons", "pcs", "pieces", "units", "totes", "trays", "bottles", "cans", "bags",
    "pails", "jars",
    "full cases", "taped cartons", "loaded plastic totes", "products", "parts", "packs", "bundles", "ctns", "pc",
]  # fmt: skip
WITH_NOUN = [
    "{n} {noun} per minute", "{n} {noun} a minute", "{n} {noun}/min", "{n} {noun} / min", "{n} {noun} each minute",
    "{n} {noun} every minute", "{n} {noun} per min", "{n} {noun} in a minute",
]  # fmt: skip
OTHER_TIMES = {
    "{n}/h": 1 / 60, "{n}/hr": 1 / 60, "{n}/hour": 1 / 60, "{n} per hour": 1 / 60, "{n} an hour": 1 / 60,
    "{n} a hour": 1 / 60,
    "{n} per hr": 1 / 60, "{n} an hr": 1 / 60, "{n} each hour": 1 / 60, "{n} every hour": 1 / 60, "{n} cph": 1 / 60,
    "{n} pph": 1 / 60, "{n} cases per hour": 1 / 60, "{n} cases/hr": 1 / 60, "{n} cartons an hour": 1 / 60,
    "{n} pcs/h": 1 / 60, "{n} per second": 60, "{n} a second": 60, "{n}/s": 60, "{n}/sec": 60, "{n} per sec": 60,
    "{n} bottles per second": 60, "{n} bottles a second": 60, "{n} every 10 minutes": 0.1,
    "{n} cases every 5 minutes": 0.2,
    "{n} every 2 minutes": 0.5, "{n} cases in 5 minutes": 0.2, "{n} per 8 hour shift": 1 / 480,
    "{n} cases per 8-hour shift": 1 / 480, "{n} every half hour": 1 / 30, "{n} per half hour": 1 / 30,
}  # fmt: skip
ONE_EVERY = [
    "one every {s} seconds", "1 every {s} seconds", "one every {s} s", "1 every {s} sec", "one case every {s} seconds",
    "1 case every {s} seconds", "one box every {s} sec", "one per {s} seconds", "one each {s} seconds", "1 per {s} s",
    "one every {s} secs", "1 carton per {s} seconds", "One every {s} seconds.", "one full case every {s} seconds",
]  # fmt: skip
FIGURES = st.integers(2, 99) | st.integers(100, 999)


def test_a_rate_per_minute_reads_back(for_all: Any, misread: Any) -> None:
    def law(n: int) -> None:
        assert misread((style.format(n=n), "rate", float(n)) for style in PER_MINUTE) == []

    for_all(law, FIGURES, tries=25)


def test_a_rate_reads_back_with_any_noun_between(for_all: Any, misread: Any) -> None:
    def law(n: int) -> None:
        texts = [style.format(n=n, noun=noun) for style in WITH_NOUN for noun in NOUNS]
        assert misread((text, "rate", float(n)) for text in texts) == []

    for_all(law, FIGURES, tries=8)


def test_a_rate_over_any_time_reads_back_per_minute(for_all: Any, misread: Any) -> None:
    def law(n: int) -> None:
        assert misread((style.format(n=n), "rate", n * worth) for style, worth in OTHER_TIMES.items()) == []

    for_all(law, FIGURES, tries=25)


def test_one_every_few_seconds_reads_back(for_all: Any, misread: Any) -> None:
    def law(s: int) -> None:
        assert misread((style.format(s=s), "rate", 60.0 / s) for style in ONE_EVERY) == []

    for_all(law, st.integers(2, 90), tries=25)


def test_decimal_rates_read_back_with_point_and_comma(for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        for typed in (str(figure), str(figure).replace(".", ",")):
            texts = [
                style.format(n=typed) for style in ("{n}/min", "{n} per minute", "{n} a minute", "{n} cases per minute")
            ]
            assert misread((text, "rate", float(figure)) for text in texts) == []

    for_all(law, st.decimals(min_value="0.1", max_value="99.9", places=1), tries=25)


def test_rates_in_words_read_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(n: int) -> None:
        spoken = in_words(n)
        rates = {
            f"{spoken} a minute": n, f"{spoken} per minute": n, f"{spoken} cases per minute": n,
            f"{spoken} an hour": n / 60,
            f"{spoken} cases an hour": n / 60, f"{spoken.capitalize()} boxes a minute.": n,
            f"{spoken} a second": 60 * n,
            f"{spoken.replace('-', ' ')} a minute": n, f"{spoken.replace(' and', '')} per hour": n / 60,
        }  # fmt: skip
        assert misread((text, "rate", float(value)) for text, value in rates.items()) == []

    for_all(law, st.integers(1, 99) | st.integers(100, 9999), tries=30)


def test_usual_turns_of_phrase_for_a_rate_read_back(misread: Any) -> None:
    rates = {
        "one a second": 60.0, "one per second": 60.0, "a dozen a minute": 12.0, "two dozen a minute": 24.0,
        "half a dozen a minute": 6.0,
        "one every second": 60.0, "one a minute": 1.0,
        "one every half minute": 2.0, "one and a half per minute": 1.5, "a hundred an hour": 100 / 60,
    }  # fmt: skip
    assert misread((text, "rate", value) for text, value in rates.items()) == []
