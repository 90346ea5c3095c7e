"""A person at the desk, for tests: presses keys and reads what is on the screen."""

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

from textual.pilot import Pilot
from textual.widgets import OptionList, Static, TextArea

from intake.desk.app import Desk
from intake.desk.conversation import Conversation
from intake.desk.list_page import ListPage
from intake.desk.prompt import Prompt
from intake.desk.talk_screen import TalkScreen
from intake.talk import Interview

_AT_WORK = ("talk", "preview")


class Hands:
    """A person at the desk. Every deed waits until the desk has done what comes of it."""

    def __init__(self, app: Desk, pilot: Pilot[Any]) -> None:
        self.app, self.pilot = app, pilot

    @property
    def talk(self) -> Interview:
        """The talk of the case in front."""
        return self.app.front.steps.work.talk

    @property
    def prompt(self) -> Prompt:
        """The answer line of the case in front."""
        return self.app.front.query_one(Prompt)

    async def settle(self) -> None:
        """Wait until nothing is being worked on; a page that waits for the person is no work."""
        for _ in range(1000):
            await self.pilot.pause()
            if not any(one.group in _AT_WORK and not one.is_finished for one in self.app.workers):
                break
        else:
            raise AssertionError("the desk does not come to rest")
        await self.pilot.pause()

    async def press(self, *keys: str) -> None:
        """Press keys one after the other."""
        for key in keys:
            await self.pilot.press(key)
        await self.settle()

    async def type(self, words: str) -> None:
        """Put words on the answer line."""
        self.prompt.text = words
        self.prompt.move_cursor(self.prompt.document.end)
        await self.settle()

    async def send(self, words: str) -> None:
        """Type words and press Enter."""
        await self.type(words)
        await self.press("enter")

    async def choose(self, words: str) -> None:
        """Take the first line of the list in front that holds these words."""
        page = self.app.screen
        assert isinstance(page, ListPage), f"{page} is no list"
        rows = self.rows()
        place = next((n for n, row in enumerate(rows) if words in row), None)
        assert place is not None, f"{words!r} is not among {rows}"
        page.query_one(OptionList).highlighted = place
        await self.press("enter")

    def rows(self) -> list[str]:
        """The lines of the list in front."""
        listed = self.app.screen.query_one(OptionList)
        return [str(listed.get_option_at_index(n).prompt) for n in range(listed.option_count)]

    def page(self) -> str:
        """The text of the page in front."""
        return self.app.screen.query_one(TextArea).text

    def frame(self) -> list[str]:
        """The screen as rows of text."""
        strips = self.app.screen._compositor.render_strips()  # the only way to the text of a frame
        return ["".join(segment.text for segment in strip).rstrip() for strip in strips]

    def line(self, selector: str) -> str:
        """What a line of the case in front says."""
        return str(self.app.front.query_one(selector, Static).render())

    def said(self) -> str:
        """The conversation as text."""
        return self.app.front.query_one(Conversation).text

    def underlined(self) -> list[str]:
        """The pieces that are drawn underlined in the conversation."""
        rows = self.app.front.query_one(Conversation).rows
        return [piece.text for row in rows for piece in row if piece.style is not None and piece.style.underline]

    def on_the_talk(self) -> bool:
        """True while no page lies over the case."""
        return isinstance(self.app.screen, TalkScreen)


AtDesk = Callable[..., AbstractAsyncContextManager[Hands]]
