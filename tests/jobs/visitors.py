"""A visitor who knows a whole job and answers whatever is asked with it, and ways of asking such a visitor."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations
from typing import Any

from intake.interview.question import Question
from intake.interview.together import together_rows
from intake.interview.tree import QuestionEntry, Tree, is_settled
from intake.sizing import size
from intake.sizing import worth as sampled
from intake.sizing.result import Result
from intake.sizing.samples import Samples
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder
from intake.talk import Interview

FlatSpec = dict[str, Any]
MOST = 70


def answered(talk: Interview, question: Question, job: FlatSpec) -> None:
    """What the job says of what is asked; the rest is not known."""
    for name in question.fields:
        if name in job:
            talk.know(name, job[name])
    silent = [name for name in question.fields if name not in job]
    waits = talk.current
    if silent or (question.kind != "question" and waits is not None and waits.id == question.id):
        talk.unknown(question.id)


def talked(job: FlatSpec, talk: Interview) -> list[tuple[str, ...]]:
    """What was asked, a message each, until the talk is decided, or only engineering wants to know more."""
    asked: list[tuple[str, ...]] = []
    while not talk.decided and len(asked) < MOST:
        question = talk.ask()
        if question is None or question.purpose == "engineering":
            break
        asked.append(question.fields)
        answered(talk, question, job)
    return asked


def in_order(job: FlatSpec, tree: Tree) -> tuple[int, Result]:
    """(a) The fixed order of the tree: how many messages until decided, and the sizing there."""
    known: FlatSpec = {}
    left = list(tree.questions)
    result = size(known, worth=True)
    count = 0
    while left and not result.decided:
        message = _message(left[0], left, known)
        left = [entry for entry in left if entry not in message]
        if any(_open(entry, known) for entry in message):
            count += 1
            known |= _all_told(message, job)
            result = size(known, worth=True)
    return count, result


def greedy(job: FlatSpec, tree: Tree, samples: int) -> tuple[int, Result]:
    """(b) Always the question of the highest one-step worth, by so many samples; the order of the tree among equals.

    Joined questions are one message here too.
    """
    known: FlatSpec = {}
    left = [entry for entry in tree.questions if not entry.id.startswith(("test_", "contact"))]
    result = size(known, worth=True)
    count = 0
    while not result.decided and left:
        left = [entry for entry in left if _open(entry, known)]
        if not left:
            break
        found = many_samples(known, samples)
        best = max(left, key=lambda entry: _one_step(found, entry) if found is not None else 0.0)
        message = _message(best, left, known)
        left = [entry for entry in left if entry not in message]
        count += 1
        known |= _all_told(message, job)
        result = size(known, worth=True)
    return count, result


def _message(entry: QuestionEntry, left: Sequence[QuestionEntry], known: FlatSpec) -> list[QuestionEntry]:
    """The question with those that belong to it: other ways of asking join questions by the same rows as ours."""
    by_id = {one.id: one for one in left if not any(name in known for name in one.fields)}
    for row in together_rows(questions_folder()):
        if entry.id in row.questions and all(id in by_id for id in row.questions):
            return [by_id[id] for id in row.questions]
    return [entry]


def many_samples(known: FlatSpec, count: int) -> Samples | None:
    """The samples of a spec, so many of them."""
    usual = sampled.SAMPLES, sampled.ENOUGH
    try:
        sampled.SAMPLES, sampled.ENOUGH = count, count  # the share is of no interest here
        return size(known, worth=True).samples
    finally:
        sampled.SAMPLES, sampled.ENOUGH = usual


def _one_step(samples: Samples, entry: QuestionEntry) -> float:
    return max([samples.changes((name,)) for name in entry.fields] + [samples.changes(entry.fields)])


def least(job: FlatSpec, tree: Tree, asked: Sequence[Sequence[str]], most_left_out: int = 2) -> int:
    """With hindsight: of the questions of the tree behind `asked`, how few would have done.

    Found by leaving one or two out for as long as the rest decides: never less than the true least.
    """
    fields = {name for one in asked for name in one}
    kept = [entry for entry in tree.questions if fields & set(entry.fields)]
    while True:
        fewer = next(_still_decided(job, kept, most_left_out), None)
        if fewer is None:
            return len(kept)
        kept = fewer


def _still_decided(job: FlatSpec, entries: list[QuestionEntry], most: int) -> Iterator[list[QuestionEntry]]:
    for count in range(1, most + 1):
        for gone in combinations(entries, count):
            rest = [entry for entry in entries if entry not in gone]
            if size(_all_told(rest, job), worth=True).decided:
                yield rest


def _all_told(entries: Iterable[QuestionEntry], job: FlatSpec) -> FlatSpec:
    return {name: said for entry in entries for name, said in _told(entry, job).items()}


def _open(entry: QuestionEntry, known: FlatSpec) -> bool:
    spec = Spec.from_flat(known)
    return any(not is_settled(name, spec) for name in entry.fields)


def _told(entry: QuestionEntry, job: FlatSpec) -> FlatSpec:
    return {name: job[name] for name in entry.fields if name in job}
