"""Not, never, without: whether the words around a hit deny it, and whether they hedge it."""

from intake.reading.message.scene import Scene

_BACK_MOST = 8
_WALLS = frozenset({",", ";", ":", "(", "but", "only", "just", "except"})
_NEW_SUBJECTS = frozenset(
    [
        "they", "they're", "theyre", "it", "it's", "its", "we", "we're", "i", "is", "are", "the", "our", "this",
        "that", "these", "those", "there", "you", "must", "should", "can", "will",
    ]
)  # fmt: skip
_BEHIND = (
    "not", "never", "isn't", "aren't", "isnt", "arent", "doesn't", "don't", "no", "won't", "wont", "can't", "cant",
    "nil", "none",
)  # fmt: skip


def denied(scene: Scene, first: int, after: int) -> bool:
    """True where the hit at tokens `first`..`after` is denied: "not a freezer", "no washdown", "forklifts never"."""
    sentence = scene.sentence_of(first)
    than = False
    for at in range(first - 1, max(sentence.first, first - _BACK_MOST) - 1, -1):
        word = scene.tokens[at].text
        if word == "than":
            than = True
            continue
        if word in _WALLS:
            break
        if word in ("and", "or", "&"):
            following = scene.tokens[at + 1].text
            if word == "and" and following in _NEW_SUBJECTS:
                break
            continue
        if _denies(scene, at):
            return not than or word in ("rather", "other")
    return _denied_behind(scene, after, sentence.after)


def _denies(scene: Scene, at: int) -> bool:
    word = scene.tokens[at].text
    if (
        word == "no"
        and at + 1 < len(scene.tokens)
        and scene.tokens[at + 1].text in ("problem", "prob", "issue", "worry", ".")
    ):
        return False
    if word == "no" and at + 1 < len(scene.tokens) and scene.tokens[at + 1].text in _NEW_SUBJECTS:
        return False  # the answer "no", and then a sentence of its own
    if word == "not" and at + 1 < len(scene.tokens) and scene.tokens[at + 1].text in ("only", "just", "sure"):
        return False
    if word == "rather" or word == "other" or word == "instead":
        return at + 1 < len(scene.tokens) and scene.tokens[at + 1].text in ("than", "of")
    if word == "free" or word == "outside":
        return at + 1 < len(scene.tokens) and scene.tokens[at + 1].text in ("of", "from", "any")
    return (word,) in scene.lexicon.deny


_HELPING = frozenset(
    {
        "is", "are", "was", "will", "would", "should", "must", "may", "can", "needs", "need", "has", "do", "does",
        "did",
    }
)  # fmt: skip


def _denied_behind(scene: Scene, after: int, end: int) -> bool:
    words = [scene.tokens[at].text for at in range(after, min(end, after + 4))]
    if not words:
        return False
    if words[:2] == ["-", "free"]:
        return True
    if words[0] in _HELPING:
        words = words[1:]
    if words[:1] and words[0] in _BEHIND:
        return words[0] != "no" or words[1:2] in (["longer"], ["go"], ["way"])
    return words[:2] in (["out", "of"], ["go", "round"], ["go", "around"], ["stay", "out"], ["keep", "out"]) or words[
        :1
    ] == ["unnecessary"]


def hedged(scene: Scene, first: int) -> bool:
    """True where the visitor is not sure in the sentence of token `first`."""
    text = f" {scene.sentence_text(first)} "
    return any(f" {' '.join(words)} " in text for words in scene.lexicon.lists.get("hedges", ()))


def hedged_clause(scene: Scene, first: int, after: int) -> bool:
    """True where the visitor is not sure in the clause around the tokens `first`..`after`."""
    sentence = scene.sentence_of(first)
    begin, end = first, after
    while begin > sentence.first and scene.tokens[begin - 1].text not in (",", ";", "(", ":", "but"):
        begin -= 1
    while end < sentence.after and scene.tokens[end].text not in (",", ";", ")", "but"):
        end += 1
    text = f" {scene.words(begin, min(end, begin + 60))} "
    return any(f" {' '.join(words)} " in text for words in scene.lexicon.lists.get("hedges", ()))


def hedges_in(scene: Scene, text: str) -> bool:
    """True where a line of plain words has a hedge."""
    padded = f" {text} "
    return any(f" {' '.join(words)} " in padded for words in scene.lexicon.lists.get("hedges", ()))
