"""A test on samples as people report it: which test, what it showed, who measured, when, on which samples."""

import re
from dataclasses import dataclass
from datetime import date

from intake.desk.effect import Slip
from intake.spec.clean import clean, one_line
from intake.spec.days import day_of
from intake.spec.facts import Fact
from intake.spec.labels import label
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

TESTS = tuple(name for name in vocabulary() if name.startswith("test."))
EXAMPLE = "/test slip angle 22 deg by R. Osei on 2026-03-02 with 3 cartons of line 2"
_PART = re.compile(r"\s(by|on|with)\s+", re.IGNORECASE)
_DATE = re.compile(r"\s*\d{1,4}[-./]\d")


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """One test. `value` in the field's canonical unit; `on`: YYYY-MM-DD."""

    field: str
    value: float | bool
    said: str
    by: str
    on: str
    samples: str

    @property
    def words(self) -> str:
        """As it is kept."""
        what = label(self.field).removeprefix("tested ")
        return f"{what} {self.said}; measured by {self.by} on {self.on}, on {self.samples}"


def test_named(words: str) -> str:
    """The test that words name: "slip angle", "tip", "squeeze mark", "transfers". Raises Slip."""
    said = words.casefold().removeprefix("test.").replace("_", " ").strip()
    names = {test: test.split(".")[1].replace("_", " ") for test in TESTS}
    found = [test for test, name in names.items() if name == said] or [
        test for test, name in names.items() if said and set(said.split()) <= set(name.split())
    ]
    if len(found) == 1:
        return found[0]
    raise Slip(f'"{one_line(words, 30)}" is no one test. There are: {", ".join(names.values())}. As in: {EXAMPLE}')


def report_of(talk: Interview, test: str, said: str, *, by: str, on: str, samples: str) -> Report:
    """A report from its parts as typed. Raises Slip for what cannot be."""
    fact = talk.value_in_words(test, said)
    value = None if fact is None else fact.value if fact.value is not None else _single(fact)
    if fact is None or value is None or isinstance(value, str):
        raise Slip(f'"{one_line(said, 30)}" is no single value of {label(test)}. As in: {EXAMPLE}')
    for part, what in ((by, "who measured: by NAME"), (samples, "on which samples: with 3 cartons of line 2")):
        if not part.strip():
            raise Slip(f"Say {what}. As in: {EXAMPLE}")
    try:
        day = day_of(on.strip(" ,;.")) if on.strip() else date.today()
    except ValueError as wrong:
        raise Slip(str(wrong)) from None
    if day > date.today():
        raise Slip(f"{day.isoformat()} is still to come. Give the day of the test, as in: {EXAMPLE}")
    return Report(
        field=test, value=value, said=clean(said).strip(), by=clean(by).strip(), on=day.isoformat(),
        samples=clean(samples).strip(),
    )  # fmt: skip


def _single(fact: Fact) -> float | None:
    """The one figure that a test showed: ends that differ are two tests."""
    return fact.low if fact.low == fact.high else None


def report_in(talk: Interview, words: str) -> Report:
    """A report typed in one line, as EXAMPLE. Raises Slip."""
    head, parts = _parts(words)
    tokens = head.split()
    for count in range(min(3, len(tokens)), 0, -1):
        try:
            test = test_named(" ".join(tokens[:count]))
        except Slip:
            continue
        said = " ".join(tokens[count:])
        if not said:
            raise Slip(f"Write what it showed behind the test. As in: {EXAMPLE}")
        return report_of(
            talk, test, said, by=parts.get("by", ""), on=parts.get("on", ""), samples=parts.get("with", "")
        )
    if tokens:
        test_named(tokens[0])  # none of that name, or several: tells which there are
    raise Slip(f"Write the test, what it showed, who measured, when, on which samples: {EXAMPLE}")


def _parts(words: str) -> tuple[str, dict[str, str]]:
    """What stands before "by", "on" and "with", and what behind each; a second one belongs to the words before it.

    "On" counts only before a day: samples may stand on a pallet.
    """
    head, *rest = _PART.split(f"{words.strip()} ")
    parts: dict[str, str] = {}
    last = ""
    for word, said in zip(rest[::2], rest[1::2], strict=True):
        if word.casefold() in parts or (word.casefold() == "on" and last and not _is_day(said)):
            parts[last] += f" {word} {said}"
        else:
            last = word.casefold()
            parts[last] = said
    return head, {word: said.strip(" ,;") for word, said in parts.items()}


def _is_day(words: str) -> bool:
    """True for a day, and for figures that are meant as one."""
    if _DATE.match(words):
        return True
    try:
        day_of(words.strip(" ,;."))
    except ValueError:
        return False
    return True


def keep_report(talk: Interview, report: Report) -> None:
    """Let the test stand in the case."""
    talk.life.measured(report.field, report.value, report.words, on=report.on)
