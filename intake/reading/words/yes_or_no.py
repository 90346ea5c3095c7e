"""Yes and no as answers to the field asked, wherever in the answer they stand, and answers that give nothing."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from intake.reading.message.denial import hedges_in
from intake.reading.message.plain import Plain, answer_of
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.words.spoken_words import (
    BOTH_WAYS,
    GIVES_NOTHING,
    HEAD,
    LEAD,
    LEAVE,
    NOT_SURE,
    ONLY_IF,
    SHORT_TAIL,
    SPLIT,
    TAIL,
    WEAK,
)
from intake.spec.vocabulary import vocabulary

_NO_MEANS = {"space.passage": "none", "cleaning.chemicals": "none"}
PERMISSIONS = frozenset(
    {
        "handling.squeeze", "handling.invert", "handling.turn_flat", "handling.press_top", "rate.backs_up",
        "project.samples", "site.air", "test.transfers",
    }
)  # fmt: skip
"""Questions to which "no problem" is a yes; to those about a hazard or a hurt it is a no."""
HAZARDS = frozenset({"handling.fragile", "site.hazardous_area", "cleaning.exposed_food", "product.wet"})


@dataclass(frozen=True, slots=True)
class Spoken:
    """Yes or no, and the tokens that say it."""

    value: bool
    first: int
    after: int
    hedged: bool
    strong: bool
    """False where other words of the answer may know "
    "better: "nothing ..." and "can't ..." as the head of a sentence."""


def unknown(scene: Scene) -> bool:
    """True where the message says that the answer is not known or follows later."""
    text = f" {scene.words(0, min(len(scene.norms), 60))} "
    plain = f" {' '.join(token.text for token in scene.tokens[:60])} "
    return (
        any(
            f" {' '.join(words)} " in text or f" {' '.join(words)} " in plain
            for words in scene.lexicon.lists.get("unknown", ())
        )
        or GIVES_NOTHING.search(plain.strip()) is not None
    )


def split(scene: Scene) -> bool:
    """True where the answer is yes for some and no for others, or depends."""
    text = answer_of(scene).text
    return (SPLIT.search(text) is not None or BOTH_WAYS.search(text) is not None) and not re.match(
        rf"{LEAD}(?:no|nope|never|yes|yep)\b *[,.!-]", text
    )


def spoken(scene: Scene, name: str) -> Spoken | None:
    """The yes or no that the answer to `name` opens or closes with; None where it has none, or has it both ways."""
    said = answer_of(scene)
    text = said.text
    if not text or BOTH_WAYS.search(text) or ONLY_IF.match(text):
        return None
    if SPLIT.search(text) and not re.match(rf"{LEAD}(?:no|nope|never|yes|yep)\b *[,.!-]", text):
        return None
    found = _head(said, name) or _tail(said, name) or _between(said, name, scene.asked)
    if found is None:
        return None
    value, first, after = found
    if unknown(scene) and not _sure_all_the_same(text, first):
        return None
    unsure = hedges_in(scene, text) or NOT_SURE.search(text) is not None
    return Spoken(value, first, after, unsure, _stands_alone(scene, first, after))


def _stands_alone(scene: Scene, first: int, after: int) -> bool:
    words = " ".join(token.text for token in scene.tokens[first:after])
    behind = scene.tokens[after].text if after < len(scene.tokens) else "."
    return WEAK.fullmatch(words) is None or not (behind[0].isalnum() or behind == "-")


def _sure_all_the_same(text: str, first: int) -> bool:
    """ "Probably not, but would have to ask" is an answer; "no idea, let me ask" is none."""
    if re.match(
        r"^(?:\W|well|hm+|oh)*(?:no idea|no clue|not sure|don't|dont|can't|never|none|nobody|no one|n /)", text
    ):
        return re.search(r"\b(?:but|though|guess|think|suppose|say)\b.* (?:yes|no|ok|not)\b", text) is not None
    return first < 6


