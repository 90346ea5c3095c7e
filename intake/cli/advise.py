"""`intake advise`: what staff and visitors ask of a case, worked out from it."""

import argparse
from typing import Any

from intake.cli.input_error import InputError
from intake.cli.spec_file import load
from intake.cli.streams import print_json

_SUBJECTS = """subjects:
  how-high [MACHINE]     the largest rise, and what stops it
  how-fast [MACHINE]     the highest rate, and what stops it
  why-not MACHINE        why not this one, with the failing figures
  would-fit MACHINE      the smallest changes that would let it stand
  what-if CHANGE         the case with something changed: in words, or FIELD=VALUE
  way-in [MACHINE]       ceiling, floor, passage and door
  shipping [MACHINE]     whether it ships whole
  delivery [MACHINE]     when it could be there
  tests                  what only samples can tell, how many of which sizes
  settled                how settled the choice is, and what would change it
  to-find-out            what is still open, the weightiest first
  answer QUESTION        a visitor's own question, in the visitor's words

examples:
  intake advise tea_cartons how-high
  intake advise job.json why-not side grip
  intake advise job.json what-if 60 a minute
  intake advise tea_cartons answer "can it go in a freezer?"

CASE is a kept case, a flat spec in JSON or TOML, or a hand-off's spec.json; - for standard input."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "advise",
        help="answers worked out from a case: how high, why not, what if, what would fit ...",
        description="Answers one question about a case, in lines that can be sent.",
        epilog=_SUBJECTS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("case", metavar="CASE", help="a kept case or a file")
    parser.add_argument("subject", metavar="SUBJECT", help="one of those below")
    parser.add_argument("words", nargs="*", metavar="...", help="a machine, a change or a question")
    parser.add_argument("--json", action="store_true", help="the figures behind it too, as JSON")
    parser.add_argument("--units", choices=("us", "si"), default="us", help="units to show (default: us)")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print one answer."""
    from intake.advice import AdviceError, Brief, advise
    from intake.advice.cards import answer_question

    brief = Brief(spec=load(args.case), system=args.units)
    rest = " ".join(args.words)
    if args.subject == "answer":
        if not rest:
            raise InputError('intake advise CASE answer needs the question behind it: answer "how tall can you go?"')
        reply = answer_question(rest, brief)
        print_json(reply.to_json()) if args.json else print("\n".join([*reply.lines, *near_lines(reply)]))
        return 0
    try:
        answer = advise(brief, args.subject, rest)
    except AdviceError as fault:
        raise InputError(f"intake advise: {fault}") from fault
    print_json(answer.to_json()) if args.json else print("\n".join(answer.lines))
    return 0


def near_lines(reply: Any) -> list[str]:
    """Other cards that the question may be about, for the staff."""
    return [f"Or did they mean: {near.about}?" for near in reply.near]
