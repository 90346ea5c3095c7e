"""Laws: what is rendered in an accepted style reads back; spans cut the exact words; nothing hostile raises."""

import math
import time
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from intake.reading import quantities, read

FEET, INCHES = st.integers(3, 60), st.integers(0, 11)
LETTERS = st.characters(codec="utf-8") | st.sampled_from(
    list("0123456789'\"½x/-–.,:;#°ftinlbkg \n\u202e\u200b\x1b\x00")
)


@given(
    FEET,
    INCHES,
    st.sampled_from(["{f}'{i}\"", "{f}' {i}\"", "{f}'-{i}\"", "{f} ft {i} in", "{f} feet {i} inches", "{f}’{i}”"]),
)
def test_feet_and_inches_read_back(feet: int, inches: int, style: str) -> None:
    found = quantities(style.format(f=feet, i=inches))
    assert len(found) == 1
    assert math.isclose(found[0].low or 0.0, (12 * feet + inches) * 0.0254, rel_tol=1e-9)


@given(
    st.integers(1, 90),
    st.sampled_from([2, 4, 8, 16]),
    st.integers(1, 15),
    st.sampled_from(["{w} {n}/{d} in", '{w}-{n}/{d}"', "{w} {n}/{d} inches"]),
)
def test_mixed_fractions_of_an_inch_read_back(whole: int, below: int, above: int, style: str) -> None:
    part = Fraction(above % below, below)
    if part == 0:
        return
    found = quantities(style.format(w=whole, n=part.numerator, d=part.denominator))
    assert len(found) == 1
    assert math.isclose(found[0].low or 0.0, float(whole + part) * 0.0254, rel_tol=1e-9)


@given(
    st.decimals(min_value="0.1", max_value="999", places=1),
    st.sampled_from(
        [
            ("mm", 1e-3),
            ("cm", 1e-2),
            ("m", 1.0),
            ("in", 0.0254),
            ("kg", 1.0),
            ("lb", 0.45359237),
            ("psi", 6894.757293),
            ("V", 1.0),
        ]
    ),
    st.sampled_from(["{v} {u}", "{v}{u}", "about {v} {u}", "({v} {u})", "it is {v} {u}, I think"]),
    st.booleans(),
)
def test_a_decimal_with_a_unit_reads_back(value: object, unit: tuple[str, float], style: str, comma: bool) -> None:
    typed = str(value).replace(".", ",") if comma else str(value)
    found = [q for q in quantities(style.format(v=typed, u=unit[0])) if q.kind != "number"]
    assert len(found) == 1
    assert math.isclose(found[0].low or 0.0, float(str(value)) * unit[1], rel_tol=1e-6)


@given(
    st.integers(1, 99_000),
    st.sampled_from([("/min", 1), (" a minute", 1), (" per hour", 60), ("/h", 60), (" cases per minute", 1)]),
    st.booleans(),
)
def test_a_rate_reads_back_with_and_without_thousands(count: int, per: tuple[str, int], grouped: bool) -> None:
    found = quantities(f"{count:,}{per[0]}" if grouped else f"{count}{per[0]}")
    assert [q.kind for q in found] == ["rate"]
    assert math.isclose(found[0].low or 0.0, count / per[1], rel_tol=1e-9)


@given(
    st.integers(4, 48),
    st.integers(4, 48),
    st.integers(2, 48),
    st.sampled_from(
        [
            "{a}x{b}x{c} in",
            "{a} x {b} x {c} inches",
            '{a}" x {b}" x {c}"',
            "{a} by {b} by {c} in",
            '{a}" L x {b}" W x {c}" H',
        ]
    ),
)
def test_three_dimensions_read_back_in_order(a: int, b: int, c: int, style: str) -> None:
    heard = read(f"cases {style.format(a=a, b=b, c=c)}")
    got = {fact.field: fact.low for fact in heard.facts if fact.is_number}
    want = {"product.length": a, "product.width": b, "product.height": c}
    assert got.keys() == want.keys()
    assert all(math.isclose(got[name] or 0.0, inches * 0.0254, rel_tol=1e-9) for name, inches in want.items())


@settings(deadline=None)
@given(
    st.text(LETTERS, max_size=120),
    st.sampled_from([None, "rise.height", "rate.normal", "product.weight", "handling.squeeze", "site.before"]),
)
def test_any_text_is_read_without_raising_and_spans_cut_its_words(text: str, asked: str | None) -> None:
    heard = read(text, asked)
    for item in (*heard.facts, *heard.doubts):
        assert item.span is not None
        assert text[item.span[0] : item.span[1]] == item.said
    assert all(piece in text for piece in heard.unread)
    for quantity in quantities(text):
        assert text[quantity.span[0] : quantity.span[1]] == quantity.said
        assert quantity.low is None or math.isfinite(quantity.low)


@settings(deadline=None)
@given(
    st.sampled_from(
        ["cases 16x12x10 in, 30 lb, 25 a minute, up 12 ft 6 in", "totes 600x400x300 mm, 18 kg, from 0.8 m to 4,2 m"]
    ),
    st.sampled_from([str.upper, str.title, str.lower]),
    st.sampled_from(["", "Hello there! ", "Thanks for the quick reply. "]),
)
def test_reading_is_stable_under_case_and_small_talk(text: str, case: object, greeting: str) -> None:
    assert callable(case)
    plain = {(f.field, f.low, f.high, f.value) for f in read(text).facts}
    assert {(f.field, f.low, f.high, f.value) for f in read(greeting + case(text)).facts} == plain


def test_time_grows_linearly_with_length() -> None:
    message = "Cases 16x12x10 in, 30 lb, 25 a minute, from 30 in to 14 ft, no washdown, forklifts underneath.\n"

    def seconds(copies: int) -> float:
        begin = time.perf_counter()
        read(message * copies)
        return time.perf_counter() - begin

    seconds(10)
    short, long = min(seconds(200) for _ in range(2)), seconds(2000)
    assert long < 30 * short
