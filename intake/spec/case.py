"""The case: what stands now, folded from its events."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from math import inf
from pathlib import Path
from typing import Any

from intake.spec.approx import approx_share
from intake.spec.bodies import doubt_from_body, fact_from_body, fact_to_body
from intake.spec.events import Event
from intake.spec.facts import Doubt, Fact
from intake.spec.flat import Key, Spec
from intake.spec.inquiry import Inquiry
from intake.spec.matters import Attached, Matter, Stage
from intake.spec.vocabulary import vocabulary

__all__ = ["Case", "advance", "fact_from_body", "fact_to_body", "fold", "renumbered", "standing"]


@dataclass(slots=True)
class Case:
    """The state of a talk after some events.

    `facts`: the standing fact of each key. `earlier`: what stood before it, oldest first.
    `doubts` and `quarrels` (two different things said of one key) wait for a question.
    `passed`: doubts and conflicts that staff passed over, each with what stood at that moment.
    `branch`: where the talk is, from the last question asked. `inquiries`: what the visitor asked.
    `by_ear`: the messages typed while listening. `matters`: promises and questions asked back, done or not.
    `stage`: where the case is in its life, `stage_at` since when, `revision` the last one handed over.
    """

    facts: dict[Key, Fact] = field(default_factory=dict)
    earlier: dict[Key, list[Fact]] = field(default_factory=dict)
    doubts: list[Doubt] = field(default_factory=list)
    quarrels: dict[Key, tuple[Fact, Fact]] = field(default_factory=dict)
    messages: dict[int, tuple[str, str]] = field(default_factory=dict)
    unread: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    unknown: set[str] = field(default_factory=set)
    later: set[str] = field(default_factory=set)
    passed: dict[str, str] = field(default_factory=dict)
    branch: str = ""
    notes: list[str] = field(default_factory=list)
    inquiries: list[Inquiry] = field(default_factory=list)
    title: str = ""
    archived: bool = False
    by_ear: set[int] = field(default_factory=set)
    matters: dict[int, Matter] = field(default_factory=dict)
    files: list[Attached] = field(default_factory=list)
    stage: Stage = "open"
    stage_at: str = ""
    revision: str = ""
    later_at: dict[str, str] = field(default_factory=dict)

    @property
    def waiting(self) -> list[Matter]:
        """Promises and questions asked back that are not done, those due first before those without a day."""
        return sorted((m for m in self.matters.values() if not m.done), key=lambda m: (not m.by, m.by, m.seq))

    def origin(self, fact: Fact) -> str:
        """Who said it, and how: "visitor", "visitor, heard", "staff", "works"."""
        return f"{fact.who}, heard" if fact.message in self.by_ear else fact.who

    def spec(self, folder: Path) -> Spec:
        """What sizing sees: the standing facts, less the personal ones."""
        known = vocabulary()
        return Spec(
            {
                key: fact.as_value(approx_share(folder, fact.field) if fact.approx else 0.0)
                for key, fact in self.facts.items()
                if not known[fact.field].personal
            }
        )


def standing(events: Iterable[Event]) -> list[Event]:
    """The events that count: not undone, or done again. Undo itself never counts.

    What is undone takes the message that it was read from along. Where a message was taken in anew, undoing that
    brings the first reading back, unless the whole of it was taken back.
    """
    kept = list(events)
    off: set[int] = set()
    message_of = {e.seq: int(e.body["message"]) for e in kept if e.body.get("message") is not None}
    instead_of = {e.seq: int(e.body["instead"]) for e in kept if e.body.get("instead") is not None}
    for event in kept:
        if event.kind not in ("undone", "redone"):
            continue
        seq = int(event.body["seq"])
        gone, back = {seq, message_of.get(seq, seq)}, set[int]()
        if seq in instead_of and not event.body.get("whole"):
            first = instead_of[seq]
            back = {first, message_of.get(first, first)}
        off = (off | gone) - back if event.kind == "undone" else (off | back) - gone
    return [e for e in kept if e.seq not in off and e.kind not in ("undone", "redone")]


def fold(events: Iterable[Event]) -> Case:
    """The case that these events make."""
    case = Case()
    for event in standing(events):
        advance(case, event)
    return case


def advance(case: Case, event: Event) -> None:
    """Let one more event count in a case of one's own. Undo cannot be played so: it asks for a fold."""
    _STEPS[event.kind](case, event)


