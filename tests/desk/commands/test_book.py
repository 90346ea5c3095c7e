"""Finding, beginning, copying and shelving cases from inside one."""

from collections.abc import Callable

import pytest

from intake.casebook import Book
from intake.desk.effect import Go, Slip
from intake.desk.steps import Steps

Kept = Callable[[str], Steps]


def test_cases_are_listed_with_those_that_are_open_here(kept: Kept) -> None:
    tea, jars = kept("tea_list"), kept("jars_list")
    tea.say("12 kg cartons of tea", None)
    jars.say("jars", None)
    tea.work.beside.append("tea_list")
    lines = tea.effect("/cases").lines
    assert next(line for line in lines if line.startswith("tea_list ")).endswith("(open here)")
    assert not next(line for line in lines if line.startswith("jars_list ")).endswith("(open here)")
    assert [line.split()[0] for line in tea.effect("/cases cartons").lines] == ["tea_list"]
    assert tea.effect("/cases zebra").lines == ("No case has these words.",)


def test_only_a_case_that_there_is_can_be_opened(kept: Kept) -> None:
    tea = kept("tea_open")
    tea.say("12 kg", None)
    assert tea.effect("/open tea_open").go == Go(case="tea_open")
    with pytest.raises(Slip, match="No case is kept as nowhere"):
        tea.effect("/open nowhere")


def test_a_new_case_does_not_take_the_name_of_another(kept: Kept) -> None:
    tea = kept("tea_new")
    tea.say("12 kg", None)
    assert tea.effect("/new").go == Go(case="")
    assert tea.effect("/new other").go == Go(case="other")
    with pytest.raises(Slip, match="/open tea_new goes to it"):
        tea.effect("/new tea_new")
    with pytest.raises(Slip, match="cannot name a case"):
        tea.effect("/new ../etc/passwd")


def test_next_goes_onward(kept: Kept) -> None:
    assert kept("tea_next").effect("/next").go == Go(onward=True)


def test_a_copy_begins_with_all_of_it(kept: Kept) -> None:
    tea = kept("tea_copy")
    tea.say("12 kg", None)
    effect = tea.effect("/copy tea_copy2")
    assert effect.go == Go(case="tea_copy2")
    assert kept("tea_copy2").work.talk.spec() == tea.work.talk.spec()


def test_the_shelf_is_part_of_the_case_and_no_news_from_another_desk(kept: Kept) -> None:
    tea = kept("tea_shelf")
    tea.say("12 kg", None)
    tea.command("/archive")
    with Book() as book:
        assert "tea_shelf" not in {entry.id for entry in book.cases()}
    assert tea.news() is None
    with pytest.raises(Slip, match="on the shelf already"):
        tea.command("/archive")
    tea.command("/restore")
    with Book() as book:
        assert "tea_shelf" in {entry.id for entry in book.cases()}
    with pytest.raises(Slip, match="/archive puts it on the shelf"):
        tea.command("/restore")


@pytest.mark.parametrize("line", ["/copy", "/archive", "/restore"])
def test_a_talk_that_is_not_kept_can_be_told_so(steps: Steps, line: str) -> None:
    steps.say("12 kg", None)
    with pytest.raises(Slip, match="Nothing of this talk is kept yet"):
        steps.command(line)
