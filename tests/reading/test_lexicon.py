"""The words of the questions folder."""

from pathlib import Path

import pytest

from intake.reading import read
from intake.reading.message.lexicon import lexicon_of, phrase_elements
from intake.spec.folder import questions_folder
from intake.spec.vocabulary import vocabulary


def test_every_value_that_words_stand_for_exists() -> None:
    lexicon = lexicon_of(questions_folder())
    known = vocabulary()
    odd = []
    for phrases in lexicon.index.values():
        for phrase in phrases:
            field = known[phrase.field]
            fine = phrase.value in (*field.choices, "") or (field.kind == "yes_no" and phrase.value in ("yes", "no"))
            if not (fine or (field.is_number and phrase.value.replace(".", "").isdigit())):
                odd.append((phrase.field, phrase.value))
    assert odd == []


def test_a_gap_and_alternatives_are_understood() -> None:
    assert phrase_elements("hold|grip .. side") == (frozenset({"hold", "grip"}), None, frozenset({"side"}))


def test_a_company_may_bring_words_of_its_own(tmp_path: Path) -> None:
    (tmp_path / "tree").mkdir()
    (tmp_path / "range").mkdir()
    (tmp_path / "tree" / "product.toml").write_text('[words."product.type"]\ntote = ["flitter"]\n', encoding="utf-8")
    assert [f.value for f in read("20 flitters a minute", questions=tmp_path).facts if f.field == "product.type"] == [
        "tote"
    ]


@pytest.mark.parametrize(
    "text", ["in case it matters", "we can do that", "bottleneck at the tray former", "a tough question"]
)
def test_words_that_only_look_like_choices_are_let_pass(text: str) -> None:
    assert read(text).facts == ()


def test_the_words_of_an_answer_may_serve_several_fields_and_nothing_else(tmp_path: Path) -> None:
    (tmp_path / "tree").mkdir()
    (tmp_path / "range").mkdir()
    (tmp_path / "words.toml").write_text(
        '[asked."handling.squeeze handling.invert"]\nno = ["flumps"]\n', encoding="utf-8"
    )
    for asked in ("handling.squeeze", "handling.invert"):
        assert [(f.field, f.value) for f in read("it flumps", asked, questions=tmp_path).facts] == [(asked, False)]
    assert read("it flumps", "handling.fragile", questions=tmp_path).facts == ()
    assert read("it flumps", questions=tmp_path).facts == ()
