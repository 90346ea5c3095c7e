"""What must hold of `shorthand.toml`: guarded words, no two meanings, and nothing that the reader cannot read."""

from collections.abc import Iterator, Mapping
from typing import Any

from intake import reading
from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.interview.model_slips import shown
from intake.interview.toml_file import TomlFile
from intake.reading.amounts.unit_words import UNIT_WORDS
from intake.reading.message.lexicon import lexicon_of
from intake.reading.shorthand.rows import GUARDS, LISTS, Words, tables, words_of
from intake.spec.folder import shipped_folder
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

_TABLES = (*dict.fromkeys(guard.partition(".")[0] for guard in GUARDS), "answers", "yes_no", *LISTS)
_KEYS = {
    "before.height": ("says", "then"),
    "before.figure": ("says", "then"),
    "behind.figure": ("says", "before", "over"),
}
"""What an entry may have, by its guard; anywhere else the words it stands for alone."""


def shorthand_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in the file, held against the words of the shipped folder: the file's own may be broken."""
    lists, problems = _lists(file)
    problems += _odd_tables(file)
    seen: dict[Words, str] = {}
    for guard, table in tables(file.data):
        taken: set[Words] = set()
        for typed, said in table.items():
            line, words = file.line_of_table_key(guard, typed), words_of(typed)
            problems += _entry(file, guard, typed, said, line)
            if words in taken:
                problems.append(complain("short_twice", file.name, line, word=named(typed), table=guard))
            elif seen.get(words) == "anywhere":
                problems.append(complain("short_hidden", file.name, line, word=named(typed), table=guard))
            taken.add(words)
            seen.setdefault(words, guard)
            if guard == "anywhere":
                problems += _unguarded(file, typed, words, line, lists["english"] | lists["prose"])
    return [*problems, *_answers(file), *_labels(file)]


def _lists(file: TomlFile) -> tuple[dict[str, frozenset[str]], list[Problem]]:
    found: dict[str, frozenset[str]] = {}
    problems: list[Problem] = []
    for key in LISTS:
        given = file.data.get(key, [])
        if isinstance(given, list) and all(isinstance(word, str) for word in given):
            found[key] = frozenset(given)
            continue
        found[key] = frozenset()
        problems.append(complain("short_list", file.name, file.line_of(f"{key} ="), key=key, given=shown(given)))
    return found, problems


def _odd_tables(file: TomlFile) -> Iterator[Problem]:
    for key, table in file.data.items():
        inner = {guard.partition(".")[2] for guard in GUARDS if guard.startswith(f"{key}.")}
        if key not in _TABLES:
            yield complain(
                "short_table", file.name, file.line_of(f"[{key}"), table=named(key), hint=_hint(key, _TABLES)
            )
        elif key not in LISTS and not isinstance(table, Mapping):
            yield complain("short_value", file.name, file.line_of(f"{key} ="), word=named(key), given=shown(table))
        for name in table if inner and isinstance(table, Mapping) else ():
            if name not in inner:
                line = file.line_of(f"[{key}.{name}]") or file.line_of_table_key(key, name)
                full = f"{key}.{name}"
                yield complain("short_table", file.name, line, table=named(full), hint=_hint(full, GUARDS))


def _hint(word: str, among: tuple[str, ...]) -> str:
    return did_you_mean(word, among)


def _entry(file: TomlFile, guard: str, typed: str, said: Any, line: int | None) -> Iterator[Problem]:
    """What is wrong with one entry by itself."""
    allowed = _KEYS.get(guard, ("says",))
    if not words_of(typed):
        yield complain("short_empty", file.name, line)
    if isinstance(said, Mapping):
        for key in said:
            if key not in allowed:
                yield complain(
                    "short_key", file.name, line, word=named(typed), key=named(key), hint=_hint(key, allowed)
                )
        over = said.get("over", 0)
        if isinstance(over, bool) or not isinstance(over, int | float):
            yield complain("short_over", file.name, line, word=named(typed), given=shown(over))
    texts = [text for key, text in said.items() if key != "over"] if isinstance(said, Mapping) else [said]
    for text in texts if texts and (not isinstance(said, Mapping) or "says" in said) else [None]:
        if not isinstance(text, str) or not text.strip():
            yield complain("short_value", file.name, line, word=named(typed), given=shown(text))


def _unguarded(
    file: TomlFile, typed: str, words: Words, line: int | None, english: frozenset[str]
) -> Iterator[Problem]:
    """A single word that counts anywhere must be nothing else."""
    if len(words) != 1:
        return
    if words[0] in UNIT_WORDS:
        yield complain("short_unit", file.name, line, word=named(typed))
    elif words[0] in english:
        yield complain("short_english", file.name, line, word=named(typed))
    elif words[0] in lexicon_of(shipped_folder()).known:
        yield complain("short_known", file.name, line, word=named(typed))


def _answers(file: TomlFile) -> Iterator[Problem]:
    answers = file.data.get("answers", {})
    for name, table in answers.items() if isinstance(answers, Mapping) else ():
        if name not in vocabulary():
            line = file.line_of(f'[answers."{name}"]')
            yield complain("short_field", file.name, line, field=named(name), hint=did_you_mean(name))
            continue
        for typed, said in table.items() if isinstance(table, Mapping) else ():
            line = file.line_of_table_key(f'answers."{name}"', typed)
            if not isinstance(said, str) or not said.strip():
                yield complain("short_value", file.name, line, word=named(typed), given=shown(said))
            elif not any(
                fact.field == name for fact in reading.read(said, asked=name, questions=shipped_folder()).facts
            ):
                yield complain(
                    "short_answer", file.name, line, word=named(typed), says=named(said), field=named(name), bare=name
                )


def _labels(file: TomlFile) -> Iterator[Problem]:
    labels = file.data.get("yes_no", {})
    for typed, sides in labels.items() if isinstance(labels, Mapping) else ():
        line = file.line_of_table_key("yes_no", typed)
        texts = [sides.get(side) if isinstance(sides, Mapping) else None for side in ("yes", "no")]
        missing = next(
            (side for side, text in zip(("yes", "no"), texts, strict=True) if not isinstance(text, str)), None
        )
        if missing is not None:
            yield complain("short_sides", file.name, line, word=named(typed), side=missing)
            continue
        yes, no = (
            {(f.field, f.value) for f in reading.read(str(text), questions=shipped_folder()).facts} for text in texts
        )
        if yes & no or not (yes or no) or any(bool(t) and not facts for t, facts in zip(texts, (yes, no), strict=True)):
            yield complain(
                "short_label", file.name, line, word=named(typed), yes=named(str(texts[0])), no=named(str(texts[1]))
            )
