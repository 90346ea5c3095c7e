"""A fault of the program while a page is worked out is a line, and the desk goes on."""

from typing import Any

import pytest
from hands import AtDesk

from intake.desk import talk_pages


@pytest.mark.parametrize(("key", "name"), [("f5", "advice_page"), ("ctrl+r", "drafts")])
async def test_a_page_that_fails_is_a_line(
    at_desk: AtDesk, first_message: str, monkeypatch: pytest.MonkeyPatch, key: str, name: str
) -> None:
    def fail(*given: Any) -> None:
        raise ValueError("a figure that cannot be")

    async with at_desk() as hands:
        await hands.send(first_message)
        monkeypatch.setattr(talk_pages, name, fail)
        await hands.press(key)
        for _ in range(100):
            if "a figure that cannot be" in hands.said():
                break
            await hands.pilot.pause(0.01)
        assert "could not be worked on (ValueError: a figure that cannot be)" in hands.said()
        assert hands.on_the_talk()
