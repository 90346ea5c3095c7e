"""A pasted chat log or mail thread: whose words are whose, and what the staff asked before each answer."""

from intake.reading.thread.asks import Asked, asked_in
from intake.reading.thread.offers import offered
from intake.reading.thread.split import split_thread
from intake.reading.thread.turn import Part, Turn

__all__ = ["Asked", "Part", "Turn", "asked_in", "offered", "split_thread"]
