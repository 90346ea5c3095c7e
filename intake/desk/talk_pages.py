"""The pages that keys and commands open over a case, and what comes of what is chosen there."""

import asyncio
from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from intake.advice import next_question_message
from intake.casebook import BookError
from intake.desk.advice_page import advice_page
from intake.desk.case_rows import HOW_TO_FIND, case_rows, half_typed_rows
from intake.desk.commands.table import starting
from intake.desk.copying import copy_out, is_deaf
from intake.desk.drafts import drafts
from intake.desk.effect import Effect, Go
from intake.desk.help_page import help_text
from intake.desk.list_page import ListPage
from intake.desk.machine_page import machine_page
from intake.desk.pages import Choice, SurePage
from intake.desk.panels import Panel
from intake.desk.prompt import Prompt
from intake.desk.sketch import sketch_lines
from intake.desk.snapshot import Row
from intake.desk.steps import fault_line
from intake.spec.clean import clean, one_line

if TYPE_CHECKING:
    from intake.desk.talk_screen import TalkScreen
    from intake.reading.thread import Turn


Shown = TypeVar("Shown")


def follow(screen: "TalkScreen", effect: Effect) -> None:
    """What a command came to, beside its lines."""
    if effect.copy:
        screen.notify(copy_out(screen.app, effect.copy), markup=False)
    if effect.page is not None:
        screen.show_text(effect.page.title, effect.page.text)
    if effect.say:
        screen.send(effect.say)
    if effect.go is not None:
        screen.post_message(screen.Wanted(effect.go))
    if effect.leave:
        screen.run_worker(screen.app.run_action("quit"))


def complete(prompt: Prompt) -> None:
    """The command that begins with what is typed, as far as it is the only way on."""
    head, space, rest = prompt.text.partition(" ")
    ways = [one.word for one in starting(head)]
    if ways and not space:
        shared = ways[0] if len(ways) == 1 else _shared(ways)
        prompt.text = f"/{shared}{' ' if len(ways) == 1 else ''}{rest}"
        prompt.move_cursor(prompt.document.end)


def _shared(words: list[str]) -> str:
    first, last = min(words), max(words)
    length = next((n for n, pair in enumerate(zip(first, last, strict=False)) if pair[0] != pair[1]), len(first))
    return first[:length]


def if_thread(screen: "TalkScreen", text: str, otherwise: Callable[[], None]) -> None:
    """Words of several people (a chat log, a mail and its answer) are offered to be taken apart; else `otherwise`.

    Worked out away from the screen where it is long: a million characters take seconds.
    """
    if "\n" not in text and not screen.looking:
        otherwise()
        return

    async def look() -> None:
        async with screen.sending:  # what is sent while this is looked at stays behind it
            try:
                turns = await asyncio.to_thread(thread_turns, text)
            finally:
                screen.looking -= 1
            if turns:
                _offer_thread(screen, text, turns, otherwise)
            else:
                otherwise()

    screen.looking += 1
    screen.run_worker(look(), group="preview")


def thread_turns(text: str) -> "tuple[Turn, ...]":
    """The turns of words of more than one person; none for those of one."""
    from intake.reading.thread import split_thread  # only here: its patterns take a tenth of a second to compile

    turns = split_thread(text) if "\n" in text else ()
    return turns if len({turn.who for turn in turns}) > 1 else ()


def _offer_thread(screen: "TalkScreen", text: str, turns: "tuple[Turn, ...]", otherwise: Callable[[], None]) -> None:
    prompt = screen.query_one(Prompt)
    if len(text) <= screen.longest and not prompt.text:
        prompt.text = text  # it stands there, and is kept as half typed, until somebody has decided
        prompt.move_cursor(prompt.document.end)
    theirs = sum(turn.who == "visitor" for turn in turns)
    title = f"This looks like a whole thread: {theirs} turns of the visitor, {len(turns) - theirs} of ours."

    def take(sure: bool | None) -> None:
        if sure is not None and prompt.text == text:
            prompt.clear()
        if sure:
            screen.run_step(lambda: screen.steps.command(f"/thread {text}"), text)
        elif sure is False:
            otherwise()
        elif not prompt.text:
            prompt.insert(clean(text))

    screen.app.push_screen(SurePage(Choice(title, "take it apart", no="all of it is the visitor's")), take)


def long_paste(screen: "TalkScreen", text: str) -> None:
    """A paste longer than a message: a thread, or else its first part goes on the line."""

    def cut() -> None:
        screen.query_one(Prompt).insert(clean(text))
        told = f"Only the first {screen.longest} characters of that were taken. Send the rest by itself."
        screen.say("slip", (told,))

    if_thread(screen, text, cut)


def draw_sketch(screen: "TalkScreen") -> None:
    """The sketch of the leading machine, where its panel shows."""
    panel = screen.query_one("#sketch", Panel)
    if screen.shown is None or not panel.display or panel.size.width < 20:
        return
    lines = sketch_lines(screen.shown.brief, panel.size.width - 2, panel.size.height - 2)
    panel.show_rows((Row(key="", text="\n".join(lines), tone="drawing"),))


# ---------------------------------------------------------------------- pages


def _help(screen: "TalkScreen") -> None:
    screen.show_text("Help", help_text())


async def _away(screen: "TalkScreen", work: Callable[..., Shown], *given: object) -> Shown | None:
    """What a page shows, worked out away from the screen. A fault becomes a line, and None."""
    async with screen.turn:
        try:
            return await asyncio.to_thread(work, *given)
        except Exception as fault:
            screen.say("slip", (fault_line(fault),))
            return None


