"""When it could be there: the usual weeks of the machine beside those in which it is wanted."""

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name
from intake.advice.missing import nothing_leads
from intake.interview.reasons import shown
from intake.spec.display import show, show_value


def delivery(brief: Brief, family: str | None = None) -> Answer:
    """Usual delivery of one family or the leading one, in weeks from order, against the weeks wanted.

    Raises KeyError for a family that there is not.
    """
    said, found = brief.sentences, brief.family(family)
    figure = found.figures.get("lead_time") if found is not None else None
    if found is None or figure is None or figure.value is None:
        return Answer(topic="delivery", lines=(nothing_leads(brief),))
    low, high = figure.low or figure.value, figure.high or figure.value
    usual, least, most = (shown(float(round(weeks)), figure.unit, brief.system) for weeks in (figure.value, low, high))
    lines = [said.say("delivery.usual", family=family_name(found.family, said), weeks=usual, low=least, high=most)]
    wanted = brief.spec.of("project.weeks")
    if wanted is None or wanted.largest is None:
        lines.append(said.say("delivery.unknown"))
    else:
        weeks = wanted.low if wanted.low is not None else wanted.largest
        kind = "in_time" if weeks >= figure.value else "late"
        room = show(abs(weeks - figure.value), figure.unit, brief.system)
        lines.append(
            said.say(f"delivery.{kind}", wanted=show_value("project.weeks", wanted, brief.system), room=room)
        )  # fmt: skip
    lines += [said.say("delivery.samples"), said.say("delivery.basis")]
    data = {"family": found.family, "weeks": figure.value, "low": low, "high": high}
    return Answer(topic="delivery", lines=tuple(lines), data=data)
