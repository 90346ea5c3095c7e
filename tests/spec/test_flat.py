"""The flat spec: what it takes, what it gives back."""

import json
import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.spec import Field, Spec, Value, vocabulary
from intake.spec.entry import SPREAD_FIELDS


def _figures(known: Field) -> st.SearchStrategy[float]:
    if known.kind == "count":
        return st.integers(min_value=1, max_value=500).map(float)
    return st.floats(min_value=0.01, max_value=1e6, allow_nan=False)


@st.composite
def _values(draw: st.DrawFn, known: Field) -> Value:
    hedged = draw(st.booleans())
    if known.kind == "yes_no":
        return Value(value=draw(st.booleans()), hedged=hedged)
    if known.kind == "choice":
        return Value(value=draw(st.sampled_from(known.choices)), hedged=hedged)
    if known.kind == "text":
        return Value(value=draw(st.text('aé "\\\n\x1b\u202e@.', max_size=20)), hedged=hedged)
    low, high = sorted((draw(_figures(known)), draw(_figures(known))))
    shape = draw(st.sampled_from(["single", "at least", "at most", "range"]))
    if shape == "single":
        return Value(low=low, high=low, hedged=hedged)
    if shape == "at least":
        return Value(low=low, high=None, hedged=hedged)
    if shape == "at most":
        return Value(low=None, high=high, hedged=hedged)
    return Value(low=low, high=high, spread=draw(st.booleans()) and low != high, hedged=hedged)


@st.composite
def _specs(draw: st.DrawFn) -> Spec:
    values: dict[tuple[str, int], Value] = {}
    for name in draw(st.lists(st.sampled_from(list(vocabulary())), max_size=12, unique=True)):
        sizes = st.integers(1, 4) if name.startswith("product.") else st.just(1)
        values[(name, draw(sizes))] = draw(_values(vocabulary()[name]))
    return Spec(values)


@given(spec=_specs())
def test_a_spec_survives_being_written_as_json_and_read_again(spec: Spec) -> None:
    assert Spec.from_flat(json.loads(json.dumps(spec.to_flat()))) == spec


@given(spec=_specs(), shuffle=st.randoms(use_true_random=False))
def test_the_order_of_keys_changes_neither_the_spec_nor_its_bytes(spec: Spec, shuffle: Any) -> None:
    items = list(spec.to_flat().items())
    shuffle.shuffle(items)
    again = Spec.from_flat(dict(items))
    assert (again, hash(again)) == (spec, hash(spec))
    assert json.dumps(again.to_flat()) == json.dumps(spec.to_flat())


@pytest.mark.parametrize(
    ("key", "given_", "value"),
    [
        ("product.length", 0.4, Value(low=0.4, high=0.4)),
        ("product.length@2", 1, Value(low=1.0, high=1.0)),
        ("rate.peak", [40, 45], Value(low=40.0, high=45.0)),
        ("product.weight", [8, 14], Value(low=8.0, high=14.0, spread=True)),
        ("product.weight", (8, 14), Value(low=8.0, high=14.0, spread=True)),
        ("temperature.room", [-5, 30], Value(low=-5.0, high=30.0, spread=True)),
        ("product.weight", [None, 14], Value(low=None, high=14.0)),
        ("product.weight", [8, None], Value(low=8.0, high=None)),
        ("product.weight", [8, 8], Value(low=8.0, high=8.0)),
        ("product.weight", {"low": 8, "high": 14, "spread": False}, Value(low=8.0, high=14.0)),
        ("product.weight", {"low": 8, "high": 14}, Value(low=8.0, high=14.0, spread=True)),
        ("rate.peak", {"low": 40, "high": 45, "spread": True}, Value(low=40.0, high=45.0, spread=True)),
        ("product.weight", {"low": 8}, Value(low=8.0)),
        ("product.weight", {"value": 8, "hedged": True}, Value(low=8.0, high=8.0, hedged=True)),
        ("product.closed", {"value": True, "hedged": True}, Value(value=True, hedged=True)),
        ("product.type", "case", Value(value="case")),
        ("handling.squeeze", False, Value(value=False)),
        ("site.before", "case sealer", Value(value="case sealer")),
        ("rise.infeed_height", -0.5, Value(low=-0.5, high=-0.5)),
        ("rise.height", 0, Value(low=0.0, high=0.0)),
        ("product.sizes", 3.0, Value(low=3.0, high=3.0)),
    ],
)
def test_every_way_to_write_a_fact_is_taken(key: str, given_: Any, value: Value) -> None:
    name, _, size = key.partition("@")
    assert Spec.from_flat({key: given_})[(name, int(size or 1))] == value


