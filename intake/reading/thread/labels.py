"""Which labels at line beginnings are speakers, and which are the keys of a list of facts ("Size: 12x10")."""

import re
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path

from intake.reading.message.lexicon import lexicon_of
from intake.reading.thread.heads import Head
from intake.reading.thread.label_words import KEYS, NEVER_KEYS, STOPS
from intake.reading.thread.lines import Line
from intake.reading.thread.roles import Role, key_of, role_of
from intake.spec.display import label
from intake.spec.vocabulary import vocabulary

_TALK = re.compile(
    r"\?|^\W*(?:hi|hello|hey|yes|no|ok|okay|sure|thanks|thank you|yep|yeah|nope"
    r"|great|good|perfect|sorry|done|right|fine"
    r"|correct|welcome|bye|not sure|no idea|maybe|about)\b",
    re.IGNORECASE,
)
_WORDS = re.compile(r"[^\W\d_][\w'’-]+")
_PROPER = re.compile(
    r"[^\W\d_a-z][\w.'’-]*\.?(?: (?:(?:van|von|de|der|la|di|el|al|du|bin) )*[^\W\d_a-z][\w.'’-]*\.?){0,3}"
)
_HANDLE = re.compile(r"[a-z][\w.-]{1,24}\d{0,6}", re.IGNORECASE)
_ACCEPT = 3
_PAIRS = ({"q", "a"}, {"c", "a"}, {"v", "s"}, {"v", "a"}, {"c", "s"}, {"v", "r"}, {"c", "r"})
"""Single letters that stand for two speakers."""
LETTERS: dict[str, Role] = {"q": "staff", "a": "staff", "r": "staff", "s": "staff", "c": "visitor", "v": "visitor"}


@dataclass(slots=True)
class Evidence:
    """What speaks for one label being a speaker."""

    name: str
    role: Role | None
    heads: list[Head] = field(default_factory=list)
    bodies: list[str] = field(default_factory=list)
    score: int = 0

    @property
    def talks(self) -> float:
        """Share of its lines that are said to somebody."""
        said = [body for body in self.bodies if _TALK.search(body) or len(_WORDS.findall(body)) >= 4]
        return len(said) / max(len(self.bodies), 1)


def speaking_heads(
    lines: list[Line], heads: list[list[Head]], folder: Path, known: frozenset[str]
) -> dict[int, tuple[Head, Role | None]]:
    """The head of each line on which somebody begins to speak, with the side that its label tells.

    `known`: keys of names that notices told of.
    """
    found = _evidence(lines, heads)
    words = lexicon_of(folder).known
    for key, evidence in found.items():
        evidence.score = _score(key, evidence, words, key in known)
    good = {key for key, evidence in found.items() if evidence.score >= _ACCEPT} | _letters(found)
    good = _conversing(good, found, known)
    good |= _beside(good, found, words, lines) if good else set()
    chosen: dict[int, Head] = {}
    for n, row in enumerate(heads):
        head = next((head for head in row if key_of(head.name) in good), None)
        if head is not None:
            chosen[n] = head
    return {n: (head, found[key_of(head.name)].role) for n, head in _one_family(chosen, found).items()}


def _evidence(lines: list[Line], heads: list[list[Head]]) -> dict[str, Evidence]:
    found: dict[str, Evidence] = {}
    for n, row in enumerate(heads):
        seen: set[str] = set()
        for head in row:
            key = key_of(head.name)
            if not key or key in seen:
                continue
            seen.add(key)
            evidence = found.setdefault(key, Evidence(head.name, role_of(head.name)))
            evidence.role = evidence.role or role_of(head.name)
            evidence.heads.append(head)
            below = n + head.lines
            line = lines[n] if head.begin < lines[n].end else lines[below] if below < len(lines) else None
            if line is not None and line is not lines[n] and heads[below]:
                line = None  # another label stands there
            evidence.bodies.append("" if line is None else line.text[max(head.begin - line.start, 0) :][:300])
    return found


def _score(key: str, evidence: Evidence, known: frozenset[str], told: bool) -> int:
    words = key.replace("_", " ").replace("/", " ").split()
    count = len(evidence.heads)
    timed = any(head.timed for head in evidence.heads)
    score = 3 if timed else 0
    score += 6 if words[0] in NEVER_KEYS and evidence.role else 4 if evidence.role else 0
    score += min(count - 1, 2) + (count > 1)
    score += 3 if told else 0
    score += any(head.form in ("angle", "square", "marked") for head in evidence.heads)
    if evidence.role is None:
        score += _looks_like_a_name(evidence.name, key, words, known, timed, count)
    share = evidence.talks
    score += 2 if share >= 0.5 else 0
    if not timed and share < 0.3 and (evidence.role is not None or count < 2 or not _PROPER.fullmatch(evidence.name)):
        score -= 2
    return score


