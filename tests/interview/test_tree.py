"""The question tree: every field asked once, wordings that suit what is known, needs of engineering."""

import re
import shutil
from collections import Counter
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from intake.interview.tree import BRANCHES, QuestionEntry, Tree, TreeError, engineering_needs, is_settled, load_tree
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder
from intake.spec.vocabulary import vocabulary

SHIPPED = questions_folder()
TREE = load_tree(SHIPPED)
EVERY_SAYING = [
    pytest.param(said, id=f"{entry.id}-{n}")
    for entry in TREE.questions
    for n, said in enumerate((entry.say, *(wording.say for wording in entry.wordings)))
]


@pytest.fixture
def with_on_top(tmp_path: Path) -> Callable[[str, str], Path]:
    """A copy of the shipped folder with some lines put on top of one of its files."""

    def make(file: str, text: str) -> Path:
        folder = tmp_path / "questions"
        shutil.copytree(SHIPPED, folder)
        path = folder / file
        path.write_text(text + path.read_text(encoding="utf-8"), encoding="utf-8")
        return folder

    return make


def ask(id: str, flat: Mapping[str, object]) -> str:
    """What is sent for a question while this is known."""
    return TREE.wording(TREE.by_id[id], Spec.from_flat(flat))


def test_every_field_of_the_vocabulary_is_asked_for_by_exactly_one_question() -> None:
    asked = Counter(name for entry in TREE.questions for name in entry.fields)
    assert asked == Counter(list(vocabulary()))


def test_a_field_leads_to_the_question_that_asks_for_it() -> None:
    found = TREE.for_field("rate.peak")
    assert found is not None
    assert found.id == "rate"
    assert TREE.for_field("rate.paek") is None


def test_questions_come_branch_by_branch_in_the_order_of_a_talk() -> None:
    order = [BRANCHES.index(entry.branch) for entry in TREE.questions]
    assert order == sorted(order)
    assert set(order) == set(range(len(BRANCHES)))


def test_size_and_weight_are_asked_in_one_breath() -> None:
    fields = TREE.by_id["product_size"].fields
    assert {"product.length", "product.width", "product.height", "product.weight"} <= set(fields)


def test_a_folder_is_read_once() -> None:
    assert load_tree(SHIPPED) is load_tree(str(SHIPPED))


@pytest.mark.parametrize("said", EVERY_SAYING)
def test_a_question_fits_into_one_chat_message_and_asks_something(said: str) -> None:
    assert "?" in said
    assert "\n" not in said
    assert len(said) <= 190


@pytest.mark.parametrize("said", EVERY_SAYING)
def test_an_example_with_a_unit_of_one_system_has_one_of_the_other_too(said: str) -> None:
    us = re.search(r"\d (?:x \d+ )*(?:in|ft|lb|psi|F)\b", said)
    si = re.search(r"\d (?:x \d+ )*(?:mm|m|kg|N|bar|C)\b", said)
    assert (us is None) == (si is None)


@pytest.mark.parametrize("entry", TREE.questions, ids=lambda entry: entry.id)
def test_not_knowing_is_always_met_kindly(entry: QuestionEntry) -> None:
    assert entry.unknown_ok.startswith(("No problem", "That's fine", "Hardly anyone knows"))
    assert not re.search(r"\b(must|need to|required|missing|should have)\b", entry.unknown_ok)


@pytest.mark.parametrize("entry", TREE.questions, ids=lambda entry: entry.id)
def test_trade_jargon_stays_in_the_reasons_for_the_staff(entry: QuestionEntry) -> None:
    for said in (entry.say, *(wording.say for wording in entry.wordings), entry.unknown_ok):
        assert not re.search(r"\b(infeed|discharge|throughput|footprint|SKU|accumulat|orientation|ambient)", said)


def test_a_bottle_is_asked_how_far_across_it_is() -> None:
    assert "How far across, how tall" in ask("product_size", {"product.type": "bottle"})
    assert "length the way it travels" in ask("product_size", {"product.type": "case"}).lower()


def test_only_the_weight_is_asked_when_the_size_is_known() -> None:
    boxes = {"product.length": 0.4, "product.width": 0.3, "product.height": 0.25}
    assert ask("product_size", boxes).startswith("What does one weigh?")
    jars = {"product.type": "jar", "product.diameter": 0.1, "product.height": 0.2}
    assert ask("product_size", jars).startswith("What does one weigh?")


