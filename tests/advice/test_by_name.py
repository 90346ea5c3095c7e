"""Advice by the word that staff type: each subject, machines by any of their names, changes in words or as pairs."""

from typing import Any

import pytest

from intake.advice import SUBJECTS, AdviceError, Brief, advise, family_name, short_family_name
from intake.advice.by_name import WORDS, family_of
from intake.interview.wording import in_force
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec, SpecError

TOPIC = {
    word: word.replace("-", "_")
    for word in (
        "how-high", "how-fast", "why-not", "would-fit", "what-if", "way-in", "shipping", "delivery", "tests", "settled",
        "to-find-out",
    )
}  # fmt: skip
BEHIND = {"MACHINE": "side grip", "CHANGE": "60 a minute"}


@pytest.fixture
def brief(cases: dict[str, Any]) -> Brief:
    return Brief(spec=Spec.from_flat(cases), system="si")


@pytest.mark.parametrize("subject", SUBJECTS, ids=lambda one: one.word)
def test_every_subject_answers_to_its_word(subject: Any, brief: Brief) -> None:
    answer = advise(brief, subject.word, BEHIND.get(subject.takes, ""))
    assert answer.topic == TOPIC[subject.word]
    assert answer.lines
    assert answer.to_json()["lines"] == list(answer.lines)


def test_there_are_as_many_words_as_subjects() -> None:
    assert set(WORDS) == set(TOPIC)
    assert len(WORDS) == len(set(WORDS))


@pytest.mark.parametrize("subject", [one for one in SUBJECTS if one.takes == "[MACHINE]"], ids=lambda one: one.word)
def test_a_machine_behind_the_word_is_the_one_spoken_of(subject: Any, brief: Brief) -> None:
    assert advise(brief, subject.word, "cleated incline").data["family"] == "cleated_incline"
    assert advise(brief, subject.word).data["family"] == brief.result.best


@pytest.mark.parametrize("family", FAMILIES)
def test_a_machine_is_known_by_its_id_and_its_names_however_they_are_typed(family: str) -> None:
    said = in_force()
    for name in (family, family_name(family), short_family_name(family)):
        for typed in (
            name,
            name.upper(),
            f"  {name.replace('-', ' ')} ",
            name.replace(" ", "-"),
            name.replace("_", " "),
        ):
            assert family_of(typed, said) == family, typed


def test_one_word_of_a_name_is_enough_where_only_one_machine_has_it() -> None:
    said = in_force()
    assert family_of("grip", said) == "side_grip"
    assert family_of("cleated", said) == "cleated_incline"
    with pytest.raises(AdviceError):
        family_of("lift", said)  # three of them


@pytest.mark.parametrize("typed", ["", "ferris wheel", "\x1b[31mred", "a" * 200])
def test_a_machine_that_there_is_not_is_named_with_those_that_there_are(typed: str) -> None:
    with pytest.raises(AdviceError) as told:
        family_of(typed, in_force())
    assert "spiral" in str(told.value)
    assert "\x1b" not in str(told.value)
    assert len(str(told.value)) < 300


@pytest.mark.parametrize(
    ("typed", "near"), [("spirral", "spiral"), ("sidegrip", "side grip"), ("cleeted incline", "cleated incline")]
)
def test_a_near_spelling_of_a_machine_is_suggested(typed: str, near: str) -> None:
    with pytest.raises(AdviceError, match=f'Did you mean "{near}'):
        family_of(typed, in_force())


def test_a_near_spelling_of_a_subject_is_suggested(brief: Brief) -> None:
    with pytest.raises(AdviceError, match="Did you mean how-high\\? There are: how-high, how-fast"):
        advise(brief, "how-hihg")
    with pytest.raises(AdviceError, match="There are: "):
        advise(brief, "weather")


@pytest.mark.parametrize("word", ["why-not", "would-fit", "what-if"])
def test_what_has_to_stand_behind_a_word_is_asked_for(word: str, brief: Brief) -> None:
    with pytest.raises(AdviceError, match=f"{word} needs "):
        advise(brief, word, "  ")


@pytest.mark.parametrize(
    ("typed", "changed"),
    [
        ("60 a minute", {"rate.normal": 60.0}),
        ("rate.peak=60", {"rate.peak": 60.0}),
        ("rise.height=4 handling.squeeze=yes", {"rise.height": 4.0, "handling.squeeze": True}),
        ("cleaning.method=wipe", {"cleaning.method": "wipe"}),
        ("handling.squeeze=TRUE", {"handling.squeeze": True}),
        ("they weigh 12 kg", {"product.weight": 12.0}),
        ("it is a freezer", {"temperature.zone": "freezer"}),
    ],
)
def test_a_change_is_taken_in_words_or_as_field_and_value(typed: str, changed: dict[str, Any], brief: Brief) -> None:
    assert advise(brief, "what-if", typed).data["changed"] == changed


def test_the_visitors_name_is_no_change_of_the_case(brief: Brief) -> None:
    with pytest.raises(AdviceError, match="what-if needs a change"):
        advise(brief, "what-if", "my name is Ann Example")


@pytest.mark.parametrize(
    ("typed", "named"),
    [("rate.paek=60", "rate.paek"), ("rate.peak=fast", "rate.peak"), ("product.type=boxes", "product.type")],
)
def test_a_field_or_value_that_cannot_be_is_refused_with_its_name(typed: str, named: str, brief: Brief) -> None:
    with pytest.raises(SpecError) as refused:
        advise(brief, "what-if", typed)
    assert named in str(refused.value)
