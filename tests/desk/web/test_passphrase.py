"""Where the passphrase comes from, and how those who guess are slowed down."""

import os
from pathlib import Path

import pytest

pytest.importorskip("textual_serve", reason="the desk in a browser is an extra: pip install rise-intake[web]")

from intake.desk.web.attempts import Attempts
from intake.desk.web.passphrase import VARIABLE, Passphrase, PassphraseError, given, made_up

from .conftest import Clock


def test_a_passphrase_is_compared_whole_whatever_form_its_letters_came_in() -> None:
    kept = Passphrase("une grange dorée")
    assert kept.matches("une grange dorée")
    assert kept.matches("une grange dore\u0301e ")
    for wrong in ("", "une grange dore", "une grange doréee", "Une grange dorée", "\ud800" * 20, "x" * 100_000):
        assert not kept.matches(wrong)
    assert "grange" not in str(vars(kept))


@pytest.mark.parametrize("words", ["", "short", "eleven char", "  eleven char  ", "x" * 1001])
def test_a_passphrase_has_twelve_characters_at_least(words: str) -> None:
    with pytest.raises(PassphraseError, match="12 to 1000"):
        Passphrase(words)


def test_one_made_for_a_run_is_long_enough_and_never_the_same() -> None:
    made = {made_up() for _ in range(50)}
    assert len(made) == 50
    assert all(Passphrase(one).matches(one) for one in made)


def test_the_environment_forgets_the_passphrase_and_a_file_comes_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(VARIABLE, "from the environment")
    assert given(None) == "from the environment"
    assert VARIABLE not in os.environ
    assert given(None) is None
    file = tmp_path / "phrase"
    file.write_text("out of a file\nand no second line")
    file.chmod(0o600)
    monkeypatch.setenv(VARIABLE, "from the environment")
    words = given(str(file))
    assert words is not None
    assert Passphrase(words).matches("out of a file")
    assert VARIABLE not in os.environ


@pytest.mark.skipif(os.name != "posix", reason="rights of files")
def test_a_file_that_others_may_read_is_not_taken(tmp_path: Path) -> None:
    file = tmp_path / "phrase"
    file.write_text("out of a file\n")
    file.chmod(0o640)
    with pytest.raises(PassphraseError, match="chmod 600"):
        given(str(file))


def test_waits_grow_with_each_miss_and_are_forgotten_after_a_while() -> None:
    clock = Clock()
    attempts = Attempts(clock)
    waits = []
    for _ in range(12):
        attempts.missed("192.0.2.1")
        waits.append(attempts.wait("192.0.2.1"))
        clock.now += waits[-1] + 31  # slow enough not to fill the window of all
    assert waits[:6] == [0, 0, 1, 2, 4, 8]
    assert waits[-1] == 60
    clock.now += 15 * 60
    assert attempts.wait("192.0.2.1") == 0
    attempts.missed("192.0.2.1")
    assert attempts.wait("192.0.2.1") == 0


def test_a_right_try_starts_anew() -> None:
    attempts = Attempts(Clock())
    for _ in range(5):
        attempts.missed("192.0.2.1")
    assert attempts.wait("192.0.2.1") > 0
    attempts.passed("192.0.2.1")
    assert attempts.wait("192.0.2.1") == 0


def test_guesses_from_many_addresses_slow_all_of_them_and_are_kept_in_bounded_memory() -> None:
    clock = Clock()
    attempts = Attempts(clock)
    for n in range(5000):
        attempts.missed(f"198.51.{n // 250}.{n % 250}")
    assert attempts.wait("192.0.2.1") == 2
    assert len(attempts) <= 1000
    clock.now += 2.1
    assert attempts.wait("192.0.2.1") == 0


def test_the_addresses_of_one_ipv6_network_count_as_one() -> None:
    attempts = Attempts(Clock())
    for n in range(5):
        attempts.missed(f"2001:db8::{n:x}")
    assert len(attempts) == 1
    assert attempts.wait("2001:db8::ffff") > 0
    assert attempts.wait("2001:db8:0:1::1") == 0
    assert attempts.wait("not an address") == 0
