"""How the figures of a layout come about, in words and symbols: what an engineer would otherwise have to ask."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

_HELIX = {"spiral": "helix", "washdown_spiral": "helix"}


@cache
def origins(family: str) -> Mapping[str, str]:
    """By symbol, the origin of a layout's figure as results name it: "layout: R*p"."""
    text = files("intake.sizing").joinpath("layout_symbols.toml").read_text(encoding="utf-8")
    table = tomllib.loads(text)
    own = table.get(_HELIX.get(family, family), {})
    return {symbol: f"layout: {said}" for symbol, said in {**table["every"], **own}.items()}
