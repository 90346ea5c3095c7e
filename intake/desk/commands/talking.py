"""Commands of the talk itself: answers without words, taking back, putting right, asking out of order."""

import re

from intake.desk.commands.command import (
    Command,
    example_of,
    field_and_value,
    field_of,
    needs,
    number_in,
    sized,
    under,
)
from intake.desk.effect import Effect, Slip
from intake.desk.lights import fact_words, lit_last, lit_preview, reading_line
from intake.desk.pieces import Piece, pieces
from intake.desk.talk_text import answer_lines, heard_lines, reply_line
from intake.desk.welcome import next_sample
from intake.desk.work import Work
from intake.interview.mending import Mend
from intake.interview.question import Question
from intake.spec.clean import clean, one_line
from intake.spec.facts import Heard
from intake.spec.labels import label

_GROUP = "THE TALK"
_QUOTED = re.compile(r'"(.+)"(?:\s+(?:is\s+)?(.*)|$)', re.DOTALL)
_WAYS = '/mend 2 product.width, /mend 2-3 peak rate, /mend "9 kg" weight, /mend 2 nothing'


def _unknown(work: Work, rest: str) -> Effect:
    return _close(work, later=False)


def _later(work: Work, rest: str) -> Effect:
    return _close(work, later=True)


def _close(work: Work, *, later: bool) -> Effect:
    if work.question is None:
        raise Slip("No question is open.")
    if later:
        work.talk.later(work.question.id)
    else:
        work.talk.unknown(work.question.id)
    return Effect(lines=(reply_line(work.talk.events[-1]),))


def _back(work: Work, rest: str) -> Effect:
    before = len(work.talk.events)
    work.question, work.changing = work.talk.back(), None
    taken_back = any(event.kind == "undone" for event in work.talk.events[before:])
    return Effect(lines=("Back to the question before.",) if taken_back else ("There is no answer to take back.",))


def _undo(work: Work, rest: str) -> Effect:
    return Effect(lines=("Taken back.",) if work.talk.undo() else ("There is nothing to take back.",))


def _redo(work: Work, rest: str) -> Effect:
    return Effect(lines=("Put back.",) if work.talk.redo() else ("There is nothing to put back.",))


def _phone(work: Work, rest: str) -> Effect:
    said = rest.strip().casefold()
    if said not in ("", "on", "off"):
        raise Slip("Write /phone on, /phone off, or /phone alone to change over.")
    work.by_ear = said == "on" or (not said and not work.by_ear)
    told = (
        "By phone: what is typed counts as heard, and shorthand is understood."
        if work.by_ear
        else "Off the phone: what is typed is what they wrote."
    )
    return Effect(lines=(told,))


def _ask(work: Work, rest: str) -> Effect:
    """Put another question: by its id, a fact, or a branch."""
    said = needs(rest, "what to ask about: /ask cleaning, /ask rise.height")
    open_now = work.talk.open_questions()
    found = next((one for one in open_now if one.id == said), None) or next(
        (one for one in open_now if one.branch == said.casefold()), None
    )
    work.question, work.changing = _put(work, found.id if found is not None else said), None
    return Effect()


def _put(work: Work, said: str) -> Question:
    """The question of that id, or that asks for the fact so named."""
    try:
        return work.talk.put(said)
    except ValueError:
        field = field_of(said)
    try:
        return work.talk.put(field)
    except ValueError as wrong:
        raise Slip(str(wrong)) from None


def _mend(work: Work, rest: str) -> Effect:
    """Say what words of the last message are; alone: its pieces with their numbers."""
    lit = lit_last(work.talk, work.system)
    if lit is None:
        raise Slip("There is no message yet.")
    parts = pieces(lit)
    if not rest.strip():
        rows = [f'{n}. "{one_line(one.said)}"{f": {one.means}" if one.means else ""}' for n, one in enumerate(parts, 1)]
        return Effect(lines=(*rows, f"Say what one is: {_WAYS}"))
    quoted = _QUOTED.match(rest.strip())
    if quoted is not None:
        piece, what = _found(quoted[1], lit.words), quoted[2] or ""
    else:
        number, *after = rest.split(maxsplit=1)
        piece, what = _numbered(number, parts, lit.words), " ".join(after)
    mend = mend_of(work, piece, what)
    work.talk.rehear([mend])
    told = "nothing that counts" if mend.fact is None else fact_words(mend.fact, work.system)
    return Effect(lines=(f'Put right: "{one_line(piece.said)}" is {told}.',))


def _found(said: str, text: str) -> Piece:
    place = text.find(said)
    if place < 0:
        raise Slip(f'The last message has no "{said[:40]}". /mend alone lists its pieces.')
    return Piece(place, place + len(said), said, "", " ")


def _numbered(number: str, parts: list[Piece], text: str) -> Piece:
    first, _, last = number.partition("-")
    low, high = number_in(first), number_in(last or first)
    if low is None or high is None:
        raise Slip(f"Write which piece it is, and then what it is: {_WAYS}. /mend alone lists them.")
    if not 1 <= low <= high <= len(parts):
        raise Slip(f"There are pieces 1 to {len(parts)}. /mend alone lists them.")
    start, end = parts[low - 1].start, parts[high - 1].end
    return Piece(start, end, text[start:end], "", " ")


