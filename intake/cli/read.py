"""`intake read`: one message, or many, to facts with the words that they came from."""

import argparse
from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any

from intake.cli.input_error import InputError
from intake.cli.lines import answer_lines
from intake.cli.streams import print_json, read_all
from intake.spec import Heard, nearest, vocabulary
from intake.spec.clean import one_line

_EPILOG = """example:
  echo "16x12x10 inch cases, 30 lb, up to 45/min" | intake read
  echo "about 12" | intake read --asked rise.height --json
  echo "cs 16x12x10 30# 25/m pk 32 in 30\\" out 14' no sq" | intake read --shorthand
  intake read --lines < messages.jsonl      lines such as  {"id": "a", "asked": null, "text": "30 lb"}
  echo "3 ft 6 in at 40 psi" | intake read --quantities
  intake read --thread < chat.txt            speakers told apart; only the visitor's words give facts"""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "read",
        help="one message on standard input to facts",
        description="Reads what a visitor wrote: facts with the words they came from, doubts, and what was not used.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--asked", metavar="FIELD[,FIELD...]", help="the fields that the message answers")
    parser.add_argument("--json", action="store_true", help="as JSON")
    parser.add_argument("--lines", action="store_true", help="JSON Lines in and out")
    parser.add_argument("--quantities", action="store_true", help="every quantity, whatever field it belongs to")
    parser.add_argument(
        "--thread", action="store_true", help="a pasted chat log or mail thread: whose words, and their facts"
    )
    parser.add_argument("--shorthand", action="store_true", help="typed by staff while listening: short words count")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Read one message, or every line of standard input."""
    if args.thread:
        return _thread(args)
    if args.quantities:
        return _quantities(args)
    if args.lines:
        return answer_lines(
            partial(_read_line, shorthand=args.shorthand), '{"id": "a", "asked": null, "text": "30 lb"}'
        )
    from intake.reading import read

    heard = read(read_all(), _asked(args.asked.split(",")) if args.asked else None, shorthand=args.shorthand)
    if args.json:
        print_json(heard.to_json())
    else:
        _show(heard)
    return 0


def _thread(args: argparse.Namespace) -> int:
    """A whole thread. Raises InputError with options that do not go with it."""
    if args.lines or args.quantities or args.asked or args.shorthand:
        raise InputError(
            "--thread takes one whole text and finds out itself what was asked:"
            " leave out --lines, --quantities, --asked and --shorthand"
        )
    from intake.talk import Interview

    text = read_all()
    thread = Interview().take_thread(text)
    if args.json:
        print_json(thread.to_json())
        return 0
    for turn in thread.turns:
        who = "Visitor" if turn.who == "visitor" else "Staff"
        about = ", ".join(one_line(part) for part in (turn.name, turn.at) if part and part.casefold() != turn.who)
        print(f"{who}{f' ({about})' if about else ''}: {one_line(turn.text)}")
    if thread.turns:
        print()
    _show(Heard(facts=thread.facts, doubts=thread.doubts, unread=thread.unread))
    return 0


def _read_line(row: Mapping[str, Any], *, shorthand: bool) -> dict[str, Any]:
    from intake.reading import read

    asked = row.get("asked")
    if isinstance(asked, str):
        asked = [asked]
    if asked is not None and not (isinstance(asked, list) and all(isinstance(name, str) for name in asked)):
        raise InputError('"asked" is neither null, a field nor a list of fields')
    return read(_text_of(row), _asked(asked) if asked else None, shorthand=shorthand).to_json()


def _quantities(args: argparse.Namespace) -> int:
    from intake.reading import quantities

    def answer(row: Mapping[str, Any]) -> dict[str, Any]:
        return {"quantities": [found.to_json() for found in quantities(_text_of(row))]}

    if args.lines:
        return answer_lines(answer, '{"id": "a", "text": "3 ft 6 in"}')
    print_json(answer({"text": read_all()}))
    return 0


def _text_of(row: Mapping[str, Any]) -> str:
    text = row.get("text")
    if not isinstance(text, str):
        raise InputError('there is no "text" on this line')
    return text


def _asked(names: Sequence[str]) -> list[str]:
    """The fields asked about. Raises InputError for one that there is not, with the nearest spelling."""
    wanted = [name.strip() for name in names if name.strip()]
    for name in wanted:
        if name not in vocabulary():
            close = nearest(name)
            hint = f' Did you mean "{close}"?' if close else ""
            raise InputError(f'asked: there is no field "{one_line(name)}".{hint}')
    return wanted


def _show(heard: Heard) -> None:
    """What was understood, for people: one fact a line with its words."""
    from intake.spec.display import label, show_value, system_of

    system = system_of([fact.said for fact in heard.facts])
    for fact in heard.facts:
        print(f'{label(fact.field, fact.size)}: {show_value(fact.field, fact, system)}, from "{one_line(fact.said)}"')
    for doubt in heard.doubts:
        print(f'To ask: {doubt.ask} ("{one_line(doubt.said)}": {doubt.why})')
    for piece in heard.unread:
        print(f'Not used: "{one_line(piece)}"')
    if not (heard.facts or heard.doubts or heard.unread):
        print("Nothing in it that the interview asks for.")
