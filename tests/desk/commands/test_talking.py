"""Commands of the talk, as a hurried person types them."""

import pytest

from intake.desk.effect import Slip
from intake.desk.steps import Steps
from intake.desk.welcome import SAMPLE

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"


def spec_of(steps: Steps) -> dict[str, object]:
    return steps.work.talk.spec()


def test_a_fact_is_set_by_the_part_behind_its_dot_by_its_label_or_by_its_id(steps: Steps) -> None:
    steps.say(CASES, None)
    steps.command("/fact weight 14 kg")
    assert spec_of(steps)["product.weight"] == 14
    steps.command("/fact weight of one product: 15 kg")
    assert spec_of(steps)["product.weight"] == 15
    steps.command("/fact product.weight = 16 kg")
    assert spec_of(steps)["product.weight"] == 16
    assert not steps.work.talk.case.quarrels


def test_a_value_with_a_colon_in_it_is_not_taken_for_the_end_of_the_name(steps: Steps) -> None:
    steps.command("/fact peak rate 45/min, shift ends 6:00")
    assert spec_of(steps)["rate.peak"] == 45


def test_a_fact_of_a_further_size_is_named_by_its_number(steps: Steps) -> None:
    steps.say(CASES, None)
    steps.command("/fact product.weight@2 5 kg")
    assert spec_of(steps)["product.weight@2"] == 5
    assert spec_of(steps)["product.weight"] == 12
    steps.command("/drop product.weight@2")
    assert "product.weight@2" not in spec_of(steps)
    assert spec_of(steps)["product.weight"] == 12


def test_what_staff_set_says_that_staff_said_it(steps: Steps) -> None:
    steps.command("/fact product.weight 14 kg")
    assert [fact.who for fact in steps.work.talk.facts] == ["staff"]


def test_a_dropped_fact_stands_no_longer_and_undo_brings_it_back(steps: Steps) -> None:
    steps.say(CASES, None)
    shown = steps.command("/drop rate")
    assert "rate.normal" not in spec_of(steps)
    assert any("No longer said: normal rate 20/min" in line for line in shown.lines)
    steps.command("/undo")
    assert spec_of(steps)["rate.normal"] == 20


def test_of_several_facts_of_a_name_the_one_that_stands_is_dropped(steps: Steps) -> None:
    steps.say("up to 5 m of floor width, 12 kg", None)
    steps.command("/fact space.width 3 m")
    steps.command("/drop width")
    assert "space.width" not in spec_of(steps)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("/fact", "Write the fact and its value"),
        ("/fact 20", "Write the fact, a colon, and its value"),
        ("/fact product.weight", "Write a value behind product.weight"),
        ("/fact heights 3 m", "Write the fact, a colon, and its value"),
        ("/fact width: 3 m", "may be several facts"),
        ("/drop", "Write which fact"),
        ("/drop peak rate", "Nothing stands for peak rate"),
        ("/drop product.wieght", "Did you mean product.weight?"),
        ("/ask", "Write what to ask about"),
        ("/ask bananas", 'There is no fact "bananas"'),
        ("/phone maybe", "/phone on, /phone off"),
        ("/note", "Write the note behind it"),
        ("/answer", "Write the visitor's question"),
        ("/read", "Write the words behind it"),
        ("/unknown", "No question is open"),
        ("/later", "No question is open"),
        ("/mend", "There is no message yet"),
        ("/paste", "/paste alone"),
    ],
)
def test_a_slip_says_how_to_mend_it(steps: Steps, line: str, told: str) -> None:
    with pytest.raises(Slip) as slip:
        steps.command(line)
    assert told in str(slip.value)


def test_a_value_that_says_nothing_leaves_what_stood(steps: Steps) -> None:
    steps.say(CASES, None)
    shown = steps.command("/fact product.weight: a lot")
    assert spec_of(steps)["product.weight"] == 12
    assert any("what stood stands" in line for line in shown.lines)


def test_a_misread_word_is_mended_by_its_number(steps: Steps) -> None:
    steps.say("drums 600 mm wide, 45 kg, 3 m", None)
    rows = steps.command("/mend").lines
    number = next(row.split(".")[0] for row in rows if '"45 kg"' in row)
    steps.command(f"/mend {number} nothing")
    assert "product.weight" not in spec_of(steps)


def test_a_word_that_was_not_read_is_mended_by_quoting_it(steps: Steps) -> None:
    steps.say("they are called slabbies, 12 kg", None)
    steps.command('/mend "slabbies" product.type = case')
    fact = steps.work.talk.case.facts["product.type", 1]
    assert (fact.value, fact.said) == ("case", "slabbies")


def test_two_words_together_are_one_piece(steps: Steps) -> None:
    steps.say("box size ten by twelve of 45 a minute tops", None)
    rows = steps.command("/mend").lines
    first = next(int(row.split(".")[0]) for row in rows if '"ten' in row)
    steps.command(f"/mend {first}-{first + 2} product.width = 250 mm")
    fact = steps.work.talk.case.facts["product.width", 1]
    assert fact.low == pytest.approx(0.25)
    assert fact.said.startswith("ten")
    assert " " in fact.said


