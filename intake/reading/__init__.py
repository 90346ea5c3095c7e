"""People's words -> facts. Own grammar; no learning of any kind; never raises on what somebody typed."""

from intake.reading.amounts.quantity import Quantity, quantities
from intake.reading.message.asking import Piece, questions
from intake.reading.reader import read

__all__ = ["Piece", "Quantity", "quantities", "questions", "read"]
