"""The package for engineering: complete, traceable, harmless, and without the visitor's personal data."""

import csv
import json
import stat
from pathlib import Path

import pytest
from markdown_it import MarkdownIt

from intake import Interview, size
from intake.handoff import FILES, HandoffError, read_package, write

HOSTILE = "taped cases <b>now</b> | 40 kg [x](http://a) \n# heading\x1b[31m =1+1"


@pytest.fixture
def talk() -> Interview:
    """A talk far enough to be recommended, with a name, a doubt-free size and something assumed."""
    talk = Interview()
    talk.hear("taped corrugated cases 16x12x10 in, 20 lb, 18 a minute, from 30 in up to 12 ft 6 in")
    talk.know("contact.name", "Mira Oldcastle")
    talk.know("contact.email", "mira@fennick.example")
    talk.note("Mira Oldcastle likes to be called on +44 1632 960 123")
    return talk


def test_all_four_files_are_there_for_their_owner_alone(talk: Interview, tmp_path: Path) -> None:
    package = write(talk, tmp_path / "out", case="tea")
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == sorted(FILES)
    assert all(stat.S_IMODE((tmp_path / "out" / name).stat().st_mode) == 0o600 for name in FILES)
    assert package.revision == "A"


def test_size_takes_the_spec_back_and_gives_the_same_result(talk: Interview, tmp_path: Path) -> None:
    write(talk, tmp_path, case="tea")
    package = read_package(tmp_path / "spec.json")
    again = size(package.spec, worth=True).to_json()
    kept = json.loads((tmp_path / "result.json").read_text())
    assert json.loads(json.dumps(again)) == {k: v for k, v in kept.items() if k not in ("case", "revision")}
    assert package.result.best == kept["best"]


def test_every_fact_stands_on_the_sheet_with_its_words_and_who_said_it(talk: Interview, tmp_path: Path) -> None:
    write(talk, tmp_path, case="tea")
    package = read_package(tmp_path / "spec.json")
    said = {fact.field: fact for fact in package.facts}
    assert said["product.weight"].said == "20 lb"
    assert (said["product.weight"].shown_us, said["product.weight"].who) == ("20 lb", "visitor")
    sheet = (tmp_path / "spec.md").read_text()
    row = next(line for line in sheet.splitlines() if line.startswith("| weight of one product |"))
    assert [cell.strip() for cell in row.strip("|").split("|")][1:5] == ["20 lb", "9\\.07 kg", "visitor", '"20 lb"']


def test_every_check_of_the_recommended_family_shows_formula_source_and_assumptions(
    talk: Interview, tmp_path: Path
) -> None:
    write(talk, tmp_path, case="tea")
    result = talk.result()
    assert result.best is not None
    sheet = (tmp_path / "spec.md").read_text()
    for check in result.families[result.best].checks:
        rows = [line for line in sheet.splitlines() if line.startswith(f"| `{check.id}` |")]
        assert len(rows) >= 2, check.id
        assert all(f"`{name}`" in "".join(rows) for name in (*check.assumes, *check.uses))
    for assumption in result.assumptions:
        assert f"| `{assumption.id}` |" in sheet


def test_personal_data_stay_out_of_every_file_unless_asked_for(talk: Interview, tmp_path: Path) -> None:
    write(talk, tmp_path / "without", case="tea")
    write(talk, tmp_path / "with", case="tea", with_contact=True)
    for name in FILES:
        text = (tmp_path / "without" / name).read_text()
        assert not any(piece in text for piece in ("Oldcastle", "fennick", "1632 960"))
    assert "Oldcastle" in (tmp_path / "with" / "spec.json").read_text()


def test_hostile_words_take_no_effect_on_the_sheet_or_in_the_csv(tmp_path: Path) -> None:
    talk = Interview()
    talk.hear(HOSTILE)
    talk.note(HOSTILE)
    talk.know("site.before", HOSTILE)
    write(talk, tmp_path, case="tea")
    sheet = (tmp_path / "spec.md").read_text()
    tokens = MarkdownIt("commonmark").enable("table").parse(sheet)
    inner = {child.type for t in tokens if t.type == "inline" for child in t.children or []}
    assert not inner & {"link_open", "html_inline", "image"}
    assert not any(t.type == "html_block" for t in tokens)
    assert "\x1b" not in sheet
    headings = [tokens[n + 1].content for n, t in enumerate(tokens) if t.type == "heading_open"]
    assert "heading" not in headings
    with (tmp_path / "values.csv").open(newline="") as file:
        rows = list(csv.reader(file))
    assert len({len(row) for row in rows}) == 1


def test_a_change_after_the_hand_over_is_revision_b_and_says_what_changed(talk: Interview, tmp_path: Path) -> None:
    first = write(talk, tmp_path, case="tea")
    talk.record("handed_over", {"revision": "A", "spec": talk.spec(), "data": first.data})
    assert write(talk, tmp_path, case="tea").revision == "A"
    talk.know("rate.peak", 24)
    second = write(talk, tmp_path, case="tea")
    assert second.revision == "B"
    assert any("24/min" in line for line in second.changes)
    assert "Changed since the last revision" in (tmp_path / "spec.md").read_text()


def test_an_empty_talk_still_gives_a_sheet_that_says_so(tmp_path: Path) -> None:
    write(Interview(), tmp_path, case="empty")
    sheet = (tmp_path / "spec.md").read_text()
    assert "Nothing yet" in sheet
    assert "## Cautions" in sheet


def test_a_folder_that_cannot_be_written_is_named(talk: Interview, tmp_path: Path) -> None:
    in_the_way = tmp_path / "file"
    in_the_way.write_text("")
    with pytest.raises(HandoffError, match="file"):
        write(talk, in_the_way, case="tea")


def test_a_damaged_spec_json_names_the_part_that_is_wrong(talk: Interview, tmp_path: Path) -> None:
    write(talk, tmp_path, case="tea")
    path = tmp_path / "spec.json"
    data = json.loads(path.read_text())
    data["spec"]["rate.normal"] = -1
    path.write_text(json.dumps(data))
    with pytest.raises(HandoffError, match=r"spec: .*rate\.normal"):
        read_package(path)
