"""A pasted text cut into turns, whatever it was copied from."""

import os
from pathlib import Path

from intake.reading.thread.chat import Message, chat_messages
from intake.reading.thread.mail import mail_messages
from intake.reading.thread.sides import sides_of
from intake.reading.thread.turn import Part, Turn
from intake.spec.folder import questions_folder


def split_thread(text: str, *, questions: str | os.PathLike[str] | None = None) -> tuple[Turn, ...]:
    """The turns of a chat log or mail thread in the order in which they were said.

    A text without speakers is one turn of the visitor. Spans are code points of `text` as received. Never raises on
    what somebody pasted. `questions`: a folder with its own words. Raises FolderError for a folder that is none.
    """
    folder = questions_folder(questions)
    messages = _messages(text, folder)
    if messages is None:
        part = Part.of(text, [(0, len(text))])
        return (Turn("visitor", None, None, (part,)),) if part.pieces else ()
    sides = sides_of(messages, folder)
    return tuple(
        Turn(side, message.name or None, message.stamp.iso, tuple(message.parts))
        for side, message in zip(sides, messages, strict=True)
    )


def _messages(text: str, folder: Path) -> list[Message] | None:
    """As a mail thread where something in it parts mails, as a chat where somebody speaks, else None."""
    mails = mail_messages(text)
    chat = chat_messages(text, folder)
    if mails is None or chat is None:
        return mails or chat
    said = sum(message.name is not None for message in mails)
    return chat if len(chat) > 2 * len(mails) or not said else mails