def _take(case: Case, fact: Fact, *, settles: bool) -> None:
    """Let a fact stand. A different one that stood before becomes a quarrel, unless this one settles it."""
    key = (fact.field, fact.size)
    if vocabulary()[fact.field].personal and not str(fact.value).strip():
        return  # blanked since: the person was forgotten, or the case was sent without them
    before = case.facts.get(key)
    case.doubts = [d for d in case.doubts if d.field != fact.field]
    case.unknown.discard(fact.field)
    case.later.discard(fact.field)
    if before is not None and not settles and _adds_nothing(before, fact):
        return
    if before is not None and not before.same_as(fact):
        case.earlier.setdefault(key, []).append(before)
        is_text = vocabulary()[fact.field].kind == "text"
        if settles or is_text or fact.who == "works":
            case.quarrels.pop(key, None)
        elif _narrows(before, fact):
            if key in case.quarrels:  # a firmer word for one side does not say which side is right
                case.quarrels[key] = (case.quarrels[key][0], fact)
        else:
            case.quarrels[key] = (before, fact)
    elif settles:
        case.quarrels.pop(key, None)
    case.facts[key] = fact


def _adds_nothing(before: Fact, after: Fact) -> bool:
    """True when the same is said again, no surer, or an exact figure as "about" the same: the first words stand."""
    if before.same_as(after):
        return after.hedged or not before.hedged
    if not (after.approx and after.low is not None and after.low == after.high):
        return False
    single = before.low is not None and before.low == before.high and not before.approx
    return single and abs(after.low - (before.low or 0.0)) <= 0.1 * abs(after.low)


def _narrows(before: Fact, after: Fact) -> bool:
    """True when the later figure lies inside the earlier doubt, or firms up an approximate one.

    A part of a spread is no narrowing: every value in it was said to occur, so the need itself has changed.
    """
    if not (before.is_number and after.is_number):
        return before.value == after.value
    low, high = _ends(before)
    if (low, high) == _ends(after):
        return True
    if before.spread or (low == high and not before.approx):
        return False
    reach = 0.1 * abs(low) if low == high else 0.0
    after_low, after_high = _ends(after)
    return low - reach <= after_low and after_high <= high + reach


def _ends(fact: Fact) -> tuple[float, float]:
    """Low and high, an open end without bound."""
    return -inf if fact.low is None else fact.low, inf if fact.high is None else fact.high


def _message(case: Case, event: Event) -> None:
    case.messages[event.seq] = (str(event.body["text"]), str(event.body.get("who", "visitor")))
    if event.body.get("how") == "ear":
        case.by_ear.add(event.seq)


def _heard(case: Case, event: Event) -> None:
    asked = set(event.body.get("asked", ()))
    corrects = bool(event.body.get("corrects"))
    settled = set(event.body.get("settles", ()))
    case.doubts = [d for d in case.doubts if d.field not in settled]
    for body in event.body.get("facts", ()):
        fact = fact_from_body(body, case.messages)
        _take(case, fact, settles=corrects or fact.field in asked or fact.field in settled)
    for body in event.body.get("doubts", ()):
        doubt = doubt_from_body(body, event.body.get("message"), case.messages)
        case.doubts = [d for d in case.doubts if d.field != doubt.field] + [doubt]
    case.unread.extend(event.body.get("unread", ()))
    case.unknown.update(event.body.get("unknown", ()))
    case.later.update(event.body.get("later", ()))
    case.later_at |= {str(name): event.at for name in event.body.get("later", ())}
    case.inquiries.extend(_inquiry(case, body, event) for body in event.body.get("asks", ()))
    confirmed = event.body.get("passes")
    if confirmed:
        case.passed[str(confirmed["question"])] = str(confirmed["stood"])


def _inquiry(case: Case, body: Mapping[str, Any], event: Event) -> Inquiry:
    message = int(event.body.get("message") or 0)
    start, end = (int(place) for place in body["span"])
    text = case.messages.get(message, ("", ""))[0][start:end]
    return Inquiry(text=text.strip(), message=message, span=(start, end), card=body.get("card"))


