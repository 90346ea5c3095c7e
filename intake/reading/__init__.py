"""People's words -> facts. Own grammar; no learning of any kind; never raises on what somebody typed."""

from intake.reading.quantity import Quantity, quantities

__all__ = ["Quantity", "quantities"]
