"""What the three lifts share: headings, cages on the floor, chains with guides."""

from intake.sizing.check_row import Row
from intake.sizing.job import Num, View
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import set_envelope

RIGHT_ANGLES = frozenset({0.0, 90.0, 180.0, 270.0})
LIGHT_WASH = ("dry", "wipe", "low_pressure")


def cage(view: View, d: Limits) -> None:
    """Write the floor of a lift: the product and what stands beside it, and what goes in one piece."""
    length = (
        view.most("L") + d.floor_beside_length,
        view.most_low("L") + d.floor_beside_length,
    )
    width = (
        view.most("W") + d.floor_beside_width,
        view.most_low("W") + d.floor_beside_width,
    )
    for hi, lo in view.sizes:
        set_envelope(hi, lo, d, length, width)


def size_rows(*, height: bool = False) -> tuple[Row, ...]:
    """The largest product that the carrier or platform takes."""
    rows = [
        Row(
            id="length", limit="length_most",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.L, d.length_most), formula="L",
            reads=("L",), source="range data", each_size=True,
        ),
        Row(
            id="width", limit="width_most",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.W, d.width_most), formula="W",
            reads=("W",), source="range data", each_size=True,
        ),
    ]  # fmt: skip
    if height:
        rows.append(
            Row(
                id="height", limit="height_most",
                sense="at_most", unit="m", body=lambda hi, lo, d: (hi.H, d.height_most), formula="H",
                reads=("H",), source="range data", each_size=True,
            )
        )  # fmt: skip
    return tuple(rows)


def both(hi: Num, lo: Num) -> tuple[Num, ...]:
    """The corners to write into, each once."""
    return (hi, lo) if lo is not hi else (hi,)
