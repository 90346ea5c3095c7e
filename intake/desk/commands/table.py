"""All commands, and how a typed line finds its own."""

from collections.abc import Iterator
from dataclasses import replace

from intake.casebook import BookError
from intake.desk.commands import book, files, life, looking, talking
from intake.desk.commands.command import Command, under
from intake.desk.effect import Effect, Slip
from intake.desk.work import Work
from intake.spec import SpecError
from intake.spec.clean import LONGEST, clean
from intake.spec.vocabulary import nearest


def _quit(work: Work, rest: str) -> Effect:
    return Effect(leave=True)


def _help(work: Work, rest: str) -> Effect:
    word = rest.strip().removeprefix("/")
    found = by_word(word) if word else None
    return Effect(lines=(f"{found.usage}: {found.does}",) if found is not None else tuple(help_lines()))


COMMANDS: tuple[Command, ...] = (
    *talking.COMMANDS,
    *looking.COMMANDS,
    *life.COMMANDS,
    *book.COMMANDS,
    *files.COMMANDS,
    *under(
        "THE DESK",
        Command("help", "[COMMAND]", "this list, or one of it", _help, looks=True),
        Command("quit", "", "leave", _quit, looks=True),
    ),
)


def is_command(text: str) -> bool:
    """True for a line that begins as commands do: a slash and a letter, or a slash alone. "/12 kg" is words.

    >>> is_command("/later"), is_command("/12 kg"), is_command("12/min")
    (True, False, False)
    """
    return text[:1] == "/" and (text[1:2].isalpha() or not text[1:].strip())


def by_word(word: str) -> Command | None:
    """The command of that word, with or without its slash."""
    return next((one for one in COMMANDS if one.word == word.removeprefix("/").casefold()), None)


def starting(lead: str) -> list[Command]:
    """The commands whose word starts so, for completing what is typed."""
    said = lead.removeprefix("/").casefold()
    return [one for one in COMMANDS if one.word.startswith(said)]


def run(work: Work, line: str) -> tuple[Command, Effect]:
    """Do what a typed line says. Raises Slip for a line that cannot be done, in words for the person."""
    head, *tail = clean(line, len(line)).split(maxsplit=1) or [""]
    command = by_word(head)
    if len(line) > LONGEST and (command is None or command.word != "thread"):
        raise Slip(f"That is longer than the {LONGEST} characters of one message. Send it in parts.")
    if command is None:
        close = nearest(head.removeprefix("/"), tuple(one.word for one in COMMANDS))
        hint = f" Did you mean /{close}?" if close else ""
        raise Slip(f"There is no command {head[:40]}.{hint} /help lists them.")
    try:
        effect = command.run(work, tail[0] if tail else "")
        return command, replace(effect, lines=tuple(map(_plain, effect.lines)))
    except (BookError, SpecError) as trouble:
        raise Slip(str(trouble)) from None


def _plain(line: str) -> str:
    """The line as it may stand on a screen; blanks that set it in stay."""
    return clean(line).replace("\n", " ").replace("\t", " ")


def help_lines() -> Iterator[str]:
    """Every command with what it does, under its head."""
    group = ""
    for one in COMMANDS:
        if one.group != group:
            group = one.group
            yield group
        yield f"{one.usage}: {one.does}"
