"""Several visitors at once, kept cases, two desks on one case, and trouble with the book."""

from pathlib import Path

import pytest
from hands import AtDesk
from textual.widgets import Static

from intake.casebook import Book, BookError
from intake.desk.keeping import Keeper, resume
from intake.talk import Interview


@pytest.fixture(autouse=True)
def book_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))


async def test_a_second_case_begins_and_one_key_goes_from_one_to_the_other(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        await hands.type("half typed")
        await hands.press("ctrl+o")
        await hands.choose("begin a new case")
        assert hands.talk.facts == []
        await hands.send("jars of 1 kg")
        other = hands.app.front.steps.work.name
        assert f"[{other}]" in hands.line("#top")
        await hands.press("ctrl+l")
        assert "[tea]" in hands.line("#top")
        assert hands.talk.spec()["product.weight"] == 12.0
        assert hands.prompt.text == "half typed"
        assert hands.prompt.has_focus
        await hands.press("ctrl+l")
        assert hands.talk.spec()["product.weight"] == 1.0


async def test_with_one_case_open_the_key_says_how_to_open_another(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.press("ctrl+l")
        assert hands.on_the_talk()
        assert len(hands.app.cases) == 1


async def test_a_kept_case_is_found_by_its_words_and_gone_on_with(at_desk: AtDesk) -> None:
    old = Interview()
    old.hear("candles in glass jars, 0.7 kg")
    assert Keeper("gallery").keep(old) is None
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.press("ctrl+o")
        await hands.press(*"candles")
        await hands.choose("gallery")
        assert hands.talk.spec()["product.weight"] == pytest.approx(0.7)
        assert "candles in glass jars" in hands.said()
        assert len(hands.app.cases) == 2


async def test_a_case_that_is_open_comes_to_the_front_and_is_not_opened_twice(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        await hands.send("/new jars")
        await hands.send("jars of 1 kg")
        await hands.send("/open tea")
        assert hands.app.front.steps.work.name == "tea"
        assert len(hands.app.cases) == 2


async def test_a_case_is_copied_and_the_copy_comes_to_the_front(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        await hands.send("/copy tea2")
        assert hands.app.front.steps.work.name == "tea2"
        assert hands.talk.spec()["product.weight"] == 12.0


async def test_a_named_talk_goes_on_where_it_stopped(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
    again = resume("tea")
    assert again is not None
    async with at_desk(again, keeper=Keeper("tea", kept=len(again.events)), size=(120, 40)) as hands:
        assert "cases of 12 kg" in hands.said()
        rows = [str(row.render()) for row in hands.app.front.query("#facts .row").results(Static)]
        assert any("12 kg" in row for row in rows)


async def test_each_answer_is_in_the_book_before_the_screen_shows_it(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        with Book() as book:
            kept = Interview.from_events(book.events("tea"))
        assert kept.spec() == hands.talk.spec()


async def test_what_another_desk_kept_of_the_case_is_taken_in(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        other = resume("tea")
        assert other is not None
        keeper = Keeper("tea", kept=len(other.events))
        other.hear("up 4 m")
        assert keeper.keep(other) is None
        for _ in range(100):  # the desk looks by itself too, and may be at it just now
            await hands.app.front.look_elsewhere()
            await hands.settle()
            if "Another desk" in hands.said():
                break
        assert hands.talk.spec()["rise.height"] == 4.0
        assert "Another desk" in hands.said()


async def test_two_desks_answering_at_once_lose_nothing(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        other = resume("tea")
        assert other is not None
        keeper = Keeper("tea", kept=len(other.events))
        other.hear("up 4 m")
        assert keeper.keep(other) is None
        await hands.send("20 a minute")
        assert hands.app.front.steps.trouble is None
        with Book() as book:
            kept = Interview.from_events(book.events("tea"))
        assert kept.spec()["rise.height"] == 4.0
        assert kept.spec()["rate.normal"] == 20.0
        assert kept.spec() == hands.talk.spec()


async def test_trouble_with_the_book_is_said_the_work_goes_on_and_is_kept_later(
    at_desk: AtDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        with monkeypatch.context() as patch:

            def full(*_: object, **__: object) -> int:
                raise BookError("full", "the disk is full", "Free some space.")

            patch.setattr(Book, "append", full)
            await hands.send("cases of 12 kg")
            assert "NOT SAVED: the disk is full" in hands.line("#trouble")
            assert "NOT SAVED as tea" in hands.line("#top")
            assert hands.talk.facts
            assert hands.line("#say").startswith("Ask: ")
        for _ in range(100):  # the desk tries again by itself
            await hands.app.front.look_elsewhere()
            await hands.settle()
            if not hands.app.front.query_one("#trouble").display:
                break
        with Book() as book:
            assert Interview.from_events(book.events("tea")).spec() == hands.talk.spec()


async def test_a_fault_of_the_program_is_a_line_and_the_desk_goes_on(
    at_desk: AtDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_desk() as hands:
        with monkeypatch.context() as patch:
            patch.setattr(hands.talk, "hear", lambda *_, **__: 1 / 0)
            await hands.send("cases of 12 kg")
        assert "could not be worked on (ZeroDivisionError" in hands.said()
        assert hands.prompt.text == "cases of 12 kg"
        await hands.press("enter")
        assert hands.talk.facts


async def test_what_is_half_typed_is_there_again_when_the_case_is_opened(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.type("they said 12 or maybe")
        with Book() as book:
            for _ in range(200):
                await hands.pilot.pause(0.02)
                if book.draft("tea"):
                    break
            assert book.draft("tea") == "they said 12 or maybe"
    async with at_desk(keeper=Keeper("tea")) as hands:
        assert hands.prompt.text == "they said 12 or maybe"
        await hands.press("enter")
        for _ in range(200):
            await hands.pilot.pause(0.02)
            if not hands.app.front.steps.work.book.draft("tea"):
                break
        assert hands.app.front.steps.work.book.draft("tea") == ""


async def test_words_typed_into_a_case_never_begun_are_found_again(at_desk: AtDesk) -> None:
    Keeper("lost").type("they said 12 or maybe")
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.press("ctrl+o")
        await hands.choose("half typed, not sent: they said 12")
        assert hands.app.front.steps.work.name == "lost"
        assert hands.prompt.text == "they said 12 or maybe"


async def test_what_is_due_is_found_in_the_list_of_cases(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        await hands.send("/promise send the layout by 2026-01-05")
        await hands.send("/new jars")
        await hands.send("jars of 1 kg")
        await hands.press("ctrl+o")
        assert len(hands.rows()) == 3
        await hands.press(*"due")
        assert [row.split()[0] for row in hands.rows()] == ["begin", "tea"]
        assert "due 2026-01-05 OVERDUE" in hands.rows()[1]


async def test_cases_are_found_by_the_family_that_leads(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up 3.4 m")
        best = hands.talk.result().best
        await hands.send("/new jars")
        await hands.send("jars of 1 kg")
        await hands.press("ctrl+o")
        await hands.press(*[{":": "colon", "_": "underscore"}.get(sign, sign) for sign in f"family:{best}"])
        assert [row.split()[0] for row in hands.rows()] == ["begin", "tea"]


async def test_a_file_is_kept_with_the_case_and_written_out_again(at_desk: AtDesk, tmp_path: Path) -> None:
    plan = tmp_path / "floor plan.txt"
    plan.write_text("columns every 6 m")
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg")
        await hands.send(f"/attach {plan}: the floor")
        assert "Attached: floor plan.txt: the floor" in hands.said()
        plan.unlink()
        await hands.send(f"/save 1 {tmp_path}")
        assert (tmp_path / "floor_plan.txt").read_text() == "columns every 6 m"
        await hands.send(f"/save 1 {tmp_path}")
        assert "nothing is written over" in hands.said()


async def test_a_person_is_forgotten_and_the_case_comes_back_without_them(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send("cases of 12 kg. I am Ada Quill, ada.quill@example.com")
        assert hands.talk.case.facts[("contact.email", 1)].value == "ada.quill@example.com"
        await hands.send("/forget")
        assert "no undo" in hands.said()
        await hands.send("/forget yes")
        assert hands.talk.spec()["product.weight"] == 12.0
        assert "ada.quill@example.com" not in str(hands.talk.events)
        assert "ada.quill" not in hands.said()
        assert len(hands.app.cases) == 1


async def test_what_cannot_be_saved_is_written_elsewhere_and_taken_in_again(
    at_desk: AtDesk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:

        def full(*_: object, **__: object) -> int:
            raise BookError("full", "the disk is full", "Free some space.")

        with monkeypatch.context() as patch:
            patch.setattr(Book, "append", full)
            await hands.send("cases of 12 kg. I am Ada Quill, ada.quill@example.com")
            assert "/export FILE" in hands.line("#trouble")
            await hands.send(f"/export {tmp_path / 'tea.jsonl'}")
            await hands.send(f"/export with contacts {tmp_path / 'whole.jsonl'}")
    assert "ada.quill" not in (tmp_path / "tea.jsonl").read_text()
    assert "ada.quill" in (tmp_path / "whole.jsonl").read_text()
    with Book() as book:
        name = book.import_((tmp_path / "whole.jsonl").read_text(), "again")
        assert Interview.from_events(book.events(name)).spec()["product.weight"] == 12.0
