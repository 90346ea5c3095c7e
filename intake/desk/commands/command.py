"""What a command is, and slips that several of them tell."""

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass, replace

from intake.desk.effect import Effect, Slip
from intake.desk.work import Work
from intake.spec.clean import one_line
from intake.spec.labels import fields_named, label
from intake.spec.vocabulary import nearest, vocabulary

_MOST_DIGITS = 6
_LONGEST_NAME = 12
"""So many words at most name a fact."""
_SIZE = re.compile(r"([\w.]+)@(\d{1,3})(?!\d)(.*)", re.DOTALL)
_EXAMPLES = {"m": "300 mm", "kg": "12 kg", "1/min": "25/min", "degC": "20 C", "deg": "22 deg", "N": "90 N"}

Run = Callable[[Work, str], Effect]


@dataclass(frozen=True, slots=True)
class Command:
    """One word behind the slash. `takes`: what is typed behind it, "" for nothing. `group`: its head on the help page.

    `looks`: it changes nothing of the case, so no question follows it. `beside`: it keeps something beside the talk (a
    promise, a note), so that plain lines need not put the same question once more.
    """

    word: str
    takes: str
    does: str
    run: Run
    looks: bool = False
    group: str = ""
    beside: bool = False

    @property
    def usage(self) -> str:
        """How it is typed."""
        return f"/{self.word} {self.takes}".rstrip()


def under(group: str, *commands: Command, beside: bool = False) -> tuple[Command, ...]:
    """The commands under one head; `beside`: all of them keep something beside the talk."""
    return tuple(replace(one, group=group, beside=one.beside or beside) for one in commands)


def needs(rest: str, what: str) -> str:
    """What was typed behind a command. Raises Slip when that is nothing; `what` says what belongs there."""
    said = rest.strip()
    if not said:
        raise Slip(f"Write {what}")
    return said


def number_in(words: str) -> int | None:
    """A whole number typed by itself, None for anything else."""
    said = words.strip()
    return int(said) if said.isdecimal() and len(said) <= _MOST_DIGITS else None


def field_of(words: str, among: Collection[str] = ()) -> str:
    """The one field that words name; of several, the one in `among`. Raises Slip with the nearest ones."""
    found = fields_named(words)
    found = [name for name in found if name in among] or found
    if len(found) == 1:
        return found[0]
    said = one_line(words, 40)
    if found:
        names = ", ".join(f"{label(name)} ({name})" for name in found[:6])
        raise Slip(f'"{said}" may be several facts: {names}. Give one of the names in brackets.')
    close = nearest(words.casefold().strip().replace(" ", "_"))
    hint = f" Did you mean {close}?" if close else ""
    raise Slip(f'There is no fact "{said}".{hint} /facts lists those that stand; their names work here.')


def field_and_value(rest: str, example: str) -> tuple[str, str]:
    """ "product.weight 40 lb", "peak rate: 45/min" or "weight = 40 lb": the field and the words behind it."""
    said = needs(rest, f"the fact and its value behind it: {example}")
    words = said.split()
    if words[0].rstrip(":=") in vocabulary():
        field, tail = words[0].rstrip(":="), said[len(words[0]) :].strip(" :=")
        return field, needs(tail, f"a value behind {field}: {example}")
    for mark in (":", "="):
        head, found, tail = said.partition(mark)
        if found and fields_named(head):
            return field_of(head), needs(tail, f"a value behind the {mark}: {example}")
    for count in range(min(len(words) - 1, _LONGEST_NAME), 0, -1):
        if len(fields_named(" ".join(words[:count]))) == 1:
            return field_of(" ".join(words[:count])), " ".join(words[count:])
    for count in range(min(len(words), _LONGEST_NAME), 0, -1):
        if fields_named(" ".join(words[:count])):
            field_of(" ".join(words[:count]))  # several facts: tells which
            break
    raise Slip(f"Write the fact, a colon, and its value: {example}")


def sized(rest: str) -> tuple[str, int]:
    """ "product.weight@2 5 kg": the words without the number of the product size, and that number, else 1."""
    found = _SIZE.match(rest.strip())
    return (f"{found[1]}{found[3]}", int(found[2])) if found is not None else (rest, 1)


def example_of(field: str) -> str:
    """A value that the field could have, as people type it."""
    known = vocabulary()[field]
    if known.kind == "choice":
        return known.choices[0].replace("_", " ")
    return "yes" if known.kind == "yes_no" else _EXAMPLES.get(known.unit, "20")
