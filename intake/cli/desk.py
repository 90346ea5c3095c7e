"""`intake desk`: the full-screen desk."""

import argparse
import os
import sys
from typing import Any

from intake.cli.input_error import InputError

_EXAMPLE = """example:
  intake desk tea_cartons      open the kept case "tea_cartons", or start it"""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "desk",
        help="open the full-screen desk (also: intake alone)",
        description="Opens the desk: the talk, what was understood, which machines stand. Needs a terminal.",
        epilog=_EXAMPLE,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("case", nargs="?", metavar="CASE", help="a kept case to go on with, or a name for a new one")
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal, to select and copy")
    parser.add_argument("--sitting", type=_sitting, metavar="ID", help=argparse.SUPPRESS)  # given by `intake serve`
    parser.set_defaults(run=run)


def _sitting(text: str) -> str:
    from intake.desk.sitting import is_sitting_id

    if not is_sitting_id(text):
        raise argparse.ArgumentTypeError("a sitting is named by 32 hexadecimal digits")
    return text


def run(args: argparse.Namespace) -> int:
    """Open the desk; without a terminal say what to use instead."""
    on_a_terminal = all(stream is not None and stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr))
    served = args.sitting is not None and "web_driver" in os.environ.get("TEXTUAL_DRIVER", "")
    if not served and (not on_a_terminal or os.environ.get("TERM") == "dumb"):
        raise InputError("the desk needs a terminal that can draw. The same interview line by line: intake ask")
    # Read once, when the screen library is imported: answers appear in half the time.
    os.environ.setdefault("TEXTUAL_FPS", "120")
    from intake.desk.app import open_desk

    return int(open_desk(args.case, mouse=not args.no_mouse, sitting=args.sitting))
