"""What fills the blanks of a card: each value worked out when a template asks for it, and then kept."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from intake.advice import topics
from intake.advice.brief import Brief
from intake.advice.cards import limits_shown as limits
from intake.advice.families import verdict_line, why_not
from intake.advice.messages import wanted_tests
from intake.advice.recommend import assumption_line
from intake.advice.supposed import Supposed
from intake.interview.matters import missing_basics
from intake.interview.reasons import few, open_matters, shown
from intake.interview.wording import joined, sentence
from intake.sizing.range_data import RangeData, load_range
from intake.spec.display import label, show_range, show_value

BLANK = re.compile(r"\{([^{}]*)\}")
_NAMES_MOST = 4


@dataclass(eq=False, kw_only=True)
class Blanks:
    """The blanks of one answer. A value of None: this case has none, and the template cannot be said.

    `asked`: the figure of the question as people read it. `named`: the family that the question names.
    """

    brief: Brief
    supposed: Supposed | None = None
    asked: str | None = None
    named: str | None = None
    _kept: dict[str, str | None] = field(default_factory=dict)

    def fill(self, template: str) -> str | None:
        """The template with every blank filled, None where one has no value. Values are never read as templates."""
        for name in BLANK.findall(template):
            if self.value(name) is None:
                return None
        return BLANK.sub(lambda found: self.value(found[1]) or "", template)

    def value(self, name: str) -> str | None:
        """What stands in a blank; None too for a blank that there is not."""
        if name not in self._kept:
            self._kept[name] = self._worked_out(name)
        return self._kept[name]

    def _worked_out(self, name: str) -> str | None:
        if name in OF_CASE:
            return (OF_CASE[name](self) or None) if len(self.brief.spec) else None
        group, _, rest = name.partition(".")
        if group == "then" and rest in OF_SUPPOSED:
            return (OF_SUPPOSED[rest](self, self.supposed) or None) if self.supposed and len(self.brief.spec) else None
        return GROUPS[group](self, rest) or None if group in GROUPS and rest else None

    @property
    def data(self) -> RangeData:
        """The maker's range."""
        return load_range(self.brief.folder)

    def family(self, name: str | None) -> str | None:
        """What the trade calls a family."""
        return limits.names([name], self.brief.sentences) if name else None

    def families(self, names: list[str]) -> str:
        """The first few of them: "the spiral conveyor, the cleated incline and 3 more"."""
        return few([f"the {self.family(name)}" for name in names], _NAMES_MOST)


def _verdict(blanks: Blanks) -> str | None:
    brief = blanks.brief
    return verdict_line(brief.best, brief.result, brief.system, brief.sentences) if brief.best else None


def _weeks(blanks: Blanks) -> str | None:
    best = blanks.brief.best
    found = best.figures.get("lead_time") if best else None
    if found is None or found.value is None:
        return None
    return show_range(found.low or found.value, found.high or found.value, found.unit, blanks.brief.system)


def _why_not(blanks: Blanks) -> str | None:
    if blanks.named is None:
        return None
    brief = blanks.brief
    return " ".join(why_not(brief.result, blanks.named, brief.system, brief.sentences))


def _missing(blanks: Blanks) -> str:
    said = blanks.brief.sentences
    names = [said.find(f"basic.{name}") or label(name) for name in missing_basics(blanks.brief.spec)]
    return joined(list(dict.fromkeys(names)))


def _out(blanks: Blanks) -> str:
    found = blanks.brief.result.families
    return blanks.families([name for name, family in found.items() if family.verdict == "out"])


def _tests(blanks: Blanks) -> str:
    return joined(wanted_tests(blanks.brief.result, blanks.brief.spec, blanks.brief.sentences))


