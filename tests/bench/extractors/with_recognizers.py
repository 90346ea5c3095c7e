"""recognizers-text-suite (MIT), general-purpose: its models of dimensions, temperatures and times."""

from collections.abc import Callable
from typing import Any

from serving import serve

PINT_NAMES = {
    "C": "degC", "F": "degF", "K": "kelvin", "R": "degR", "Degree": "degree", "Pound": "pound", "Ton": "short_ton",
    "Metric ton": "metric_ton", "Long ton (British)": "long_ton", "Short ton (US)": "short_ton",
    "Foot per minute": "foot/minute", "Foot per second": "foot/second", "Mile per hour": "mile/hour",
    "Kilometer per hour": "kilometer/hour", "Meter per second": "meter/second",
    "Kilometer per minute": "kilometer/minute",
    "Inch per second": "inch/second",
}  # fmt: skip
CULTURE = "en-us"


def load() -> Callable[[str], Any]:
    from recognizers_date_time import recognize_datetime
    from recognizers_number_with_unit import recognize_dimension, recognize_temperature

    def extract(text: str) -> list[Any]:
        models = (recognize_dimension, recognize_temperature, recognize_datetime)
        return [one for model in models for one in model(text, CULTURE)]

    return extract


def convert(text: str, found: Any) -> list[dict[str, Any]]:
    from through_pint import in_our_kinds

    out = []
    for one in found:
        if one.type_name in ("dimension", "temperature") and one.resolution and one.resolution.get("value"):
            unit = one.resolution["unit"]
            value = float(one.resolution["value"].replace(",", ""))
            out += in_our_kinds(value, value, PINT_NAMES.get(unit, unit.lower().replace(" ", "_")))
        elif one.type_name.endswith("duration"):
            for way in one.resolution["values"][:1]:
                if str(way.get("value", "")).replace(".", "").isdigit():
                    out.append({"kind": "duration", "low": float(way["value"]), "high": float(way["value"])})
    return out


serve(load, convert)
