"""Several product sizes in one message: which facts belong to which."""

from intake.reading.message.scene import Draft, Scene

_PER_SIZE = frozenset({"product.length", "product.width", "product.height", "product.diameter", "product.weight"})
_SIZES_MOST = 12


def count_of_sizes(scene: Scene, drafts: list[Draft], anchors: list[int]) -> list[Draft]:
    """Two or more sizes told one by one: their number is told too."""
    if len(anchors) < 2 or any(draft.field == "product.sizes" for draft in drafts):
        return []
    last = max(anchors)
    group = next((group for group in scene.groups if group.first == last), None)
    end = group.after if group is not None else last + 1
    start, stop = scene.tokens[last].start, scene.tokens[end - 1].end
    count = float(len(anchors))
    return [Draft("product.sizes", start, stop, count, count, at=last, rank=3)]


def number_sizes(scene: Scene, drafts: list[Draft], anchors: list[int]) -> None:
    """Give `size` 2, 3 ... to the product figures that stand with the second, third ... group of dimensions."""
    if len(anchors) < 2:
        return
    anchors = sorted(anchors)[:_SIZES_MOST]
    borders = [_border(scene, anchors[n], anchors[n + 1]) for n in range(len(anchors) - 1)]
    weights = sorted((d for d in drafts if d.field == "product.weight"), key=lambda d: d.at)
    in_order = len(weights) == len(anchors) and (weights[0].at > anchors[-1] or weights[-1].at < anchors[0])
    for draft in drafts:
        if draft.field in _PER_SIZE:
            draft.size = 1 + sum(draft.at >= border for border in borders)
    if in_order:
        for n, draft in enumerate(weights):
            draft.size = n + 1
    elif len(weights) == 1 and weights[0].size == len(anchors):
        first = weights[0]
        apart = first.at - anchors[-1]
        if scene.sentence_at[first.at] != scene.sentence_at[anchors[-1]] or apart > 40:
            first.size = 1


def _border(scene: Scene, first: int, second: int) -> int:
    """Where the second size begins: at its sentence, or at the last comma, semicolon or "and" before it."""
    sentence = scene.sentence_of(second)
    if sentence.first > first:
        return sentence.first
    for at in range(second - 1, first, -1):
        if scene.tokens[at].text in (";", "/", "and", "other", "second", "or", ","):
            return at
    return second
