"""Why a family stands as it does, in sentences: the failing checks, what is open, the way it is fed, the search."""

from collections.abc import Sequence

from intake.sizing.findings import Finding, checks_of
from intake.sizing.job import Job
from intake.sizing.result import Verdict
from intake.sizing.sentences import Words, figure

_NAMED = 3


def because(
    verdict: Verdict, likely_out: bool, found: Sequence[Finding], open_asks: tuple[str, ...], words: Words
) -> list[str]:
    """The reasons of a verdict, the weightiest first."""
    if verdict == "out":
        return _why_out(found, words)
    if verdict == "depends":
        likely = [one for one in found if one.likely_fails and one.passes is None and not one.warns]
        if likely_out and likely:
            return [words.say("depends", "likely_out", why=words.failing(one.check())) for one in likely]
        listed = ", ".join(words.label(ask) for ask in open_asks)
        return [words.say("depends", "verdict", what=listed) if open_asks else words.say("depends", "nothing")]
    showing = [check for check in checks_of(found) if check.shows_room]
    tightest = min(showing, key=lambda check: check.margin or 0.0, default=None)
    if tightest is None or tightest.margin is None:
        return [words.say("fits", "plain")]
    return [
        words.say("fits", "verdict", check=tightest.id.replace("_", " "), margin=f"{max(0.0, tightest.margin):.0%}")
    ]


def _why_out(found: Sequence[Finding], words: Words) -> list[str]:
    failing = sorted((one for one in found if one.fails), key=lambda one: not one.of_words)
    return list(dict.fromkeys(words.failing(one.check()) for one in failing))


def fed_turned(job: Job, verdict: Verdict, words: Words) -> str:
    """That it stands with the other side of the product leading, and what is then across and along."""
    size = job.sizes[0]
    across, along = size["L"].typical, size["W"].typical
    side = "narrow" if across < along else "broad"
    ending = "_open" if job.choices["turn_flat"].is_open else "" if verdict == "fits" else "_stands"
    return words.say("turned", side + ending, across=figure(across, "m"), along=figure(along, "m"))


def searched(stopped: dict[str, int], passed: bool, words: Words) -> str | None:
    """How many layouts were looked at and what stopped them; None where there was no choice of layouts."""
    count = sum(stopped.values())
    if count < 2:
        return None
    most = sorted(stopped.items(), key=lambda item: (-item[1], item[0]))[:_NAMED]
    stops = ", ".join(f"{check.replace('_', ' ')} ({times})" for check, times in most)
    return words.say("search", "smaller" if passed else "out", count=count, stops=stops)
