"""`intake ask`: the interview line by line, for pipes, plain terminals and screen readers."""

import argparse
import sys
from collections.abc import Iterator
from typing import Any

_EPILOG = """example:
  intake ask --case tea_cartons
  printf '%s\\n' "12 kg cases, 400x300x250 mm, 20/min, up 3 m" /families /result | intake ask

Each line is what the visitor wrote, or a command: /help lists them. Several lines that belong together go
between /paste and /end, a whole chat or mail thread between /thread and /end. With --case the talk is kept after
every line and goes on where it stopped; /open, /new and /next go to other cases, which are kept too."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "ask",
        help="the interview line by line, for pipes and screen readers",
        description="Asks question after question on plain lines; every line says first what it is.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--case", metavar="NAME", help="keep the talk under this name, or go on with it")
    parser.add_argument("--units", choices=("us", "si"), help="units to show (default: those that the visitor uses)")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Hold the interview until /quit or the end of the input."""
    from intake.cli.ask_session import Session
    from intake.desk.keeping import opened
    from intake.desk.work import Work
    from intake.talk import Interview

    talk, keeper = opened(args.case) if args.case else (Interview(), None)
    session = Session(Work(talk, keeper, units=args.units))
    session.greet()
    for line in _typed():
        if not session.take(line):
            return 0
    session.leave()
    return 0


def _typed() -> Iterator[str]:
    """Lines from a person at a terminal, or from a pipe."""
    if not sys.stdin.isatty():
        from intake.cli.streams import read_lines

        for line in read_lines():
            if line is None:
                print("Not taken: that line is too long. Send the message in parts.")
            else:
                yield line
        return
    while True:
        try:
            yield input("You: ")
        except EOFError:
            print()
            return
