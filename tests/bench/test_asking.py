"""How many messages it takes until a job is decided, beside other ways of asking; counts of one run, no times.

`pytest -m bench -s tests/bench/test_asking.py`. CASES_FILE names other jobs (JSON lines of {"id", "spec"}); VARIED how
many variations of each job there are.
"""

import os
from random import Random
from statistics import mean

import pytest
from visitors import greedy, in_order, least, talked
from whole_jobs import varied, whole_jobs

from intake.interview.tree import load_tree
from intake.sizing import size
from intake.spec.folder import questions_folder
from intake.talk import Interview

pytestmark = pytest.mark.bench


def test_messages_until_decided_beside_the_fixed_order_and_a_greedy_one() -> None:
    rng, tree = Random(7), load_tree(questions_folder())
    jobs = dict(whole_jobs())
    jobs |= {f"{name}.{n}": varied(job, rng) for name, job in whole_jobs().items() for n in range(_VARIED)}
    ours, fixed, one_step, hindsight, same = [], [], [], [], []
    never = 0
    for name, job in jobs.items():
        talk, full = Interview(), size(job, worth=True)
        asked = talked(job, talk)
        same.append(talk.result().best == full.best)
        if not full.decided:
            never += 1
            continue
        ours.append(len(asked))
        fixed.append(in_order(job, tree)[0])
        one_step.append(greedy(job, tree, 4096)[0])
        hindsight.append(least(job, tree, asked))
        print(f"{name:36} ours {ours[-1]:2} fixed {fixed[-1]:2} greedy {one_step[-1]:2} hindsight {hindsight[-1]:2}")
    print(f"\n{len(ours)} jobs; {never} more that no answer decides, only a test")
    print(f"messages: ours {mean(ours):.2f}, fixed {mean(fixed):.2f}, greedy {mean(one_step):.2f}")
    print(f"questions of the tree that would have done, with hindsight: {mean(hindsight):.2f}")
    print(f"ours / fixed {sum(ours) / sum(fixed):.2f}, ours / greedy {sum(ours) / sum(one_step):.2f}")
    print(f"recommended as with everything told: {mean(same):.3f}")
    assert sum(ours) <= 0.5 * sum(fixed)
    assert sum(ours) <= 1.2 * sum(one_step)
    assert mean(same) >= 0.97


_VARIED = int(os.environ.get("VARIED", "1"))
