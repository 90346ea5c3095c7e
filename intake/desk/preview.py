"""Lights up what is understood while words are typed, away from the screen's thread, and keeps what staff put right."""

import asyncio
from dataclasses import replace
from typing import TYPE_CHECKING

from textual.timer import Timer
from textual.widgets import Static

from intake.desk import talk_pages
from intake.desk.commands.table import is_command, starting
from intake.desk.lights import Lit, reading_line
from intake.desk.mending_pages import Reader, ask_mend
from intake.desk.prompt import Prompt
from intake.interview.mending import Mend

if TYPE_CHECKING:
    from intake.desk.talk_screen import TalkScreen

_KEEP_S = 0.5
"""Words stand still so long before they are kept as half typed [s]."""

_PAUSE_S = 0.04
"""Typing goes on so long before it is looked at again [s]: a fast hand costs nothing."""


class Previewer:
    """Looks at the words on the answer line of one screen."""

    def __init__(self, screen: "TalkScreen") -> None:
        self._screen = screen
        self._mends: list[tuple[str, Mend]] = []
        self._later: Timer | None = None
        self._kept = ""

    def found(self, words: str) -> None:
        """Words that were kept as half typed stand on the line again."""
        self._kept = words

    def look(self) -> None:
        """The words have changed: look at them in a moment."""
        self._screen.run_worker(self._look(), group="preview", exclusive=True, exit_on_error=False)

    def taken(self, sent: str) -> tuple[Mend, ...]:
        """What staff put right in words just sent, with its places in them as they are without blanks at the ends."""
        lead = len(sent) - len(sent.lstrip())
        spans = [(mend.span[0] - lead, mend.span[1] - lead) for _, mend in self._mends]
        words = sent.strip()
        mends = [
            replace(mend, span=span)
            for (said, mend), span in zip(self._mends, spans, strict=True)
            if span[0] >= 0 and words[slice(*span)] == said
        ]
        self._mends.clear()
        return tuple(mends)

    async def _look(self) -> None:
        await asyncio.sleep(_PAUSE_S)
        prompt = self._screen.query_one(Prompt)
        words = prompt.text
        self._keep(words)
        self._mends = [(said, mend) for said, mend in self._mends if words[slice(*mend.span)] == said]
        if not words.strip() or is_command(words):
            self._tell("   ".join(one.usage for one in starting(words.split()[0])) if words.strip() else "")
            return
        if await asyncio.to_thread(talk_pages.thread_turns, words):
            self._tell("A whole thread, it seems. Enter asks whether to take it apart by who said what.")
            return
        mends = tuple(mend for _, mend in self._mends)
        async with self._screen.turn:  # the talk is worked on by one at a time
            lit = await asyncio.to_thread(self._screen.steps.preview, words, self._screen.seen(), mends)
        if prompt.text == words:
            prompt.light(lit)
            self._tell(f"{reading_line(lit) or 'nothing read in it yet'}")

    def _keep(self, words: str) -> None:
        """What is half typed goes into the book after a moment without typing, or at once when it was sent."""
        if self._later is not None:
            self._later.stop()
            self._later = None
        keeper = self._screen.steps.work.keeper
        if keeper is None or words == self._kept:
            return

        async def keep() -> None:
            self._kept = words
            await asyncio.to_thread(keeper.type, words)

        self._later = self._screen.set_timer(_KEEP_S if words else _PAUSE_S, keep)

    def _tell(self, line: str) -> None:
        told = self._screen.query_one("#reading", Static)
        told.update(line)
        told.display = bool(line)
        self._screen.set_class(bool(line), "typing")

    def mend(self) -> None:
        """Put right something of the words on the answer line."""
        self._screen.run_worker(self._mend_typed(), group="mend", exclusive=True)

    def mend_last(self) -> None:
        """Put right something of the last message."""
        self._screen.run_worker(self._mend_sent(), group="mend", exclusive=True)

    async def _mend_typed(self) -> None:
        prompt = self._screen.query_one(Prompt)
        lit = await self._lit(prompt.text, self._screen.seen())
        mend = await ask_mend(self._screen.app, lit, prompt.picked(), self._reader(prompt.text))
        if mend is not None:
            said = prompt.text[slice(*mend.span)]
            self._mends = [(s, m) for s, m in self._mends if not _touch(m, mend)] + [(said, mend)]
            self.look()

    async def _mend_sent(self) -> None:
        steps = self._screen.steps
        last = steps.work.talk.last_message
        lit = await self._lit(last, None)
        mend = await ask_mend(self._screen.app, lit, None, self._reader(last))
        if mend is not None:
            self._screen.run_step(lambda: steps.mend_last((mend,)))

    async def _lit(self, words: str, seen: str | None) -> Lit:
        async with self._screen.turn:
            return await asyncio.to_thread(self._screen.steps.preview, words, seen)

    def _reader(self, words: str) -> Reader:
        work = self._screen.steps.work
        system = work.units or work.talk.system_with(words)
        return Reader(meanings=work.talk.meanings, value=work.talk.value_in_words, system=system)


def _touch(one: Mend, other: Mend) -> bool:
    return one.span[0] < other.span[1] and other.span[0] < one.span[1]
