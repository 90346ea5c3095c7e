"""A figure with its tolerance: 12 ± 0.5 kg, 300 mm +/- 5, 20 kg give or take 10 %. It is a range of two ends."""

from dataclasses import replace

from intake.reading.amounts.compounds import Amount, amount_at
from intake.reading.amounts.rates import Per, per_at
from intake.reading.text.tokens import Token

_SIGNS = (
    ("±",),
    ("+", "/", "-"),
    ("+", "-"),
    ("plus", "or", "minus"),
    ("plus", "/", "minus"),
    ("plus", "minus"),
    ("give", "or", "take"),
)
_PERCENT = ("%", "percent", "pct")


def tolerance_at(
    tokens: list[Token], first: Amount, after: int, raw: str, per: Per | None
) -> tuple[tuple[Amount, Amount], Per | None, int] | None:
    """The two ends of `first` with the tolerance at token `after`, the rate words, the token behind; None without one.

    The tolerance takes its unit from the figure or gives it one; of another kind, or not below the figure, it is none.
    """
    words = tuple(token.text for token in tokens[after : after + 3])
    sign = next((sign for sign in _SIGNS if words[: len(sign)] == sign), None)
    at = after + len(sign or ())
    margin = amount_at(tokens, at, raw) if sign is not None and at < len(tokens) else None
    if margin is None:
        return None
    end, by, unit = margin.after, margin.value, first.unit or margin.unit
    if margin.unit is None and end < len(tokens) and tokens[end].text in _PERCENT:
        end, by = end + 1, abs(first.value) * margin.value / 100.0
    elif margin.unit is not None:
        if per is not None or (first.unit is not None and first.unit.kind != margin.unit.kind):
            return None
        by *= _step(margin) / _step(first) if first.unit is not None else 1.0
    if unit is None and per is None:
        per = per_at(tokens, end, raw)
        end = per.after if per is not None else end
    warmth = unit is not None and unit.kind == "temperature"
    if by <= 0 or (by >= abs(first.value) and not warmth):
        return None
    low, high = (replace(first, value=first.value + by * way, unit=unit) for way in (-1.0, 1.0))
    return (low, high), per, end


def _step(amount: Amount) -> float:
    """What one more of the amount's unit is in the canonical unit."""
    assert amount.unit is not None
    return amount.unit.worth(1.0) - amount.unit.worth(0.0)
