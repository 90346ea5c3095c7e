"""What the tests of whole conversations share: the real sizing, without its samples unless asked for."""

from collections.abc import Callable
from pathlib import Path

import pytest

from intake import sizing
from intake.interview.question import Question
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec.flat import Spec
from intake.talk import Interview


@pytest.fixture
def sampled() -> None:
    """Asked for by the tests that want the sizing with its samples."""


@pytest.fixture(autouse=True)
def without_samples(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """The real sizing, but without its 256 samples, which take most of the time of these tests."""

    def bare(spec: Spec, *, questions: Path, worth: bool = False) -> Result:
        return size(spec, questions=questions)

    if "sampled" not in request.fixturenames:
        monkeypatch.setattr(sizing, "size", bare)


@pytest.fixture
def asked_to_the_end() -> Callable[[Interview], list[Question]]:
    """Answers everything with the same words until nothing is left to ask."""

    def ask_on(talk: Interview, reply: str = "don't know", most: int = 80) -> list[Question]:
        asked = []
        while (question := talk.ask()) is not None:
            asked.append(question)
            assert len(asked) < most, [question.id for question in asked]
            talk.answer(reply)
        return asked

    return ask_on
