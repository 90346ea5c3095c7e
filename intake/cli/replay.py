"""`intake replay`: a worked conversation through the real reading, interview and sizing."""

import argparse
from typing import Any

from intake.cli.input_error import InputError

_EPILOG = """example:
  intake replay first_call
  intake replay first_call --speed 2       at twice the pace of reading
  intake replay my_talk.toml

Left without a FILE it lists the conversations that come with the program."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "replay",
        help="play a worked conversation and show the result",
        description="Plays a conversation through the real code: the talk, what was understood, what it ruled out, "
        "the result.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("file", nargs="?", metavar="FILE", help="a conversation by name or path")
    parser.add_argument("--speed", type=_pace, default=0.0, metavar="N", help="wait as for reading, N times as fast")
    parser.add_argument("--units", choices=("us", "si"), help="units to show (default: those that the visitor uses)")
    parser.set_defaults(run=run)


def _pace(text: str) -> float:
    try:
        pace = float(text)
    except ValueError:
        pace = -1.0
    if not 0.0 <= pace <= 1000.0:
        raise argparse.ArgumentTypeError(f"{text!r} is not a figure from 0 to 1000 (1 = reading pace, 0 = at once)")
    return pace


def run(args: argparse.Namespace) -> int:
    """Play one conversation; without a name list them. 2 when its own expectations are not met."""
    from intake.cli.conversation import ConversationError, find, load, shipped

    if not args.file:
        for path in shipped():
            print(f"{path.stem}: {load(path).title}")
        return 0
    try:
        conversation = load(find(args.file))
    except ConversationError as fault:
        raise InputError(str(fault)) from fault
    from intake.cli.player import play

    missed = play(conversation, pace=args.speed, units=args.units)
    for line in missed:
        print(f"Expected otherwise: {line}")
    return 2 if missed else 0
