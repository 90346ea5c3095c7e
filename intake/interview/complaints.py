"""Every sentence that a proof of a questions folder can say: what is wrong, and how to mend it."""

from intake.spec.clean import one_line
from intake.spec.problem import Problem

SENTENCES: dict[str, tuple[str, str]] = {
    # files
    "no_file": (
        "this file is missing",
        "Every branch of the tree has its file, even an empty one: put it into {where}",
    ),
    "odd_file": ("the tree has no branch of that name", "The branches are {branches}. {hint}"),
    "unreadable": ("the file cannot be read ({why})", "Check that it is there and may be read"),
    "not_utf8": ("byte {at} is no UTF-8 text", "Save the file as UTF-8"),
    "bad_toml": (
        "this is not TOML: {why}",
        "Mend it at {place}; text needs quotes, and every [ and {{ its closing partner",
    ),
    # shape of an entry
    "missing_key": ("{owner} has no {key}", "Add {key} = {sample}"),
    "odd_key": ("{owner} has {key}, which it cannot have", "{hint}"),
    "wrong_value": ("{key} of {owner} is {given}", "Write {sample}"),
    "no_list": ("{key} is {given}", "Write {sample}"),
    # questions
    "unknown_field": ("{owner} names {field}, which fields.toml does not have", "{hint}"),
    "twice_in_question": ("{owner} names {field} twice", "Take one of them out"),
    "asked_twice": ("{owner} asks for {field}, which question {other} ({place}) asks for already", "Leave it in one"),
    "never_asked": ("no question asks for {field}", "Add it to the fields of a question here"),
    "double_id": ("there is a question {id} already ({place})", "Give this one another id"),
    # wordings
    "condition_field": ("{owner} has a condition on {field}, which fields.toml does not have", "{hint}"),
    "condition_kind": (
        "{owner} has a condition on {field}, which is a {kind}",
        "Use a field with choices, or a yes or no",
    ),
    "condition_choice": ("{owner} waits for {field} to be {word}, which is not one of its choices", "{hint}"),
    "condition_settled": (
        "{owner} waits for {field}, but the question is over once that is known",
        "Use a condition on a field that the question does not ask for",
    ),
    "condition_never": ("{owner} can never be said: its conditions on {field} exclude each other", "Keep one of them"),
    "wording_shadowed": (
        "{owner} can never be said: wording {earlier} always comes first",
        "Put it above, or take it out",
    ),
    "wording_bare": (
        "{owner} has neither when nor asks, so it would always be said",
        "Make it the say of the question",
    ),
    "asks_foreign": ("{owner} asks for {field}, which is not a field of its question", "{hint}"),
    # plausible ranges
    "plausible_field": ("there is a plausible range for {field}, which fields.toml does not have", "{hint}"),
    "plausible_kind": (
        "there is a plausible range for {field}, which is a {kind}",
        "Only figures and counts have a range",
    ),
    "plausible_order": ("the plausible range of {field} runs from {low} to {high}", "Put the lower figure into low"),
    "plausible_figure": ("the plausible range of {field} cannot be: {why}", "Give low and high in {unit}"),
    "plausible_twice": ("{field} has a plausible range in {place} already", "Keep one of them"),
    "plausible_missing": ("{field} has no plausible range", 'Add [plausible."{bare}"] with low and high in {unit}'),
    # choice words
    "words_field": ("there are words for {field}, which fields.toml does not have", "{hint}"),
    "words_kind": ("there are words for {field}, which is a {kind}", "What is kept as said has no words of its own"),
    "words_choice": ("there are words for {word} of {field}, which is not one of its choices", "{hint}"),
    "words_clash": ("{word} stands for both {first} and {second} of {field}", "Leave it with one of them"),
    "words_empty": ("{choice} of {field} has an empty word", "Take it out"),
    # what engineering needs
    "family_unknown": ("there is no family {family}", "{hint}"),
    "family_missing": ("family {family} is missing", "Add [{bare}] with the fields that engineering needs to start"),
    # sentences
    "sentence_table": ("no sentence is looked up in a table {table}", "{hint}"),
    "sentence_odd": ("no sentence {id} is ever said", "{hint}"),
    "sentence_text": ("sentence {id} is {given}", "Write it as one text in quotes"),
    "sentence_blank": ("sentence {id} has the blank {blank}, which nothing fills", "Its blanks are: {blanks}"),
    # cards
    "double_card": ("there is a card {id} already ({place})", "Give this one another id"),
    "card_blank": ("{owner} has the blank {blank}, which nothing can fill", "{hint}"),
    "card_last": (
        "the last template of {owner} has the blank {blank}, which only a case can fill",
        "Add one below it that can be said when nothing is known yet",
    ),
    "card_what_if": ("what_if of {owner} has a wrong {field}: {what}", "{hint}"),
    "card_takes": ("{owner} takes {field}, which is a {kind}", "Take a field with figures, or family"),
    "card_money": ("{owner} speaks of money: {given}", "Say what drives the cost and who quotes, never an amount"),
    "card_ask_twice": (
        "{owner} is asked by {way}, which is the same in its words as a way of asking card {other}",
        "Leave it on one of them, or put in the word that tells them apart",
    ),
    "card_ask_empty": (
        "{owner} is asked by {way}, of which no word is left to match by",
        "Put in a word of its subject, or take it out",
    ),
    "card_word_twice": ("{word} counts for both {first} and {second}, endings aside", "Leave it with one of them"),
    # shorthand
    "short_table": ("no table {table} is read here", "{hint}"),
    "short_list": ("{key} is {given}", 'Write a list of words: {key} = ["the", "is"]'),
    "short_value": ("{word} stands for {given}", "Write the words that it stands for as one text in quotes"),
    "short_key": ("{word} has {key}, which it cannot have here", "{hint}"),
    "short_over": ("over of {word} is {given}", "Write the figure that it must be above: over = 12"),
    "short_empty": ("there is an entry without a word", "Take it out, or write its word in quotes"),
    "short_twice": ("{word} stands in [{table}] twice, spaces and capitals aside", "Leave one of the two"),
    "short_hidden": (
        "{word} under [{table}] is never reached: it counts anywhere already",
        "Take it out of one of the two tables",
    ),
    "short_unit": ("{word} is a unit as well", "Put it under a guard, such as [before.height] or [behind.figure]"),
    "short_english": (
        "{word} is a plain English word as well",
        "Put it under a guard, such as [terse] or [before.figure]",
    ),
    "short_known": ("{word} is a word that the reader knows already", "Take it out, or put it under a guard"),
    "short_field": ("there are answers for {field}, which fields.toml does not have", "{hint}"),
    "short_answer": (
        "{word} stands for {says}, which answers nothing about {field}",
        "Write words that intake read --asked {bare} understands",
    ),
    "short_sides": ("{word} has no text for {side}", 'Write both: {{ yes = "may be squeezed", no = "" }}'),
    "short_label": (
        "yes and no of {word} stand for the same, or for nothing that the reader knows ({yes} / {no})",
        "Write words that intake read understands, each for its own answer",
    ),
    # what is asked in one breath
    "together_unknown": ("{owner} joins {id}, which is no question of the tree", "{hint}"),
    "together_one": ("{owner} joins fewer than two questions", "Name at least two, or take the row out"),
    # assumptions
    "double_assumption": ("there is an assumption {id} already", "Give this one another id"),
    "assumption_about": ("{owner} must be about either a field or a friction", "Keep one of the two"),
    "assumption_both": ("{owner} has both values and {key}", "Words have values; figures have low, typical and high"),
    "assumption_value": ("{owner} has the value {word}, which its field cannot have", "{hint}"),
    "assumption_order": (
        "the figures of {owner} are out of order ({figures})",
        "They rise from possible[0] over low, typical and high to possible[1]",
    ),
    "odds_word": ("{owner} has the word {word}, which its field cannot have", "{hint}"),
    "odds_twice": ("{owner} draws {word} of {field} a second time", "Leave one of the two"),
    "odds_share": ("{owner} has the share {given}", "Write a share above 0 and below 0.5, like 0.03"),
    "odds_together": (
        "the rare words of {field} have half of all jobs or more together",
        "Make their shares smaller, or let an assumption count on one of them",
    ),
    "prior_table": ("{table} is missing or no table", "Give it a range for each of: {keys}"),
    "prior_missing": ("{table} has no {key}", "Copy it from the shipped folder and change the figures"),
    "prior_odd": ("{table} has {key}, which sampling does not read", "{hint}"),
    "prior_range": ("{key} of {table} is {given}", "Write two figures above zero that do not fall, like [0.3, 0.6]"),
    "friction_open": (
        "friction {friction} has no assumption without conditions",
        "Add one below the others, wide enough for all of them",
    ),
    "approx_name": ("there is an approximate share for {name}, which is neither a field, a unit nor other", "{hint}"),
    "approx_share": ("the approximate share of {name} is {given}", "Write a share above 0 and below 1, like 0.1"),
    "approx_missing": ("there is no [approx] table with a share for other", "Add [approx] with other = 0.1"),
}
"""By id: what is wrong, how to mend it. Words in braces are filled in; names come in double quotes."""


class TreeError(Exception):
    """The questions folder has wrong entries. `problems` holds every one of them."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


def complain(id: str, file: str, line: int | None = None, /, **words: object) -> Problem:
    """The problem of that id. Words from the file are made safe to print."""
    what, mend = SENTENCES[id]
    safe = {name: one_line(str(word), 200) for name, word in words.items()}
    ended = mend.format(**safe).strip()
    return Problem(
        file=file, line=line, what=what.format(**safe), mend=ended if ended.endswith(("?", ".")) else ended + "."
    )


def named(word: object) -> str:
    """A name as it stands in a sentence: "rise.height" in quotes, whatever it is."""
    return f'"{word}"'


def listed(words: tuple[str, ...]) -> str:
    """Names in a row: a, b and c."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
