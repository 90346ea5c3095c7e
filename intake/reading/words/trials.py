"""Samples for a test: offered, promised or refused."""

import re

from intake.reading.message.denial import hedges_in
from intake.reading.message.plain import Plain, plain
from intake.reading.message.scene import Draft, Scene

_SAMPLE = re.compile(
    r"\b(?:samples?|sampling|smpls?|test (?:pieces?|product|material|goods|items|packs?|cases)|trial (?:product|packs?"
    r"|pieces?))\b"
    r"(?! (?:quot\w+|size|rate|draw\w+|layout|offer|pric\w+|report|order|calculation|of your|machine|photo"
    r"|video|belt|contract|port|valve|tap|point))"
)
_TRIAL = re.compile(
    r"\b(?:to try(?! (?:and|to|your))|to test(?! (?:the|your) (?:machine|line|wiring))|to play with|for (?:a "
    r"|your |the |some )?(?:test|tests|testing|trial|trials|trial run|try out)|test lab|trial run"
    r"|try (?:\w+ ){0,3}(?:at|in) your|your (?:test )?lab)\b"
)
_GIVE = re.compile(
    r"\b(?:send\w*|sent|ship\w*|mail\w*|courier\w*|post\w*|parcel\w*|bring\w*|supply|supplied|provid\w+|drop\w*"
    r"|spare|lend|hand|put|have|get|express\w*|give|giv\w+|deliver\w*|let you have|you can|travel)\b"
)
_NOT_GIVEN = re.compile(
    r"\b(?:no|not|cannot|cant|dont|wont|never|none|impossible|refus\w+|forbid\w*|forbidden|unable|without|until"
    r"|nda|secret|confidential|too expensive|unavailable|impossible)\b|n't\b"
)
_GIVEN = re.compile(
    r"\b(?:can|could|will|would|may|happy|glad|available|avail|ready|sure|fine|yes|ok|okay|of course|on request"
    r"|on (?:their|its|the) way|free|gladly|possible|any time|no problem|whenever|already|want|need|like|sent"
    r"|shipped|as many)\b|with you by|'ll\b|'d\b"
)
_NO_TROUBLE = re.compile(r"\b(?:no|not a|not an|without) (?:problem|issue|trouble|worries|big deal)s?\b")
_OF_OURS = re.compile(
    r"\b(?:we take|qa|qc|quality (?:control|takes)|every hour|from your|of your|your samples?"
    r"|you (?:send|ship|mail|have)|send (?:me|us)|lab (?:takes|pulls))\b"
)


def trial_drafts(scene: Scene) -> list[Draft]:
    """Whether product can be had for a test."""
    shadow = scene.shadow
    if (
        "sampl" not in shadow
        and "smpl" not in shadow
        and "test" not in shadow
        and "tri" not in shadow
        and "try" not in shadow
        and "lab" not in shadow
    ):
        return []
    for sentence in scene.sentences:
        if not 1 < sentence.after - sentence.first <= 120:
            continue
        words = plain(scene, sentence.first, sentence.after)
        found = _offer(scene, words)
        if found is not None:
            return [found]
    return []


def _offer(scene: Scene, words: Plain) -> Draft | None:
    named, trial = _SAMPLE.search(words.text), _TRIAL.search(words.text)
    match = named or trial
    if match is None or (named is None and not _GIVE.search(words.text)) or _OF_OURS.search(words.text):
        return None
    first = words.token_at(match.start())
    if scene.status[first] not in ("", "asked"):
        return None
    if scene.status[first] == "asked" and not re.search(
        r"\b(?:alright|ok|okay|right|if you (?:want"
        r"|like))\W*$",
        words.text,
    ):
        return None
    clause = _clause(words.text, match)
    if _NO_TROUBLE.search(clause):
        value = True
    elif _NOT_GIVEN.search(clause):
        value = False
    elif (
        _GIVEN.search(clause)
        or (named is None and _GIVE.search(clause))
        or (named and re.search(r"\b(?:send|ship|mail|bring|supply)\b", clause))
    ):
        value = True
    else:
        return None
    return Draft(
        "project.samples", scene.tokens[first].start, scene.tokens[words.token_at(match.end() - 1)].end, value=value,
        at=first, hedged=hedges_in(scene, clause), rank=1,
    )  # fmt: skip


def _clause(text: str, match: re.Match[str]) -> str:
    """The clause around the word, and the next one where this says nothing: "test pieces ? sure"."""
    walls = [m for m in re.finditer(r"[;.!?]| but | and (?=we|it|the|they|you)|, (?=they|it|the|weight|we)", text)]
    begin = max((m.end() for m in walls if m.end() <= match.start()), default=0)
    end = min((m.start() for m in walls if m.start() >= match.end()), default=len(text))
    return text[begin:end]
