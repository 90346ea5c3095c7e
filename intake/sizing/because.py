"""Why a family stands as it does, in sentences: the failing checks, what is open, the way it is fed, the search."""

from intake.sizing.job import Job
from intake.sizing.result import Check, Verdict
from intake.sizing.sentences import Words, figure

_NAMED = 3


def because(
    verdict: Verdict, likely_out: bool, all_checks: tuple[Check, ...], open_asks: tuple[str, ...], words: Words
) -> list[str]:
    """The reasons of a verdict, the weightiest first."""
    if verdict == "out":
        return _why_out(all_checks, words)
    if verdict == "depends":
        likely = [check for check in all_checks if check.likely_fails and check.passes is None and not check.warns]
        if likely_out and likely:
            return [words.say("depends", "likely_out", why=words.failing(check)) for check in likely]
        listed = ", ".join(words.label(ask) for ask in open_asks)
        return [words.say("depends", "verdict", what=listed) if open_asks else words.say("depends", "nothing")]
    showing = [check for check in all_checks if check.shows_room]
    tightest = min(showing, key=lambda check: check.margin or 0.0, default=None)
    if tightest is None or tightest.margin is None:
        return [words.say("fits", "plain")]
    return [
        words.say("fits", "verdict", check=tightest.id.replace("_", " "), margin=f"{max(0.0, tightest.margin):.0%}")
    ]


def _why_out(all_checks: tuple[Check, ...], words: Words) -> list[str]:
    failing = [check for check in all_checks if check.passes is False and not check.warns]
    failing.sort(key=lambda check: check.sense != "must_be")
    return list(dict.fromkeys(words.failing(check) for check in failing))


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