def _advice(screen: "TalkScreen") -> None:
    async def show() -> None:
        page = await _away(screen, advice_page, screen.steps.work)
        if page is None:
            return
        screen.show_text("Advice as it stands", page)

    screen.run_worker(show(), group="talk")


def _what_if(screen: "TalkScreen") -> None:
    """The typed words as a change of the case, beside the case as it is; nothing of it is kept."""
    prompt = screen.query_one(Prompt)
    words = clean(prompt.text).strip()
    if not words:
        screen.notify("Type the change first, then F10: 60 a minute, a freezer, 20 ft up.", markup=False)
        return
    prompt.clear()  # they are no answer: left there, the next Enter would send them as one

    async def show() -> None:
        page = await _away(screen, screen.steps.what_if, words)
        if page is None:
            return
        screen.show_text(f"What if: {one_line(words, 60)} (nothing of this is kept)", page)

    screen.run_worker(show(), group="talk")


def pick(screen: "TalkScreen", panel: str, key: str) -> None:
    """A row of a panel, or of the list that shows the same: a fact to change, a machine to see, a question to ask."""
    verb, _, what = key.partition(":")
    if panel == "facts" and verb == "drop":
        screen.run_step(lambda: screen.steps.command(f"/drop {what}"))
    elif panel == "facts":
        screen.run_step(lambda: screen.steps.change(key))
    elif panel == "machines":
        _machine(screen, key)
    elif panel == "left" and verb == "done":
        screen.run_step(lambda: screen.steps.command(f"/done {what}"))
    elif panel == "left":
        screen.run_step(lambda: screen.steps.put(key))


def _picking(screen: "TalkScreen", panel: str) -> Callable[[str | None], None]:
    def take(key: str | None) -> None:
        if key:
            pick(screen, panel, key)

    return take


def _facts(screen: "TalkScreen") -> None:
    shown = screen.shown
    rows = () if shown is None else (*shown.facts, *shown.assumed)
    title = "Facts: v visitor, h heard, s staff, w works, n note, ~ assumed"
    page = ListPage(title, rows, "change it", more={"delete": ("drop it", "drop")})
    screen.app.push_screen(page, _picking(screen, "facts"))


def _machine(screen: "TalkScreen", name: str) -> None:
    async def show() -> None:
        page = await _away(screen, lambda: machine_page(name, screen.steps.work.brief))
        if page is None:
            return
        screen.show_text("Machine in full", page)

    screen.run_worker(show(), group="talk")


def _machines(screen: "TalkScreen") -> None:
    rows = () if screen.shown is None else screen.shown.machines
    page = ListPage("Machines: + fits, ? depends, - out", rows, "show all of it")
    screen.app.push_screen(page, _picking(screen, "machines"))


def _to_ask(screen: "TalkScreen") -> None:
    rows = () if screen.shown is None else screen.shown.to_ask
    page = ListPage("Still to ask, and what waits (!)", rows, "ask it now")
    screen.app.push_screen(page, _picking(screen, "left"))


def _drafts(screen: "TalkScreen") -> None:
    async def show() -> None:
        found = await _away(screen, drafts, screen.steps.work)
        if found is None:
            return
        rows = tuple(Row(key=one.key, text=f"{one.title}: {one_line(one.text, 120)}") for one in found)
        key = await screen.app.push_screen_wait(ListPage("Ready to be sent", rows, "copy it"))
        draft = next((one for one in found if one.key == key), None)
        if draft is not None:
            screen.notify(copy_out(screen.app, draft.text), markup=False)
            screen.show_text(draft.title, draft.text)

    screen.run_worker(show(), group="pages")


def _book(screen: "TalkScreen") -> None:
    work = screen.steps.work
    if work.keeper is None:
        screen.notify("This talk is not kept, so there is no book open.", markup=False)
        return
    book = work.book

    def find(words: str) -> tuple[Row, ...]:
        try:
            half = (row for row in half_typed_rows(book, words) if row.key != work.name)
            return (Row(key="", text="begin a new case"), *half, *case_rows(book, words))
        except BookError as trouble:
            return (Row(key="", text="begin a new case"), Row(key=work.name, text=str(trouble)))

    def take(key: str | None) -> None:
        if key is not None:
            screen.post_message(screen.Wanted(Go(case=key)))

    screen.app.push_screen(ListPage(f"Kept cases: {HOW_TO_FIND}", find(""), "go on with it", find=find), take)


def _copy_question(screen: "TalkScreen") -> None:
    """Copy the question for the visitor; where that may not work, or at a second press, show it to select."""
    question = screen.shown.question if screen.shown is not None else None
    if question is None:
        screen.notify("No question is open.", markup=False)
        return
    text = next_question_message(question)
    again = screen.app.clipboard == text
    told = copy_out(screen.app, text)
    if again or is_deaf():
        screen.show_text("Copied. If it is not in the clipboard, select it here", text)
    else:
        screen.notify(told, markup=False)


PAGES: dict[str, Callable[["TalkScreen"], None]] = {
    "help": _help,
    "advice": _advice,
    "what_if": _what_if,
    "facts": _facts,
    "machines": _machines,
    "to_ask": _to_ask,
    "drafts": _drafts,
    "book": _book,
    "copy_question": _copy_question,
}
"""What `action_page` opens, by name."""
