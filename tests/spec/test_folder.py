"""Where the data folder is found, and problems in it."""

from pathlib import Path

import pytest

from intake.spec import FolderError, questions_folder
from intake.spec.problem import Problem, line_of


@pytest.fixture
def company_folder(tmp_path: Path) -> Path:
    for part in ("tree", "range"):
        (tmp_path / part).mkdir()
    return tmp_path


def test_a_folder_given_outranks_the_environment(company_folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INTAKE_QUESTIONS", "/nowhere")
    assert questions_folder(company_folder) == company_folder


def test_the_environment_names_a_folder(company_folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INTAKE_QUESTIONS", str(company_folder))
    assert questions_folder() == company_folder


def test_without_either_the_shipped_folder_serves(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("INTAKE_QUESTIONS", raising=False)
    assert (questions_folder() / "tree").is_dir()


def test_a_folder_without_tree_and_range_is_refused_with_what_to_do(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match=r"needs tree/ and range/.*INTAKE_QUESTIONS"):
        questions_folder(tmp_path)


def test_a_problem_names_its_line_only_when_sure(tmp_path: Path) -> None:
    file = tmp_path / "product.toml"
    file.write_text('[[question]]\nid = "size"\n\n[[question]]\nid = "weight"\n', encoding="utf-8")
    assert line_of(file, 'id = "weight"') == 5
    assert line_of(file, "[[question]]") is None
    assert line_of(file, "rate") is None
    assert line_of(tmp_path / "none.toml", "id") is None
    found = Problem(file="product.toml", line=5, what="no words", mend="Add say")
    assert str(found) == "product.toml:5: no words. Add say"
    assert str(Problem(file="product.toml", line=None, what="no words", mend="Add say")).startswith("product.toml: ")
