"""JSON Lines in, JSON Lines out: one answer a line, in order, in constant memory, whatever single lines hold."""

import json
from collections.abc import Callable, Mapping
from typing import Any

from intake.cli.input_error import InputError
from intake.cli.streams import print_json, read_lines
from intake.spec import SpecError

Answer = Callable[[Mapping[str, Any]], dict[str, Any]]


def parse(text: str) -> Any:
    """JSON as strict readers take it. Raises ValueError for what is none, too deep or with a figure without end."""
    try:
        return json.loads(text, parse_constant=_no_constant)
    except RecursionError:
        raise ValueError("it is nested too deep") from None


def answer_lines(answer: Answer, expected: str) -> int:
    """Answer every line that is not blank. `expected` shows what a line should look like.

    Returns 0, or 2 when at least one line was answered with an error.
    """
    wrong = 0
    for number, line in enumerate(read_lines(), 1):
        if line is not None and not line.strip():
            continue
        out = _answer_one(answer, line, number, expected)
        wrong += "error" in out
        print_json(out, indent=None)
    return 2 if wrong else 0


def _answer_one(answer: Answer, line: str | None, number: int, expected: str) -> dict[str, Any]:
    """One answer with the id in front; a fault of one line becomes its error and the rest go on."""
    if line is None:
        return _error(None, None, f"line {number} is too long", "Send one job or message a line.")
    try:
        row = parse(line)
    except ValueError as fault:
        return _error(None, None, f"line {number} is not JSON: {fault}", f"Write {expected}.")
    if not isinstance(row, dict):
        return _error(None, None, f"line {number} is not an object", f"Write {expected}.")
    name = row.get("id")
    try:
        return {"id": name} | answer(row)
    except SpecError as fault:
        return _error(name, fault.field, fault.what, fault.mend)
    except InputError as fault:
        return _error(name, None, str(fault), f"Write {expected}.")
    except Exception as fault:
        if type(fault).__name__ in ("TreeError", "RangeError", "FolderError"):
            raise
        what = f"line {number} could not be worked on ({type(fault).__name__})"
        return _error(name, None, what, "Send this line to whoever looks after the program.")


def _error(name: Any, field: str | None, what: str, mend: str) -> dict[str, Any]:
    return {"id": name, "error": {"field": field, "what": what, "mend": mend}}


def _no_constant(word: str) -> float:
    raise ValueError(f"{word} is not a figure")
