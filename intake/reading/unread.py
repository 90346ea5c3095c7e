"""What no fact used: pieces of the message with a figure or a known word in them."""

from bisect import bisect_left

from intake.reading.message.lexicon import SWALLOWED
from intake.reading.message.scene import Scene

_WORDS_MOST = 10
_PIECES_MOST = 60
_NEAR = 40
"""Facts that stand on one place: never more than a few."""
_STOPS = frozenset({",", ";", ":", "(", ")", "but"})


def unread_pieces(
    scene: Scene, read: list[tuple[int, int]], said: frozenset[tuple[str, str]] = frozenset()
) -> tuple[str, ...]:
    """Pieces in order. `read`: the places in the shadow that facts and doubts stand on; `said`: words of "
    "choice read."""
    taken = sorted(read)
    places: list[tuple[int, int]] = []
    for figure in scene.figures:
        start, end = scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end
        if not _overlaps(taken, start, end) and scene.status[figure.first] not in ("signed",):
            places.append((figure.begin, figure.end))
    for token_at, token in enumerate(scene.tokens):
        if token.kind == "number" and token.value is None and not _overlaps(taken, token.start, token.end):
            places.append((token_at, token_at + 1))
    for hit in scene.hits:
        start, end = scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end
        if (hit.field, hit.value) in said:
            continue
        if hit.value != SWALLOWED and not _overlaps(taken, start, end) and scene.status[hit.first] not in ("signed",):
            places.append((hit.first, hit.after))
    used = [_overlaps(taken, token.start, token.end) for token in scene.tokens]
    pieces: list[str] = []
    last_end = -1
    for first, after in sorted(places):
        if first < last_end:
            continue
        begin, end = _piece(scene, first, after, max(last_end, 0), used)
        words = scene.folded.said(scene.tokens[begin].start, scene.tokens[end - 1].end)
        last_end = end
        pieces.append(words)
        if len(pieces) == _PIECES_MOST:
            break
    return tuple(pieces)


def _piece(scene: Scene, first: int, after: int, floor: int, used: list[bool]) -> tuple[int, int]:
    """The clause around a figure or word, without what a fact has used."""
    sentence = scene.sentence_of(first)
    begin, end = first, after
    least = max(sentence.first, floor, first - _WORDS_MOST)
    while begin > least and scene.tokens[begin - 1].text not in _STOPS and scene.tokens[begin - 1].kind != "line":
        if used[begin - 1]:
            break
        begin -= 1
    most = min(max(sentence.after, after), after + _WORDS_MOST)
    while end < most and scene.tokens[end].text not in _STOPS and scene.tokens[end].kind != "line":
        if used[end]:
            break
        end += 1
    return begin, end


def _overlaps(taken: list[tuple[int, int]], start: int, end: int) -> bool:
    """`taken` in order of their beginnings."""
    at = bisect_left(taken, (end, 0))
    return any(b > start for _, b in taken[max(0, at - _NEAR) : at])
