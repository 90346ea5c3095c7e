"""Reading one message: text -> facts, doubts, and what was not used."""

import os
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from intake.reading.doubts import sentence
from intake.reading.facts.answers import answer_drafts
from intake.reading.facts.answers_in_words import floor_level_drafts
from intake.reading.facts.contact import contact_drafts
from intake.reading.facts.corrections import apply_corrections
from intake.reading.facts.counts import count_drafts
from intake.reading.facts.deadlines import deadline_questions
from intake.reading.facts.dimensions import dimension_drafts
from intake.reading.facts.extremes import join_extremes
from intake.reading.facts.headings import heading_drafts
from intake.reading.facts.hours import hours_drafts, shifts_question
from intake.reading.facts.lengths import length_drafts
from intake.reading.facts.masses import mass_drafts
from intake.reading.facts.pace import pace_drafts
from intake.reading.facts.shared_lengths import share_length_units
from intake.reading.facts.size_tables import table_drafts
from intake.reading.facts.sizes import count_of_sizes, number_sizes
from intake.reading.facts.slopes import slope_drafts, tilt_in_words
from intake.reading.facts.supply import supply_drafts
from intake.reading.facts.temperatures import temperature_drafts
from intake.reading.facts.throughput import rate_drafts
from intake.reading.facts.weeks import weeks_drafts
from intake.reading.message.scene import Draft, Question, Scene, scene_of
from intake.reading.message.travelling import travelling
from intake.reading.text.portions import portions
from intake.reading.unread import unread_pieces
from intake.reading.words.choices import choice_drafts, open_draft
from intake.reading.words.directions import direction_drafts
from intake.reading.words.materials import surface_drafts
from intake.spec.facts import Doubt, Fact, Heard
from intake.spec.flat import SPREAD_FIELDS
from intake.spec.folder import questions_folder
from intake.spec.vocabulary import vocabulary


def read(
    text: str,
    asked: str | Sequence[str] | None = None,
    *,
    questions: str | os.PathLike[str] | None = None,
    shorthand: bool = False,
) -> Heard:
    """Facts, doubts and unread pieces of one message.

    `asked`: the field or fields that the message answers. `questions`: a folder with its own words. `shorthand`: the
    text was typed by staff while listening; its short words count too (`shorthand.toml`).
    Never raises on what somebody typed. Raises FolderError for a folder that is none.
    """
    names = (asked,) if isinstance(asked, str) else tuple(asked or ())
    folder = questions_folder(questions)
    heard = [_portion(piece, offset, names, folder, shorthand) for offset, piece in portions(text) if piece.strip()]
    if len(heard) <= 1:
        return heard[0] if heard else Heard()
    return _joined(heard)


def _portion(text: str, offset: int, asked: tuple[str, ...], folder: Path, shorthand: bool) -> Heard:
    """What one portion gives; spans in the whole text."""
    scene = scene_of(text, asked, folder, offset, shorthand=shorthand)
    corrects = apply_corrections(scene)
    share_length_units(scene)
    join_extremes(scene)
    items = _all_items(scene)
    drafts = _asked_first([item for item in items if isinstance(item, Draft)], asked)
    doubts = [item for item in items if isinstance(item, Question)]
    kept, clashes = _settled(drafts)
    facts = tuple(_fact(scene, draft) for draft in sorted(kept, key=lambda d: (d.start, d.field)))
    said = {fact.field for fact in facts if fact.size == 1}
    asked_back = tuple(_doubt(scene, question) for question in [*doubts, *clashes] if question.field not in said)
    places = [(draft.start, draft.end) for draft in kept]
    places += [(question.start, question.end) for question in (*doubts, *clashes)]
    words = frozenset(
        (draft.field, _WORDS.get(draft.value, str(draft.value))) for draft in kept if draft.value is not None
    )
    unread = unread_pieces(scene, places, words)
    return Heard(facts=facts, doubts=_once(asked_back), unread=unread, corrects=corrects)


_WORDS: Mapping[str | bool, str] = {True: "yes", False: "no"}


def _joined(heard: list[Heard]) -> Heard:
    """The portions of a long paste as one: what was said first stands, a different figure later is asked back."""
    facts: dict[tuple[str, int], Fact] = {}
    doubts: list[Doubt] = []
    for part in heard:
        for fact in part.facts:
            first = facts.setdefault((fact.field, fact.size), fact)
            if not first.same_as(fact):
                why, ask = sentence("two_values", fact.said, {"first": first.said, "second": fact.said})
                doubts.append(
                    Doubt(field=fact.field, said=fact.said, why=why, ask=ask, span=fact.span, options=(first, fact))
                )
        doubts += [doubt for doubt in part.doubts if (doubt.field, 1) not in facts]
    return Heard(
        facts=tuple(facts.values()),
        doubts=_once(tuple(doubts)),
        unread=tuple(piece for part in heard for piece in part.unread),
        corrects=any(part.corrects for part in heard),
    )


