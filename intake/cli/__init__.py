"""The `intake` command. Nothing heavy is imported before the command that needs it runs."""

import argparse
import os
import sys
import traceback
from collections.abc import Sequence
from importlib import import_module
from typing import Any, NoReturn

from intake.cli.input_error import InputError
from intake.cli.streams import complain, drop_output, prepare
from intake.spec import FolderError, SpecError

__all__ = ["main"]

COMMANDS = ("desk", "ask", "read", "size", "advise", "replay", "handoff", "tested", "cases", "proof", "serve")

DONE, BROKEN, BAD_INPUT, STOPPED = 0, 1, 2, 130

# By name, so that --help loads neither the casebook nor the models of the tree.
_FOR_PEOPLE = ("BookError", "TreeError", "RangeError", "HandoffError")

_EXAMPLES = """examples:
  intake                                 open the desk
  intake replay first_call               a worked case, without typing
  echo "12 kg cases, up 3 m" | intake read --json
  intake size job.json

INTAKE_QUESTIONS names a folder of your own questions and limits; INTAKE_DEBUG=1 shows errors in full."""


class Parser(argparse.ArgumentParser):
    """An argument parser whose errors are one line that says what to do."""

    def error(self, message: str) -> NoReturn:
        """Exit 2 with one line."""
        complain(f"{self.prog}: {message}. See: {self.prog} --help")
        raise SystemExit(BAD_INPUT)


def _parser() -> Parser:
    parser = Parser(
        prog="intake",
        description="From a visitor's words to a sized recommendation for vertical conveying.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=_version())
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    for name in COMMANDS:
        import_module(f"intake.cli.{name}").register(commands)
    return parser


def _version() -> str:
    from intake import __version__

    return f"intake {__version__}"


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns 0 done, 2 bad input, 1 a fault of ours, 130 stopped by the keyboard."""
    prepare()
    words = list(sys.argv[1:] if argv is None else argv) or ["desk"]
    try:
        args: Any = _parser().parse_args(words)
        code = int(args.run(args))
        sys.stdout.flush()
        return code
    except SystemExit as leaving:
        return int(leaving.code or 0)
    except BrokenPipeError:
        drop_output()
        return DONE
    except KeyboardInterrupt:
        complain("intake: stopped.")
        return STOPPED
    except Exception as fault:
        return _failed(fault)


def _failed(fault: Exception) -> int:
    """One line for what went wrong; the whole story only with INTAKE_DEBUG=1."""
    if os.environ.get("INTAKE_DEBUG") == "1":
        traceback.print_exception(fault)
    if _is_for_people(fault):
        complain(f"intake: {fault}")
        return BAD_INPUT
    if isinstance(fault, OSError):
        place = f"{fault.filename}: " if fault.filename else ""
        complain(f"intake: {place}{fault.strerror or fault}. Check the path, the space left and the permissions.")
        return BAD_INPUT
    complain(
        f"intake: something went wrong that should not have ({type(fault).__name__}). Kept cases are not touched. "
        "Run it again with INTAKE_DEBUG=1 and send what it prints to whoever looks after the program."
    )
    return BROKEN


def _is_for_people(fault: Exception) -> bool:
    """True for the errors whose message is written for the person at the keyboard."""
    return isinstance(fault, InputError | SpecError | FolderError) or type(fault).__name__ in _FOR_PEOPLE
