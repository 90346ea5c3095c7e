"""A size or a weight of zero is asked back: nothing could be sized with it."""

import pytest

from intake.talk import Interview


@pytest.mark.parametrize(("words", "field"), [("it is 0 kg", "product.weight"), ("0 mm wide", "product.width")])
def test_zero_is_a_doubt_and_no_fact(words: str, field: str) -> None:
    talk = Interview()
    talk.hear("trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up 4 m")
    before = talk.spec()[field]
    talk.hear(words)
    assert talk.spec()[field] == before
    assert talk.ask() is not None


def test_zero_as_the_answer_to_a_question_is_asked_back_and_the_talk_goes_on() -> None:
    talk = Interview()
    talk.hear("trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up 4 m")
    talk.hear("254 mm wide")
    question = talk.ask()
    assert question is not None
    assert question.fields == ("product.width",)
    heard = talk.answer("0 m", question.id)
    assert [doubt.field for doubt in heard.doubts] == ["product.width"]
    assert talk.spec()["product.width"] == pytest.approx(0.254)
    assert talk.result().families
