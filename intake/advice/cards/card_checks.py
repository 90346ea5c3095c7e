"""The proof of a folder's cards: everything that is wrong with them, with file and line."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from intake.advice.cards.blank_checks import blank_problems, needs_case
from intake.advice.cards.blanks import BLANK
from intake.advice.cards.card import FAMILY
from intake.advice.cards.card_file import Placed, WordsModel, read_cards, read_words
from intake.advice.cards.deck import laid_out
from intake.interview.complaints import complain, named
from intake.interview.hints import KINDS, did_you_mean
from intake.interview.toml_file import TomlFile
from intake.sizing import RangeError, load_range
from intake.sizing.result import FAMILIES
from intake.spec.entry import value_of
from intake.spec.problem import Problem
from intake.spec.value import SpecError
from intake.spec.vocabulary import vocabulary

MONEY = re.compile(
    r"[$€£¥]|\b(?:usd|eur|gbp|dollars?|euros?|cents?|pounds sterling|bucks)\b|\d\s?k\b"
    r"|\b\d[\d.,]* (?:grand|thousand)\b",
    re.IGNORECASE,
)
"""What an amount of money looks like. No card may say one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardProof:
    """What the proof of the cards found. `cards` counts those that could be read."""

    problems: tuple[Problem, ...]
    cards: int


def prove_cards(folder: Path) -> CardProof:
    """Check the cards of a folder, or the shipped ones that stand in for them, and the words of matching."""
    placed, problems = read_cards(folder)
    words, file, wrong = read_words(folder)
    problems += wrong
    problems += list(_double_ids(placed))
    try:
        data = load_range(folder)
    except RangeError:
        data = None  # the range has its own problems, told by its own check
    for one in placed:
        problems += list(_card_problems(one))
        for template in one.card.says:
            problems += blank_problems(one, template, data)
    if words is not None and file is not None:
        problems += list(_word_problems(words, file))
        problems += list(_ways_of_asking(placed, words))
    return CardProof(problems=tuple(dict.fromkeys(problems)), cards=len(placed))


def _double_ids(placed: list[Placed]) -> Iterator[Problem]:
    first: dict[str, Placed] = {}
    for one in placed:
        other = first.setdefault(one.card.id, one)
        if other is not one:
            line = other.file.entry_line("card", other.at)
            place = other.file.name if line is None else f"{other.file.name}:{line}"
            yield complain("double_card", one.file.name, one.line("id ="), id=named(one.card.id), place=place)


def _card_problems(one: Placed) -> Iterator[Problem]:
    card, file = one.card, one.file.name
    for name, value in card.what_if.items():
        if name not in vocabulary():
            yield complain(
                "unknown_field", file, one.line(name), owner=one.owner, field=named(name), hint=did_you_mean(name)
            )
            continue
        try:
            value_of(name, name, value)
        except SpecError as error:
            yield complain(
                "card_what_if",
                file,
                one.line(name),
                owner=one.owner,
                field=named(name),
                what=error.what,
                hint=error.mend,
            )
    if card.takes is not None and card.takes != FAMILY:
        known = vocabulary().get(card.takes)
        if known is None:
            hint = did_you_mean(card.takes, [*vocabulary(), FAMILY])
            yield complain(
                "unknown_field", file, one.line("takes ="), owner=one.owner, field=named(card.takes), hint=hint
            )
        elif not known.is_number:
            kind = KINDS[known.kind]
            yield complain("card_takes", file, one.line("takes ="), owner=one.owner, field=named(card.takes), kind=kind)
    for template in card.says:
        money = MONEY.search(BLANK.sub("", template))
        if money is not None:
            line = one.line(template[:40])
            yield complain("card_money", file, line, owner=one.owner, given=named(money.group().strip()))
    held = [blank for blank in BLANK.findall(card.says[-1]) if needs_case(blank)]
    if held:
        line = one.line(card.says[-1][:40])
        yield complain("card_last", file, line, owner=one.owner, blank=named(held[0]))


def _ways_of_asking(placed: list[Placed], words: WordsModel) -> Iterator[Problem]:
    """Ways of asking that are the same to the matching on two cards, or that have no word left to match."""
    deck = laid_out(tuple(one.card for one in placed), words)
    first: dict[frozenset[str], Placed] = {}
    for one in placed:
        for way in one.card.asks:
            tokens = frozenset(deck.words.tokens(way))
            line = one.line(f'"{way}"')
            if not tokens:
                yield complain("card_ask_empty", one.file.name, line, owner=one.owner, way=named(way))
                continue
            other = first.setdefault(tokens, one)
            if other.card.id != one.card.id:
                yield complain(
                    "card_ask_twice", one.file.name, line, owner=one.owner, way=named(way), other=named(other.card.id)
                )


def _word_problems(words: WordsModel, file: TomlFile) -> Iterator[Problem]:
    for name in words.families:
        if name not in FAMILIES:
            hint = did_you_mean(name, FAMILIES)
            yield complain("family_unknown", file.name, file.line_of(f"{name} ="), family=named(name), hint=hint)
    for way, first, second in laid_out((), words).words.clashes:
        line = file.line_of_table_key("alike", second) or file.line_of_table_key("families", second)
        yield complain("card_word_twice", file.name, line, word=named(way), first=named(first), second=named(second))