def mend_of(work: Work, piece: Piece, what: str) -> Mend:
    """A piece is what is said of it: a fact by its name, or nothing. Raises Slip where the words give no such fact."""
    said = needs(what, "what it is: the name of a fact, or nothing")
    if said.casefold() == "nothing":
        return Mend((piece.start, piece.end), None)
    if "=" in said or ":" in said:
        field, value = field_and_value(said, "/mend 2 product.width = 300 mm")
    else:
        field, value = field_of(said), piece.said
    fact = work.talk.value_in_words(field, value)
    if fact is None:
        said = f'"{one_line(value, 40)}" gives no {label(field)}.'
        raise Slip(f"{said} Say its value too: {field} = {example_of(field)}, say.")
    return Mend((piece.start, piece.end), fact)


def _fact(work: Work, rest: str) -> Effect:
    words, size = sized(rest)
    field, value = field_and_value(words, "/fact product.weight 40 lb")
    try:
        heard = work.talk.mend(field, value, size, who="staff")
    except ValueError as wrong:
        raise Slip(str(wrong)) from None
    lines = tuple(heard_lines(heard, work.system))
    return Effect(lines=lines or (f'"{one_line(value, 40)}" gives no {label(field)}; what stood stands.',))


def _drop(work: Work, rest: str) -> Effect:
    said = needs(rest, "which fact: /drop peak rate")
    name, size = sized(said)
    field = field_of(name, {field for field, number in work.talk.case.facts if number == size})
    fact = work.talk.case.facts.get((field, size))
    if fact is None:
        raise Slip(f"Nothing stands for {label(field, size)}.")
    work.talk.withdraw(field, size)
    return Effect(lines=(f"No longer said: {fact_words(fact, work.system)}.",))


def _note(work: Work, rest: str) -> Effect:
    words = clean(needs(rest, "the note behind it: /note TEXT"))
    work.talk.note(words)
    return Effect(lines=(f"Noted: {one_line(words)}",))


def _staff(work: Work, rest: str) -> Effect:
    words = clean(needs(rest, "what you know yourself: /staff ceiling is 5 m, seen on the drawing"))
    heard = work.talk.hear(words, who="staff")
    return Effect(lines=tuple(heard_lines(heard, work.system)) or (reply_line(work.talk.events[-1]),))


def _answer(work: Work, rest: str) -> Effect:
    reply = work.talk.inquire(needs(rest, "the visitor's question behind it: /answer how tall can you go?"))
    return Effect(lines=tuple(answer_lines([reply])))


def _read(work: Work, rest: str) -> Effect:
    """How words would be understood, as the desk shows it while they are typed."""
    words = needs(rest, "the words behind it: /read 12 kg, 400 mm long")
    to = work.question.id if work.question is not None else None
    lit = lit_preview(work.talk.preview(words, to, by_ear=work.by_ear), work.system)
    return Effect(lines=(f"Nothing of this is kept. {reading_line(lit) or 'No fact in it.'}",))


def _sample(work: Work, rest: str) -> Effect:
    sample = next_sample(work.said)
    if sample is None:
        raise Slip("The sample is for an empty case, and comes to its end. /new begins a case; then /sample.")
    return Effect(say=sample)


def _thread(work: Work, rest: str) -> Effect:
    """A pasted chat log or mail thread, taken apart by who said what."""
    words = needs(rest, "or paste the whole chat or mail thread behind it, over as many lines as it has: /thread ...")
    before = len(work.talk.inquiries)
    thread = work.talk.take_thread(words)
    ours = sum(turn.who == "staff" for turn in thread.turns)
    heard = Heard(facts=thread.facts, doubts=thread.doubts, unread=thread.unread)
    asks = [f'They asked: "{one_line(one.text)}"' for one in work.talk.inquiries[before:]]
    return Effect(
        lines=(
            f"Thread: {len(thread.turns) - ours} turns of the visitor, {ours} of ours. This is what stands in the end.",
            *heard_lines(heard, work.system),
            *asks,
            *(["Answers: /draft lists them, /draft answer shows the newest."] if asks else []),
        ),
        retell=True,
    )


def _paste(work: Work, rest: str) -> Effect:
    raise Slip("In plain lines: /paste alone, then the message, then /end. Elsewhere a message has lines as it is.")


COMMANDS: tuple[Command, ...] = under(
    _GROUP,
    Command("unknown", "", "the visitor does not know; it becomes an open point", _unknown),
    Command("later", "", "the visitor will check and come back", _later),
    Command("back", "", "take back the last answer and ask again", _back),
    Command("undo", "", "take back the last thing that happened", _undo),
    Command("redo", "", "put back what was taken back", _redo),
    Command("phone", "[on|off]", "what is typed was heard, and may be shorthand", _phone),
    Command("ask", "TOPIC", "put another question: a branch, a fact, a question's id", _ask),
    Command("mend", '[N|"WORDS" WHAT]', "say what words of the last message are", _mend),
    Command("fact", "FACT VALUE", "set one fact anew, in words", _fact),
    Command("drop", "FACT", "a fact stands no longer", _drop),
    Command("staff", "TEXT", "what you know yourself; read for facts", _staff),
    Command("read", "TEXT", "how words would be understood; nothing of it is kept", _read, looks=True),
    Command("paste", "", "in plain lines: what follows is one message, until a line that is only /end", _paste),
    Command("thread", "TEXT", "a whole chat or mail thread; in plain lines until a line that is only /end", _thread),
    Command("sample", "", "the next message of a sample, to see how it goes", _sample),
    Command("note", "TEXT", "a note; never read for facts", _note, beside=True),
    Command("answer", "QUESTION", "a question of the visitor's own, answered from the case", _answer),
)
