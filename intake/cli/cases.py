"""`intake cases`: list, find, show, copy, shelve, send, forget and look after kept cases."""

import argparse
from importlib import import_module
from typing import Any

from intake.cli.input_error import InputError

_EPILOG = """examples:
  intake cases                              all cases that are not on the shelf, last changed first
  intake cases tea cart                     those with words that begin so in title, index or messages
  intake cases --due --waiting-for us       what we should have done by today
  intake cases --standing "handed over" --since 2026-03-01
  intake cases --show 0302-bkt              what is known of one (the desk opens it: intake desk 0302-bkt)
  intake cases --copy 0302-bkt --name tea2  a new case that begins with all of it
  intake cases --promise 0302-bkt "send the layout" --who us --by fri
  intake cases --done 0302-bkt 1            the first of what waits, as --show numbers it
  intake cases --attach 0302-bkt floor.pdf --note "floor plan, ground floor"
  intake cases --export 0302-bkt > tea.jsonl
  intake cases --import tea.jsonl
  intake cases --backup cases-2026-03.sqlite3

Days: 2026-03-31, today, tomorrow, fri, +3d. What was heard about a person (name, company, address, number) is left out
of --show and blanked in --export unless --with-contacts is given. INTAKE_BOOK names the file that the cases are kept
in; a backup is such a file."""

# An action's name, its metavars, its help. The name is where argparse keeps it, too.
_ACTIONS: tuple[tuple[str, tuple[str, ...], str], ...] = (
    ("show", ("ID",), "what is known of one case, what waits, its files"),
    ("copy", ("ID",), "begin a new case with all of this one"),
    ("archive", ("ID",), "put a case on the shelf: kept, not listed"),
    ("restore", ("ID",), "take a case off the shelf"),
    ("close", ("ID",), "nothing more is to be done"),
    ("reopen", ("ID",), "go on with a closed case"),
    ("promise", ("ID", "TEXT"), "what somebody will do; --who and --by say who and by when"),
    ("asked_back", ("ID", "TEXT"), "what engineering wants to know before it goes on"),
    ("done", ("ID", "NUMBER"), "a promise was kept, or a question asked back answered"),
    ("attach", ("ID", "FILE"), "keep a file with a case"),
    ("files", ("ID",), "the files of a case"),
    ("save_file", ("ID", "FILE"), "write a file of a case, by its name or number, to --to PATH"),
    ("export", ("ID",), "print a case as JSON Lines"),
    ("import", ("FILE",), "keep an exported case; - is standard input"),
    ("forget", ("ID",), "blank what was heard about the person, for good; asks for --yes"),
    ("rebuild", (), "write the index of all cases anew"),
    ("check", (), "tell what is wrong with the book, if anything"),
    ("backup", ("FILE",), "write a sound copy of the book while desks are open"),
)

# Where an action is done; only that file is loaded.
_MODULES = {
    **dict.fromkeys(("show", "copy", "archive", "restore", "export", "import", "forget"), "case_actions"),
    **dict.fromkeys(("rebuild", "check", "backup"), "case_upkeep"),
}

# What only goes with some actions; None is the list.
_GOES_WITH: dict[str, tuple[str | None, ...]] = {
    "name": ("copy", "import"),
    "with_contacts": ("show", "export", "forget"),
    "with_files": ("export",),
    "who": ("promise",),
    "by": ("promise",),
    "note": ("attach",),
    "to": ("save_file",),
    "and_files": ("forget",),
    "yes": ("forget",),
    **dict.fromkeys(("family", "standing", "since", "until", "due", "open", "waiting_for", "limit", "all"), (None,)),
}


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "cases",
        help="list, find, show, copy, shelve, send, forget and look after kept cases",
        description="Lists the kept cases, or does one thing with one of them or with the whole book.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("words", nargs="*", metavar="WORDS", help="only cases that have words beginning with all these")
    _add_filters(parser.add_argument_group("which cases to list"))
    one = parser.add_argument_group("one thing to do").add_mutually_exclusive_group()
    for name, takes, said in _ACTIONS:
        kind: dict[str, Any] = {"metavar": takes, "nargs": len(takes)} if takes else {"action": "store_true"}
        one.add_argument(_option(name), dest=f"do_{name}", help=said, **kind)
    _add_details(parser.add_argument_group("details of it"))
    parser.add_argument("--json", action="store_true", help="the same for programs")
    parser.set_defaults(run=run)


def _add_filters(group: Any) -> None:
    group.add_argument("--family", metavar="NAME", help="with this machine leading: side_grip, spiral ...")
    group.add_argument(
        "--standing", metavar="TEXT", help='whose standing begins so: talking, decided, "handed over" ...'
    )
    group.add_argument("--since", metavar="DAY", help="last changed on that day or later")
    group.add_argument("--until", metavar="DAY", help="last changed on that day or earlier")
    group.add_argument("--due", metavar="DAY", nargs="?", const="today", help="due on that day or earlier (today)")
    group.add_argument("--open", action="store_true", help="with promises or questions that wait")
    group.add_argument("--waiting-for", metavar="WHO", choices=("us", "visitor", "works"), help="us, visitor or works")
    group.add_argument("--limit", metavar="N", type=int, help="at most so many; 0 for all (200, and all with --json)")
    group.add_argument("--all", action="store_true", help="those on the shelf too")


def _add_details(group: Any) -> None:
    group.add_argument("--name", metavar="NAME", help="with --copy and --import: the id of the new case")
    group.add_argument("--with-contacts", action="store_true", help="with --show, --export, --forget: the person too")
    group.add_argument("--with-files", action="store_true", help="with --export: the contents of its files as well")
    group.add_argument("--who", metavar="WHO", choices=("us", "visitor", "works"), help="with --promise: who (us)")
    group.add_argument("--by", metavar="DAY", help="with --promise: by when")
    group.add_argument("--note", metavar="TEXT", help="with --attach: what the file shows")
    group.add_argument("--to", metavar="PATH", help="with --save-file: a new file, or a folder")
    group.add_argument("--and-files", action="store_true", help="with --forget: drop the contents of its files too")
    group.add_argument("--yes", action="store_true", help="with --forget: do it")


def run(args: argparse.Namespace) -> int:
    """Do what was asked for. Raises BookError for trouble with the book, InputError for options that clash."""
    from intake.casebook import Book
    from intake.cli import case_list

    action = next((name for name, _, _ in _ACTIONS if getattr(args, f"do_{name}") not in (None, False)), None)
    if action is not None and args.words:
        raise InputError(f'"{args.words[0]}" is one word too many. Give words to find, or one thing to do with a case.')
    _refuse_clashes(args, action)
    with Book() as book:
        if action is None:
            case_list.show_list(book, args)
            return 0
        doing = import_module(f"intake.cli.{_MODULES.get(action, 'case_life')}").DOING[action]
        taken = getattr(args, f"do_{action}")
        return doing(book, args, *(taken if isinstance(taken, list) else ())) or 0


def _refuse_clashes(args: argparse.Namespace, action: str | None) -> None:
    for detail, goes_with in _GOES_WITH.items():
        if getattr(args, detail) in (None, False) or action in goes_with:
            continue
        places = [_option(name) if name is not None else "the list of cases" for name in goes_with]
        beside = "a list" if action is None else _option(action)
        raise InputError(f"{_option(detail)} goes with {' and '.join(places)}, not with {beside}.")


def _option(name: str) -> str:
    return f"--{name.replace('_', '-')}"
