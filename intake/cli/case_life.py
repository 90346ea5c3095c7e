"""What happens to a case beside the talk, from the shell: promises, questions asked back, closing, files."""

import argparse
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path

from intake.casebook import Book, BookError, file_mark
from intake.casebook.files import refuse_too_large
from intake.cli.case_actions import events_of, told
from intake.cli.case_list import day
from intake.cli.case_text import file_lines, file_shapes
from intake.cli.input_error import InputError
from intake.cli.streams import print_json
from intake.desk.keeping import index_of
from intake.desk.waiting import waiting_lines
from intake.interview.life import Life
from intake.spec import fold
from intake.spec.clean import one_line
from intake.spec.matters import Attached, Party
from intake.talk import Interview

_TRIES = 5


def _change(
    book: Book, case_id: str, change: Callable[[Life], object], files: Mapping[str, bytes] | None = None
) -> Interview:
    """Let something happen to a case, keep it, and bring its line in the lists up to date.

    A desk that goes on with the case in the same moment comes first: then it is done again behind that.
    """
    for tried in range(_TRIES):
        talk = Interview.from_events(events_of(book, case_id))
        before = len(talk.events)
        try:
            change(talk.life)
        except ValueError as slip:
            raise InputError(f"{case_id}: {slip}. See: intake cases --show {case_id}") from None
        try:
            book.append(case_id, talk.events[before:], files=files)
            break
        except BookError as trouble:
            if trouble.code != "conflict" or tried == _TRIES - 1:
                raise
    book.append(case_id, [], index_of(talk))
    return talk


def _close(book: Book, args: argparse.Namespace, case_id: str) -> None:
    _change(book, case_id, lambda life: life.move("closed"))
    told(args, {"id": case_id, "stage": "closed"}, f"{case_id}: closed. Open it with: intake cases --reopen {case_id}")


def _reopen(book: Book, args: argparse.Namespace, case_id: str) -> None:
    _change(book, case_id, lambda life: life.move("open"))
    told(args, {"id": case_id, "stage": "open"}, f"{case_id}: open again.")


def _promise(book: Book, args: argparse.Namespace, case_id: str, text: str) -> None:
    who: Party = args.who or "us"
    by = day(args.by, "--by")
    talk = _change(book, case_id, lambda life: life.promise(text, who, by or None))
    _told_waiting(args, talk, case_id)


def _asked_back(book: Book, args: argparse.Namespace, case_id: str, text: str) -> None:
    _told_waiting(args, _change(book, case_id, lambda life: life.ask_back(text)), case_id)


def _done(book: Book, args: argparse.Namespace, case_id: str, number: str) -> None:
    waiting = fold(events_of(book, case_id)).waiting
    if not number.isdecimal() or not 1 <= int(number) <= len(waiting):
        most = f"Give 1 to {len(waiting)}" if waiting else "Nothing waits"
        raise InputError(f'{case_id}: "{number[:20]}" is no number of what waits. {most}; see --show {case_id}.')
    matter = waiting[int(number) - 1]
    talk = _change(book, case_id, lambda life: life.done(matter.seq))
    _told_waiting(args, talk, case_id, f"{case_id}: done: {one_line(matter.what, 80)}")


def _told_waiting(args: argparse.Namespace, talk: Interview, case_id: str, *lines: str) -> None:
    waiting = talk.case.waiting
    today = date.today().isoformat()
    told(
        args,
        {"id": case_id, "waiting": [{"what": one.what, "who": one.who, "by": one.by or None} for one in waiting]},
        *(lines or (f"{case_id}: kept. What waits now:",)),
        *(waiting_lines(waiting, today) if waiting else ("Nothing waits any more.",)),
    )


def _attach(book: Book, args: argparse.Namespace, case_id: str, file: str) -> None:
    path = Path(file)
    size = path.stat().st_size
    refuse_too_large(size)
    content = path.read_bytes()
    name = one_line(path.name, 200) or "file"
    if args.note:
        name = f"{name}: {one_line(args.note, 2000)}"
    sha = file_mark(content)
    _change(book, case_id, lambda life: life.attached(name, sha, len(content)), {sha: content})
    told(
        args,
        {"id": case_id, "name": name, "sha256": sha, "bytes": len(content)},
        f"{case_id}: {name} is kept with it. Back with: intake cases --save-file {case_id} {path.name} --to FOLDER",
    )


def _files(book: Book, args: argparse.Namespace, case_id: str) -> None:
    files = fold(events_of(book, case_id)).files
    here = [book.has_content(case_id, file.file) for file in files]
    if args.json:
        print_json([shape | {"here": there} for shape, there in zip(file_shapes(files), here, strict=True)])
        return
    for line, there in zip(file_lines(files), here, strict=True):
        print(line if there else f"{line}  content not kept here")
    if not files:
        print(f"{case_id}: no files. Keep one with: intake cases --attach {case_id} FILE")


def _save_file(book: Book, args: argparse.Namespace, case_id: str, name: str) -> None:
    if args.to is None:
        raise InputError("--save-file needs --to PATH: a new file, or a folder.")
    file = _file_named(fold(events_of(book, case_id)).files, name, case_id)
    content = book.attachment(case_id, file.file)
    to = Path(args.to)
    if to.is_dir():
        to = to / _safe_name(file)
    try:
        with to.open("xb") as out:  # never over another file
            out.write(content)
    except FileExistsError:
        raise InputError(f"{to}: there is a file already. Give --to another name.") from None
    told(args, {"id": case_id, "file": str(to), "bytes": len(content)}, f"{to}: written, {len(content):,} bytes")


def _file_named(files: list[Attached], name: str, case_id: str) -> Attached:
    """The file of that number, or the last one of that name."""
    if name.isdecimal() and 1 <= int(name) <= len(files):
        return files[int(name) - 1]
    found = [file for file in files if name in (file.name, _title(file), file.file)]
    if not found:
        raise InputError(f'{case_id}: no file "{one_line(name, 60)}". See: intake cases --files {case_id}')
    return found[-1]


def _title(file: Attached) -> str:
    """The name alone, without what staff wrote behind it."""
    return file.name.split(": ", 1)[0]


def _safe_name(file: Attached) -> str:
    """A name that stays in the folder it is written to, whatever stands in the case."""
    kept = "".join(sign if sign.isalnum() or sign in "-_. ()" else "_" for sign in one_line(_title(file), 120))
    return kept.strip(" .") or file.file[:12]


DOING: dict[str, Callable[..., int | None]] = {
    "close": _close,
    "reopen": _reopen,
    "promise": _promise,
    "asked_back": _asked_back,
    "done": _done,
    "attach": _attach,
    "files": _files,
    "save_file": _save_file,
}