def _head(said: Plain, name: str) -> tuple[bool, int, int] | None:
    """What the answer opens with. Of a run ("no, no problem", "no, sorry, yes") the last word counts."""
    place, found = 0, None
    for _ in range(4):
        match = HEAD.match(said.text, place)
        if match is None or match.end() == place:
            break
        if match["echo"] and found is not None:
            break
        value = _value(match, name)
        if value is None or (match["trouble"] and found is not None and name not in PERMISSIONS):
            break
        start = next(match.start(group) for group in ("trouble", "no", "yes", "echo") if match[group])
        if found is not None and WEAK.fullmatch(match["no"] or "") is not None:
            break  # "fine, nothing inside can move"
        if found is not None and not _joins(said.text[place:start]):
            break
        found = (value, said.token_at(start), said.token_at(match.end() - 1) + 1)
        place = match.end()
    return found


_ALONE = re.compile(
    r"(?:^|[,.;:\n])\s*(?:(?P<no>no|nope|nah|none|negative)|(?P<yes>yes|yep|yeah|yup))\s*(?=$|[,.;:\n])"
)


def _between(said: Plain, name: str, asked: Sequence[str]) -> tuple[bool, int, int] | None:
    """ "Ambient, nope, dry": of several things asked at once the only yes or no has a clause of its own."""
    if len(asked) < 2 or [one for one in asked if vocabulary()[one].kind == "yes_no"] != [name]:
        return None
    found = list(_ALONE.finditer(said.text))
    if len({match["no"] is None for match in found}) != 1:
        return None
    group = "yes" if found[0]["no"] is None else "no"
    start, end = found[0].span(group)
    return group == "yes", said.token_at(start), said.token_at(end - 1) + 1


def _joins(between: str) -> bool:
    """A run goes on over commas and small words, not over a full stop."""
    return "." not in between and ";" not in between


def _value(match: re.Match[str], name: str) -> bool | None:
    if match["trouble"]:
        if (
            re.match(r"no (?:damage|effect|limit|restriction|consequence)", match["trouble"])
            and name == "product.closed"
        ):
            return None
        return True if name in PERMISSIONS else (False if name in HAZARDS else None)
    if match["no"]:
        return False
    if match["yes"]:
        return None if name not in PERMISSIONS and LEAVE.match(match["yes"]) else True
    return match["echo_no"] is None


def _tail(said: Plain, name: str) -> tuple[bool, int, int] | None:
    """What the answer closes with: "... so I would say yes", "... that's a no from me"."""
    offset, match = 0, None
    for piece in re.finditer(r"[^.!?;]+[.!?;]?", said.text):
        match = TAIL.search(piece.group()[-240:])
        if match is None and piece.group().count(" ") < 10:
            match = SHORT_TAIL.search(piece.group())
        if match is not None:
            offset = piece.start() + max(0, len(piece.group()) - 240)
            break
    if match is None:
        return None
    word = match["word"]
    if name not in PERMISSIONS and LEAVE.match(word):
        return None
    bare = re.search(r"\b(?:no|nope|nah|negative|never|not|forbidden|impossible)\b", word) is not None
    value = not bare or word.startswith(("no problem", "no issue"))
    start = offset + match.start("word")
    return value, said.token_at(start), said.token_at(offset + match.end("word") - 1) + 1


def yes_or_no(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    """Yes or no to the one yes-or-no field asked; to several only where the answer speaks of all of them."""
    wanted = [name for name in fields if vocabulary()[name].kind == "yes_no"]
    none = [name for name in fields if name in _NO_MEANS]
    if not wanted and not none:
        return []
    name = (wanted or none)[0]
    said = spoken(scene, name)
    if said is None:
        return []
    start, end = scene.tokens[said.first].start, scene.tokens[said.after - 1].end
    words = answer_of(scene).text
    if len(wanted) == 1 or (
        wanted and re.search(r"\b(?:both|all|either|everything|every one)\b|^(?:yes|no)\W*$", words)
    ):
        return [Draft(each, start, end, value=said.value, at=said.first, hedged=said.hedged) for each in wanted]
    if not wanted and not said.value and len(fields) == 1:
        return [Draft(none[0], start, end, value=_NO_MEANS[none[0]], at=said.first)]
    return []
