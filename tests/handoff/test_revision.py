"""Revision letters follow what was handed over, and say what changed."""

from intake.handoff.revision import changes, letter_after, revision_of
from intake.spec import Event, Spec

DATA = {"version": "1", "hash": "abc"}


def handed(seq: int, revision: str, spec: Spec, data: dict[str, str] = DATA) -> Event:
    body = {"revision": revision, "spec": spec.to_flat(), "data": data}
    return Event(seq=seq, at="2026-01-01T00:00:00+00:00", kind="handed_over", body=body)


def test_the_first_hand_off_is_revision_a() -> None:
    assert revision_of([], Spec({}), DATA) == "A"


def test_handing_over_the_same_again_keeps_its_letter() -> None:
    spec = Spec.from_flat({"rate.peak": 45, "product.type": "case"})
    assert revision_of([handed(1, "B", spec)], spec, DATA) == "B"


def test_a_changed_value_or_changed_data_take_the_next_letter() -> None:
    spec = Spec.from_flat({"rate.peak": 45})
    events = [handed(1, "A", spec)]
    assert revision_of(events, Spec.from_flat({"rate.peak": 50}), DATA) == "B"
    assert revision_of(events, spec, {"version": "1", "hash": "def"}) == "B"


def test_an_undone_hand_over_does_not_count() -> None:
    spec = Spec.from_flat({"rate.peak": 45})
    undone = Event(seq=2, at="2026-01-01T00:00:01+00:00", kind="undone", body={"seq": 1})
    assert revision_of([handed(1, "A", spec), undone], spec, DATA) == "A"


def test_letters_go_on_after_z() -> None:
    assert [letter_after(letter) for letter in ("", "A", "Z", "AZ", "ZZ")] == ["A", "B", "AA", "BA", "AAA"]


def test_what_changed_names_the_value_before_and_after() -> None:
    before = Spec.from_flat({"rate.peak": 45, "product.closed": True})
    after = Spec.from_flat({"rate.peak": 52, "product.weight": [8, 14]})
    lines = changes([handed(1, "A", before)], after, DATA, "si")
    assert sorted(lines) == [
        "closed: was yes, now not known any more",
        "peak rate: was 45/min, now 52/min",
        "weight of one product: was not known, now 8 to 14 kg",
    ]


def test_nothing_changed_before_the_first_hand_off() -> None:
    assert changes([], Spec.from_flat({"rate.peak": 45}), DATA, "si") == []
