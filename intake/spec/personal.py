"""What could tell who a person is, found in words: mail addresses, telephone numbers, the parts of a name."""

import re

MAIL = re.compile(r"[^\s@<>(),;:\"']+@[^\s@<>(),;:\"']+\.[A-Za-z]{2,}")

# Nine digits and more with the separators of telephone numbers, and no unit or x between them.
PHONE = re.compile(r"(?<![\w.])\+?\(?\d(?:[\s().-]{0,2}\d){8,14}(?!\w)")

_PART = re.compile(r"[^\W\d_](?:[\w'’]*[^\W\d_])")
_SHORTEST_PART = 3
_NO_NAMES = frozenset({"the", "and", "from", "for", "with", "von", "van", "der", "den", "del", "mrs", "miss"})


def addresses_and_numbers(text: str) -> list[tuple[int, int]]:
    """Places of mail addresses and telephone numbers in words, as (start, end).

    >>> addresses_and_numbers("a@example.org or 01632 960123")
    [(0, 13), (17, 29)]
    """
    return sorted(hit.span() for pattern in (MAIL, PHONE) for hit in pattern.finditer(text))


def name_parts(name: str) -> set[str]:
    """The words of a name that tell who it is when they stand alone: capitalised, three letters and more.

    >>> sorted(name_parts("Mira van Oldcastle"))
    ['Mira', 'Oldcastle']
    """
    parts = (hit[0] for hit in _PART.finditer(name))
    return {
        part for part in parts if len(part) >= _SHORTEST_PART and part[0].isupper() and part.lower() not in _NO_NAMES
    }