def _all_items(scene: Scene) -> list[Draft | Question]:
    """Everything that the words give, module by module; each takes the figures that are its own."""
    if not scene.tokens:
        return []
    who, items = travelling(scene)
    directions = direction_drafts(scene)
    down = any(isinstance(d, Draft) and d.value == "down" for d in directions)
    items = [*items, *directions, *contact_drafts(scene)]
    rows = table_drafts(scene)
    items += rows
    items += supply_drafts(scene)
    hours = hours_drafts(scene)
    items += hours
    items += shifts_question(scene, bool(hours))
    dimensions = dimension_drafts(scene, who)
    items += dimensions.drafts
    items += dimensions.questions
    items += rate_drafts(scene, who, hours[0].high if hours else None)
    items += pace_drafts(scene)
    items += mass_drafts(scene, who)
    items += temperature_drafts(scene)
    items += length_drafts(scene, who, down)
    weeks = weeks_drafts(scene)
    items += weeks
    items += deadline_questions(scene, bool(weeks))
    items += slope_drafts(scene)
    items += tilt_in_words(scene)
    items += heading_drafts(scene)
    items += count_drafts(scene, who)
    items += surface_drafts(scene, who)
    items += choice_drafts(scene, who)
    items += open_draft(scene, who, {item.field for item in items})
    if not rows:
        drafts = [item for item in items if isinstance(item, Draft)]
        number_sizes(scene, drafts, dimensions.anchors)
        items += count_of_sizes(scene, drafts, dimensions.anchors)
    items += floor_level_drafts(scene, {item.field for item in items})
    items += answer_drafts(scene, items)
    return items


def _asked_first(drafts: list[Draft], asked: tuple[str, ...]) -> list[Draft]:
    """Words that answer the question asked are not taken for another field as well: a "soft" underside."""
    taken = [(draft.start, draft.end) for draft in drafts if draft.field in asked and draft.value is not None]
    return [
        draft
        for draft in drafts
        if draft.field in asked
        or (draft.value is None and draft.field not in _COUNTED_IN_WORDS)
        or not any(start <= draft.start and draft.end <= end for start, end in taken)
    ]


_COUNTED_IN_WORDS = frozenset({"product.sizes"})
_LEAST_COUNTS = frozenset({"space.ceiling", "space.opening_width", "space.opening_height"})
"""Of two low beams or two doors on the way, the lesser one counts."""
_GREATEST_COUNTS = frozenset({"product.diameter"})
"""Of the rim and the bottom of a tub, the greater one counts."""


def _open_ends(rivals: list[Draft]) -> Draft | None:
    """ "Nothing narrower than 80 mm, nothing wider than 300": two open ends make one range."""
    if len(rivals) != 2:
        return None
    for one, other in (rivals, rivals[::-1]):
        if (
            one.low is not None
            and one.high is None
            and other.low is None
            and other.high is not None
            and one.low < other.high
        ):
            return replace(one, high=other.high, end=max(one.end, other.end))
    return None


def _settled(drafts: list[Draft]) -> tuple[list[Draft], list[Question]]:
    """One draft for each field and size; two different ones of equal rank become a question."""
    by_key: dict[tuple[str, int], list[Draft]] = {}
    for draft in drafts:
        by_key.setdefault((draft.field, draft.size), []).append(draft)
    kept: list[Draft] = []
    clashes: list[Question] = []
    for rivals in by_key.values():
        best = max(draft.rank for draft in rivals)
        rivals = [draft for draft in rivals if draft.rank == best]
        first = rivals[0]
        joined = _open_ends(rivals)
        if joined is not None:
            kept.append(joined)
            continue
        if first.field in _GREATEST_COUNTS:
            kept.append(max(rivals, key=lambda d: d.high if d.high is not None else d.low or 0.0))
            continue
        if first.field in _LEAST_COUNTS:
            kept.append(min(rivals, key=lambda d: d.high if d.high is not None else d.low or 0.0))
            continue
        other = next((draft for draft in rivals[1:] if not _same(first, draft)), None)
        if other is None or not vocabulary()[first.field].is_number:
            kept.append(first)
            continue
        clashes.append(Question(first.field, other.start, other.end, "two_values", {}, (first, other)))
    return kept, clashes


def _same(a: Draft, b: Draft) -> bool:
    if a.value is not None or b.value is not None:
        return a.value == b.value
    pairs = ((a.low, b.low), (a.high, b.high))
    return all(
        (x is None) == (y is None) and (x is None or y is None or abs(x - y) <= 0.021 * max(abs(x), abs(y), 1e-9))
        for x, y in pairs
    )


def _fact(scene: Scene, draft: Draft) -> Fact:
    span = scene.span(draft.start, draft.end)
    low, high = _tidy(draft.low), _tidy(draft.high)
    two_ends = low is not None and high is not None and low != high
    said = scene.folded.said(draft.start, draft.end)
    text = vocabulary()[draft.field].kind == "text"
    return Fact(
        field=draft.field,
        low=low,
        high=high,
        value=said if text else draft.value,
        approx=draft.approx,
        hedged=draft.hedged,
        spread=draft.field in SPREAD_FIELDS and two_ends and not draft.approx,
        said=said,
        span=span,
        size=draft.size,
    )


def _doubt(scene: Scene, question: Question) -> Doubt:
    said = scene.folded.said(question.start, question.end)
    words = dict(question.words)
    if question.id == "two_values":
        pair = [scene.folded.said(option.start, option.end) for option in question.options]
        words = {"first": pair[0], "second": pair[1]}
    why, ask = sentence(question.id, said, words)
    options = tuple(_fact(scene, option) for option in question.options)
    span = scene.span(question.start, question.end)
    return Doubt(field=question.field, said=said, why=why, ask=ask, span=span, options=options)


def _once(doubts: tuple[Doubt, ...]) -> tuple[Doubt, ...]:
    kept: dict[str, Doubt] = {}
    for doubt in doubts:
        kept.setdefault(doubt.field, doubt)
    return tuple(kept.values())


def _tidy(value: float | None) -> float | None:
    """Twelve digits: what conversions add beyond is noise."""
    return None if value is None else float(f"{value:.12g}") + 0.0
