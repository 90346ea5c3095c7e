"""Prices, phone numbers, dates, clock times, percentages and order numbers beside a fact are no facts."""

from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import strategies as st

from intake.reading import quantities

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
FACT = "Cases of 14 kg."
"""What is said beside the stranger: the only figure that counts."""


def _price(n: int) -> list[str]:
    return [
        f"${n:,}", f"$ {n}", f"${n}.50", f"{n:,} dollars", f"USD {n:,}", f"{n:,} USD", f"€{n}",
        f"€ {n:,}".replace(",", "."), f"{n} EUR",
        f"{n} euros", f"£{n:,}", f"{n} bucks", f"${n % 90 + 10}k", f"${n % 90 + 10}K", f"{n},- €", f"US$ {n:,}",
        f"${n:,}.00",
        f"EUR {n:,}", f"GBP {n}", f"CHF {n}", f"$1.{n % 9 + 1} million", f"{n:,} $", f"${n} to ${n + 500}",
        f"${n}-{n + 500}",
    ]  # fmt: skip


def _phone(n: int) -> list[str]:
    tail = f"{n:04}"[-4:]
    return [
        f"(414) 555-{tail}", f"414-555-{tail}", f"414.555.{tail}", f"+1 414 555 {tail}", f"+49 30 555 {tail}",
        f"555-{tail}", f"1-800-555-{tail}",
        f"414 555 {tail}", f"(414)555-{tail}", f"+1 (414) 555-{tail}", f"414/555-{tail}", f"0{tail} 555 {tail}",
        f"+44 20 7946 {tail}",
        f"414-555-{tail} ext. 12", f"414-555-{tail} x12", f"+1-414-555-{tail}",
    ]  # fmt: skip


def _date(n: int) -> list[str]:
    day = date(2024, 1, 1) + timedelta(days=n % 900)
    month = MONTHS[day.month - 1]
    return [
        f"{day.month}/{day.day}/{day.year}", f"{day.day}.{day.month}.{day.year}",
        f"{day.day:02}.{day.month:02}.{day.year}", day.isoformat(),
        f"{month} {day.day}", f"{month} {day.day}, {day.year}", f"{day.day} {month} {day.year}", f"{day.day} {month}",
        f"{month} {day.year}",
        f"{day.month}/{day.day}/{day.year % 100}", f"{month[:3]} {day.day}", f"{month[:3]}. {day.day}",
        f"{day.day}-{month[:3]}-{day.year}",
        f"{day.day}/{day.month:02}/{day.year}", f"{day.day}.{day.month}.", f"{month} of {day.year}",
        f"Q{day.month // 4 + 1} {day.year}",
    ]  # fmt: skip


def _clock(n: int) -> list[str]:
    hour, minute = n % 11 + 1, n % 60
    return [
        f"{hour}:{minute:02}", f"{hour}:{minute:02} pm", f"{hour}:{minute:02}pm", f"{hour} am", f"{hour}am",
        f"{hour} a.m.", f"{hour} o'clock",
        f"{hour + 12}:{minute:02}", f"{hour + 12}:{minute:02} h", f"{hour}.30 pm", f"{hour} PM",
        f"{hour}:{minute:02} p.m.", f"{hour} o’clock",
        f"half past {hour}", f"quarter to {hour}", f"{hour}:{minute:02} to {hour}:59", f"{hour}-{hour + 1} pm",
    ]  # fmt: skip


def _percent(n: int) -> list[str]:
    share = n % 99 + 1
    return [
        f"{share}%", f"{share} %", f"{share} percent", f"{share}.5%", f"{share},5 %", f"{share} per cent",
        f"{share} pct", f"{share}-{share + 5}%",
        f"{share} to {share + 5} %", f"{share} percentage points", f"about {share}%",
    ]  # fmt: skip


def _order(n: int) -> list[str]:
    return [
        f"PO {n}", f"PO#{n}", f"PO #{n}", f"PO number {n}", f"order no. {n}", f"order {n}", f"quote #{n}",
        f"RFQ 2025-{n}", f"ref. {n}", f"ref: {n}",
        f"part number {n}", f"P/N {n}", f"drawing {n}-B", f"job {n}", f"ticket #{n}", f"invoice {n}", f"item {n}",
        f"SKU {n}", f"model X{n}",
        f"serial no. {n}", f"QT-{n}", f"#{n}", f"rev {n % 9}", f"line {n % 30}", f"building {n % 30}",
        f"dock {n % 30}", f"No. {n}", f"case ID {n}",
    ]  # fmt: skip


STRANGERS = {
    "price": (_price, ["It was {x} last time.", "Our budget is {x}.", "We paid {x} for the old one."]),
    "phone": (_phone, ["Call me on {x}.", "My number is {x}", "Tel. {x}."]),
    "date": (_date, ["We spoke on {x}.", "The show was on {x}.", "See my mail of {x}."]),
    "clock": (_clock, ["Call me at {x}.", "I am in until {x}.", "Can we talk at {x}?"]),
    "percent": (_percent, ["Sales are up {x}.", "We need a discount of {x}.", "That is {x} of our business."]),
    "order": (_order, ["See {x}.", "It is about {x}.", "Our reference is {x}."]),
}


@pytest.mark.parametrize("stranger", STRANGERS)
def test_a_stranger_beside_a_fact_adds_no_figure_to_the_facts(stranger: str, for_all: Any, figures_read: Any) -> None:
    written, sentences = STRANGERS[stranger]
    alone = figures_read(FACT)
    assert alone == {"product.weight": (14.0, 14.0)}

    def law(number: int) -> None:
        texts = [sentence.format(x=x) for x in written(number) for sentence in sentences]
        wrong = [
            text for text in texts for whole in (f"{FACT} {text}", f"{text} {FACT}") if figures_read(whole) != alone
        ]
        assert wrong == []

    for_all(law, st.integers(1000, 9999), tries=5)


@pytest.mark.parametrize("stranger", STRANGERS)
def test_a_stranger_is_no_quantity(stranger: str, for_all: Any) -> None:
    written, sentences = STRANGERS[stranger]

    def law(number: int) -> None:
        texts = [sentence.format(x=x) for x in written(number) for sentence in sentences]
        wrong = [(text, q.kind, q.said) for text in texts for q in quantities(text) if q.kind != "number"]
        assert wrong == []

    for_all(law, st.integers(1000, 9999), tries=5)
