"""Random specs written down in shorthand, in the styles of several people; what must read back from each piece."""

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

IN, FT, LB = 0.0254, 0.3048, 0.45359237
Piece = tuple[str, dict[str, Any]]
"""What is typed, and the facts in it (figures in the canonical unit)."""
Style = Callable[[Any], Piece]


def _of(values: st.SearchStrategy[Any], *styles: Style) -> st.SearchStrategy[Piece]:
    return st.builds(lambda value, style: style(value), values, st.sampled_from(styles))


def _words(**said: dict[str, Any]) -> st.SearchStrategy[Piece]:
    """Typed words (underscores for spaces) with their facts."""
    return st.sampled_from([(typed.replace("_", " "), facts) for typed, facts in said.items()])


def _size(unit: str, factor: float) -> Style:
    def style(v: tuple[int, int, int]) -> Piece:
        long, wide, high = sorted(v, reverse=True)
        return f"{long}x{wide}x{high}{unit}", {
            "product.length": long * factor, "product.width": wide * factor, "product.height": high * factor,
        }  # fmt: skip

    return style


def _letters(v: tuple[int, int, int]) -> Piece:
    long, wide, high = sorted(v, reverse=True)
    return f'L {long}" W {wide}" H {high}"', dict(zip(_SIZES, (long * IN, wide * IN, high * IN), strict=True))


def _one(form: str, field: str, factor: float = 1.0) -> Style:
    return lambda n: (form.format(n=n), {field: n * factor})


def _both(form: str, factor: float, *fields: str) -> Style:
    return lambda pair: (
        form.format(*pair), {field: n * factor for field, n in zip(fields, pair, strict=True)}
    )  # fmt: skip


_SIZES = ("product.length", "product.width", "product.height")
_RATES = ("rate.normal", "rate.peak")
_HEIGHTS = ("rise.infeed_height", "rise.discharge_height")


def _arrow(form: str, factor: float) -> Style:
    def style(pair: tuple[int, int]) -> Piece:
        facts: dict[str, Any] = {field: n * factor for field, n in zip(_HEIGHTS, pair, strict=True)}
        facts["rise.direction"] = "up" if pair[1] > pair[0] else "down"
        return form.format(*pair), facts

    return style


_THREE = st.tuples(*[st.integers(5, 30)] * 3).filter(lambda v: len(set(v)) == 3)
_MILLIMETRES = st.tuples(*[st.integers(10, 60).map(lambda n: 10 * n)] * 3).filter(lambda v: len(set(v)) == 3)
_PAIR = st.tuples(st.integers(2, 25), st.integers(2, 25)).filter(lambda v: v[0] != v[1])
_RISING = st.tuples(st.integers(2, 6), st.integers(8, 25))
_METRES = st.tuples(st.integers(2, 9), st.integers(2, 9)).filter(lambda v: v[0] != v[1])
_RISING_METRES = st.tuples(st.integers(1, 3), st.integers(4, 12))
_DOOR_METRES = st.tuples(st.integers(2, 4), st.integers(2, 4))

