"""Putting right what was read, before and after it is sent."""

from hands import AtDesk

from intake.desk.list_page import ListPage


async def test_a_word_is_said_to_be_something_else_before_it_is_sent(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("our jars of 9 kg go up 4 m")
        await hands.press("tab")
        await hands.choose('"4 m"')
        await hands.choose("discharge height")
        assert hands.on_the_talk()
        assert "discharge height 4 m" in hands.line("#reading")
        await hands.press("enter")
        assert hands.talk.spec()["rise.discharge_height"] == 4.0
        assert "rise.height" not in hands.talk.spec()


async def test_words_are_left_out(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("cases of 12 kg")
        await hands.press("tab")
        await hands.choose('"12 kg"')
        await hands.choose("nothing that counts")
        await hands.press("enter")
        assert "product.weight" not in hands.talk.spec()
        assert hands.talk.spec()["product.type"] == "case"


async def test_the_word_under_the_cursor_is_taken_without_a_list_of_words(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("cases of 12 kg")
        hands.prompt.move_cursor((0, 2))
        await hands.press("tab")
        assert isinstance(hands.app.screen, ListPage)
        assert "kind of product case" in hands.rows()


async def test_a_word_that_says_nothing_by_itself_is_given_its_value(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("it is for the wobbly ones")
        await hands.press("tab")
        await hands.choose('"wobbly"')
        await hands.choose("another fact")
        await hands.choose("stiffness of the product")
        await hands.press(*"soft")
        await hands.press("enter")
        await hands.press("enter")
        assert hands.talk.spec()["product.rigidity"] == "soft"
        assert next(fact.said for fact in hands.talk.facts if fact.field == "product.rigidity") == "wobbly"


async def test_two_words_are_taken_together(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("the thing is 12 kg")
        await hands.press("tab")
        page = hands.app.screen
        assert isinstance(page, ListPage)
        await hands.press(*"thing", "plus")
        await hands.choose('"is"')
        assert "thing is" in "\n".join(hands.frame())


async def test_escape_leaves_all_as_it_was_read(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("cases of 12 kg")
        await hands.press("tab", "escape", "enter")
        assert hands.talk.spec()["product.weight"] == 12.0


async def test_the_last_message_is_put_right_after_it_was_sent(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("our jars of 9 kg go up 4 m")
        assert hands.talk.spec()["rise.height"] == 4.0
        await hands.press("tab")
        await hands.choose('"4 m"')
        await hands.choose("discharge height")
        assert hands.talk.spec()["rise.discharge_height"] == 4.0
        assert "rise.height" not in hands.talk.spec()
        assert len([text for text, _ in hands.talk.case.messages.values()]) == 1


async def test_what_was_mended_goes_when_its_words_are_typed_over(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("go up 4 m")
        await hands.press("tab")
        await hands.choose('"4 m"')
        await hands.choose("discharge height")
        await hands.type("go up 5 m")
        await hands.press("enter")
        assert hands.talk.spec()["rise.height"] == 5.0
        assert "rise.discharge_height" not in hands.talk.spec()


async def test_what_was_mended_holds_though_the_paste_had_blanks_around_it(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("\n  our jars go up 4 m\n")
        await hands.press("tab")
        await hands.choose('"4 m"')
        await hands.choose("discharge height")
        await hands.press("enter")
        assert hands.talk.spec()["rise.discharge_height"] == 4.0
        assert "rise.height" not in hands.talk.spec()
