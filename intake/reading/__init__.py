"""People's words -> facts. Own grammar; no learning of any kind; never raises on what somebody typed."""

from intake.reading.amounts.quantity import Quantity, quantities
from intake.reading.reader import read

__all__ = ["Quantity", "quantities", "read"]
