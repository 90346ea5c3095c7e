"""Words put in place of others in a shadow, with the way back: places lead to all of the words replaced."""

from dataclasses import dataclass

from intake.reading.text.fold import Folded


@dataclass(frozen=True, slots=True)
class Change:
    """What stands at `start`..`end` of the shadow is `says` from now on.

    start == end puts it in between; it counts to what comes behind, or with `behind` to what stands before.
    """

    start: int
    end: int
    says: str
    behind: bool = False


def changed(folded: Folded, changes: list[Change]) -> Folded:
    """The shadow with all changes made. They must not overlap.

    Every place in a replacement begins where the words replaced begin and ends where they end, so that no part of a
    shorthand word is ever cut out of the text.
    """
    places = folded.places or range(len(folded.shadow) + 1)
    shadow: list[str] = []
    raw: list[str] = []
    firsts: list[int] = []
    lasts: list[int] = []
    last = 0
    in_capitals = folded.raw.isupper()

    def keep(start: int, end: int) -> None:
        shadow.append(folded.shadow[start:end])
        raw.append(folded.raw[start:end])
        firsts.extend(places[start:end])
        lasts.extend(place + 1 for place in places[start:end])

    for change in sorted(changes, key=lambda one: (one.start, one.end, not one.behind)):
        keep(last, change.start)
        typed = folded.raw[change.start : change.end]
        before = folded.shadow[change.start - 1 : change.start]
        after = folded.shadow[change.end : change.end + 1]
        says = change.says
        if says[:1] in (",", ";") and _is_apart(shadow, says[0]):
            says = says[1:].lstrip()  # nothing before it that it must be kept apart from
        says = " " * bool(before.strip()) + says + " " * bool(after.strip())
        shadow.append(says)
        raw.append(says.upper() if in_capitals or (typed.isupper() and len(typed) > 1) else says)
        begin = places[change.start - change.behind]
        stop = places[max(change.end - 1, change.start - change.behind)] + 1
        firsts.extend([begin] * len(says))
        lasts.extend([stop] * len(says))
        last = change.end
    keep(last, len(folded.shadow))
    return Folded(folded.text, "".join(shadow), "".join(raw), (*firsts, places[len(folded.shadow)]), tuple(lasts))


def _is_apart(shadow: list[str], sign: str) -> bool:
    """True at a beginning, and where a sign as strong keeps what was written last apart already."""
    for piece in reversed(shadow):
        plain = piece.rstrip(" ")
        if plain:
            return plain[-1] in (",;:\n" if sign == "," else ";\n")
    return True