OF_CASE: Mapping[str, Callable[[Blanks], str | None]] = {
    "asked": lambda blanks: blanks.asked,
    "best": lambda blanks: blanks.family(blanks.brief.result.best),
    "second": lambda blanks: blanks.family(blanks.brief.result.second),
    "standing": lambda blanks: blanks.families(list(blanks.brief.result.standing)),
    "out": _out,
    "verdict": _verdict,
    "why_best": lambda blanks: sentence(blanks.brief.result.why_best),
    "matters": lambda blanks: few(open_matters(blanks.brief.best, blanks.brief.result)) if blanks.brief.best else None,
    "refer": lambda blanks: sentence(blanks.brief.result.refer_out or ""),
    "missing": _missing,
    "named": lambda blanks: blanks.family(blanks.named),
    "why_not": _why_not,
    "tests": _tests,
    "weeks": _weeks,
}
"""Blanks without a point that a case fills. Where nothing is known yet none of them has a value."""

OF_SUPPOSED: Mapping[str, Callable[[Blanks, Supposed], str | None]] = {
    "best": lambda blanks, supposed: blanks.family(supposed.best),
    "same": lambda blanks, supposed: blanks.family(supposed.same),
    "standing": lambda blanks, supposed: blanks.families(list(supposed.result.standing)),
    "out": lambda blanks, supposed: blanks.families(supposed.out),
    "why": lambda blanks, supposed: supposed.why,
    "verdict": lambda blanks, supposed: supposed.verdict,
    "refer": lambda blanks, supposed: sentence(supposed.result.refer_out or ""),
}
"""What would be, as {then.best}, for a card with `what_if` or `takes`."""


def _figure(blanks: Blanks, name: str) -> str | None:
    best = blanks.brief.best
    found = best.figures.get(name) if best else None
    return shown(found.value, found.unit, blanks.brief.system) if found is not None and found.value else None


def _fact(blanks: Blanks, name: str) -> str | None:
    known = blanks.brief.spec.of(name)
    return show_value(name, known, blanks.brief.system) if known is not None else None


def _limit(blanks: Blanks, rest: str) -> str | None:
    family, _, key = rest.partition(".")
    found = limits.limits_of(blanks.data, (blanks.brief.result.best or "") if family == "best" else family)
    return limits.shown_limit(found, key, blanks.brief.system) if found is not None else None


def _extreme(which: str) -> Callable[[Blanks, str], str | None]:
    def value(blanks: Blanks, rest: str) -> str | None:
        key, _, part = rest.partition(".")
        if part != "family":
            return limits.shown_extreme(blanks.data, which, key, blanks.brief.system)
        found = limits.extreme(blanks.data, which, key)
        return joined([_one_of_its_kind(blanks.family(name) or name) for name in found[1]], "or") if found else None

    return value


def _one_of_its_kind(name: str) -> str:
    return f"{'an' if name[:1] in 'aeiou' else 'a'} {name}"


def _having(blanks: Blanks, rest: str) -> str:
    key, _, word = rest.partition(".")
    names = limits.having(blanks.data, key, word)
    return joined([f"the {blanks.family(name)}" for name in names])


def _assumed(blanks: Blanks, id: str) -> str | None:
    found = next((one for one in blanks.brief.result.assumptions if one.id == id), None)
    return assumption_line(found, blanks.brief.system, blanks.brief.sentences) if found is not None else None


def _topic(blanks: Blanks, name: str) -> str | None:
    answer = topics.TOPICS.get(name)
    told = answer(blanks.brief) if answer is not None and len(blanks.brief.spec) else None
    return " ".join(told.lines) or None if told is not None and told.data else None


GROUPS: Mapping[str, Callable[[Blanks, str], str | None]] = {
    "figure": _figure,
    "fact": _fact,
    "limit": _limit,
    limits.GREATEST: _extreme(limits.GREATEST),
    limits.LEAST: _extreme(limits.LEAST),
    "having": _having,
    "assumed": _assumed,
    "topic": _topic,
}
"""Blanks with a point, by what stands before it."""

FREE_GROUPS = frozenset({"limit", limits.GREATEST, limits.LEAST, "having"})
"""Those that need no case (but {limit.best.KEY} does)."""
