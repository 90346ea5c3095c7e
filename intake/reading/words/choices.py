"""Choices and yes or no, from the words of the questions folder, with what is denied left out or turned round."""

import re
from collections.abc import Callable

from intake.reading.message.denial import denied, hedged_clause
from intake.reading.message.lexicon import SWALLOWED, Hit
from intake.reading.message.scene import Draft, Scene
from intake.reading.message.travelling import Travelling
from intake.reading.words.fills import fill_drafts
from intake.reading.words.fitting import CLEANING, fits
from intake.reading.words.food import food_drafts
from intake.reading.words.keyed_words import keyed_drafts
from intake.reading.words.permission import permission_drafts
from intake.reading.words.trials import trial_drafts
from intake.reading.words.yes_or_no import split, spoken, unknown
from intake.spec.vocabulary import vocabulary

_OWN_MODULES = frozenset({"product.type", "product.surface", "rise.direction", "rise.turn"})
_SIZE_OF = {"forklift": 3, "pallet_truck": 2, "people": 1, "none": 0}


def choice_drafts(scene: Scene, who: Travelling) -> list[Draft]:
    """Facts of all choice, yes-or-no and worded figure fields that the words decide."""
    by_field: dict[str, list[Hit]] = {}
    for hit in scene.hits:
        if hit.field not in _OWN_MODULES and hit.value != SWALLOWED and _counts(scene, hit):
            by_field.setdefault(hit.field, []).append(hit)
    known = vocabulary()
    found: list[Draft] = fill_drafts(scene)
    if found or "product.fill" not in scene.asked:
        by_field.pop("product.fill", None)
    for name, hits in by_field.items():
        field = known.get(name)
        if field is None:
            continue
        if field.kind == "yes_no":
            draft = _yes_no(scene, name, hits, who)
        elif field.is_number:
            draft = _worded_figure(scene, name, hits)
        else:
            draft = _choice(scene, name, hits, who)
        if draft is not None:
            found.append(draft)
    return found + [
        draft
        for draft in (*permission_drafts(scene), *food_drafts(scene), *trial_drafts(scene), *keyed_drafts(scene))
        if _may_say(scene, draft.field)
    ]


def _may_say(scene: Scene, name: str) -> bool:
    """False where the answer itself says yes or no to the field, or says that nothing is known."""
    return name not in scene.asked or not (unknown(scene) or _spoken_for(scene, name))


def _counts(scene: Scene, hit: Hit) -> bool:
    """Live words; and "where do we ship them?" is an answer to the question about samples."""
    asks_back = hit.field == "project.samples" and hit.field in scene.asked and scene.status[hit.first] == "asked"
    of_the_old = (
        hit.field == "project.purpose" and hit.field in scene.asked and scene.status[hit.first] in ("past", "other")
    )
    told_of = hit.field in scene.asked and hit.field.startswith("handling.") and scene.status[hit.first] == "other"
    return asks_back or of_the_old or told_of or scene.live(hit.first)


def _draft(scene: Scene, name: str, hit: Hit, value: str | bool) -> Draft:
    start, end = scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end
    return Draft(name, start, end, value=value, at=hit.first, hedged=hedged_clause(scene, hit.first, hit.after))


def _denies_inside(scene: Scene, hit: Hit) -> bool:
    return any((scene.tokens[n].text,) in scene.lexicon.deny for n in range(hit.first + 1, hit.after))


def _yes_no(scene: Scene, name: str, hits: list[Hit], who: Travelling) -> Draft | None:
    asked = name in scene.asked
    if asked and (split(scene) or (name != "product.closed" and not _may_say(scene, name))):
        return None
    votes: list[tuple[Hit, bool]] = []
    for hit in hits:
        if not fits(scene, name, hit, who):
            continue
        negative = denied(scene, hit.first, hit.after)
        if hit.value == "yes":
            votes.append((hit, not (negative or _denies_inside(scene, hit))))
        elif not negative:
            votes.append((hit, False))
        elif asked:
            votes.append((hit, True))
    if not votes:
        return None
    if len({vote for _, vote in votes}) > 1:
        heaviest = max(hit.weight for hit, _ in votes)
        votes = [vote for vote in votes if vote[0].weight == heaviest]
        if len({vote for _, vote in votes}) > 1:
            return None
    return _draft(scene, name, *votes[0])


def _spoken_for(scene: Scene, name: str) -> bool:
    said = spoken(scene, name)
    return said is not None and said.strong


_PLACES = frozenset(
    {"above", "below", "next", "at", "under", "behind", "beside", "away", "now", "after", "before", "over", "out"}
)
"""Behind them "right" is no side: "right above the infeed"."""


def _worded_figure(scene: Scene, name: str, hits: list[Hit]) -> Draft | None:
    for hit in hits:
        if any(group.first < hit.after and hit.first < group.after for group in scene.groups):
            continue
        if denied(scene, hit.first, hit.after) or (name == "rise.height" and not _speaks_of_height(scene, hit)):
            continue
        behind = scene.norms[hit.after] if hit.after < len(scene.norms) else ""
        if name == "rise.turn" and scene.norms[hit.after - 1] == "right" and behind in _PLACES:
            continue
        value = float(hit.value)
        draft = _draft(scene, name, hit, "")
        draft.value, draft.low, draft.high, draft.rank = None, value, value, 3
        return draft
    return None