def _looks_like_a_name(name: str, key: str, words: list[str], known: frozenset[str], timed: bool, count: int) -> int:
    """How much the words of a label look like somebody's name; well below zero for the key of a list."""
    if not words or len(words) > 5 or any(word in STOPS for word in words):
        return -8
    keys = [word.strip(".()#") in KEYS for word in words]
    if (keys[0] and key != "max") or key in _FIELD_NAMES or (any(keys[1:]) and count == 1 and not timed):
        return -3 if timed and count > 1 else -6  # "Ann Price" may be somebody, "Overall height" is nobody
    if any(sign.isdigit() for sign in key) and not timed and not (count > 1 and _HANDLE.fullmatch(name)):
        return -4
    proper = _PROPER.fullmatch(name) is not None
    common = all(word in known for word in words)
    return (1 if proper else 0) - (2 if common and not proper else 1 if common else 0) - (len(key) < 2) * 4


def _beside(good: set[str], found: dict[str, Evidence], words: frozenset[str], lines: list[Line]) -> set[str]:
    """Who says little, in the form in which others speak: the other side, or a name that is no word of the trade."""
    forms = {_family(head) for key in good for head in found[key].heads}
    roles = {found[key].role for key in good} - {None}
    return {
        key
        for key, row in found.items()
        if key not in good
        and _family(row.heads[0]) in forms
        and (
            (row.role is not None and row.score >= _ACCEPT - 1 and bool(roles - {row.role}))
            or (_may_be_somebody(key, row, words) and (row.score > 0 or _marked(row) or _answers(row, lines)))
        )
    }


def _may_be_somebody(key: str, row: Evidence, words: frozenset[str]) -> bool:
    parts = key.split()
    return (
        _PROPER.fullmatch(row.name) is not None
        and parts[0] not in KEYS
        and (row.score > -4 or _marked(row))
        and not all(word in words for word in parts)
    )


def _marked(row: Evidence) -> bool:
    return row.heads[0].form in ("angle", "square", "marked")


def _answers(row: Evidence, lines: list[Line]) -> bool:
    """True where it stands below a question: there somebody answers."""
    at = row.heads[0].line - 1
    while at >= 0 and lines[at].blank:
        at -= 1
    return at >= 0 and lines[at].text.rstrip().endswith("?")


def _letters(found: dict[str, Evidence]) -> set[str]:
    """Two single letters that take turns: Q and A, C and A."""
    for pair in _PAIRS:
        rows = [found[key] for key in sorted(pair) if key in found]
        if len(rows) == 2 and any(row.talks >= 0.5 for row in rows):
            for row in rows:
                row.role = LETTERS[key_of(row.name)] if "q" not in pair or key_of(row.name) == "q" else "visitor"
            return set(pair)
    return set()


def _conversing(good: set[str], found: dict[str, Evidence], known: frozenset[str]) -> set[str]:
    """The speakers, or nobody where too little shows that people speak to each other."""
    if not good:
        return set()
    rows = [found[key] for key in good]
    timed = sum(len(row.heads) for row in rows if any(head.timed for head in row.heads))
    if len(rows) == 1 and len(rows[0].heads) == 1 and not timed and rows[0].role:
        sure = key_of(rows[0].name).split()[0] in NEVER_KEYS
        return good if sure or len(_WORDS.findall(rows[0].bodies[0])) >= 4 else set()
    if timed >= 2 or any(row.role for row in rows) or good & known:
        return good
    if len(rows) == 1:
        lone = rows[0]
        return good if len(lone.heads) > 1 or lone.heads[0].form in ("stamp_first", "stamp_behind") else set()
    talks = any(_TALK.search(body) for row in rows for body in row.bodies)
    return good if talks or all(_marked(row) for row in rows) else set()


def _one_family(chosen: dict[int, Head], found: dict[str, Evidence]) -> dict[int, Head]:
    """The heads of the form that the log has; another form counts only for somebody who speaks in that one too."""
    counts: dict[str, int] = defaultdict(int)
    for head in chosen.values():
        counts[_family(head)] += 1
    if len(counts) < 2:
        return chosen
    main = max(counts, key=lambda family: (counts[family], family != "label"))
    speakers = {key_of(head.name) for head in chosen.values() if _family(head) == main}
    kept = {}
    for n, head in chosen.items():
        key = key_of(head.name)
        if _family(head) == main or key in speakers or (found[key].role and main == "label"):
            kept[n] = head
    return kept


def _family(head: Head) -> str:
    return head.form


_FIELD_NAMES = frozenset(label(name, 1) for name in vocabulary())
