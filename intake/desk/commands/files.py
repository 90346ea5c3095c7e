"""Commands for what is kept with a case besides words, and for forgetting the person."""

from pathlib import Path

from intake.casebook.exchange import written
from intake.casebook.files import LARGEST_FILE, file_mark
from intake.desk.commands.command import Command, needs, under
from intake.desk.effect import Effect, Go, Slip
from intake.desk.keeping import index_of, index_of_events
from intake.desk.work import Work
from intake.handoff import FILES, HandoffError, write
from intake.spec.clean import clean, one_line

_GROUP = "FILES AND PEOPLE"


def _here(work: Work) -> None:
    """Raises Slip for somebody at a browser: the files would be those of the computer that serves it."""
    if work.served:
        raise Slip("In a browser there are no files to read or write. On the computer that serves it: intake cases.")


def _attach(work: Work, rest: str) -> Effect:
    """A file from this computer, kept in the book with the case."""
    _here(work)
    said = needs(rest, "the file behind it, and what it shows: /attach ~/floor.pdf: the floor with its columns")
    path, shows = _path_in(said)
    if work.keeper is None:
        raise Slip("This talk is not kept, so no file can be kept with it. Open it under a name.")
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise Slip(f"{path.name} has {size / 1e6:.1f} MB; {LARGEST_FILE // 1_000_000} MB is the most for one file.")
        content = path.read_bytes()
    except OSError as fault:
        raise Slip(f"{path}: {fault.strerror or fault}. Check the path.") from None
    mark = file_mark(content)
    work.keeper.hold(mark, content)
    name = clean(f"{path.name}: {shows}" if shows else path.name)
    work.talk.life.attached(name, mark, len(content))
    return Effect(lines=(f"Attached: {one_line(name)} ({_size(len(content))})",))


def _path_in(said: str) -> tuple[Path, str]:
    """The file that a line names, and the words behind a colon. The whole line first: paths may hold anything."""
    whole = Path(said).expanduser()
    if whole.is_file():
        return whole, ""
    for place in (n for n, sign in enumerate(said) if sign == ":"):
        path = Path(said[:place].strip()).expanduser()
        if path.is_file():
            return path, said[place + 1 :].strip()
    if whole.is_dir():
        raise Slip(f"{whole} is a folder. Name one file in it.")
    raise Slip(f"There is no file {one_line(said, 100)}. Write its path, and behind a colon what it shows.")


def _files(work: Work, rest: str) -> Effect:
    rows = [f"{n}. {one_line(one.name)} ({_size(one.bytes)})" for n, one in enumerate(work.talk.case.files, 1)]
    return Effect(lines=(*rows, "One of them out again: /save 1 FOLDER") if rows else ("No file is attached.",))


def _save(work: Work, rest: str) -> Effect:
    """An attached file written out again; a file that is there already is never written over."""
    _here(work)
    number, _, place = needs(rest, "its number and a folder: /save 1 ~/Downloads").partition(" ")
    files = work.talk.case.files
    if not number.isdecimal() or not 1 <= int(number) <= len(files):
        raise Slip(f"There are {len(files)} files. /files numbers them.")
    one = files[int(number) - 1]
    folder = Path(place.strip() or ".").expanduser()
    to = folder / (_safe_name(one.name) or f"file-{number}")
    content = work.book.attachment(work.name, one.file)
    try:
        with to.open("xb") as out:
            out.write(content)
    except FileExistsError:
        raise Slip(f"{to} is there already, and nothing is written over. Name another folder.") from None
    except OSError as fault:
        raise Slip(f"{to}: {fault.strerror or fault}. Name a folder that is there and yours.") from None
    return Effect(lines=(f"Written: {to}",))


def _safe_name(name: str) -> str:
    """A name of our own making from what the file was called: no folders, no signs that a shell would obey."""
    said = name.partition(":")[0].strip()
    return "".join(sign if sign.isalnum() or sign in "._-" else "_" for sign in said).lstrip(".")[:80]


def _export(work: Work, rest: str) -> Effect:
    """The case as it stands here, saved or not, as one file that `intake cases --import` takes."""
    _here(work)
    said = needs(rest, "the file behind it: /export ~/tea.jsonl; with the person's data: /export with contacts FILE")
    personal = said.casefold().startswith("with contacts ")
    path = Path(said[len("with contacts ") :].strip() if personal else said).expanduser()
    name = work.name or "case"
    text = written(name, work.talk.events, index_of(work.talk), personal=personal)
    try:
        with path.open("x", encoding="utf-8") as out:
            out.write(text)
        path.chmod(0o600)
    except FileExistsError:
        raise Slip(f"{path} is there already, and nothing is written over. Give another name.") from None
    except OSError as fault:
        raise Slip(f"{path}: {fault.strerror or fault}. Name a place that is there and yours.") from None
    left = "with what was said about the person" if personal else "what was said about the person is blanked"
    return Effect(lines=(f"Written: {path} ({left}; attached files are not in it).",))


def _hand_over(work: Work, rest: str) -> Effect:
    """The package for engineering, written into a folder; contact data stay out."""
    _here(work)
    folder = needs(rest, "the folder for the package behind it: /hand-over ~/handover/tea")
    try:
        package = write(work.talk, Path(folder).expanduser(), case=work.name or "case", with_contact=False)
    except (HandoffError, OSError) as fault:
        raise Slip(str(fault)) from None
    work.talk.record("handed_over", {"revision": package.revision, "spec": work.talk.spec(), "data": package.data})
    told = f"Revision {package.revision} written to {one_line(folder)}: {', '.join(FILES)}. Contact data stayed out."
    return Effect(lines=(told,))


def _forget(work: Work, rest: str) -> Effect:
    """Blank what was heard about the person, for good."""
    said = rest.strip().casefold()
    if said not in ("yes", "yes with files"):
        return Effect(
            lines=(
                "Forgetting blanks the person's name, company, address and number in every message of this case, for "
                "good: no undo. Facts about the need stay. Exports and copies made before are not touched.",
                "If that is meant: /forget yes; with the contents of attached files: /forget yes with files",
            )
        )
    done = work.book.forget(work.name, index_of_events, files=said.endswith("files"))
    lines = [f"Forgotten: words blanked in {done.messages} messages; {done.files} files dropped."]
    if done.files_kept:
        lines.append(f"{done.files_kept} attached files stay, and may name the person: /forget yes with files")
    if done.also_in:
        lines.append(f"The same words stand in other cases: {', '.join(done.also_in)}")
    if done.copies:
        lines.append(f"Older copies of the book hold them still: {', '.join(done.copies)}")
    if not done.sealed:
        lines.append("Another desk is still reading the old pages; do it once more when it is closed.")
    return Effect(lines=tuple(lines), go=Go(case=work.name, anew=True))


def _size(count: int) -> str:
    return (
        f"{count} bytes"
        if count < 10_000
        else f"{count / 1000:.0f} kB"
        if count < 10_000_000
        else f"{count / 1e6:.0f} MB"
    )


COMMANDS: tuple[Command, ...] = under(
    _GROUP,
    Command("attach", "FILE[: WHAT IT SHOWS]", "keep a file with the case", _attach),
    Command("files", "", "what is attached", _files, looks=True),
    Command("save", "N [FOLDER]", "write an attached file out again", _save, looks=True),
    Command("export", "[with contacts] FILE", "the case as one file, saved or not", _export, looks=True),
    Command("hand-over", "FOLDER", "write the package for engineering", _hand_over),
    Command("forget", "[yes [with files]]", "blank what was heard about the person, for good", _forget, looks=True),
    beside=True,
)
