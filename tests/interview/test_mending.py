"""What staff say of the reader's work: at the places mended nothing else is read, and their facts stand."""

from pathlib import Path

import pytest

from intake import sizing
from intake.interview.mending import Mend
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec.facts import Fact
from intake.spec.flat import Spec
from intake.talk import Interview

TRAYS = "trays 400 x 300 x 200 mm, 9 kg, up 3 m"


def at(text: str, said: str) -> tuple[int, int]:
    return text.index(said), text.index(said) + len(said)


def fact_of(talk: Interview, field: str, words: str) -> Fact:
    found = talk.value_in_words(field, words)
    assert found is not None
    return found


@pytest.fixture
def talk(monkeypatch: pytest.MonkeyPatch) -> Interview:
    """A new talk, sized without the samples, which take most of the time."""

    def bare(spec: Spec, *, questions: Path, worth: bool = False) -> Result:
        return size(spec, questions=questions)

    monkeypatch.setattr(sizing, "size", bare)
    return Interview()


def test_words_that_count_for_nothing_give_no_fact(talk: Interview) -> None:
    talk.hear(TRAYS, mends=[Mend(at(TRAYS, "9 kg"), None)])
    assert "product.weight" not in talk.spec()
    assert talk.spec()["product.length"] == pytest.approx(0.4)


def test_a_fact_that_staff_name_has_its_own_words_and_place(talk: Interview) -> None:
    text = "slabbies of 12 kg"
    talk.hear(text, mends=[Mend(at(text, "slabbies"), fact_of(talk, "product.type", "case"))])
    fact = talk.case.facts["product.type", 1]
    assert (fact.value, fact.said, fact.span) == ("case", "slabbies", (0, 8))


def test_what_the_reader_made_of_another_place_for_the_same_fact_gives_way(talk: Interview) -> None:
    text = "12 kg gross, really 9 kg"
    talk.hear(text, mends=[Mend(at(text, "9 kg"), fact_of(talk, "product.weight", "9 kg"))])
    assert talk.spec()["product.weight"] == 9
    assert not talk.case.quarrels


def test_a_mended_doubt_is_not_asked(talk: Interview) -> None:
    text = "trays of jars, 6 kg each"
    talk.hear(text)
    assert talk.case.doubts
    talk.rehear([Mend(at(text, "6 kg"), fact_of(talk, "product.weight", "6 kg"))])
    assert not talk.case.doubts
    assert talk.spec()["product.weight"] == 6


def test_what_was_not_used_is_used_once_it_is_mended(talk: Interview) -> None:
    text = "made of 5 mm slabbing"
    heard = talk.hear(text)
    if not heard.unread:
        pytest.skip("the reader uses all of it by now")
    again = talk.rehear([Mend(at(text, heard.unread[0]), None)])
    assert again is not None
    assert again.unread == ()


def test_a_mend_has_the_last_word_over_what_stood(talk: Interview) -> None:
    talk.hear("12 kg cases")
    text = "more like 15 kg"
    talk.hear(text, mends=[Mend(at(text, "15 kg"), fact_of(talk, "product.weight", "15 kg"))])
    assert talk.spec()["product.weight"] == 15
    assert not talk.case.quarrels


def test_undo_and_redo_go_through_mends_one_by_one(talk: Interview) -> None:
    talk.hear(TRAYS)
    talk.rehear([Mend(at(TRAYS, "9 kg"), None)])
    talk.rehear([Mend(at(TRAYS, "200 mm"), None)])

    def stand() -> tuple[bool, bool, bool]:
        spec = talk.spec()
        return "product.length" in spec, "product.height" in spec, "product.weight" in spec

    seen = [stand()]
    while talk.undo():
        seen.append(stand())
    assert seen == [(True, False, False), (True, True, False), (True, True, True), (False, False, False)]
    back = []
    while talk.redo():
        back.append(stand())
    assert back == seen[-2::-1]


def test_mends_are_there_after_the_case_is_opened_again(talk: Interview) -> None:
    talk.hear(TRAYS)
    talk.rehear([Mend(at(TRAYS, "9 kg"), fact_of(talk, "product.weight", "14 kg"))])
    again = Interview.from_events(talk.events)
    assert again.spec() == talk.spec()
    assert again.case.facts["product.weight", 1].said == "9 kg"
    again.rehear([Mend(at(TRAYS, "200 mm"), None)])
    assert again.spec()["product.weight"] == 14
    again.undo()
    again.undo()
    assert again.spec()["product.weight"] == 9


def test_a_place_can_be_mended_again(talk: Interview) -> None:
    talk.hear(TRAYS)
    talk.rehear([Mend(at(TRAYS, "9 kg"), fact_of(talk, "product.weight", "14 kg"))])
    talk.rehear([Mend(at(TRAYS, "9 kg"), fact_of(talk, "product.weight", "15 kg"))])
    assert talk.spec()["product.weight"] == 15


def test_the_event_says_where_staff_mended_and_what_the_reader_had_there(talk: Interview) -> None:
    talk.hear(TRAYS, mends=[Mend(at(TRAYS, "9 kg"), None)])
    assert talk.events[-1].body["mended"] == [{"span": list(at(TRAYS, "9 kg")), "was": ["product.weight"]}]


def test_who_said_it_and_by_ear_stay_as_they_were(talk: Interview) -> None:
    talk.hear("ceiling is 5 m, 12 kg", who="staff")
    talk.rehear([Mend(at("ceiling is 5 m, 12 kg", "12 kg"), None)])
    assert [fact.who for fact in talk.facts] == ["staff"]
    talk.hear("9 kg cases", by_ear=True)
    talk.rehear([Mend(at("9 kg cases", "cases"), None)])
    assert talk.case.origin(talk.case.facts["product.weight", 1]) == "visitor, heard"


def test_an_answer_taken_in_anew_is_read_for_the_question_that_it_answered(talk: Interview) -> None:
    talk.hear("taped cases 400x300x250 mm, 12 kg, up 3 m")
    talk.put("rate")
    talk.answer("25 slabbies")
    assert talk.spec()["rate.normal"] == 25
    talk.rehear([Mend((3, 11), None)])
    assert talk.spec()["rate.normal"] == 25


def test_going_back_after_a_mend_takes_the_whole_answer_back(talk: Interview) -> None:
    talk.hear("taped cases 400x300x250 mm, 12 kg, up 3 m")
    talk.put("rate")
    talk.answer("25 slabbies")
    talk.rehear([Mend((3, 11), None)])
    again = talk.back()
    assert again is not None
    assert "rate.normal" in again.fields
    assert "rate.normal" not in talk.spec()


def test_without_a_message_there_is_nothing_to_take_in_anew(talk: Interview) -> None:
    assert talk.rehear([]) is None
    assert talk.last_message == ""


def test_meanings_put_what_is_asked_first_and_leave_out_what_the_words_cannot_be(talk: Interview) -> None:
    talk.hear("taped cases, up 3 m")
    talk.put("rate")
    found = [fact.field for fact in talk.meanings("25")]
    assert found[0].startswith("rate.")
    assert not any(field.startswith("product.l") for field in (fact.field for fact in talk.meanings("30 lb")))
    assert "product.weight" in {fact.field for fact in talk.meanings("30 lb")}
