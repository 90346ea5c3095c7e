"""`intake handoff`: the package for engineering out of a kept case."""

import argparse
from typing import Any

from intake.cli.input_error import InputError

_EPILOG = """example:
  intake handoff tea_cartons --to handover/

Writes spec.json (intake size takes it back), spec.md, values.csv and result.json. Each hand-off that differs
from the last gets the next revision letter. Name, company, e-mail and phone stay out unless --with-contact."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "handoff",
        help="write the package for engineering",
        description="Writes a kept case as a package for engineering: every value with who said it, every figure "
        "with its formula and source.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("case", metavar="CASE", help="a kept case (intake cases lists them)")
    parser.add_argument("--to", required=True, metavar="FOLDER", help="where the files go; made if it is not there")
    parser.add_argument("--with-contact", action="store_true", help="put name, company, e-mail and phone in")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Write the package and put the hand-over into the case."""
    from intake.desk.keeping import Keeper, resume
    from intake.handoff import FILES, write

    talk = resume(args.case)
    if talk is None:
        raise InputError(f"{args.case}: no case is kept under that name. List them with: intake cases")
    package = write(talk, args.to, case=args.case, with_contact=args.with_contact)
    talk.record("handed_over", {"revision": package.revision, "spec": talk.spec(), "data": package.data})
    keeper = Keeper(args.case)
    trouble = keeper.keep(talk) or keeper.index(talk)
    print(f"Revision {package.revision} of {args.case} written to {args.to}: {', '.join(FILES)}")
    print("Contact data are in it." if args.with_contact else "Contact data stayed out.")
    if trouble:
        raise InputError(
            f"{args.case}: the hand-over could not be noted in the case, so its letter may come again: {trouble}"
        )
    return 0
