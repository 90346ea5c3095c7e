"""Will it fit: under the ceiling, on the floor, through the door, and what passes underneath; and the road."""

from collections.abc import Iterator

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name
from intake.advice.missing import nothing_leads
from intake.interview.reasons import percent, shown
from intake.sizing import load_range
from intake.sizing.result import Check, FamilyResult
from intake.spec.display import System, show_value


def way_in(brief: Brief, family: str | None = None) -> Answer:
    """Ceiling, floor, passage and door of one family or the leading one, each with what it takes and what there is.

    Raises KeyError for a family that there is not.
    """
    found = brief.family(family)
    if found is None:
        return Answer(topic="way_in", lines=(nothing_leads(brief),))
    lines = [brief.sentences.say("room.lead", family=family_name(found.family, brief.sentences))]
    lines += [*_overhead(found, brief), *_floor(found, brief), *_underneath(found, brief), *_door(found, brief)]
    checks = {id: check.to_json() for id in _CHECKS if (check := found.check(id)) is not None}
    return Answer(topic="way_in", lines=tuple(lines), data={"family": found.family, "checks": checks})


_CHECKS = ("ceiling", "room_length", "room_width", "passage", "doorway", "doorway_split")


def shipping(brief: Brief, family: str | None = None) -> Answer:
    """Whether the machine goes on a road trailer whole. Raises KeyError for a family that there is not."""
    said, found = brief.sentences, brief.family(family)
    check = found.check("ship") if found is not None else None
    if found is None or check is None or check.value is None:
        return Answer(topic="shipping", lines=(nothing_leads(brief),))
    kind = "parts" if check.fails_at_design else "whole"
    value, limit = (_size(one, brief.system) for one in (check.value, check.limit))
    line = said.say(f"shipping.{kind}", family=family_name(found.family, said), value=value, limit=limit)
    data = {"family": found.family, "whole": kind == "whole", "width": check.value, "limit": check.limit}
    return Answer(topic="shipping", lines=(line, said.say("shipping.check")), data=data)


def _overhead(found: FamilyResult, brief: Brief) -> Iterator[str]:
    check = found.check("ceiling")
    height = found.figures["overall_height"].value
    if height is None:
        return
    value = _size(height, brief.system)
    if check is None or not brief.spec.knows("space.ceiling"):
        yield brief.sentences.say("room.ceiling_unknown", value=value)
    else:
        limit = _size(check.limit, brief.system)
        yield brief.sentences.say("room.ceiling", value=value, limit=limit, margin=_outcome(check, brief))


def _floor(found: FamilyResult, brief: Brief) -> Iterator[str]:
    length, width = (found.figures[name].value for name in ("floor_length", "floor_width"))
    if length is None or width is None:
        return
    blanks = {"length": _size(length, brief.system), "width": _size(width, brief.system)}
    checks = [check for id in ("room_length", "room_width") if (check := found.check(id)) is not None]
    if len(checks) < 2 or not (brief.spec.knows("space.length") and brief.spec.knows("space.width")):
        yield brief.sentences.say("room.floor_unknown", **blanks)
        return
    tightest = min(checks, key=lambda check: check.margin if check.margin is not None else 1.0)
    room = [_size(check.limit, brief.system) for check in checks]
    yield brief.sentences.say(
        "room.floor", room_length=room[0], room_width=room[1], margin=_outcome(tightest, brief), **blanks
    )  # fmt: skip


def _underneath(found: FamilyResult, brief: Brief) -> Iterator[str]:
    check = found.check("passage")
    if check is not None and brief.spec.word("space.passage") not in (None, "none"):
        value, limit = (_size(one, brief.system) for one in (check.value, check.limit))
        yield brief.sentences.say("room.passage", value=value, limit=limit, margin=_outcome(check, brief))


def _door(found: FamilyResult, brief: Brief) -> Iterator[str]:
    """The smallest two sizes of the whole machine against the door, and the largest part of it."""
    said, system = brief.sentences, brief.system
    limits = load_range(brief.folder).families[found.family]
    sizes = [found.figures[name].value for name in ("floor_length", "floor_width", "overall_height")]
    if any(size is None for size in sizes):
        return
    small = sorted(size for size in sizes if size is not None)[:2]
    piece = " by ".join(_size(one, system) for one in small)
    split = " by ".join(_size(one, system) for one in sorted((limits.split_piece_width, limits.split_piece_height)))
    if not (brief.spec.knows("space.opening_width") or brief.spec.knows("space.opening_height")):
        yield said.say("room.door_unknown", piece=piece, split=split)
        return
    names = [name for name in ("space.opening_width", "space.opening_height") if brief.spec.knows(name)]
    door = " by ".join(show_value(name, brief.spec[(name, 1)], system) for name in names)
    whole, parts = found.check("doorway"), found.check("doorway_split")
    how = "stuck" if parts is not None and parts.fails_at_design else "parts" if _fails(whole) else "whole"
    yield said.say("room.door", door=door, piece=piece, outcome=said.say(f"room.{how}", split=split))


def _fails(check: Check | None) -> bool:
    return check is not None and check.fails_at_design


def _outcome(check: Check, brief: Brief) -> str:
    if check.fails_at_design:
        return brief.sentences.say("room.fails")
    margin = "" if check.margin is None else f", {percent(check.margin)} to spare"
    return brief.sentences.say("room.holds") + margin


def _size(value: object, system: System) -> str:
    """A length of a machine as people read it: no sixteenths."""
    if not isinstance(value, float | int):
        return "not known"
    return shown(round(value / 0.0254) * 0.0254 if system == "us" else round(value, 2), "m", system)
