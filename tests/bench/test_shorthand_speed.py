"""What reading shorthand costs beside the plain read of the same text: ratios of one run."""

import statistics
from collections.abc import Callable, Sequence
from time import process_time

import pytest
from labels import rows
from shorthand_lines import lines

from intake.reading import read

Text = tuple[str, str | None]


def _seconds(texts: Sequence[Text], how: Callable[[Text], object]) -> float:
    start = process_time()
    for text in texts:
        how(text)
    return process_time() - start


@pytest.mark.bench
@pytest.mark.parametrize("kind", ["shorthand", "prose", "long paste"])
def test_shorthand_mode_beside_the_plain_read(kind: str) -> None:
    prose: list[Text] = [(row["text"], row["asked"]) for row in rows("open")]
    short: list[Text] = [(line.text, line.asked) for line in lines("open")]
    texts = {"shorthand": short * 4, "prose": prose, "long paste": [("; ".join(t for t, _ in short) * 2, None)]}[kind]
    ratios = []
    for _ in range(7):
        plain = _seconds(texts, lambda one: read(*one))
        mode = _seconds(texts, lambda one: read(*one, shorthand=True))
        ratios.append(mode / plain)
    print(f"\n{kind}: shorthand mode takes {statistics.median(ratios):.2f} of the plain read ({len(texts)} texts)")
