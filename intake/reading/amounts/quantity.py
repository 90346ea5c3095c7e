"""Every quantity in a text, whatever field it may belong to."""

from dataclasses import dataclass, replace
from typing import Any

from intake.reading.amounts.figures import Figure, figures_of
from intake.reading.amounts.units import CANONICAL
from intake.reading.text.fold import Folded, fold, squeezed
from intake.reading.text.portions import portions
from intake.reading.text.tokens import Token, tokens_of

_CONTAINER_WORDS = frozenset({"pack", "packs", "pk", "count", "ct", "pc"})


@dataclass(frozen=True, slots=True)
class Quantity:
    """Low and high in the canonical `unit` of `kind` (None: that end is open), the words and their place."""

    low: float | None
    high: float | None
    unit: str
    kind: str
    said: str
    span: tuple[int, int]

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {
            "low": self.low,
            "high": self.high,
            "unit": self.unit,
            "kind": self.kind,
            "said": self.said,
            "span": list(self.span),
        }


def quantities(text: str) -> list[Quantity]:
    """All quantities in the order of the text. Never raises on what somebody typed.

    >>> [(q.low, q.kind, q.said) for q in quantities("12'6\\" at 40 cases a minute")]
    [(3.81, 'length', '12\\'6"'), (40.0, 'rate', '40 cases a minute')]
    """
    found: list[Quantity] = []
    for offset, piece in portions(text):
        folded = squeezed(fold(piece))
        tokens = tokens_of(folded)
        for figure in figures_of(tokens, folded):
            quantity = _quantity(figure, tokens, folded)
            if quantity is not None:
                moved = (quantity.span[0] + offset, quantity.span[1] + offset)
                found.append(replace(quantity, span=moved) if offset else quantity)
    return found


def _quantity(figure: Figure, tokens: list[Token], folded: Folded) -> Quantity | None:
    kind = "angle" if figure.kind == "degrees" else figure.kind
    if kind not in CANONICAL or (figure.per is not None and figure.per.each == "shift" and not figure.per.hours):
        return None
    begin, end = tokens[figure.begin].start, tokens[figure.end - 1].end
    return Quantity(
        _tidy(figure.low), _tidy(figure.high), CANONICAL[kind], kind, folded.said(begin, end), folded.span(begin, end)
    )


def _tidy(value: float | None) -> float | None:
    """Twelve digits: what conversions add beyond is noise."""
    return None if value is None else float(f"{value:.12g}")
