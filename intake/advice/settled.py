"""How settled the choice is, and what would change it."""

from collections.abc import Iterator

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name
from intake.advice.missing import nothing_leads
from intake.interview.reasons import few, percent, shown
from intake.interview.wording import sentence
from intake.sizing import Turn, would_change
from intake.sizing.result import Result
from intake.spec.display import label
from intake.spec.vocabulary import vocabulary

_MOST = 4
_NOBODY = "none"


def settled(brief: Brief) -> Answer:
    """Whether the best family stays best over what is open, and after which answers another one would lead."""
    said = brief.sentences
    result = brief.sampled
    if result.best is None:
        if result.refer_out:
            line = said.say("settled.nothing", reason=sentence(result.refer_out))
            return Answer(topic="settled", lines=(line,), data={"decided": True, "share": result.share})
        return Answer(topic="settled", lines=(nothing_leads(brief),))
    name, share = family_name(result.best, said), result.share
    lead = result.samples.leader if result.samples is not None else result.best
    turns = would_change(result.samples, lead) if result.samples is not None else ()
    if share is None or (share == 1.0 and not turns):
        lines = [said.say("settled.certain", family=name)]
    else:
        lines = [said.say("settled.decided" if result.decided else "settled.open", family=name, share=percent(share))]
        lines += _leads_more_often(lead, result, brief) if lead != result.best else []
        lines += would_change_lines(turns, brief)
        if not turns and not result.decided:
            lines += _together(result, brief)
    data = {"decided": result.decided, "share": share, "best": result.best}
    return Answer(topic="settled", lines=tuple(lines), data=data | {"turns": [turn.to_json() for turn in turns]})


def _leads_more_often(lead: str, result: Result, brief: Brief) -> list[str]:
    """That over what is open another family leads in more cases than the one shown, or none does."""
    assert result.samples is not None  # who leads is known from them
    share = percent(result.samples.led[lead] / len(result.samples.leaders))
    if lead == _NOBODY:
        return [brief.sentences.say("settled.none_more_often", share=share)]
    return [brief.sentences.say("settled.more_often", family=family_name(lead, brief.sentences), share=share)]


def would_change_lines(turns: tuple[Turn, ...], brief: Brief, most: int = _MOST) -> Iterator[str]:
    """ "Would change if the floor width is below about 1.3 m: then the side-grip elevator." """
    for turn in turns[:most]:
        ending = "_to_none" if turn.to == _NOBODY else ""
        family = family_name(turn.to, brief.sentences)
        yield brief.sentences.say(f"settled.would_change{ending}", condition=_condition(turn, brief), family=family)


def _condition(turn: Turn, brief: Brief) -> str:
    said, system = brief.sentences, brief.system
    if turn.about.startswith("test."):
        return said.say("settled.test", test=said.find(f"test.{turn.about}") or label(turn.about))
    if turn.above is None:
        return said.say("settled.word", fact=label(turn.about), value=shown(turn.word, _unit(turn.about), system))
    way = "above" if turn.above else "below"
    if turn.value is None:
        return said.say(f"settled.{way}_usual", fact=label(turn.about))
    value = shown(float(f"{turn.value:.2g}"), _unit(turn.about), system)
    return said.say(f"settled.{way}", fact=label(turn.about), value=value)


def _unit(about: str) -> str:
    return vocabulary()[about].unit


def _together(result: Result, brief: Brief) -> Iterator[str]:
    """The facts that tell most, where none of them turns the choice alone."""
    if result.samples is None:
        return
    told = {about: result.samples.tells((about,)) for about in result.samples.columns}
    telling = sorted((about for about in told if told[about] > 0.0), key=lambda about: (-told[about], about))
    if telling:
        yield brief.sentences.say("settled.together", facts=few([label(about) for about in telling]))
