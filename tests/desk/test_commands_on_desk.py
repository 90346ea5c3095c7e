"""What is typed behind a slash on the desk."""

from pathlib import Path

from hands import AtDesk


async def test_a_slash_shows_the_commands_and_tab_completes_one(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("/pro")
        assert "/promise" in hands.line("#reading")
        await hands.press("tab")
        assert hands.prompt.text == "/promise "


async def test_a_promise_stands_among_what_waits_and_is_done_from_the_list(at_desk: AtDesk) -> None:
    async with at_desk(size=(160, 50)) as hands:
        await hands.send("/promise send the layout by 2026-01-05")
        assert "Promised: we: send the layout, by 2026-01-05" in hands.said()
        rows = [str(row.render()) for row in hands.app.front.query("#left .row")]
        assert rows[0] == "! we: send the layout, by 2026-01-05, OVERDUE"
        await hands.press("f4")
        await hands.choose("send the layout")
        assert hands.talk.case.waiting == []
        await hands.press("f9")
        assert len(hands.talk.case.waiting) == 1


async def test_a_command_that_cannot_be_done_says_why_and_is_given_back(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("/promis send it")
        assert "Did you mean /promise?" in hands.said()
        assert hands.prompt.text == "/promis send it"


async def test_a_test_on_samples_moves_the_verdicts(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("shrink-wrapped trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up 3.4 m")
        before = hands.talk.result().families["incline"].verdict
        await hands.send("/test slip angle 9 deg by R. Osei on 2026-01-05 with 3 trays")
        assert before != "out"
        assert hands.talk.result().families["incline"].verdict == "out"
        assert "Out: inclined belt conveyor" in hands.said()


async def test_checks_of_a_machine_are_a_page(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.send("/check incline slip")
        assert "slip" in hands.page()
        assert "source:" in hands.page()


async def test_a_note_is_kept_and_not_read_for_facts(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("rang back, 99 kg was a joke")
        await hands.press("ctrl+n")
        assert hands.talk.case.notes == ["rang back, 99 kg was a joke"]
        assert hands.talk.facts == []


async def test_a_draft_is_copied_by_its_name(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.send("/draft question")
        assert hands.talk.current is not None
        assert hands.app.clipboard.startswith(hands.talk.current.say)


async def test_units_change_all_that_is_shown(at_desk: AtDesk) -> None:
    async with at_desk(size=(160, 50)) as hands:
        await hands.send("cases of 30 lb")
        await hands.send("/units si")
        assert "13.6 kg" in str(hands.app.front.query("#facts .row")[2].render())


async def test_the_package_for_engineering_is_written_from_the_desk(
    at_desk: AtDesk, first_message: str, tmp_path: Path
) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.send(f"/hand-over {tmp_path / 'package'}")
        assert (tmp_path / "package" / "spec.json").exists()
        assert hands.talk.case.revision == "A"
        await hands.send("/waiting")
        assert "handed over, revision A" in hands.said()


async def test_a_title_is_given_and_taken_back(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("cases of 12 kg")
        await hands.send("/title cartons for the loft")
        assert hands.talk.title == "cartons for the loft"
        await hands.press("f9")
        assert hands.talk.title != "cartons for the loft"


async def test_words_that_begin_with_a_slash_are_words(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("/12 kg cases, 20 a minute")
        assert hands.talk.spec()["product.weight"] == 12.0
