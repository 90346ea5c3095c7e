"""Yes and no as answers to the field asked, and answers that say that nothing is known."""

import re

from intake.reading.scene import Draft, Question, Scene
from intake.spec.vocabulary import vocabulary

_NO_MEANS = {"space.passage": "none", "cleaning.chemicals": "none"}
_SKIP = frozenset({"well", "um", "uh", "oh", "hmm", "so", "hi", "hey", "ah", "yeah", ","})


def unknown(scene: Scene) -> bool:
    """True where the message says that the answer is not known or follows later."""
    text = f" {scene.words(0, min(len(scene.norms), 60))} "
    plain = f" {' '.join(token.text for token in scene.tokens[:60])} "
    return any(
        f" {' '.join(words)} " in text or f" {' '.join(words)} " in plain
        for words in scene.lexicon.lists.get("unknown", ())
    )


def _opening(scene: Scene) -> tuple[str, int, int] | None:
    """ "yes" or "no" at the head of the message, and the tokens that say it."""
    at = 0
    while at < min(4, len(scene.tokens)) and scene.tokens[at].text in _SKIP and scene.tokens[at].text != "yeah":
        at += 1
    best: tuple[int, str] | None = None
    for value in ("yes", "no"):
        for words in scene.lexicon.lists.get(value, ()):
            here = tuple(token.text for token in scene.tokens[at : at + len(words)])
            if here == words and (best is None or len(words) > best[0]):
                best = len(words), value
    if best is None:
        return None
    return best[1], at, at + best[0]


def yes_or_no(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    wanted = [name for name in fields if vocabulary()[name].kind == "yes_no"]
    none = [name for name in fields if name in _NO_MEANS]
    opening = _opening(scene)
    if opening is None or not scene.tokens or scene.status[opening[1]] in ("quoted", "signed"):
        return []
    value, first, after = opening
    if unknown(scene) and value == "no":
        return []
    start, end = scene.tokens[first].start, scene.tokens[after - 1].end
    words = scene.words(0, min(len(scene.norms), 40))
    unsure = any(f" {' '.join(w)} " in f" {words} " for w in scene.lexicon.lists.get("hedges", ())) or re.search(
        r"\b(?:only if|as long as|unless|if|depends|mostly|usually|sometimes|but)\b", words
    )
    if re.match(r"^(?:yes|no)\b.*\b(?:no|yes)\b,? (?:for|on|with) ", words):
        return []
    if len(wanted) == 1 or (
        wanted and re.search(r"\b(?:both|all|either|everything|every one)\b|^(?:yes|no)\W*$", words)
    ):
        return [Draft(name, start, end, value=value == "yes", at=first, hedged=bool(unsure)) for name in wanted]
    if value == "no" and len(none) == 1 and len(fields) == 1 and len(scene.tokens) <= 6:
        return [Draft(none[0], start, end, value=_NO_MEANS[none[0]], at=first)]
    return []