def _known(case: Case, event: Event) -> None:
    fact = fact_from_body(event.body["fact"], case.messages)
    _take(case, fact, settles=True)
    if fact.field.startswith("test.") and case.stage in ("samples_asked", "in_test"):
        case.stage, case.stage_at = "open", event.at


def _withdrawn(case: Case, event: Event) -> None:
    key = (str(event.body["field"]), int(event.body.get("size", 1)))
    if key in case.facts:
        case.earlier.setdefault(key, []).append(case.facts.pop(key))
    case.quarrels.pop(key, None)


def _asked(case: Case, event: Event) -> None:
    case.asked.append(str(event.body["question"]))
    case.branch = str(event.body.get("branch", case.branch))


def _unknown(case: Case, event: Event) -> None:
    _close(case, event)
    case.unknown.update(event.body.get("fields", ()))


def _later(case: Case, event: Event) -> None:
    _close(case, event)
    case.later.update(event.body.get("fields", ()))
    case.later_at |= {str(name): event.at for name in event.body.get("fields", ())}


def _passed(case: Case, event: Event) -> None:
    _close(case, event)


def _close(case: Case, event: Event) -> None:
    """A question was answered without a fact: its doubts and quarrels wait no longer."""
    fields = set(event.body.get("fields", ()))
    case.passed[str(event.body.get("question", ""))] = str(event.body.get("stood", ""))
    case.doubts = [d for d in case.doubts if d.field not in fields]
    case.quarrels = {key: pair for key, pair in case.quarrels.items() if key[0] not in fields}


def _noted(case: Case, event: Event) -> None:
    text = case.messages.get(int(event.body["message"]), ("", ""))[0]
    case.notes.append(text)


def _words(case: Case, event: Event) -> str:
    """The words of the message that an event points to."""
    return case.messages.get(int(event.body.get("message") or 0), ("", ""))[0]


def _promised(case: Case, event: Event) -> None:
    case.matters[event.seq] = Matter(
        seq=event.seq,
        kind="promise",
        what=_words(case, event),
        who=event.body.get("who", "us"),
        by=str(event.body.get("by") or ""),
        at=event.at,
    )


def _asked_back(case: Case, event: Event) -> None:
    words = _words(case, event)
    case.matters[event.seq] = Matter(seq=event.seq, kind="question", what=words, who="us", at=event.at)


def _done(case: Case, event: Event) -> None:
    of = int(event.body["of"])
    if of in case.matters:
        case.matters[of] = replace(case.matters[of], done=event.at or "done")


def _attached(case: Case, event: Event) -> None:
    name, file, size = _words(case, event), str(event.body["file"]), int(event.body.get("bytes", 0))
    case.files.append(Attached(seq=event.seq, name=name, file=file, bytes=size, at=event.at))


def _moved(case: Case, event: Event) -> None:
    case.stage, case.stage_at = event.body["to"], event.at


def _handed_over(case: Case, event: Event) -> None:
    case.stage, case.stage_at = "handed_over", event.at
    case.revision = str(event.body.get("revision", ""))


def _opened(case: Case, event: Event) -> None:
    case.title = str(event.body.get("title", ""))


def _archived(case: Case, event: Event) -> None:
    case.archived = True


def _restored(case: Case, event: Event) -> None:
    case.archived = False


def _nothing(case: Case, event: Event) -> None:
    """An event that changes nothing of what stands."""


_STEPS = {
    "opened": _opened,
    "message": _message,
    "heard": _heard,
    "known": _known,
    "withdrawn": _withdrawn,
    "asked": _asked,
    "unknown": _unknown,
    "later": _later,
    "passed": _passed,
    "noted": _noted,
    "promised": _promised,
    "asked_back": _asked_back,
    "done": _done,
    "attached": _attached,
    "moved": _moved,
    "forgotten": _nothing,
    "handed_over": _handed_over,
    "archived": _archived,
    "restored": _restored,
}


def renumbered(fact: Fact, *, message: int | None, who: str, at: str) -> Fact:
    """The fact as it enters a case: with its message, speaker and time."""
    return replace(fact, message=message, who=who, at=at)  # type: ignore[arg-type]  # who is one of Who at every caller
