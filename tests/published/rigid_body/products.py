"""Invented products for the witness, drawn with fixed seeds: boxes of many proportions, and cylinders."""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp, hypot, log
from random import Random

from scipy.optimize import brentq

SHORT, BEYOND = 0.985, 1.015  # of our limit: there the product stands, and there it goes
APART = 1.2  # a drawn product slides or tips by so much sooner than it does the other


@dataclass(frozen=True)
class Product:
    """A rigid product. Round: length is its diameter, and width the same."""

    length: float  # along the belt [m]
    width: float
    height: float
    centre: float  # height of the centre of gravity [m]
    mass: float = 5.0
    is_round: bool = False

    def slides_first(self, mu: float) -> bool:
        """Over the nearest edge it would tip later by far."""
        return mu * APART < min(self.length, self.width) / 2 / self.centre

    def tips_first(self, mu: float) -> bool:
        """Over the farthest corner, or point of the ring, it would slide later by far."""
        reach = self.length if self.is_round else hypot(self.length, self.width)
        return mu > APART * reach / 2 / self.centre


def drawn_product(draw: Random, is_round: bool) -> Product:
    """Of 0.05 to 30 kg, its centre of gravity where it happens to be."""
    length = draw.uniform(0.06, 0.4) if is_round else draw.uniform(0.1, 0.7)
    width = length if is_round else draw.uniform(0.1, 0.5)
    height = min(length, width) * exp(draw.uniform(log(0.2), log(4.0)))
    mass = exp(draw.uniform(log(0.05), log(30.0)))
    return Product(length, width, height, height * draw.uniform(0.3, 0.65), mass, is_round)


def drawn(
    seed: int, count: int, suits: Callable[[Product, float], bool], rounds: tuple[bool, ...] = (False, True, False)
) -> list[tuple[Product, float]]:
    """Boxes and cylinders, in that order over and over, each with its friction of 0.15 to 1.0, that `suits` takes."""
    draw, found = Random(seed), []
    while len(found) < count:
        product, mu = drawn_product(draw, rounds[len(found) % len(rounds)]), draw.uniform(0.15, 1.0)
        if suits(product, mu):
            found.append((product, mu))
    return found


def where(share: Callable[[float], float], used: float, most: float) -> float:
    """The slope, or speed, at which a share that rises with it is `used`."""
    return float(brentq(lambda x: share(x) - used, 0.0, most, xtol=1e-12))


def named(product: Product, mu: float) -> str:
    """For the list of tests: what it is and how it grips."""
    return f"{'round' if product.is_round else 'box'} {product.mass:.2g} kg, mu {mu:.2f}"
