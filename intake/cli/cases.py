"""`intake cases`: list, find, show, copy, shelve, export and import kept cases."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from intake.cli.input_error import InputError
from intake.cli.streams import print_json, read_all

if TYPE_CHECKING:
    from intake.casebook import Book

_EPILOG = """examples:
  intake cases                              all cases that are not on the shelf, last changed first
  intake cases tea cartons                  those with these words in title, index or messages
  intake cases --show 0302-bkt              what is known of one (the desk opens it: intake desk 0302-bkt)
  intake cases --copy 0302-bkt --name tea2  a new case that begins with all of it
  intake cases --export 0302-bkt > tea.jsonl
  intake cases --import tea.jsonl

What was heard about a person (name, company, address, number) is left out of --show and blanked in --export
unless --with-contacts is given. INTAKE_BOOK names the file that the cases are kept in."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "cases",
        help="list, find, show, copy, shelve, export and import kept cases",
        description="Lists the kept cases, or does one thing with one of them.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("words", nargs="*", metavar="WORDS", help="only cases that have all these words")
    one = parser.add_mutually_exclusive_group()
    one.add_argument("--show", metavar="ID", help="what is known of one case")
    one.add_argument("--copy", metavar="ID", help="begin a new case with all of this one")
    one.add_argument("--archive", metavar="ID", help="put a case on the shelf: kept, not listed")
    one.add_argument("--restore", metavar="ID", help="take a case off the shelf")
    one.add_argument("--export", metavar="ID", help="print a case as JSON Lines")
    one.add_argument("--import", dest="take_in", metavar="FILE", help="keep an exported case; - is standard input")
    parser.add_argument("--name", metavar="NAME", help="with --copy and --import: the id of the new case")
    parser.add_argument("--with-contacts", action="store_true", help="with --show and --export: the person as well")
    parser.add_argument("--all", action="store_true", help="list the cases on the shelf too")
    parser.add_argument("--json", action="store_true", help="the same for programs")
    parser.set_defaults(run=run)


_ACTIONS = ("show", "copy", "archive", "restore", "export", "take_in")


def run(args: argparse.Namespace) -> int:
    """Do what was asked for. Raises BookError for trouble with the book, InputError for options that clash."""
    from intake.casebook import Book

    action = next((name for name in _ACTIONS if getattr(args, name) is not None), None)
    if action is not None and args.words:
        raise InputError(f'"{args.words[0]}" is one word too many. Give words to find, or one thing to do with a case.')
    with Book() as book:
        _DOING[action](book, args)
    return 0


def _list(book: "Book", args: argparse.Namespace) -> None:
    from intake.cli.case_text import entry_lines, entry_shape

    found = book.cases(" ".join(args.words), archived=args.all)
    if args.json:
        print_json([entry_shape(entry) for entry in found])
    elif found:
        print(*entry_lines(found), sep="\n")
    elif args.words:
        print("No case has these words." + ("" if args.all else " Cases on the shelf are looked at with --all."))
    else:
        print("No cases are kept yet. Begin one: intake ask --case NAME")


def _show(book: "Book", args: argparse.Namespace) -> None:
    from intake.casebook.error import no_case
    from intake.cli.case_text import case_lines, case_shape

    events = book.events(args.show)
    if not events:
        raise no_case(args.show)
    if args.json:
        print_json(case_shape(args.show, events, contacts=args.with_contacts))
    else:
        print(*case_lines(args.show, events, contacts=args.with_contacts), sep="\n")


def _copy(book: "Book", args: argparse.Namespace) -> None:
    name = args.name or book.new_id()
    book.copy(args.copy, name)
    _done(args, {"id": name, "of": args.copy}, f"{name}: a copy of {args.copy}. Go on with: intake ask --case {name}")


def _archive(book: "Book", args: argparse.Namespace) -> None:
    book.archive(args.archive)
    _done(
        args,
        {"id": args.archive, "archived": True},
        f"{args.archive}: on the shelf. Take it off with: intake cases --restore {args.archive}",
    )


def _restore(book: "Book", args: argparse.Namespace) -> None:
    book.restore(args.restore)
    _done(args, {"id": args.restore, "archived": False}, f"{args.restore}: listed again.")


def _export(book: "Book", args: argparse.Namespace) -> None:
    print(book.export(args.export, personal=args.with_contacts), end="")


def _import(book: "Book", args: argparse.Namespace) -> None:
    name = book.import_(_text_of(args.take_in), args.name)
    _done(args, {"id": name}, f"{name}: kept. Look at it with: intake cases --show {name}")


def _text_of(file: str) -> str:
    if file == "-":
        return read_all()
    try:
        return Path(file).read_bytes().decode("utf-8")
    except UnicodeDecodeError:
        raise InputError(f"{file}: not UTF-8 text. Give a file that intake cases --export wrote.") from None


def _done(args: argparse.Namespace, shape: dict[str, Any], line: str) -> None:
    if args.json:
        print_json(shape)
    else:
        print(line)


_DOING = {
    None: _list,
    "show": _show,
    "copy": _copy,
    "archive": _archive,
    "restore": _restore,
    "export": _export,
    "take_in": _import,
}
