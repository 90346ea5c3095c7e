"""Putting right what was read, in pages: pick the words, say what they are."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass

from textual.app import App

from intake.desk.lights import Lit, fact_words
from intake.desk.line_page import LinePage
from intake.desk.list_page import ListPage
from intake.desk.pieces import Piece, joined, pieces
from intake.desk.snapshot import Row
from intake.interview.mending import Mend
from intake.spec import Fact, vocabulary
from intake.spec.clean import one_line
from intake.spec.display import System
from intake.spec.labels import label

_NOTHING, _OTHER = "nothing", "other"


@dataclass(frozen=True)
class Reader:
    """What is asked of the talk while something is put right; both look only."""

    meanings: Callable[[str], list[Fact]]
    value: Callable[[str, str], Fact | None]
    system: System


async def ask_mend(app: App[None], lit: Lit, at: tuple[int, int] | None, reader: Reader) -> Mend | None:
    """What staff say that words of a message are; None when they think better of it. `at`: words picked already."""
    piece = Piece(*at, lit.words[slice(*at)], "", " ") if at is not None else await _pick(app, lit)
    if piece is None:
        return None
    found = await asyncio.to_thread(reader.meanings, piece.said)
    rows = [Row(key=f"{fact.field}", text=fact_words(fact, reader.system)) for fact in found]
    rows += [Row(key=_NOTHING, text="nothing that counts: leave it out"), Row(key=_OTHER, text="another fact ...")]
    said = one_line(piece.said, 50)
    key = await app.push_screen_wait(ListPage(f'"{said}" is', tuple(rows), "take it"))
    if key is None:
        return None
    if key == _NOTHING:
        return Mend((piece.start, piece.end), None)
    fact = next((one for one in found if one.field == key), None) or await _other(app, piece, reader)
    return Mend((piece.start, piece.end), fact) if fact is not None else None


async def _pick(app: App[None], lit: Lit) -> Piece | None:
    """The words to put right: what was lit first, then every other word; several by a mark at the first of them."""
    parts = pieces(lit)
    order = sorted(range(len(parts)), key=lambda place: (not parts[place].sign.strip(), place))
    first: int | None = None
    while True:
        rows = tuple(Row(key=str(place), text=_piece_text(parts[place], place == first)) for place in order)
        title = "Which words?" if first is None else f'From "{one_line(parts[first].said, 30)}" to which word?'
        key = await app.push_screen_wait(ListPage(title, rows, "take it", more={"plus": ("mark from here", "from")}))
        if key is None:
            return None
        if key.startswith("from:"):
            first = int(key.removeprefix("from:"))
            order = list(range(first, len(parts)))
            continue
        last = int(key)
        return parts[last] if first is None else joined(parts[first], parts[last], lit.words)


def _piece_text(piece: Piece, marked: bool) -> str:
    means = f": {piece.means}" if piece.means else ""
    return f'{">" if marked else piece.sign} "{one_line(piece.said, 60)}"{means}'


async def _other(app: App[None], piece: Piece, reader: Reader) -> Fact | None:
    """Any fact of the vocabulary, with its value typed where the words do not give it."""
    known = vocabulary()
    rows = tuple(Row(key=name, text=f"{label(name)}  ({name})") for name in known if not known[name].personal)
    field = await app.push_screen_wait(ListPage(f'"{one_line(piece.said, 40)}" is which fact?', rows, "take it"))
    if field is None:
        return None
    fact = await asyncio.to_thread(reader.value, field, piece.said)
    while fact is None:
        choices = known[field].choices
        of = f" ({', '.join(choices)})" if choices else " (yes or no)" if known[field].kind == "yes_no" else ""
        words = await app.push_screen_wait(LinePage(f"What is the {label(field)}?{of}"))
        if not words:
            return None
        fact = await asyncio.to_thread(reader.value, field, words)
    return fact
