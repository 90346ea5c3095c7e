"""`intake proof`: is a questions folder sound, and if not, where and how to mend it."""

import argparse
from pathlib import Path
from typing import Any

from intake.cli.streams import complain, print_json

_EPILOG = """example:
  intake proof                     the folder that ships with the program
  intake proof our_questions       a folder of your own
  intake proof --fields            every fact that a question may ask for, with units and choices

Exit 0 when everything is sound, 2 when something is not: a line each, with file and line where they are sure."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "proof",
        help="check a questions folder: file and line for whatever is wrong",
        description="Checks questions, choice words, assumptions, limits and cards of a folder, all in one run.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("folder", nargs="?", metavar="FOLDER", help="the folder (default: the one in force)")
    parser.add_argument("--fields", action="store_true", help="list the facts that questions may ask for, and stop")
    parser.add_argument("--json", action="store_true", help="the same for programs")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Check one folder. Returns 0 when it is sound, 2 when it is not."""
    if args.fields:
        return _fields(args.json)
    from intake.advice.cards import prove_cards
    from intake.interview.proof import prove
    from intake.spec.folder import questions_folder

    folder = questions_folder(args.folder)
    proof, cards = prove(folder), prove_cards(folder)
    problems = list(dict.fromkeys([*proof.problems, *cards.problems]))
    name = Path(args.folder).name if args.folder else "questions"
    if args.json:
        rows = [{"file": p.file, "line": p.line, "what": p.what, "mend": p.mend} for p in problems]
        counts = {"questions": proof.questions, "fields": proof.fields, "words": proof.words, "cards": cards.cards}
        print_json({"problems": rows, **counts})
        return 2 if problems else 0
    for problem in problems:
        print(problem)
    if not problems:
        print(
            f"{name}: {proof.questions} questions, {proof.fields} fields, {proof.words} choice words, "
            f"{cards.cards} cards: all sound"
        )
        return 0
    found = "1 problem" if len(problems) == 1 else f"{len(problems)} problems"
    complain(f"{name}: {found}, listed with file and line. Mend them and run intake proof again.")
    return 2


def _fields(as_json: bool) -> int:
    from intake.spec.vocabulary import vocabulary

    known = vocabulary().values()
    if as_json:
        print_json([{"id": f.id, "kind": f.kind, "unit": f.unit, "choices": f.choices, "note": f.note} for f in known])
        return 0
    for field in known:
        takes = {"quantity": field.unit, "count": "a whole number", "yes_no": "yes or no", "text": "text as said"}
        print(f"{field.id:<24} {takes.get(field.kind, ' | '.join(field.choices))}")
    return 0
