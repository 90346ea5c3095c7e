"""Messages ready to be sent: the next question, answers to the visitor's, the summary, the request for samples."""

from collections.abc import Iterator
from dataclasses import dataclass

from intake.advice import follow_up_lines, next_question_message, recommendation, sample_request
from intake.advice.cards import CardAnswer
from intake.advice.messages import wanted_tests
from intake.desk.work import Work
from intake.spec.clean import one_line

_MOST_ANSWERS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """One message. `key` is what it is called in `/draft KEY`."""

    key: str
    title: str
    text: str


KEYS = ("reply", "question", "answer", "summary", "samples", "open")
"""Kinds of drafts; several answers are answer, answer2, answer3 ..., the newest first."""


def drafts(work: Work) -> list[Draft]:
    """Everything that could be sent now, what is wanted most often first. Sizes the case."""
    return [*_reply(work), *_question(work), *_answers(work), *_summary(work), *_samples(work), *_open(work)]


def reply_text(reply: CardAnswer) -> str:
    """An answer as it goes to the visitor."""
    return " ".join(reply.lines)


def _reply(work: Work) -> Iterator[Draft]:
    """The answers to what the visitor asked just now, and the next question behind them, in one message."""
    case = work.talk.case
    last = max((number for number, (_, who) in case.messages.items() if who == "visitor"), default=0)
    fresh = [inquiry for inquiry in work.talk.inquiries if inquiry.message == last]
    if fresh:
        parts = [reply_text(work.talk.reply_to(one, work.brief)) for one in fresh]
        parts += [next_question_message(work.question)] if work.question is not None else []
        yield Draft(key="reply", title="Answer, and the next question", text="\n\n".join(parts))


def _question(work: Work) -> Iterator[Draft]:
    if work.question is not None:
        yield Draft(key="question", title="Next question", text=next_question_message(work.question))


def _answers(work: Work) -> Iterator[Draft]:
    newest = list(reversed(work.talk.inquiries))[:_MOST_ANSWERS]
    for place, inquiry in enumerate(newest, 1):
        title = f'Answer to "{one_line(inquiry.text, 50)}"'
        key = "answer" if place == 1 else f"answer{place}"
        yield Draft(key=key, title=title, text=reply_text(work.talk.reply_to(inquiry, work.brief)))


def _summary(work: Work) -> Iterator[Draft]:
    brief = work.brief
    if brief.best is not None or brief.result.refer_out:
        lines = recommendation(brief.result, brief.spec, work.system, brief.sentences)
        yield Draft(key="summary", title="Summary of the recommendation, with its caveats", text="\n".join(lines))


def _samples(work: Work) -> Iterator[Draft]:
    brief = work.brief
    if brief.best is not None and wanted_tests(brief.result, brief.spec, brief.sentences):
        lines = sample_request(brief.result, brief.spec, work.system, brief.sentences)
        yield Draft(key="samples", title="Request for samples", text="\n".join(lines))


def _open(work: Work) -> Iterator[Draft]:
    """What the visitor said they would check, to remind them of."""
    points = [point for point in work.talk.follow_ups() if point.state in ("later", "unknown")]
    if points:
        lines = follow_up_lines(points, work.brief.sentences)
        yield Draft(key="open", title="Reminder of what is still to be checked", text="\n".join(lines))
