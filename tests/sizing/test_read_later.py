"""What is worked out when it is read is what it would have been at once; and limits that are not there are told."""

import copy
import pickle
import shutil
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import pytest

from intake.sizing import load_range, size
from intake.sizing.range_data import RangeError
from intake.spec.folder import shipped_folder


def test_a_result_keeps_all_it_tells_when_it_is_pickled_or_copied(case_up: dict[str, Any]) -> None:
    result = size(case_up)
    told = result.to_json()
    assert pickle.loads(pickle.dumps(size(case_up))).to_json() == told
    assert copy.deepcopy(size(case_up)).to_json() == told
    assert size(case_up).families == result.families


def test_a_check_asked_for_by_name_is_the_one_in_the_row_and_what_fails_is_known_before(
    whole: Callable[[Random], dict[str, Any]], part: Callable[..., dict[str, Any]]
) -> None:
    rng = Random(9)
    for _ in range(6):
        spec = part(whole(rng), rng, 0.6)
        for name, found in size(spec).families.items():
            fails = found.fails
            alone = {id: found.check(id) for id in ("turn", "weight", "pull", "no such check")}
            again = size(spec).families[name]
            assert fails == tuple(check.id for check in again.failed)
            for id, check in alone.items():
                assert check == next((one for one in again.checks if one.id == id), None)


def test_how_fast_and_how_high_stand_before_the_time_of_delivery(case_up: dict[str, Any]) -> None:
    found = size(case_up).families["incline"]
    assert found.figures["belt_speed"].value is not None
    assert list(found.figures)[-3:] == ["rate_capacity", "rise_capacity", "lead_time"]
    assert "no such figure" not in found.figures


def test_a_limit_that_is_not_there_is_named_with_its_file(case_up: dict[str, Any], tmp_path: Path) -> None:
    folder = tmp_path / "questions"
    shutil.copytree(shipped_folder(), folder)
    file = folder / "range" / "spiral.toml"
    lines = file.read_text(encoding="utf-8").splitlines(keepends=True)
    file.write_text("".join(line for line in lines if not line.startswith("speed_most")), encoding="utf-8")
    assert load_range(folder).families["incline"].speed_most > 0.0
    with pytest.raises(RangeError, match=r"range/spiral\.toml: no entry 'speed_most'"):
        size(case_up, questions=folder)
