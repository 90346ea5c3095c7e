"""What to ask next: everything open in the order in which it would be asked, and what is left out with the reason."""

from functools import cached_property
from math import floor, log
from pathlib import Path

from intake.interview.engineering import engineering_needs
from intake.interview.entry_checks import EntryChecks
from intake.interview.matters import ORDER, Matter, Part
from intake.interview.question import Question, Skipped
from intake.interview.reasons import few
from intake.interview.skipping import LeavingOut
from intake.interview.together import joined_questions
from intake.interview.tree import QuestionEntry, Tree
from intake.interview.wanted import Wanted
from intake.interview.wording import Sentences
from intake.sizing.result import Result
from intake.spec.case import Case
from intake.spec.display import System, label
from intake.spec.flat import Spec

_STEP = 1.25
"""What tells less than this much more counts as the same, so that cost and the flow of the talk may speak."""


class Plan:
    """The state of asking. `open`: in the order of asking, doubts and conflicts first.

    What is left out is worked out when it is looked at: proving that nothing hangs on a fact takes trials.
    """

    def __init__(
        self, open: tuple[Question, ...], rest: list[Question], leaving_out: LeavingOut, sentences: Sentences
    ) -> None:
        self.open = open
        self._rest, self._leaving_out, self._sentences = rest, leaving_out, sentences

    @property
    def set_aside(self) -> tuple[Skipped, ...]:
        """Questions that hardly matter."""
        return tuple(left for part, left in self._left_out if part == "aside")

    @property
    def skipped(self) -> tuple[Skipped, ...]:
        """Questions of which no answer changes anything."""
        return tuple(left for part, left in self._left_out if part == "skip")

    @cached_property
    def _left_out(self) -> list[tuple[Part, Skipped]]:
        left = []
        for question in self._rest:
            matters = [self._leaving_out.why(name) for name in question.fields]
            lead = min(matters, key=lambda matter: (ORDER[matter.part], -matter.worth))
            fields = tuple(matter.field for matter in matters if matter.part == lead.part)
            blanks = {"topic": few([label(name) for name in fields], 2), **dict(lead.blanks)}
            why = self._sentences.say(f"left_out.{lead.reason}", **blanks)
            left.append((lead.part, Skipped(question=question.id, fields=fields, why=why)))
        return left


class Asking:
    """Plans what to ask, for one questions folder."""

    def __init__(self, tree: Tree, folder: Path, sentences: Sentences) -> None:
        self._tree, self._folder, self._sentences = tree, folder, sentences
        self._needs = engineering_needs(folder)
        self._checks = EntryChecks(tree, folder, sentences)

    def plan(self, case: Case, spec: Spec, result: Result, system: System) -> Plan:
        """Everything open, set aside or skipped in this state of the case."""
        waiting = self._checks.questions(case, spec, result, system)
        unclear = {name for question in waiting if question.id.startswith("doubt:") for name in question.fields}
        wanted = Wanted(spec, result, self._needed(result), self._folder)
        ranked: list[tuple[tuple[float, ...], Question]] = []
        rest: list[Question] = []
        weighed = self._weighed(wanted, spec, case.unknown | case.later | unclear)
        for place, entry, fields, matters in weighed:
            if matters:
                lead = min(matters, key=lambda matter: (ORDER[matter.part], -matter.worth))
                question = self._question(entry, tuple(matter.field for matter in matters), spec, lead.part)
                ranked.append((_rank(entry, lead, place, case.branch), question))
            else:
                rest.append(self._question(entry, fields, spec, "aside"))
        ranked.sort(key=lambda row: row[0])
        whole = {entry.id: len(fields) == len(entry.fields) for _, entry, fields, _ in weighed}
        asked = joined_questions([question for _, question in ranked], whole, self._folder)
        leaving_out = LeavingOut(spec, result, self._folder, self._sentences, system)
        return Plan((*waiting, *asked), rest, leaving_out, self._sentences)

    def _weighed(
        self, wanted: Wanted, spec: Spec, answered: set[str]
    ) -> list[tuple[int, QuestionEntry, tuple[str, ...], list[Matter]]]:
        """Each question of the tree on which something is silent: its place, the silent fields, why to ask for them."""
        silent = [
            (place, entry, tuple(name for name in self._tree.open_fields(entry, spec) if name not in answered))
            for place, entry in enumerate(self._tree.questions)
        ]
        weighed = [(place, entry, fields, wanted.together(fields)) for place, entry, fields in silent if fields]
        tells = any(ORDER[matter.part] <= ORDER["best"] for *_, matters in weighed for matter in matters)
        if wanted.is_stuck and not tells:
            weighed = [(place, entry, fields, wanted.bringing_back(fields) or m) for place, entry, fields, m in weighed]
        return weighed

    def put(self, id: str, case: Case, spec: Spec) -> Question | None:
        """Any question of the tree by its id or by a field it asks for, whatever the plan says of it."""
        entry = self._tree.by_id.get(id) or self._tree.for_field(id)
        if entry is None:
            return None
        return self._question(entry, self.silent(entry.id, case, spec) or entry.fields, spec, "aside")

    def silent(self, id: str, case: Case, spec: Spec) -> tuple[str, ...]:
        """The fields of a question of the tree on which nobody has said anything yet."""
        entry = self._tree.by_id.get(id)
        answered = case.unknown | case.later
        return tuple(n for n in self._tree.open_fields(entry, spec) if n not in answered) if entry is not None else ()

    def _needed(self, result: Result) -> frozenset[str]:
        """What engineering needs for the best family; while there is none, what every standing family needs."""
        if result.best:
            return frozenset(self._needs[result.best])
        standing = [frozenset(self._needs[family]) for family in result.standing]
        return frozenset.intersection(*standing) if standing else frozenset()

    def _question(self, entry: QuestionEntry, fields: tuple[str, ...], spec: Spec, part: Part) -> Question:
        return Question(
            id=entry.id,
            kind="question",
            fields=fields,
            say=self._tree.wording(entry, spec, fields),
            why=entry.why,
            branch=entry.branch,
            purpose=part,
            unknown_ok=entry.unknown_ok,
        )


def _rank(entry: QuestionEntry, lead: Matter, place: int, at_branch: str) -> tuple[float, ...]:
    """Part, then what the answer tells in few steps, then cost, then staying in the branch, then the order of the tree.

    Basics go by the order of the tree alone: product, rate, rise is how people tell it.
    """
    if lead.part == "basics":
        return (0.0, float(place))
    step = -floor(log(lead.tells, _STEP)) if lead.part == "best" else 0
    return (float(ORDER[lead.part]), float(step), float(entry.cost), float(entry.branch != at_branch), float(place))
