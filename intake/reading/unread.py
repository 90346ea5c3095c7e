"""What no fact used: pieces of the message with a figure or a known word in them."""

from intake.reading.lexicon import SWALLOWED
from intake.reading.scene import Scene

_WORDS_MOST = 10
_PIECES_MOST = 60
_STOPS = frozenset({",", ";", ":", "(", ")", "but"})


def unread_pieces(scene: Scene, read: list[tuple[int, int]]) -> tuple[str, ...]:
    """Pieces in order. `read`: the places in the shadow that facts and doubts stand on."""
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
        if hit.value != SWALLOWED and not _overlaps(taken, start, end) and scene.status[hit.first] not in ("signed",):
            places.append((hit.first, hit.after))
    pieces: list[str] = []
    last_end = -1
    for first, after in sorted(places):
        if first < last_end:
            continue
        begin, end = _piece(scene, first, after, max(last_end, 0))
        words = scene.folded.said(scene.tokens[begin].start, scene.tokens[end - 1].end)
        last_end = end
        pieces.append(words)
        if len(pieces) == _PIECES_MOST:
            break
    return tuple(pieces)


def _piece(scene: Scene, first: int, after: int, floor: int) -> tuple[int, int]:
    sentence = scene.sentence_of(first)
    begin, end = first, after
    least = max(sentence.first, floor, first - _WORDS_MOST)
    while begin > least and scene.tokens[begin - 1].text not in _STOPS and scene.tokens[begin - 1].kind != "line":
        begin -= 1
    most = min(max(sentence.after, after), after + _WORDS_MOST)
    while end < most and scene.tokens[end].text not in _STOPS and scene.tokens[end].kind != "line":
        end += 1
    return begin, end


def _overlaps(taken: list[tuple[int, int]], start: int, end: int) -> bool:
    return any(a < end and start < b for a, b in taken)
