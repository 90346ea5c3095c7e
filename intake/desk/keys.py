"""The keys of the desk, once: bindings, the rows at the foot, and the command palette are made from this."""

from dataclasses import dataclass

from textual.binding import Binding


@dataclass(frozen=True, slots=True)
class Key:
    """One key: how the library calls it, how people read it, the word at the foot, what it does."""

    code: str
    cap: str
    word: str
    action: str
    does: str


KEYS = (
    Key("f1", "F1", "help", "help", "How the desk works"),
    Key("f2", "F2", "facts", "facts", "Facts with who said them; change one"),
    Key("f3", "F3", "machines", "machines", "Machines with their verdicts; one in full"),
    Key("f4", "F4", "to ask", "to_ask", "What is still to ask; ask another one"),
    Key("f5", "F5", "advice", "advice", "Recommendation, what to find out, samples, cautions"),
    Key("f6", "F6", "don't know", "answer('unknown')", "The visitor does not know"),
    Key("f7", "F7", "later", "answer('later')", "The visitor will check and tell later"),
    Key("f8", "F8", "back", "answer('back')", "Back to the last question"),
    Key("f9", "F9", "undo", "step('undo')", "Take back the last thing"),
    Key("f10", "F10", "what if", "what_if", "Try the typed words as a change: 60 a minute, a freezer"),
    Key("f12", "F12", "redo", "step('redo')", "Put back what was taken back"),
    Key("ctrl+y", "Ctrl+Y", "copy", "copy_question", "Copy the question for the visitor"),
    Key("ctrl+n", "Ctrl+N", "note", "note", "Keep the typed words as a note"),
    Key("ctrl+t", "Ctrl+T", "sample", "sample", "Put a sample message on the line"),
)

LEAVE = "Ctrl+Q leave"
_LEAF = (("pageup", -1), ("pagedown", 1))
_FIRST_ROW = 8
"""So many keys fill 80 columns."""


def bindings() -> list[Binding]:
    """For the screen. Before the answer line gets them: its text area has uses of its own for F6, F7 and Ctrl+Y."""
    leafing = [Binding(code, f"leaf({way})", show=False, priority=True) for code, way in _LEAF]
    return [*(Binding(key.code, key.action, key.word, priority=True) for key in KEYS), *leafing]


def foot_rows() -> tuple[str, str]:
    """The two rows at the foot, each at most 80 columns wide."""
    caps = [f"{key.cap} {key.word}" for key in KEYS]
    return " ".join(caps[:_FIRST_ROW]), " ".join([*caps[_FIRST_ROW:], LEAVE])