def test_a_doubt_is_put_right_before_it_is_asked(steps: Steps) -> None:
    shown = steps.say("trays of jars, 12 lb each", None)
    assert shown.question is not None
    assert shown.question.kind == "doubt"
    shown = steps.command('/mend "12 lb" product.weight')
    assert not steps.work.talk.case.doubts
    # The pound is 0.45359237 kg exactly: the international yard and pound agreement of 1959.
    assert spec_of(steps)["product.weight"] == pytest.approx(12 * 0.45359237)
    assert shown.question is None or shown.question.kind == "question"


def test_a_second_mend_keeps_the_first(steps: Steps) -> None:
    steps.say("trays 400 x 300 x 200 mm, 9 kg, up 3 m", None)
    steps.command('/mend "9 kg" nothing')
    steps.command('/mend "400" product.width = 300 mm')
    assert "product.weight" not in spec_of(steps)
    assert spec_of(steps)["product.width"] == pytest.approx(0.3)


def test_undo_takes_back_the_mend_and_not_the_message(steps: Steps) -> None:
    steps.say("trays 400 x 300 x 200 mm, 9 kg, up 3 m", None)
    steps.command('/mend "9 kg" nothing')
    steps.command("/undo")
    assert spec_of(steps)["product.weight"] == 9
    steps.command("/redo")
    assert "product.weight" not in spec_of(steps)
    assert spec_of(steps)["product.length"] == pytest.approx(0.4)


def test_an_answer_is_mended_as_the_answer_that_it_was(steps: Steps) -> None:
    steps.say("taped cases 400x300x250 mm, 12 kg, up 3 m", None)
    shown = steps.command("/ask rate")
    assert shown.question is not None
    steps.say("25, maybe slabbies", shown.question.id)
    assert spec_of(steps)["rate.normal"] == 25
    steps.command('/mend "slabbies" product.surface = film')
    assert spec_of(steps)["rate.normal"] == 25
    assert spec_of(steps)["product.surface"] == "film"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("/mend x nothing", "Write which piece it is"),
        ("/mend 99 nothing", "There are pieces 1 to"),
        ("/mend 3-1 nothing", "There are pieces 1 to"),
        ("/mend 1", "Write what it is"),
        ("/mend 1 bananas", 'There is no fact "bananas"'),
        ('/mend "gone" nothing', 'has no "gone"'),
        ('/mend "kg" product.surface', "Say its value too: product.surface ="),
        (f"/mend {'9' * 5000} nothing", "Write which piece it is"),
    ],
)
def test_a_slip_while_mending_says_how_to_go_on(steps: Steps, line: str, told: str) -> None:
    steps.say("trays, 9 kg", None)
    with pytest.raises(Slip) as slip:
        steps.command(line)
    assert told in str(slip.value)


def test_asking_by_branch_fact_or_id_puts_that_question(steps: Steps) -> None:
    steps.say(CASES, None)
    for said, field in (("cleaning", "cleaning.method"), ("room.zone", "room.zone"), ("ceiling", "space.ceiling")):
        if field not in {name for q in steps.work.talk.open_questions() for name in q.fields}:
            continue
        shown = steps.command(f"/ask {said}")
        assert shown.question is not None
        assert field in shown.question.fields


def test_back_without_an_answer_says_so_and_takes_nothing_back(steps: Steps) -> None:
    steps.say(CASES, None)
    shown = steps.command("/back")
    assert shown.lines == ("There is no answer to take back.",)
    assert spec_of(steps)["product.weight"] == 12


def test_back_asks_the_question_again_that_was_answered_last(steps: Steps) -> None:
    first = steps.say("taped cases", None).question
    assert first is not None
    steps.say("400x300x250 mm, 12 kg", first.id)
    again = steps.command("/back").question
    assert again is not None
    assert again.id == first.id
    assert "product.length" not in spec_of(steps)


def test_by_phone_what_is_typed_is_marked_as_heard(steps: Steps) -> None:
    steps.command("/phone on")
    steps.say("12 kg cases", None)
    steps.command("/phone off")
    steps.say("400x300x250 mm", None)
    origins = {fact.field: steps.work.talk.case.origin(fact) for fact in steps.work.talk.facts}
    assert origins["product.weight"] == "visitor, heard"
    assert origins["product.length"] == "visitor"


def test_reading_words_keeps_nothing(steps: Steps) -> None:
    before = steps.work.talk.events
    shown = steps.command("/read 12 kg cases")
    assert any("weight of one product 12 kg" in line for line in shown.lines)
    assert steps.work.talk.events == before


def test_the_sample_goes_through_message_by_message_and_only_into_a_case_of_its_own(steps: Steps) -> None:
    for message in SAMPLE:
        shown = steps.command("/sample")
        assert shown.effect is not None
        assert shown.effect.say == message
    assert spec_of(steps)["product.weight"] == 9
    assert spec_of(steps)["rate.peak"] == 36
    with pytest.raises(Slip, match="/new begins a case"):
        steps.command("/sample")


def test_what_staff_know_is_read_and_says_who_said_it(steps: Steps) -> None:
    steps.command("/staff ceiling is 5 m")
    assert [(fact.field, fact.who) for fact in steps.work.talk.facts] == [("space.ceiling", "staff")]


def test_a_note_is_never_read_for_facts(steps: Steps) -> None:
    steps.command("/note 12 kg cases")
    assert not steps.work.talk.facts
    assert steps.work.talk.case.notes == ["12 kg cases"]
