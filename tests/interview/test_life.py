"""The life of a case beside the talk: one event each, undone like any other, its words kept as a message."""

import pytest

from intake.spec import SpecError
from intake.talk import Interview


def test_a_promise_waits_until_it_is_done() -> None:
    talk = Interview()
    talk.life.promise("send the layout", "us", "2026-03-06")
    (matter,) = talk.case.waiting
    assert (matter.what, matter.who, matter.by, matter.kind) == ("send the layout", "us", "2026-03-06", "promise")
    talk.life.done(matter.seq, "sent")
    assert talk.case.waiting == []
    assert talk.case.matters[matter.seq].done
    talk.undo()
    assert talk.case.waiting == [matter]


def test_what_is_due_comes_before_what_has_no_day() -> None:
    talk = Interview()
    talk.life.promise("some day")
    talk.life.promise("later", by="2026-03-09")
    talk.life.promise("sooner", by="2026-03-02")
    assert [matter.what for matter in talk.case.waiting] == ["sooner", "later", "some day"]


@pytest.mark.parametrize("day", ["friday", "2026-13-01", "2026-02-30", "soon"])
def test_a_day_that_is_none_is_refused_before_anything_is_kept(day: str) -> None:
    talk = Interview()
    with pytest.raises(ValueError, match=r"isoformat|day|month"):
        talk.life.promise("send the layout", by=day)
    with pytest.raises(ValueError, match=r"isoformat|day|month"):
        talk.life.measured("test.slip_angle", 22.0, "me", on=day)
    assert talk.events == []


def test_promises_without_words_are_refused() -> None:
    talk = Interview()
    for words in ("", "  \n", "\u200b\x1b[31m"):
        with pytest.raises(ValueError, match="no words"):
            talk.life.promise(words)
    assert talk.events == []


def test_nothing_is_done_twice_and_nothing_that_never_was() -> None:
    talk = Interview()
    talk.life.ask_back("which pallet?")
    seq = talk.case.waiting[0].seq
    talk.life.done(seq)
    for number in (seq, seq + 100):
        with pytest.raises(ValueError, match="nothing of that number waits"):
            talk.life.done(number)


def test_a_question_asked_back_is_ours_to_answer_and_in_the_words_of_the_works() -> None:
    talk = Interview()
    talk.life.ask_back("which pallet?\x07")
    (matter,) = talk.case.waiting
    assert (matter.kind, matter.who, matter.what) == ("question", "us", "which pallet?")
    assert list(talk.case.messages.values()) == [("which pallet?", "works")]


def test_a_file_is_kept_by_its_name_and_content() -> None:
    talk = Interview()
    talk.life.attached("drawing of the gallery", "0" * 64, 1234)
    (file,) = talk.case.files
    assert (file.name, file.file, file.bytes) == ("drawing of the gallery", "0" * 64, 1234)


def test_stages_follow_each_other_and_a_test_ends_the_waiting_for_it() -> None:
    talk = Interview()
    talk.life.move("samples_asked")
    assert talk.case.stage == "samples_asked"
    talk.life.measured("test.slip_angle", 22.0, "R. Osei, 3 cartons", on="2026-03-02")
    assert talk.case.stage == "open"
    talk.undo()
    assert talk.case.stage == "samples_asked"
    talk.life.move("closed")
    talk.life.measured("test.slip_angle", 22.0, "R. Osei, 3 cartons")
    assert talk.case.stage == "closed"


def test_a_test_is_a_fact_of_the_works_in_the_words_of_the_report() -> None:
    talk = Interview()
    talk.life.measured("test.slip_angle", 22.0, "slip angle 22 deg; measured by R. Osei", on="2026-03-02")
    fact = talk.case.facts["test.slip_angle", 1]
    assert (fact.low, fact.who, fact.said) == (22.0, "works", "slip angle 22 deg; measured by R. Osei")
    assert talk.events[-1].body["measured"] == "2026-03-02"


def test_a_second_test_replaces_the_first_without_a_quarrel() -> None:
    talk = Interview()
    talk.life.measured("test.slip_angle", 22.0, "first")
    talk.life.measured("test.slip_angle", 19.0, "second")
    assert talk.spec()["test.slip_angle"] == 19
    assert not talk.case.quarrels


def test_only_tests_and_possible_values_are_measured() -> None:
    talk = Interview()
    with pytest.raises(ValueError, match="is no test"):
        talk.life.measured("product.weight", 12.0, "me")
    with pytest.raises(SpecError):
        talk.life.measured("test.slip_angle", -5.0, "me")
    with pytest.raises(ValueError, match="no words"):
        talk.life.measured("test.slip_angle", 22.0, " ")
    assert talk.events == []


def test_the_whole_life_is_there_after_the_case_is_opened_again() -> None:
    talk = Interview()
    talk.life.promise("send the layout", "works", "2026-03-06")
    talk.life.ask_back("which pallet?")
    talk.life.done(talk.case.waiting[0].seq)
    talk.life.attached("photo", "1" * 64, 5)
    talk.life.move("in_test")
    again = Interview.from_events(talk.events)
    assert (again.case.waiting, again.case.files, again.case.stage) == (
        talk.case.waiting,
        talk.case.files,
        "in_test",
    )