def test_only_the_size_is_asked_when_the_weight_is_known() -> None:
    for kind in ("case", "bottle", "bag"):
        said = ask("product_size", {"product.type": kind, "product.weight": 12})
        assert said.startswith("How big is one")
        assert "weigh" not in said


def test_the_height_already_told_is_not_asked_again() -> None:
    assert ask("rise_heights", {"rise.infeed_height": 0.8}).startswith("How high above the floor do they go out?")
    assert ask("rise_heights", {"rise.discharge_height": 3}).startswith("How high above the floor do they come in?")


def test_a_caller_may_say_itself_which_fields_are_open() -> None:
    said = TREE.wording(TREE.by_id["product_size"], Spec({}), ("product.height", "product.weight"))
    assert said.startswith("How tall is one as it travels, and what does it weigh?")


def test_a_wording_for_some_fields_is_never_said_while_another_is_open() -> None:
    for entry in TREE.questions:
        for field in entry.fields:
            wordings = [w for w in entry.wordings if w.asks and field not in w.asks]
            assert not any(w.suits(Spec({}), entry.fields) for w in wordings)


@pytest.mark.parametrize(
    ("field", "flat", "settled"),
    [
        ("product.length", {"product.diameter": 0.1}, True),
        ("product.diameter", {"product.length": 0.1, "product.width": 0.1}, True),
        ("rise.height", {"rise.infeed_height": 0.8, "rise.discharge_height": 3.0}, True),
        ("rise.height", {"rise.infeed_height": 0.8}, False),
        ("rise.discharge_height", {"rise.infeed_height": 0.8, "rise.height": 2.0}, False),
        ("rise.discharge_height", {"rise.infeed_height": 0.8, "rise.height": 2.0, "rise.direction": "up"}, True),
        ("temperature.zone", {"temperature.room": 4.0}, True),
        ("temperature.room", {"temperature.zone": "chilled"}, False),
    ],
)
def test_other_facts_can_make_a_question_needless(field: str, flat: dict[str, object], settled: bool) -> None:
    assert is_settled(field, Spec.from_flat(flat)) is settled


def test_every_figure_has_a_plausible_range_that_rises() -> None:
    assert set(TREE.plausible) == {field.id for field in vocabulary().values() if field.is_number}
    assert all(low < high for low, high in TREE.plausible.values())


def test_engineering_needs_size_rate_rise_and_power_for_every_family() -> None:
    needs = engineering_needs(SHIPPED)
    assert set(needs) == set(FAMILIES)
    for fields in needs.values():
        assert {"product.weight", "rate.peak", "rise.discharge_height", "rise.turn", "site.voltage"} <= set(fields)
    assert "handling.squeeze" in needs["side_grip"]
    assert "handling.squeeze" not in needs["spiral"]
    assert "site.air" in needs["index_lift"]


def test_the_tree_brings_the_needs_of_engineering_along() -> None:
    assert TREE.engineering_needs == engineering_needs(SHIPPED)


def test_a_folder_with_two_slips_is_refused_with_both(with_on_top: Callable[[str, str], Path]) -> None:
    folder = with_on_top("tree/rate.toml", '[[question]]\nid = "pace"\nfields = ["rate.paek"]\nsay = "How fast?"\n')
    with pytest.raises(TreeError) as refused:
        load_tree(folder)
    told = [str(problem) for problem in refused.value.problems]
    assert (
        'rate.toml:2: question "pace" names "rate.paek", which fields.toml does not have. Did you mean "rate.peak"?'
        in told
    )
    assert 'rate.toml:2: question "pace" has no why. Add why = "what the answer decides".' in told
    assert str(refused.value) == "\n".join(told)


def test_a_new_question_is_data_only(with_on_top: Callable[[str, str], Path]) -> None:
    folder = with_on_top(
        "tree/product.toml",
        """\
[[question]]
id = "kind"
fields = ["product.type"]
say = "What do you make?"
why = "It decides everything."
unknown_ok = "No problem."
settle = "a photo"
""",
    )
    path = folder / "tree" / "product.toml"
    ours, theirs = path.read_text(encoding="utf-8").split("# Branch: product", 1)
    rest = theirs.split("[[question]]", 2)[2]
    path.write_text(f"{ours}\n[[question]]{rest}", encoding="utf-8")
    tree: Tree = load_tree(folder)
    assert tree.questions[0].say == "What do you make?"
    assert tree.questions[0].cost == 1
    assert "product_type" not in tree.by_id
