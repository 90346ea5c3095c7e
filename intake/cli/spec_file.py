"""Where a flat spec comes from: a JSON or TOML file, a hand-off's spec.json, standard input or a kept case."""

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from intake.cli.input_error import InputError
from intake.cli.lines import parse
from intake.cli.streams import read_all
from intake.spec import Spec

EXAMPLE = '{"product.length": 0.4, "rate.peak": [40, 45]}'


def load(name: str) -> Spec:
    """The spec of that file or kept case; "-" is standard input.

    Raises InputError for what cannot be read, SpecError for an entry that cannot be taken.
    """
    if name == "-":
        return Spec.from_flat(_flat("standard input", _json("standard input", read_all())))
    path = Path(name)
    if path.is_dir() and (path / "spec.json").is_file():
        path = path / "spec.json"
    if not path.is_file():
        return _kept(name)
    text = _text(path)
    data = _toml(name, text) if path.suffix.lower() == ".toml" else _json(name, text)
    return Spec.from_flat(_flat(name, data))


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise InputError(f"{path}: not UTF-8 text. Save it as UTF-8 and try again.") from None


def _json(name: str, text: str) -> Any:
    try:
        return parse(text)
    except ValueError as fault:
        raise InputError(f"{name}: not JSON: {fault}. A flat spec looks like {EXAMPLE}") from None


def _toml(name: str, text: str) -> Any:
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as fault:
        raise InputError(f'{name}: not TOML: {fault}. A line looks like "product.length" = 0.4') from None


def _flat(name: str, data: Any) -> Mapping[str, Any]:
    """The flat spec inside: the whole object, or the `spec` of a hand-off or of a job with an id."""
    if not isinstance(data, Mapping):
        raise InputError(f"{name}: not a spec, which is an object with named values. It looks like {EXAMPLE}")
    inner = data.get("spec")
    return inner if isinstance(inner, Mapping) else data


def _kept(name: str) -> Spec:
    """The spec of a kept case."""
    from intake.desk.keeping import resume

    talk = resume(name)
    if talk is None:
        raise InputError(f"{name}: no such file, and no case is kept under that name. List them with: intake cases")
    return Spec.from_flat(talk.spec())
