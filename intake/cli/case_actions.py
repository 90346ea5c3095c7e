"""One thing with one kept case: show, copy, shelve, send and take in, forget."""

import argparse
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

from intake.casebook import Book, Forgotten
from intake.casebook.error import no_case
from intake.casebook.personal import words_found
from intake.cli.case_text import case_lines, case_shape
from intake.cli.input_error import InputError
from intake.cli.streams import complain, print_json, read_all
from intake.spec import Event, fold
from intake.spec.clean import one_line

_NOT_FOUND = "Nicknames, misspellings and short forms are not found: look with --show, and mend by hand what is left."
_ELSEWHERE = "What was exported, handed over or backed up before still holds the words; delete those files yourself."


def told(args: argparse.Namespace, shape: dict[str, Any], *lines: str) -> None:
    """Say what was done: lines for people, the shape for programs."""
    if args.json:
        print_json(shape)
    else:
        print(*lines, sep="\n")


def events_of(book: Book, case_id: str) -> list[Event]:
    """The events of a case. Raises BookError where there is none."""
    events = book.events(case_id)
    if not events:
        raise no_case(case_id)
    return events


def _show(book: Book, args: argparse.Namespace, case_id: str) -> None:
    events = events_of(book, case_id)
    if args.json:
        print_json(case_shape(case_id, events, contacts=args.with_contacts))
    else:
        today = date.today().isoformat()
        print(*case_lines(case_id, events, contacts=args.with_contacts, today=today), sep="\n")


def _copy(book: Book, args: argparse.Namespace, case_id: str) -> None:
    name = args.name or book.new_id()
    book.copy(case_id, name)
    told(args, {"id": name, "of": case_id}, f"{name}: a copy of {case_id}. Go on with: intake ask --case {name}")


def _archive(book: Book, args: argparse.Namespace, case_id: str) -> None:
    book.archive(case_id)
    back = f"intake cases --restore {case_id}"
    told(args, {"id": case_id, "archived": True}, f"{case_id}: on the shelf. Take it off with: {back}")


def _restore(book: Book, args: argparse.Namespace, case_id: str) -> None:
    book.restore(case_id)
    told(args, {"id": case_id, "archived": False}, f"{case_id}: listed again.")


def _export(book: Book, args: argparse.Namespace, case_id: str) -> None:
    named = len({file.file for file in fold(events_of(book, case_id)).files})
    print(book.export(case_id, personal=args.with_contacts, files=args.with_files), end="")
    if named and not args.with_files:
        complain(f"intake cases: {_files(named)} of {case_id} left out; --with-files takes them along.")


def _import(book: Book, args: argparse.Namespace, file: str) -> None:
    name = book.import_(_text_of(file), args.name)
    lacking = sum(not book.has_content(name, one.file) for one in fold(book.events(name)).files)
    lines = [f"{name}: kept. Look at it with: intake cases --show {name}"]
    lines += [f"The content of {_files(lacking)} did not come along: export with --with-files."] if lacking else []
    told(args, {"id": name, "files_lacking": lacking}, *lines)


def _forget(book: Book, args: argparse.Namespace, case_id: str) -> int | None:
    from intake.desk.keeping import index_of_events

    if not args.yes:
        return _ask_first(book, args, case_id)
    done = book.forget(case_id, index_of_events, files=args.and_files)
    shape = {
        "id": case_id,
        "messages": done.messages,
        "other_entries": done.events,
        "files_dropped": done.files,
        "files_kept": done.files_kept,
        "also_in": list(done.also_in),
        "older_copies": list(done.copies),
        "sealed": done.sealed,
    }
    told(args, shape, *_forgotten(case_id, done, args.and_files))
    return None


def _ask_first(book: Book, args: argparse.Namespace, case_id: str) -> int:
    """What would be blanked, without doing it."""
    events = events_of(book, case_id)
    words = words_found(events)
    named = len({file.file for file in fold(events).files})
    if args.json:
        told(args, {"id": case_id, "words": len(words), "files": named, "done": False})
    else:
        shown = ", ".join(f'"{one_line(word, 60)}"' for word in words) if args.with_contacts else ""
        print(
            f"{case_id}: {len(words)} names, addresses and numbers would be blanked for good wherever they stand in it."
        )
        print(shown or "--with-contacts shows them.")
        if named:
            print(
                f"{_files(named)} would {'be dropped' if args.and_files else 'stay; --and-files drops the contents'}."
            )
        print(_NOT_FOUND, _ELSEWHERE, sep="\n")
    complain(f"intake cases: nothing is forgotten yet. Add --yes to do it for {case_id}; it cannot be undone.")
    return 2


def _forgotten(case_id: str, done: Forgotten, and_files: bool) -> list[str]:
    lines = [f"{case_id}: forgotten. Words were blanked in {done.messages} messages and {done.events} other entries."]
    if done.files:
        lines.append(f"Contents of files that were dropped: {done.files}.")
    if done.files_kept:
        why = "other cases have them too" if and_files else "--and-files drops what no other case has"
        lines.append(f"Contents of files that are still kept: {done.files_kept}; {why}.")
    if done.also_in:
        lines.append(f"The same words stand in: {', '.join(done.also_in)}. Forget the person there too.")
    if done.copies:
        lines.append(f"Copies of the book before it was brought up to date hold them: {', '.join(done.copies)}")
    if not done.sealed:
        lines.append(
            "Another program has the book open, or the disk is full: traces may lie in the file until this runs again."
        )
    return [*lines, _NOT_FOUND, _ELSEWHERE]


def _files(count: int) -> str:
    return "1 file" if count == 1 else f"{count} files"


def _text_of(file: str) -> str:
    if file == "-":
        return read_all()
    try:
        return Path(file).read_bytes().decode("utf-8")
    except UnicodeDecodeError:
        raise InputError(f"{file}: not UTF-8 text. Give a file that intake cases --export wrote.") from None


DOING: dict[str, Callable[..., int | None]] = {
    "show": _show,
    "copy": _copy,
    "archive": _archive,
    "restore": _restore,
    "export": _export,
    "import": _import,
    "forget": _forget,
}
