"""The keys of the desk, once: bindings, the rows at the foot, and the command palette are made from this."""

from dataclasses import dataclass

from textual.binding import Binding


@dataclass(frozen=True, slots=True)
class Key:
    """One key: how the library calls it, how people read it, the word at the foot, what it does.

    `foot`: it stands at the foot of the screen; the others stand on the help page and in the palette.
    """

    code: str
    cap: str
    word: str
    action: str
    does: str
    foot: bool = True


KEYS = (
    Key("f1", "F1", "help", "page('help')", "How the desk works"),
    Key("f2", "F2", "facts", "page('facts')", "Facts with who said them; change or drop one"),
    Key("f3", "F3", "machines", "page('machines')", "Machines with their verdicts; one in full"),
    Key("f4", "F4", "to ask", "page('to_ask')", "What is still to ask, by branch; ask another one"),
    Key("f5", "F5", "advice", "page('advice')", "Recommendation, sketch, what to find out, samples, cautions"),
    Key("f6", "F6", "don't know", "command('unknown')", "The visitor does not know"),
    Key("f7", "F7", "later", "command('later')", "The visitor will check and tell later"),
    Key("f8", "F8", "back", "command('back')", "Back to the last question"),
    Key("f9", "F9", "undo", "command('undo')", "Take back the last thing"),
    Key("f10", "F10", "what if", "page('what_if')", "Try the typed words as a change: 60 a minute, a freezer"),
    Key("f12", "F12", "redo", "command('redo')", "Put back what was taken back"),
    Key("ctrl+y", "^Y", "copy", "page('copy_question')", "Copy the question for the visitor; again: select it"),
    Key("ctrl+r", "^R", "drafts", "page('drafts')", "Messages ready to be sent: answers, summary, samples"),
    Key("ctrl+o", "^O", "book", "page('book')", "Kept cases: find one, go on with it; a new one"),
    Key("ctrl+l", "^L", "next", "next_case", "The next of the cases that are open"),
    Key("ctrl+g", "^G", "phone", "command('phone')", "By phone: what is typed was heard, in shorthand"),
    Key("ctrl+n", "^N", "note", "note", "Keep the typed words as a note", foot=False),
)

LEAVE = "^Q leave"
_LEAF = (("pageup", -1), ("pagedown", 1))
_FIRST_ROW = 8
"""So many keys fill 80 columns."""


def bindings() -> list[Binding]:
    """For the screen. Before the answer line gets them: its text area has uses of its own for F6, F7 and Ctrl+Y."""
    leafing = [Binding(code, f"leaf({way})", show=False, priority=True) for code, way in _LEAF]
    return [*(Binding(key.code, key.action, key.word, priority=True) for key in KEYS), *leafing]


def foot_rows() -> tuple[str, str]:
    """The two rows at the foot, each at most 80 columns wide; ^ is the Ctrl key."""
    caps = [f"{key.cap} {key.word}" for key in KEYS if key.foot]
    return " ".join(caps[:_FIRST_ROW]), " ".join([*caps[_FIRST_ROW:], LEAVE])
