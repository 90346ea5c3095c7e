"""What to find out next: open facts, tests on samples and warnings, the weightiest first."""

from collections.abc import Mapping

from intake.sizing.job import Job
from intake.sizing.result import FamilyResult, FollowUp
from intake.sizing.sentences import Words
from intake.sizing.worth import Worth

_TEST_OF_FLAG = {
    "slip_test": "test.slip_angle",
    "tip_test": "test.tip_angle",
    "squeeze_test": "test.squeeze_mark",
    "empties_test": "test.grip_slip",
    "transfer_small_product": "test.transfers",
}


def follow_ups(
    job: Job, families: Mapping[str, FamilyResult], best: str | None, raised: tuple[str, ...], words: Words,
    sampled: Worth | None,
) -> tuple[FollowUp, ...]:  # fmt: skip
    """Open fields and tests of what stands, tests that are always asked for, and what seldom is so and decides all."""
    asked: dict[str, list[str]] = {}
    for found in families.values():
        if found.verdict == "depends":
            for ask in found.depends_on:
                asked.setdefault(ask, []).append(found.family)
    out: dict[str, FollowUp] = {}
    for ask, names in asked.items():
        is_test = ask.startswith("test.")
        sentence = "test" if is_test else "field" if len(names) == 1 else "fields"
        listed = ", ".join(words.family(name) for name in names)
        why = words.say("follow_up", sentence, field=words.label(ask), test=words.label(ask), families=listed)
        worth = None if sampled is None else sampled.changes(ask)
        out[ask] = FollowUp(field=None if is_test else ask, test=ask if is_test else None, why=why, changes_best=worth)
    for flag in raised:
        test = _TEST_OF_FLAG.get(flag)  # the other flags are cautions: nobody can answer them
        if test is not None and test not in out:
            worth = None if sampled is None else sampled.changes(test)
            out[test] = FollowUp(field=None, test=test, why=words.say("flag", flag), changes_best=worth)
    if "other_sizes_are_no_harder" in job.assumptions:
        why = words.say("follow_up", "sample_sizes")
        out["product.sizes"] = FollowUp(
            field="product.sizes", test=None, why=why, changes_best=None if sampled is None else 0.0
        )
    for choice in job.choices.values() if best is not None else ():
        for ask in choice.asks if choice.rare else ():
            worth = None if sampled is None else sampled.changes(ask)
            why = words.say("follow_up", "rare", field=words.label(ask))
            out.setdefault(ask, FollowUp(field=ask, test=None, why=why, changes_best=worth))
    leading = set(families[best].depends_on) if best is not None else set()

    def order(item: tuple[str, FollowUp]) -> tuple[float, bool, int, str]:
        key, follow = item
        return (-(follow.changes_best or 0.0), key not in leading, -len(asked.get(key, ())), key)

    return tuple(follow for _, follow in sorted(out.items(), key=order))
