"""Three sizes written together read back in their order, whatever stands between them and wherever the unit stands."""

from math import isclose
from typing import Any

from hypothesis import strategies as st

UNITS = {"in": 0.0254, "inches": 0.0254, '"': 0.0254, "mm": 1e-3, "cm": 0.01, "MM": 1e-3, "m": 1.0}
BETWEEN = ["x", " x ", "X", " X ", "×", " × ", " by ", "*", " * ", " x", "x "]
UNIT_PLACED = [
    "{a}{s}{b}{s}{c} {u}", "{a}{s}{b}{s}{c}{u}", "{a} {u}{s}{b} {u}{s}{c} {u}", "{a}{u}{s}{b}{u}{s}{c}{u}",
    "{a}{s}{b}{s}{c} ({u})", "({a}{s}{b}{s}{c} {u})", "{a}{s}{b}{s}{c} {u}.", "size {a}{s}{b}{s}{c} {u}",
    "{a}{s}{b}{s}{c} [{u}]", "size ({u}): {a}{s}{b}{s}{c}", "{a}{s}{b}{s}{c} {u} each",
]  # fmt: skip
LABELLED = [
    "{a} {u} L x {b} {u} W x {c} {u} H", "{a}{u} L x {b}{u} W x {c}{u} H", "{a}L x {b}W x {c}H {u}",
    "{a} L x {b} W x {c} H {u}",
    "L {a} x W {b} x H {c} {u}", "L{a} x W{b} x H{c} {u}", "L={a} W={b} H={c} {u}", "L = {a}, W = {b}, H = {c} {u}",
    "L: {a} {u}, W: {b} {u}, H: {c} {u}", "LxWxH {a}x{b}x{c} {u}", "L {a} {u} W {b} {u} H {c} {u}",
    "L x W x H: {a} x {b} x {c} {u}", "{a} x {b} x {c} {u} L x W x H",
    "{a}x{b}x{c} {u} (LxWxH)", "{a} {u} long x {b} {u} wide x {c} {u} high",
    "{a} long x {b} wide x {c} high {u}", "{a} {u} long, {b} {u} wide, {c} {u} high",
    "{a} {u} long, {b} {u} wide and {c} {u} tall",
    "{a} {u} long by {b} {u} wide by {c} {u} high", "length {a} {u}, width {b} {u}, height {c} {u}",
    "Length: {a} {u}\nWidth: {b} {u}\nHeight: {c} {u}", "length {a}, width {b}, height {c} {u}",
    "{a} {u} (L) x {b} {u} (W) x {c} {u} (H)",
    "{a} (L) x {b} (W) x {c} (H) {u}", "{a} x {b} x {c} {u} (L x W x H)",
    "{a} {u} in length, {b} {u} in width, {c} {u} in height",
    "length = {a} {u}, width = {b} {u}, height = {c} {u}", "length {a} {u}; width {b} {u}; height {c} {u}",
    "{a} {u} lg x {b} {u} wd x {c} {u} ht",
]  # fmt: skip
OTHER_ORDER = [
    "H {c} x W {b} x L {a} {u}", "{c} {u} high, {b} {u} wide, {a} {u} long", "{b} {u} W x {a} {u} L x {c} {u} H",
    "{c}H x {a}L x {b}W {u}", "WxLxH {b}x{a}x{c} {u}", "height {c} {u}, length {a} {u}, width {b} {u}",
]  # fmt: skip
ONE = st.integers(4, 48)


def _figures(unit: str, one: int) -> tuple[str, float]:
    """A side as it is written in the unit, and in metres: 12 in, 120 mm, 12 cm, 0.12 m."""
    typed = str(one * 10) if unit in ("mm", "MM") else f"{one / 100:.2f}" if unit == "m" else str(one)
    return typed, float(typed) * UNITS[unit]


def _is_left_out(style: str, unit: str, between: str) -> bool:
    """Nobody heads a list with an inch mark, or runs a unit that stands apart or in full together with the x behind."""
    if unit == '"':
        return "({u}):" in style
    on_each = style.count("{u}") == 3 and between[:1] in ("x", "X", "×")
    return on_each and (" {u}" in style or len(unit) > 2 or between.endswith(" "))


def _misread(figures_read: Any, styles: list[str], sides: tuple[int, int, int], between: str = "") -> list[str]:
    wrong = []
    for style in styles:
        for unit in UNITS:
            if _is_left_out(style, unit, between):
                continue
            (a, length), (b, width), (c, height) = (_figures(unit, side) for side in sides)
            written = style.replace(" {u}", "{u}") if unit == '"' else style
            text = "cases " + written.format(a=a, b=b, c=c, u=unit, s=between)
            meant = {"product.length": length, "product.width": width, "product.height": height}
            got = figures_read(text)
            if got.keys() != meant.keys() or not all(
                isclose(end or 0.0, meant[name], rel_tol=1e-9) for name, ends in got.items() for end in ends
            ):
                wrong.append(f"{text!r}: {got}")
    return wrong


def test_three_sizes_read_back_with_any_sign_between_and_the_unit_anywhere(for_all: Any, figures_read: Any) -> None:
    def law(a: int, b: int, c: int, between: str) -> None:
        assert _misread(figures_read, UNIT_PLACED, (a, b, c), between) == []

    for_all(law, ONE, ONE, ONE, st.sampled_from(BETWEEN), tries=20)


def test_three_labelled_sizes_read_back(for_all: Any, figures_read: Any) -> None:
    def law(a: int, b: int, c: int) -> None:
        assert _misread(figures_read, LABELLED, (a, b, c)) == []

    for_all(law, ONE, ONE, ONE, tries=8)


def test_labels_and_not_places_say_which_size_is_which(for_all: Any, figures_read: Any) -> None:
    def law(a: int, b: int, c: int) -> None:
        assert _misread(figures_read, OTHER_ORDER, (a, b, c)) == []

    for_all(law, ONE, ONE, ONE, tries=8)


def test_sizes_with_fractions_and_decimals_read_back(for_all: Any, figures_read: Any) -> None:
    def law(a: int, b: int, c: int) -> None:
        texts = {
            f"{a}-1/2 x {b}-1/4 x {c} in": (a + 0.5, b + 0.25, c),
            f"{a} 1/2 x {b} 1/4 x {c} in": (a + 0.5, b + 0.25, c),
            f"{a}½ x {b}¼ x {c}¾ in": (a + 0.5, b + 0.25, c + 0.75), f"{a}.5x{b}.25x{c} in": (a + 0.5, b + 0.25, c),
            f"{a},5 x {b},2 x {c},0 in": (a + 0.5, b + 0.2, c), f"{a}½\" x {b}\" x {c}-3/8\"": (a + 0.5, b, c + 0.375),
            f"{a} 1/2\" x {b} 3/4\" x {c}\"": (a + 0.5, b + 0.75, c),
        }  # fmt: skip
        for text, sides in texts.items():
            got = figures_read(f"cases {text}")
            assert sorted(got) == ["product.height", "product.length", "product.width"], text
            order = ("product.length", "product.width", "product.height")
            for name, inches in zip(order, sides, strict=True):
                assert isclose(got[name][0] or 0.0, inches * 0.0254, rel_tol=1e-9), text

    for_all(law, ONE, ONE, ONE, tries=12)