def test_a_minus_in_front_of_nought_leaves_no_trace() -> None:
    assert json.dumps(Spec.from_flat({"rise.height": -0.0}).to_flat()) == '{"rise.height": 0.0}'


def test_null_means_unknown() -> None:
    spec = Spec.from_flat({"product.length": None, "rate.peak": 40})
    assert not spec.knows("product.length")
    assert len(spec) == 1


def test_toml_may_write_the_same_keys_as_tables() -> None:
    text = """
    rate.peak = [40, 45]
    [product]
    length = 0.4
    "length@2" = 0.3
    weight = { low = 8, high = 14, spread = false }
    [handling]
    squeeze = true
    """
    flat = {
        "product.length": 0.4,
        "product.length@2": 0.3,
        "product.weight": {"low": 8, "high": 14, "spread": False},
        "rate.peak": [40, 45],
        "handling.squeeze": True,
    }
    assert Spec.from_flat(tomllib.loads(text)) == Spec.from_flat(flat)


def test_a_further_size_has_what_it_leaves_out_like_the_first() -> None:
    spec = Spec.from_flat({"product.length": 0.4, "product.weight": 10, "product.length@2": 0.3})
    assert spec.sizes == (1, 2)
    length, weight = spec.of("product.length", 2), spec.of("product.weight", 2)
    assert length is not None
    assert weight is not None
    assert (length.single, weight.single) == (0.3, 10.0)
    assert spec.of("product.height", 2) is None


def test_a_size_alone_still_counts_the_first() -> None:
    assert Spec.from_flat({"product.length@3": 0.3}).sizes == (1, 3)
    assert Spec({}).sizes == (1,)


def test_putting_and_taking_out_leaves_the_first_spec_alone() -> None:
    spec = Spec.from_flat({"product.length": 0.4})
    longer = spec.put("product.length", Value(low=0.5, high=0.5))
    assert longer.to_flat() == {"product.length": 0.5}
    assert longer.put("product.length", None).to_flat() == {}
    assert spec.put("rate.peak", None) == spec
    assert spec.to_flat() == {"product.length": 0.4}


def test_words_and_yes_or_no_are_asked_for_by_their_kind() -> None:
    spec = Spec.from_flat({"product.type": "case", "product.closed": False, "rate.peak": 40})
    assert (spec.word("product.type"), spec.word("product.closed"), spec.word("product.fill")) == ("case", None, None)
    assert (spec.yes("product.closed"), spec.yes("product.type"), spec.yes("rate.backs_up")) == (False, None, None)


@pytest.mark.parametrize(
    ("value", "single", "largest"),
    [
        (Value(low=8.0, high=8.0), 8.0, 8.0),
        (Value(low=8.0, high=14.0), None, 14.0),
        (Value(low=8.0), None, 8.0),
        (Value(high=14.0), None, 14.0),
    ],
)
def test_the_design_end_of_a_figure(value: Value, single: float | None, largest: float) -> None:
    assert (value.single, value.largest) == (single, largest)


def test_ranges_on_product_size_weight_and_temperature_are_spread() -> None:
    lengths = {f.id for f in vocabulary().values() if f.branch == "product" and f.unit in ("m", "kg")}
    assert lengths | {"temperature.room", "temperature.product"} == SPREAD_FIELDS
