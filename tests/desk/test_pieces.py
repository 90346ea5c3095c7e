"""A message cut into pieces that can be put right: what was understood in one piece, every other word by itself."""

from hypothesis import given, settings
from hypothesis import strategies as st

from intake.desk.lights import Light, Lit, lit_preview
from intake.desk.pieces import joined, pieces
from intake.talk import Interview


def test_what_was_understood_is_one_piece_and_the_rest_is_words() -> None:
    found = pieces(lit_preview(Interview().preview("slabbies of 12 kg, sturdy"), "si"))
    assert [(one.sign, one.said) for one in found][:3] == [(" ", "slabbies"), (" ", "of"), ("+", "12 kg")]
    assert found[-1].said == "sturdy"
    assert found[2].means == "weight of one product 12 kg"


def test_signs_tell_doubts_questions_and_what_was_not_used() -> None:
    text = "trays of jars, 6 kg each. can it go in a freezer?"
    assert {"+", "?", "@"} <= {one.sign for one in pieces(lit_preview(Interview().preview(text), "si"))}


def test_marks_at_the_edges_are_no_part_of_a_word() -> None:
    found = pieces(Lit('so "called" (slabbies), - !'))
    assert [one.said for one in found] == ["so", "called", "slabbies", "-"]


@st.composite
def lit_texts(draw: st.DrawFn) -> Lit:
    text = draw(st.text(alphabet="ab 1.,\"'\n\t-é", max_size=30))
    cuts = sorted(draw(st.sets(st.integers(0, len(text)), max_size=6)))
    spans = list(zip(cuts[::2], cuts[1::2], strict=False))
    return Lit(text, tuple(Light(start, end, "fact", "x") for start, end in spans))


@settings(max_examples=200, deadline=None, derandomize=True)
@given(lit=lit_texts())
def test_pieces_follow_each_other_and_are_the_very_words(lit: Lit) -> None:
    place = 0
    for one in pieces(lit):
        assert place <= one.start < one.end
        assert one.said == lit.words[one.start : one.end]
        place = one.end


def test_two_pieces_join_into_all_that_lies_between() -> None:
    text = "ten by twelve"
    first, _, last = pieces(Lit(text))
    both = joined(first, last, text)
    assert (both.said, both.start, both.end) == (text, 0, len(text))
