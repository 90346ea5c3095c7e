"""What is asked in one breath: the first row that holds, only where nothing is known of any member, in order."""

from pathlib import Path

import pytest

from intake.interview.question import Question
from intake.interview.together import joined_questions, together_rows
from intake.spec.folder import questions_folder
from intake.talk import Interview

ROWS = """\
[[together]]
questions = ["a", "b", "c"]
say = "All three?"
why = "abc"

[[together]]
questions = ["b", "c"]
say = "Both?"
why = "bc"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "together.toml").write_text(ROWS, encoding="utf-8")
    return tmp_path


def question(id: str) -> Question:
    return Question(id=id, kind="question", fields=(f"{id}.1", f"{id}.2"), say=f"{id}?", why="", branch="x", purpose=id)


def joined(ids: str, folder: Path, known: str = "") -> list[tuple[str, str]]:
    wanted = [question(id) for id in ids]
    whole = {id: id not in known for id in "abcde"}
    return [(one.id, one.say) for one in joined_questions(wanted, whole, folder)]


def test_all_members_wanted_and_nothing_known_become_one_where_the_first_stood(folder: Path) -> None:
    assert joined("dabce", folder) == [("d", "d?"), ("a", "All three?"), ("e", "e?")]
    assert joined("dcbea", folder) == [("d", "d?"), ("c", "All three?"), ("e", "e?")]


def test_the_joined_question_asks_for_all_fields_in_the_order_of_the_row(folder: Path) -> None:
    (one,) = joined_questions([question(id) for id in "cab"], dict.fromkeys("abc", True), folder)
    assert one.fields == ("a.1", "a.2", "b.1", "b.2", "c.1", "c.2")
    assert (one.id, one.why, one.purpose) == ("c", "abc", "c")


@pytest.mark.parametrize("known", ["a", "b", "c", "ab"])
def test_a_member_of_which_something_is_known_keeps_the_row_apart(known: str, folder: Path) -> None:
    said = dict(joined("abc", folder, known))
    assert "All three?" not in said.values()
    assert ("Both?" in said.values()) == (known == "a")


def test_a_member_that_is_not_wanted_keeps_the_row_apart(folder: Path) -> None:
    assert joined("ab", folder) == [("a", "a?"), ("b", "b?")]
    assert joined("cb", folder) == [("c", "Both?")]


def test_the_first_row_that_holds_counts(folder: Path) -> None:
    assert joined("bca", folder) == [("b", "All three?")]
    assert joined("bc", folder) == [("b", "Both?")]


def test_what_goes_with_nothing_stays_in_its_order(folder: Path) -> None:
    assert joined("ed", folder) == [("e", "e?"), ("d", "d?")]
    assert joined("", folder) == []


def test_the_shipped_rows_join_questions_that_the_tree_has_each_with_its_say() -> None:
    rows = together_rows(questions_folder())
    assert rows
    assert all(len(row.questions) >= 2 and row.say.rstrip().endswith((".", "?")) and row.why for row in rows)


# --- in a talk


def asked(talk: Interview) -> Question:
    found = talk.ask()
    assert found is not None
    return found


def test_a_talk_begins_with_what_it_is_and_how_big_in_one_message() -> None:
    first = asked(Interview())
    assert {"product.type", "product.length", "product.weight"} <= set(first.fields)
    row = next(row for row in together_rows(questions_folder()) if "product_type" in row.questions)
    assert first.say == row.say


def test_answering_part_of_it_leaves_the_rest_to_its_own_question() -> None:
    talk = Interview()
    asked(talk)
    talk.answer("taped cases")
    second = asked(talk)
    assert second.id == "product_size"
    assert "product.type" not in second.fields
    assert {"product.length", "product.width", "product.height", "product.weight"} <= set(second.fields)
    row = next(row for row in together_rows(questions_folder()) if "product_type" in row.questions)
    assert second.say != row.say


def test_where_something_is_known_beforehand_only_the_rest_is_asked_for() -> None:
    talk = Interview()
    talk.hear("they weigh 12 kg")
    first = asked(talk)
    assert "product.weight" not in first.fields
    assert not {"product.type", "product.length"} <= set(first.fields)


def test_not_knowing_closes_all_that_was_asked_in_one_breath() -> None:
    talk = Interview()
    first = asked(talk)
    talk.unknown()
    assert not any(set(one.fields) & set(first.fields) for one in talk.open_questions())
