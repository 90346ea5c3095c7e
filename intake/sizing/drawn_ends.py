"""Between which ends the figure behind a fact is drawn, in the canonical unit of its field."""

from math import degrees

from intake.sizing.job import Job
from intake.sizing.sampling import is_drawn
from intake.sizing.unknowns import LIKELY, WORST, Var
from intake.spec.vocabulary import vocabulary


def drawn_ends(job: Job, about: str) -> tuple[float, float] | None:
    """The ends of a field's draws [canonical unit]; None for a test, or where they hang on other draws."""
    if about.startswith("test.") or about not in vocabulary():
        return None
    for name, var in job.sizes[0].items():
        if var.asks[:1] == (about,) and is_drawn(var):
            ends = _placed(job, name) if var.missing else (var.hi[LIKELY], var.hi[WORST])
            return None if ends is None else (_canonical(ends[0], about), _canonical(ends[1], about))
    return None


def _placed(job: Job, name: str) -> tuple[float, float] | None:
    """Floor and ceiling where nobody spoke of them: usual for the rise."""
    space, figures = job.data.prior_space, job.sizes[0]
    if name == "ly":
        return space["width"]
    base: Var | None = {"lx": figures["rise"], "ceil": figures["ztop"]}.get(name)
    if base is None or base.missing:
        return None
    if name == "lx":
        return base.typical * space["length_per_rise"][0], base.typical * space["length_per_rise"][1]
    return base.typical + space["headroom"][0], base.typical + space["headroom"][1]


def _canonical(value: float, field: str) -> float:
    unit = vocabulary()[field].unit
    if unit == "degC":
        return value - 273.15
    return degrees(value) if unit == "deg" else value * 60.0 if unit == "1/min" else value
