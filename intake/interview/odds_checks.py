"""What must hold of [[odds]] in `assumptions.toml`: rare words that sampling draws, each at its share."""

from intake.interview.complaints import complain, named
from intake.interview.model_slips import shown
from intake.interview.row_checks import accepted, entries, may_be, unknown_fields
from intake.interview.toml_file import TomlFile
from intake.interview.tree_model import OddsModel
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

RARE = 0.5
"""A word that more of the jobs have is none to be drawn besides those that are counted on."""


def odds_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in the rows: fields, words, shares, the same word twice, more than all of a field."""
    problems: list[Problem] = []
    seen: set[tuple[str, str | bool]] = set()
    together: dict[str, float] = {}
    for at, row in entries(file, "odds", OddsModel, problems):
        owner, field = f"odds number {at + 1}", vocabulary().get(row.field)
        line = file.line_of_key("odds", at, "word")
        problems += unknown_fields(file, "odds", at, owner, [row.field])
        if field is not None and (field.is_number or not may_be(field, row.word)):
            problems.append(
                complain(
                    "odds_word", file.name, line, owner=owner, word=shown(row.word), hint=accepted(field, row.word)
                )
            )
        if (row.field, row.word) in seen:
            problems.append(
                complain("odds_twice", file.name, line, owner=owner, word=shown(row.word), field=named(row.field))
            )
        seen.add((row.field, row.word))
        share_line = file.line_of_key("odds", at, "share")
        if not 0.0 < row.share < RARE:
            problems.append(complain("odds_share", file.name, share_line, owner=owner, given=shown(row.share)))
            continue
        together[row.field] = together.get(row.field, 0.0) + row.share
        if together[row.field] >= RARE > together[row.field] - row.share:
            problems.append(complain("odds_together", file.name, share_line, field=named(row.field)))
    return problems