def _speaks_of_height(scene: Scene, hit: Hit) -> bool:
    text = scene.sentence_text(hit.first)
    return (
        hit.weight >= 3
        or "rise.height" in scene.asked
        or re.search(r"\b(?:end|in ?feed|discharge|conveyor|both|in and out)\b", text) is not None
    )


def _choice(scene: Scene, name: str, hits: list[Hit], who: Travelling) -> Draft | None:
    if name == "product.fill":
        both = _both_fills(scene, hits)
        if both is not None:
            return _draft(scene, name, both, "both")
    good = [hit for hit in hits if not _is_denied(scene, name, hit) and fits(scene, name, hit, who)]
    values = {hit.value for hit in good}
    if not good:
        return None
    if len(values) > 1:
        settle = _SETTLE.get(name)
        chosen = settle(scene, good) if settle else _heaviest(scene, good)
        if chosen is None:
            return None
        return _draft(scene, name, chosen, chosen.value)
    return _draft(scene, name, good[0], good[0].value)


def _both_fills(scene: Scene, hits: list[Hit]) -> Hit | None:
    """ "161 lb full, empties come back": both run."""
    empty = next((hit for hit in hits if hit.value == "empty" and not denied(scene, hit.first, hit.after)), None)
    full = any(hit.value == "full" for hit in hits) or "full" in scene.norms or "filled" in scene.norms
    return empty if empty is not None and full else None


def _is_denied(scene: Scene, name: str, hit: Hit) -> bool:
    inside = name == "space.passage" and hit.value != "none" and _denies_inside(scene, hit)
    return inside or denied(scene, hit.first, hit.after)


def _heaviest(scene: Scene, hits: list[Hit]) -> Hit | None:
    """The one phrase that demands most words, where there is one."""
    most = max(hit.weight for hit in hits)
    best = [hit for hit in hits if hit.weight == most]
    return best[0] if len({hit.value for hit in best}) == 1 else None


def _largest(scene: Scene, hits: list[Hit]) -> Hit | None:
    return max(hits, key=lambda hit: _SIZE_OF.get(hit.value, 0))


def _method(scene: Scene, hits: list[Hit]) -> Hit | None:
    said = {scene.words(hit.first, hit.after).replace(" - ", " "): hit for hit in hits}
    for words, hit in said.items():
        if "pressure" in words or "in place" in words or "cip" in words:
            return (
                hit
                if len({h.value for w, h in said.items() if "pressure" in w or "in place" in w or "cip" in w}) == 1
                else None
            )
    values = {hit.value for hit in hits}
    if values == {"low_pressure", "high_pressure"}:  # "washed down with a hose"
        return next(hit for hit in hits if hit.value == "low_pressure")
    if values == {"dry", "wipe"}:
        return next(hit for hit in hits if hit.value == "wipe")
    return None


def _chemicals(scene: Scene, hits: list[Hit]) -> Hit | None:
    values = {hit.value: hit for hit in hits}
    if "none" in values and len(values) > 1:
        text = scene.sentence_text(values["none"].first)
        if not re.search(
            r"\b(?:otherwise|rest of|other day|in between|sometime|normally|usually|stronger"
            r"|harsher|other|except|beyond|but|besides)\b",
            text,
        ):
            return None
        values.pop("none")
    return values.get("caustic_or_acid") or next(iter(values.values()))


def _frequency(scene: Scene, hits: list[Hit]) -> Hit | None:
    if "cleaning.frequency" in scene.asked:
        return hits[0]
    order = ("each_changeover", "each_shift", "daily", "weekly", "rarely")
    return (
        min(hits, key=lambda hit: order.index(hit.value))
        if len({hit.value for hit in hits}) == 1
        else _near_cleaning(scene, hits)
    )


def _near_cleaning(scene: Scene, hits: list[Hit]) -> Hit | None:
    near = [
        hit
        for hit in hits
        if CLEANING.search(scene.words(max(scene.sentence_of(hit.first).first, hit.first - 8), hit.first))
    ]
    return near[0] if len({hit.value for hit in near}) == 1 else None


_SETTLE: dict[str, Callable[[Scene, list[Hit]], Hit | None]] = {
    "space.passage": _largest,
    "cleaning.method": _method,
    "cleaning.chemicals": _chemicals,
    "cleaning.frequency": _frequency,
}


def open_draft(scene: Scene, who: Travelling, said: set[str]) -> list[Draft]:
    """ "Trays of seedlings, 9 lb, open": the word alone between commas says that the product is not closed."""
    if "product.closed" in said or (who.kind is None and "product.closed" not in scene.asked):
        return []
    for at, norm in enumerate(scene.norms):
        if norm != "open" or not scene.live(at):
            continue
        noun = next((m for m in who.mentions if at < m.first <= at + 2), None)
        if (
            noun is not None
            and noun.value == who.kind
            and all(scene.tokens[n].kind == "word" for n in range(at, noun.first))
        ):
            token = scene.tokens[at]
            return [Draft("product.closed", token.start, token.end, value=False, at=at)]
        before = scene.norms[at - 1] if at else ","
        behind = scene.norms[at + 1] if at + 1 < len(scene.norms) else "."
        stands = before in (",", "they're", "theyre", "(", "and", ";", ".") or at == 0
        if stands and behind in (",", ".", ")", ";", "!", "\n", "so", "at"):
            token = scene.tokens[at]
            return [Draft("product.closed", token.start, token.end, value=False, at=at)]
    return []
