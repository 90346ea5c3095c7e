"""Names of fields for people, from `labels.toml`."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType


@cache
def labels() -> Mapping[str, str]:
    """Label by field id, one for each field of the vocabulary."""
    text = files("intake.spec").joinpath("labels.toml").read_text(encoding="utf-8")
    branches = tomllib.loads(text).items()
    return MappingProxyType({f"{branch}.{name}": said for branch, table in branches for name, said in table.items()})


def fields_named(words: str) -> list[str]:
    """The fields that words may name: by id, by the part behind the dot, by label, else by words of the label.

    >>> fields_named("weight of one product"), fields_named("peak rate")
    (['product.weight'], ['rate.peak'])
    """
    said = " ".join(words.casefold().replace("_", " ").split())
    if not said:
        return []
    names = {id: (id.replace("_", " "), id.split(".")[1].replace("_", " "), text) for id, text in labels().items()}
    for place in range(3):
        found = [id for id, ways in names.items() if ways[place] == said]
        if found:
            return found
    wanted = set(said.split())
    return [id for id, ways in names.items() if wanted <= set(" ".join(ways).replace(".", " ").split())]


def label(field_id: str, size: int = 1) -> str:
    """What people call a field: "peak rate"; further sizes say so: "product length, size 2".

    A sizing figure (an id without a dot) is called by its own words. Raises KeyError for a field that is not in the
    vocabulary.

    >>> label("rate.peak"), label("product.length", 2), label("belt_speed")
    ('peak rate', 'product length, size 2', 'belt speed')
    """
    said = labels()[field_id] if "." in field_id else field_id.replace("_", " ")
    return said if size == 1 else f"{said}, size {size}"
