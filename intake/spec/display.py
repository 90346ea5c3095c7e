"""How figures and facts are shown to people, in US or SI units. Plain text, never markup."""

from math import floor, isfinite, log10
from typing import Protocol

from intake.spec.clean import one_line
from intake.spec.labels import label
from intake.spec.lengths import show_length, show_length_range
from intake.spec.shown_units import Shown, System, shown_unit
from intake.spec.unit_system import system_of
from intake.spec.vocabulary import field

__all__ = ["Known", "System", "label", "show", "show_range", "show_value", "system_of"]


class Known(Protocol):
    """What `Value` and `Fact` have in common: ends in the canonical unit, or a value."""

    @property
    def low(self) -> float | None: ...
    @property
    def high(self) -> float | None: ...
    @property
    def value(self) -> str | bool | None: ...
    @property
    def hedged(self) -> bool: ...


def show(value: float, unit: str, system: System) -> str:
    """One figure in a canonical unit of the fields, the sizing figures or a formula's inputs.

    A unit that has no US form is shown as it stands. Raises ValueError for a figure that is not finite.

    >>> show(3.81, "m", "us"), show(13.60777, "kg", "us"), show(0.5, "1/min", "si"), show(-18.0, "degC", "us")
    ('12 ft 6 in', '30 lb', '30/h', '-0.4 °F')
    """
    _refuse_unbounded(value)
    if unit == "m":
        return show_length(value, system)
    row = shown_unit(value, unit, system)
    figure = _figure(value, row)
    mark = row.mark[:-1] if row.mark == " weeks" and figure == "1" else row.mark
    return figure + mark


def show_range(low: float | None, high: float | None, unit: str, system: System) -> str:
    """Two ends in one unit: "8 to 14 kg". An open end: "at least 8 kg", "at most 14 kg"; both open: "open".

    Ends that agree, or that look the same once rounded, are one figure.
    """
    if low is None or high is None:
        if low is not None:
            return f"at least {show(low, unit, system)}"
        return "open" if high is None else f"at most {show(high, unit, system)}"
    first, last = show(low, unit, system), show(high, unit, system)
    if first == last:
        return last
    if unit == "m":
        return show_length_range(low, high, system)
    row = shown_unit(max(low, high, key=abs), unit, system)
    return f"{_figure(low, row)} to {_figure(high, row)}{row.mark}"


def show_value(field_id: str, known: Known, system: System) -> str:
    """What is known of one field, as people read it: "8 to 14 kg", "about 45/min", "clean in place", "yes".

    `known`: a `Value` or a `Fact`. Words of a text field come out without control codes. Raises KeyError for a field
    that the vocabulary does not have.
    """
    entry = field(field_id)
    if entry.is_number:
        text = show_range(known.low, known.high, entry.unit, system)
        about = getattr(known, "approx", False) and not text.startswith("at ")
        text = f"about {text}" if about else text
    elif isinstance(known.value, bool):
        text = "yes" if known.value else "no"
    elif entry.kind == "choice":
        text = str(known.value).replace("_", " ")
    else:
        text = one_line(str(known.value or ""))
    return f"{text} (not sure)" if known.hedged else text


def _figure(value: float, row: Shown) -> str:
    """The figure in the row's unit: a round one as it is, any other to three significant digits."""
    figure = value * row.factor + row.offset
    decimals = next((d for d in range(4) if abs(figure - round(figure, d)) <= 1e-9 * max(1.0, abs(figure))), None)
    if decimals is None:
        decimals = row.decimals if row.decimals is not None else max(0, 2 - floor(log10(abs(figure))))
    text = f"{figure:.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def _refuse_unbounded(value: float) -> None:
    if not isfinite(value):
        raise ValueError(f"only finite figures can be shown, got {value!r}")