IMPERIAL: dict[str, st.SearchStrategy[Piece]] = {
    "size": _of(_THREE, _size('"', IN), _size(" in", IN), _letters),
    "weight": _of(st.integers(2, 60), _one("{n}#", "product.weight", LB), _one("wt {n}lb", "product.weight", LB)),
    "heights": st.one_of(
        _of(_RISING, _both("in {}' out {}'", FT, *_HEIGHTS), _both("infd {}' disch {}'", FT, *_HEIGHTS)),
        _of(_PAIR, _arrow("{}' > {}'", FT), _arrow("{}' -> {}'", FT), _arrow("{}'>{}'", FT)),
    ),
    "floor": _of(_PAIR, _both("flr {}'x{}'", FT, "space.length", "space.width")),
    "ceiling": _of(st.integers(9, 40), _one("clg {n}'", "space.ceiling", FT), _one("ceil {n}ft", "space.ceiling", FT)),
    "door": _of(_PAIR, _both("dr {}'x{}'", FT, "space.opening_width", "space.opening_height")),
}
METRIC: dict[str, st.SearchStrategy[Piece]] = {
    "size": _of(_MILLIMETRES, _size("mm", 0.001), _size(" mm", 0.001)),
    "weight": _of(st.integers(2, 30), _one("{n}kg", "product.weight"), _one("wt {n} kg", "product.weight")),
    "heights": st.one_of(
        _of(_RISING_METRES, _both("in {}m out {}m", 1.0, *_HEIGHTS), _both("inf {}m outf {}m", 1.0, *_HEIGHTS)),
        _of(_METRES, _arrow("{}m > {}m", 1.0), _arrow("{}m->{}m", 1.0)),
    ),
    "floor": _of(_METRES, _both("flr {}x{}m", 1.0, "space.length", "space.width")),
    "ceiling": _of(st.integers(3, 12), _one("clg {n}m", "space.ceiling")),
    "door": _of(_DOOR_METRES, _both("dr {}x{}m", 1.0, "space.opening_width", "space.opening_height")),
}
ANY: dict[str, st.SearchStrategy[Piece]] = {
    "type": _words(
        cs={"product.type": "case"}, ctns={"product.type": "carton"}, bdl={"product.type": "bundle"},
        pch={"product.type": "pouch"}, totes={"product.type": "tote"}, trs={"product.type": "tray"},
    ),
    "rates": st.one_of(
        _of(
            st.tuples(st.integers(5, 60), st.integers(61, 99)),
            _both("{}/m pk {}", 1.0, *_RATES),
            _both("{}/m pk {}/m", 1.0, *_RATES),
            _both("nrm {} pk {}", 1.0, *_RATES), _both("{}/m nrm {}/m pk", 1.0, *_RATES),
        ),
        _of(
            st.integers(5, 99), _one("{n}/m", "rate.normal"),
            _one("pk {n}/m", "rate.peak"), _one("pk{n}", "rate.peak"),
        ),
    ),
    "fill": _words(fl={"product.fill": "full"}, mt={"product.fill": "empty"}, empts={"product.fill": "empty"}),
    "closed": _words(clsd={"product.closed": True}, tpd={"product.closed": True}, clsd_n={"product.closed": False}),
    "rigid": _words(
        rgd={"product.rigidity": "rigid"}, sft={"product.rigidity": "soft"}, smrgd={"product.rigidity": "semi_rigid"}
    ),
    "wet": _words(wet_btm={"product.wet": True}, wet_n={"product.wet": False}, wet_y={"product.wet": True}),
    "squeeze": _words(
        no_sq={"handling.squeeze": False}, sq_ok={"handling.squeeze": True}, sq_n={"handling.squeeze": False},
        sq_y={"handling.squeeze": True},
    ),
    "invert": _words(
        no_inv={"handling.invert": False}, inv_y={"handling.invert": True}, inv_n={"handling.invert": False}
    ),
    "fragile": _words(frag_y={"handling.fragile": True}, frag_n={"handling.fragile": False}),
    "turn": _words(
        strt={"rise.turn": 0.0},
        **{"90L": {"rise.turn": 270.0}, "90R": {"rise.turn": 90.0}, "90_rt": {"rise.turn": 90.0}}
    ),
    "zone": _words(
        amb={"temperature.zone": "ambient"}, chl={"temperature.zone": "chilled"}, frz={"temperature.zone": "freezer"}
    ),
    "cleaning": _words(
        wpdn={"cleaning.method": "wipe"}, hp_wash={"cleaning.method": "high_pressure"},
        cip={"cleaning.method": "clean_in_place"}, wpdn_dly={"cleaning.method": "wipe", "cleaning.frequency": "daily"},
    ),
    "food": _words(food_n={"cleaning.exposed_food": False}, exp_food_y={"cleaning.exposed_food": True}),
    "chemicals": _words(no_chem={"cleaning.chemicals": "none"}),
    "passage": _words(
        ppl_under={"space.passage": "people"}, fork_under={"space.passage": "forklift"},
        ptr_under={"space.passage": "pallet_truck"},
    ),
    "air": _words(air_y={"site.air": True}, air_n={"site.air": False}, no_air={"site.air": False}),
    "power": _words(
        **{
            "480V_3ph_60hz": {"site.voltage": 480.0, "site.phases": 3.0, "site.frequency": 60.0},
            "400/3ph": {"site.voltage": 400.0, "site.phases": 3.0},
        }
    ),
    "hazard": _words(haz_n={"site.hazardous_area": False}, no_haz={"site.hazardous_area": False}),
    "samples": _words(smpl_y={"project.samples": True}, smpl_n={"project.samples": False}),
    "weeks": _of(st.integers(3, 40), _one("need by {n} wks", "project.weeks"), _one("{n} wks", "project.weeks")),
    "purpose": _words(repl={"project.purpose": "replacement"}, new_ln={"project.purpose": "new_line"}),
    "backs up": _words(bks_up_y={"rate.backs_up": True}, bks_up_n={"rate.backs_up": False}),
    "arrival": _words(
        bkt_bk={"rate.arrival": "touching"}, spcd={"rate.arrival": "spaced"}, grps={"rate.arrival": "bunched"}
    ),
    "levels": _of(st.integers(2, 5), _one("{n} lvls", "rise.levels")),
    "machines": _of(st.integers(2, 5), _one("{n} mach", "project.machines")),
}  # fmt: skip


@st.composite
def specs(draw: st.DrawFn) -> Piece:
    """A line of up to eight pieces in any order, with all of its facts."""
    kinds = ANY | draw(st.sampled_from([IMPERIAL, METRIC]))
    names = draw(st.lists(st.sampled_from(sorted(kinds)), min_size=1, max_size=8, unique=True))
    # What travels and its size come first: "17' 11x10x7\"" would be feet and inches, "pk 40 mt" forty tonnes.
    names = sorted(names, key=lambda name: {"type": 0, "fill": 1, "size": 2}.get(name, 3))
    pieces = [draw(kinds[name]) for name in names]
    facts = {field: value for _, told in pieces for field, value in told.items()}
    typed = draw(st.sampled_from([" ", ", ", "; "])).join(text for text, _ in pieces)
    return (typed.upper() if draw(st.booleans()) and "mm" not in typed and "kg" not in typed else typed), facts
