"""Colours that can be read on every ground of the desk, in whatever theme: worked out from the theme's own."""

from collections.abc import Mapping

from textual.color import BLACK, WHITE, Color

_INKS = {"ink-fact": "success", "ink-doubt": "warning", "ink-ask": "accent"}
_GROUNDS = ("background", "surface", "panel")

_ENOUGH = 4.8
"""Contrast to every ground: WCAG 2.2 (success criterion 1.4.3) wants 4.5; fields in use tint their ground a little."""

_STEPS = 20


def inks(theme: Mapping[str, str]) -> dict[str, str]:
    """`$ink-fact`, `$ink-doubt`, `$ink-ask` from a theme's variables. A terminal's own colours stay as they are."""
    named = {ink: theme[name] for ink, name in _INKS.items()}
    if any(not value.startswith("#") for value in (*named.values(), *(theme[name] for name in _GROUNDS))):
        return named
    grounds = [Color.parse(theme[name]) for name in _GROUNDS]
    return {ink: _readable(Color.parse(value), grounds).hex6 for ink, value in named.items()}


def _readable(colour: Color, grounds: list[Color]) -> Color:
    """The colour, taken towards black or white until it stands out from all grounds."""
    away = max((BLACK, WHITE), key=lambda end: _least(end, grounds))
    steps = (colour.blend(away, step / _STEPS) for step in range(_STEPS + 1))
    return next((mixed for mixed in steps if _least(mixed, grounds) >= _ENOUGH), away)


def _least(ink: Color, grounds: list[Color]) -> float:
    return min(contrast(ink, ground) for ground in grounds)


def contrast(ink: Color, ground: Color) -> float:
    """Contrast ratio of WCAG 2.2, from 1 to 21."""
    light, dark = sorted((_luminance(ink), _luminance(ground)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: Color) -> float:
    red, green, blue = (_linear(part / 255) for part in colour.rgb)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else float(((part + 0.055) / 1.055) ** 2.4)
