"""Templates: filled once, never read again."""

from pathlib import Path

from intake.interview.wording import Sentences, fill, joined, sentence
from intake.spec.folder import questions_folder


def test_what_is_filled_in_is_never_read_as_a_template() -> None:
    assert fill("You wrote {said} for {field}.", said="{field} {0} {said.__class__}", field="rise") == (
        "You wrote {field} {0} {said.__class__} for rise."
    )


def test_a_blank_without_a_value_stays_empty() -> None:
    assert fill("From {infeed} up.") == "From  up."


def test_a_folder_of_its_own_says_its_own_sentences_and_the_shipped_ones_for_the_rest(tmp_path: Path) -> None:
    (tmp_path / "sentences").mkdir()
    (tmp_path / "sentences" / "ours.toml").write_text('[family]\nspiral = "helix"\n', encoding="utf-8")
    own, shipped = Sentences(tmp_path), Sentences(questions_folder())
    assert own.find("family.spiral") == "helix"
    assert own.find("family.incline") == shipped.find("family.incline") is not None


def test_lists_read_like_a_sentence() -> None:
    assert joined([]) == ""
    assert joined(["a"]) == "a"
    assert joined(["a", "b"], "or") == "a or b"
    assert sentence("no room left") == "No room left."
    assert sentence("really?") == "Really?"
