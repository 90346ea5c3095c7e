"""How long a sign-in holds."""

import pytest

pytest.importorskip("textual_serve", reason="the desk in a browser is an extra: pip install rise-intake[web]")

from intake.desk.web.sign_ins import IDLE_HOURS, SignIns

from .conftest import Clock

SITTING = "0" * 32


def test_it_holds_as_long_as_it_is_used_and_half_a_day_more() -> None:
    clock = Clock()
    sign_ins = SignIns(clock)
    token = sign_ins.begin(SITTING)
    for _ in range(5):
        clock.now += (IDLE_HOURS - 1) * 3600
        assert sign_ins.find(token) is not None
    clock.now += (IDLE_HOURS + 1) * 3600
    assert sign_ins.find(token) is None


def test_tokens_have_256_bits_and_are_not_kept() -> None:
    sign_ins = SignIns(Clock())
    tokens = {sign_ins.begin(SITTING) for _ in range(100)}
    assert len(tokens) == 100
    assert {len(bytes.fromhex(token)) for token in tokens} == {32}
    assert not any(token in repr(vars(sign_ins)) for token in tokens)


def test_there_are_never_more_than_memory_is_meant_for_and_the_idlest_goes_first() -> None:
    clock = Clock()
    sign_ins = SignIns(clock)
    tokens = []
    for _ in range(201):
        tokens.append(sign_ins.begin(SITTING))
        clock.now += 1
    assert sign_ins.find(tokens[0]) is None
    assert all(sign_ins.find(token) is not None for token in tokens[1:])


def test_an_ended_one_and_one_that_never_was_are_none() -> None:
    sign_ins = SignIns(Clock())
    token = sign_ins.begin(SITTING)
    found = sign_ins.find(token)
    assert found is not None
    sign_ins.end(found)
    assert sign_ins.find(token) is None
    assert not sign_ins.holds(found)
    assert sign_ins.find("") is None
    assert sign_ins.find("\ud800" * 64) is None
