"""What staff type while listening is read as shorthand; what visitors write is not."""

import pytest

from intake import Interview

LINE = "cs 16x12x10 30# 25/m pk 32 in 30\" out 14' no sq"


def test_a_message_heard_by_ear_is_read_as_shorthand() -> None:
    talk = Interview()
    heard = talk.hear(LINE, by_ear=True)
    assert {"rate.peak", "rise.infeed_height", "handling.squeeze"} <= {fact.field for fact in heard.facts}
    assert all(LINE[slice(*fact.span)] == fact.said for fact in heard.facts if fact.span is not None)


def test_the_same_words_from_a_visitor_are_read_as_ever() -> None:
    talk = Interview()
    talk.hear(LINE)
    assert "rate.peak" not in talk.spec()


def test_a_preview_reads_as_the_message_will_be_read() -> None:
    talk = Interview()
    shown = {fact.field for fact in talk.preview(LINE, by_ear=True).heard.facts}
    assert shown == {fact.field for fact in talk.hear(LINE, by_ear=True).facts}


@pytest.mark.parametrize(("typed", "kind"), [("dk", "unknown"), ("DK.", "unknown"), ("wc", "later"), ("w/c", "later")])
def test_short_replies_count_when_heard_by_ear(typed: str, kind: str) -> None:
    talk = Interview()
    talk.answer(typed, to="rate.peak", by_ear=True)
    assert "rate.peak" in getattr(talk.case, kind)


@pytest.mark.parametrize("typed", ["dk", "wc", "cfm"])
def test_short_replies_are_nothing_from_a_visitor(typed: str) -> None:
    talk = Interview()
    talk.answer(typed, to="rate.peak")
    assert "rate.peak" not in talk.case.unknown | talk.case.later


def test_what_stands_beside_a_short_reply_is_kept() -> None:
    talk = Interview()
    talk.answer("dk, clg 18'", to="rate.peak", by_ear=True)
    assert "rate.peak" in talk.case.unknown
    assert "space.ceiling" in talk.spec()
