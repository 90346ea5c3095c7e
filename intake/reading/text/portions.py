"""A long paste cut into portions, so that reading stays linear in the length of the text."""

from collections.abc import Iterator

_MOST = 12_000


def portions(text: str, most: int = _MOST) -> Iterator[tuple[int, str]]:
    """The text in pieces of at most `most` characters with their offsets, cut at a blank line, a line or a space.

    >>> list(portions("ab cd ef", 4))
    [(0, 'ab '), (3, 'cd '), (6, 'ef')]
    """
    start = 0
    while len(text) - start > most:
        end = start + most
        for mark in ("\n\n", "\n", " "):
            cut = text.rfind(mark, start + most // 2, end)
            if cut >= 0:
                end = cut + len(mark)
                break
        yield start, text[start:end]
        start = end
    yield start, text[start:]
