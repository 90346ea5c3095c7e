"""The conversation: however long, whole lines at the width there is, the newest in sight, words to select."""

from hands import AtDesk
from textual.geometry import Offset
from textual.selection import Selection

from intake.desk.conversation import MOST_ROWS, Conversation


def drawn(conversation: Conversation) -> list[str]:
    """The rows as text."""
    return [row.text.rstrip() for row in conversation.rows]


async def test_no_word_is_lost_where_lines_break_whatever_the_width(at_desk: AtDesk) -> None:
    words = " ".join(f"zz{n}" for n in range(80))
    for size in ((60, 20), (80, 24), (120, 36), (200, 60)):
        async with at_desk(size=size) as hands:
            hands.app.front.say("desk", (words,))
            await hands.settle()
            conversation = hands.app.front.query_one(Conversation)
            shown = [word for row in drawn(conversation) for word in row.split() if word.startswith("zz")]
            assert shown == words.split()
            assert all(row.cell_length <= conversation.scrollable_content_region.width for row in conversation.rows)


async def test_after_a_change_of_size_the_newest_line_is_in_sight(at_desk: AtDesk) -> None:
    async with at_desk(size=(120, 36)) as hands:
        for number in range(300):
            hands.app.front.say("desk", (f"line {number} {'x' * (number % 150)}",))
        await hands.pilot.resize_terminal(80, 24)
        await hands.settle()
        assert "line 299" in "\n".join(hands.frame())
        await hands.pilot.resize_terminal(160, 50)
        await hands.settle()
        assert "line 299" in "\n".join(hands.frame())


async def test_all_of_a_long_conversation_can_be_leafed_to(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        for number in range(2000):
            hands.app.front.say("desk", (f"line {number}",))
        await hands.settle()
        conversation = hands.app.front.query_one(Conversation)
        conversation.scroll_home(animate=False, immediate=True)
        await hands.settle()
        assert "Paste what the visitor wrote" in "\n".join(hands.frame())
        hands.app.front.say("desk", ("and one more",))
        await hands.settle()
        assert "and one more" in "\n".join(hands.frame())


async def test_of_a_very_long_message_the_first_rows_are_shown_and_how_many_more_there_are(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("\n".join(f"row {n}" for n in range(MOST_ROWS + 30)))
        rows = drawn(hands.app.front.query_one(Conversation))
        assert "(30 more lines)" in rows
        assert not any(row.endswith(f"row {MOST_ROWS + 5}") for row in rows)


async def test_words_are_selected_over_rows(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        hands.app.front.say("desk", ("first row", "second row"))
        await hands.settle()
        conversation = hands.app.front.query_one(Conversation)
        place = drawn(conversation).index("first row")
        selection = Selection(Offset(6, place), Offset(6, place + 1))
        assert conversation.get_selection(selection) == ("row\nsecond", "\n")


async def test_wide_signs_and_codes_do_not_break_a_row(at_desk: AtDesk) -> None:
    async with at_desk(size=(60, 20)) as hands:
        await hands.send("漢字" * 60 + " 12 kg \U0001f4e6" + "e\u0301" * 40)
        assert all(len(row) <= 60 for row in hands.frame())
        conversation = hands.app.front.query_one(Conversation)
        assert all(row.cell_length <= conversation.scrollable_content_region.width for row in conversation.rows)
