"""The proof of a questions folder. Each test makes one slip in a copy of the shipped folder and reads the sentence.

Rules of the sentences:
1. file and line, then what is wrong, then how to mend it;
2. names as written, in double quotes, with the nearest spelling where one is near;
3. everything wrong in one run; no line where the line is not sure.
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from intake.interview.proof import prove
from intake.spec.vocabulary import vocabulary

Told = Callable[..., list[str]]
Extra = Callable[..., str]


def test_the_shipped_folder_is_sound(folder: Path) -> None:
    proof = prove(folder)
    assert [str(problem) for problem in proof.problems] == []
    assert proof.is_sound
    assert proof.fields == len(vocabulary())


def test_an_unknown_field_is_told_with_its_nearest_spelling(told: Told) -> None:
    slip = '[[question]]\nid = "product_height"\nfields = ["product.heigth"]\n'
    assert (
        'product.toml:2: question "product_height" names "product.heigth", which fields.toml does not have. '
        'Did you mean "product.height"?' in told("tree/product.toml", slip)
    )


def test_a_field_that_looks_like_nothing_is_sent_to_the_list(told: Told, extra: Extra) -> None:
    assert told("tree/product.toml", extra('["zzzz"]')) == [
        'product.toml:2: question "extra" names "zzzz", which fields.toml does not have. '
        "All fields are listed by: intake proof --fields."
    ]


def test_a_field_asked_twice_is_told_at_the_later_question(told: Told, extra: Extra) -> None:
    later = extra('["zzzz", "rate.arrival"]').replace('"extra"', '"later"')
    problems = told("tree/product.toml", extra('["rate.arrival"]') + later)
    assert (
        'product.toml:10: question "later" asks for "rate.arrival", which question "extra" (product.toml:2) '
        "asks for already. Leave it in one." in problems
    )


def test_a_field_named_twice_in_one_question_is_told(told: Told, extra: Extra) -> None:
    problems = told("tree/contact.toml", extra('["rate.paek", "contact.name", "contact.name"]'))
    assert 'contact.toml:2: question "extra" names "contact.name" twice. Take one of them out.' in problems


def test_a_field_that_no_question_asks_for_is_told(told: Told) -> None:
    problems = told("tree/squeezability.toml", old='fields = ["handling.fragile"]', new='fields = ["handling.tilt"]')
    assert (
        'squeezability.toml: no question asks for "handling.fragile". Add it to the fields of a question here.'
        in problems
    )


def test_a_second_question_of_the_same_id_is_told_with_the_place_of_the_first(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]').replace('"extra"', '"rate"'))
    assert any(
        problem.endswith('there is a question "rate" already (product.toml:2). Give this one another id.')
        and problem.startswith("rate.toml:")
        for problem in problems
    )


@pytest.mark.parametrize(
    ("key", "mend"),
    [
        ("say", '"How high does it go, 10 ft or 3 m, say?"'),
        ("why", '"what the answer decides"'),
        ("unknown_ok", '"what to say when they do not know"'),
        ("settle", '"the photo, drawing or test that gives the answer"'),
    ],
)
def test_a_question_that_lacks_a_text_is_told(told: Told, extra: Extra, key: str, mend: str) -> None:
    lines = [line for line in extra('["nothing"]').splitlines() if not line.startswith(f"{key} =")]
    problems = told("tree/product.toml", "\n".join(lines) + "\n")
    assert f'product.toml:2: question "extra" has no {key}. Add {key} = {mend}.' in problems


def test_an_empty_text_is_told_on_its_line(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]').replace('"To know."', '"  "'))
    assert 'product.toml:5: why of question "extra" is empty. Write "what the answer decides".' in problems


def test_a_wrong_type_is_told_on_its_line(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]', 'cost = "dear"'))
    assert (
        'product.toml:8: cost of question "extra" is "dear". '
        "Write 1 (said at once), 2 (looked up) or 3 (measured)." in problems
    )


def test_a_misspelt_key_is_told_with_the_right_one(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]', "cots = 2"))
    assert 'product.toml:8: question "extra" has "cots", which it cannot have. Did you mean "cost"?' in problems


def test_a_question_without_an_id_is_told_by_its_number(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]').replace('id = "extra"\n', ""))
    assert (
        'product.toml:1: question number 1 has no id. Add id = "rise_heights" (small letters, digits and _).'
        in problems
    )


def test_a_condition_on_an_unknown_field_is_told_at_the_wording(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ field = "product.tpye", any_of = ["case"] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" has a condition on "product.tpye", which fields.toml does not '
        'have. Did you mean "product.type"?' in problems
    )


def test_a_condition_on_a_choice_that_does_not_exist_is_told(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ field = "product.type", any_of = ["case", "trey"] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" waits for "product.type" to be "trey", which is not one of its '
        'choices. Did you mean "tray"?' in problems
    )


def test_a_yes_no_condition_takes_true_or_false_only(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ field = "site.air", any_of = ["yes"] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" waits for "site.air" to be "yes", which is not one of its '
        "choices. Accepted: true, false." in problems
    )


def test_a_condition_on_a_figure_is_told(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ field = "rate.peak", any_of = ["fast"] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" has a condition on "rate.peak", which is a figure. '
        "Use a field with choices, or a yes or no." in problems
    )


def test_a_wording_behind_a_wider_one_is_told(told: Told, extra: Extra) -> None:
    wordings = """\
[[question.wordings]]
when = [{ field = "product.type", any_of = ["case", "tray"] }]
say = "First?"

[[question.wordings]]
when = [{ field = "product.type", any_of = ["tray"] }]
say = "Second?"
"""
    problems = told("tree/product.toml", extra('["nothing"]', wordings))
    assert (
        'product.toml:14: wording 2 of question "extra" can never be said: wording 1 always comes first. '
        "Put it above, or take it out." in problems
    )


def test_the_same_wordings_the_other_way_round_are_sound(told: Told, extra: Extra) -> None:
    wordings = """\
[[question.wordings]]
when = [{ field = "product.type", any_of = ["tray"] }]
say = "First?"

[[question.wordings]]
when = [{ field = "product.type", any_of = ["case", "tray"] }]
say = "Second?"
"""
    assert not [p for p in told("tree/product.toml", extra('["nothing"]', wordings)) if "wording" in p]


def test_conditions_that_exclude_each_other_are_told(told: Told, extra: Extra) -> None:
    wording = """\
[[question.wordings]]
when = [{ field = "product.type", any_of = ["tray"] }, { field = "product.type", any_of = ["case"] }]
say = "Well?"
"""
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:10: wording 1 of question "extra" can never be said: its conditions on "product.type" exclude '
        "each other. Keep one of them." in problems
    )


def test_a_condition_on_what_the_question_itself_asks_is_told(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ field = "site.air", any_of = [true] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["site.air"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" waits for "site.air", but the question is over once that is '
        "known. Use a condition on a field that the question does not ask for." in problems
    )


def test_a_wording_without_conditions_is_told(told: Told, extra: Extra) -> None:
    problems = told("tree/product.toml", extra('["nothing"]', '[[question.wordings]]\nsay = "Well?"\n'))
    assert (
        'product.toml:9: wording 1 of question "extra" has neither when nor asks, so it would always be said. '
        "Make it the say of the question." in problems
    )


def test_a_wording_for_a_field_of_another_question_is_told(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nasks = ["rate.peak"]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["rate.normal"]', wording))
    assert (
        'product.toml:9: wording 1 of question "extra" asks for "rate.peak", which is not a field of its question. '
        'Did you mean "rate.normal"?' in problems
    )


def test_a_misspelt_key_of_a_condition_is_told_at_its_wording(told: Told, extra: Extra) -> None:
    wording = '[[question.wordings]]\nwhen = [{ feild = "site.air", any_of = [true] }]\nsay = "Well?"\n'
    problems = told("tree/product.toml", extra('["nothing"]', wording))
    assert (
        'product.toml:9: a condition in wording 1 of question "extra" has "feild", which it cannot have. '
        'Did you mean "field"?' in problems
    )


@pytest.mark.parametrize(
    ("table", "sentence"),
    [
        (
            '[plausible."rate.speed"]\nlow = 1\nhigh = 2\n',
            'rate.toml:1: there is a plausible range for "rate.speed", which fields.toml does not have. '
            'Did you mean "rate.pieces"?',
        ),
        (
            '[plausible."rate.arrival"]\nlow = 1\nhigh = 2\n',
            'rate.toml:1: there is a plausible range for "rate.arrival", which is a choice. '
            "Only figures and counts have a range.",
        ),
        (
            '[plausible."rise.height"]\nlow = 9\nhigh = 2\n',
            'rate.toml:1: the plausible range of "rise.height" runs from 9 to 2. Put the lower figure into low.',
        ),
        (
            '[plausible."rise.height"]\nlow = -4\nhigh = 2\n',
            'rate.toml:1: the plausible range of "rise.height" cannot be: -4.0 is negative. Give low and high in m.',
        ),
        (
            '[plausible."rise.height"]\nlow = "1 ft"\nhigh = 2\n',
            'rate.toml:1: low of the plausible range of "rise.height" is "1 ft". Write a plain number.',
        ),
    ],
)
def test_a_plausible_range_that_cannot_be_is_told(told: Told, table: str, sentence: str) -> None:
    assert sentence in told("tree/rate.toml", table + "\n")


def test_a_figure_without_a_plausible_range_is_told(told: Told) -> None:
    problems = told("tree/rise.toml", old='[plausible."rise.height"]', new='[plausible."rise.hieght"]')
    assert (
        'rise.toml: "rise.height" has no plausible range. Add [plausible."rise.height"] with low and high in m.'
        in problems
    )


def test_everything_wrong_is_told_in_one_run(told: Told, folder: Path) -> None:
    (folder / "assumptions.toml").write_text("[approx]\nother = \n", encoding="utf-8")
    (folder / "tree" / "site.toml").write_bytes(b"# caf\xe9\n")
    (folder / "tree" / "sites.toml").write_text("", encoding="utf-8")
    (folder / "tree" / "tests.toml").unlink()
    problems = told("tree/rate.toml", old='fields = ["rate.arrival"]', new='fields = ["rate.arival"]')
    files = {problem.split(":")[0] for problem in problems}
    assert files == {"assumptions.toml", "site.toml", "sites.toml", "tests.toml", "rate.toml"}


def test_a_file_that_is_no_toml_is_told_with_line_and_column(told: Told) -> None:
    assert told("tree/rate.toml", "[[question]]\nid = extra\n") == [
        "rate.toml:2: this is not TOML: invalid value. Mend it at line 2, column 6; text needs quotes, "
        "and every [ and { its closing partner."
    ]


def test_a_file_that_is_no_toml_at_its_end_is_told_with_its_last_line(folder: Path, told: Told) -> None:
    (folder / "tree" / "contact.toml").write_text('\n\nsay = """never closed', encoding="utf-8")
    problems = told("tree/rate.toml")
    assert problems[0].startswith("contact.toml:3: this is not TOML: ")
    assert "Mend it at the end of the file" in problems[0]


def test_a_file_in_another_encoding_is_told(folder: Path, told: Told) -> None:
    (folder / "tree" / "contact.toml").write_bytes(b"# caf\xe9\n")
    assert told("tree/rate.toml")[0] == "contact.toml: byte 5 is no UTF-8 text. Save the file as UTF-8."


def test_a_missing_branch_is_told_once_and_not_for_each_of_its_fields(folder: Path, told: Told) -> None:
    (folder / "tree" / "contact.toml").unlink()
    assert told("tree/rate.toml") == [
        "contact.toml: this file is missing. "
        "Every branch of the tree has its file, even an empty one: put it into tree."
    ]


def test_a_file_of_no_branch_is_told(folder: Path, told: Told) -> None:
    (folder / "tree" / "temprature.toml").write_text("", encoding="utf-8")
    assert told("tree/rate.toml") == [
        "temprature.toml: the tree has no branch of that name. The branches are product, rate, rise, space, "
        'squeezability, temperature, cleaning, site, project, contact and tests. Did you mean "temperature"?'
    ]


def test_an_odd_table_in_a_branch_is_told(told: Told) -> None:
    problems = told("tree/rate.toml", '[[questions]]\nid = "extra"\n\n')
    assert problems == ['rate.toml:1: the file has "questions", which it cannot have. Did you mean "question"?']


def test_a_file_of_another_purpose_that_is_no_toml_is_told(folder: Path, told: Told) -> None:
    (folder / "cards").mkdir(exist_ok=True)
    (folder / "cards" / "price.toml").write_text("say = no quotes\n", encoding="utf-8")
    assert told("tree/rate.toml")[0].startswith("price.toml:1: this is not TOML: ")


def test_the_line_is_left_out_where_a_text_hides_a_header(told: Told) -> None:
    hidden = '[[question]]\nid = "extra"\nfields = ["zzzz"]\nwhy = """\n[[question]]\n"""\n\n'
    assert any(
        problem.startswith('rate.toml: question "extra" names "zzzz"') for problem in told("tree/rate.toml", hidden)
    )


def test_control_codes_in_a_name_never_reach_the_terminal(told: Told) -> None:
    problems = told("tree/rate.toml", '[[question]]\nid = "extra"\nfields = ["rate.\\u001b[31mpeak"]\n')
    assert any("rate.peak" in problem for problem in problems)
    assert not any("\x1b" in problem for problem in problems)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            "[side_grip]",
            "[side_gripp]",
            'there is no family "side_gripp". Did you mean "side_grip"?',
        ),
        (
            "[side_grip]",
            "[side_gripp]",
            'family "side_grip" is missing. Add [side_grip] with the fields that engineering needs to start.',
        ),
        (
            '"product.surface"',
            '"product.surfaces"',
            '[all] names "product.surfaces", which fields.toml does not have. Did you mean "product.surface"?',
        ),
        (
            "[side_grip]\nfields =",
            "[side_grip]\nfield =",
            '[side_grip] has no fields. Add fields = ["rise.height"].',
        ),
    ],
)
def test_a_slip_in_what_engineering_needs_is_told(told: Told, old: str, new: str, sentence: str) -> None:
    assert sentence in [problem.split(": ", 1)[1] for problem in told("engineering.toml", old=old, new=new)]


def test_limits_that_are_no_toml_are_told_with_their_line(told: Told) -> None:
    assert told("range/common.toml", "least_rise = oops\n") == [
        "range/common.toml:1: this is not TOML: invalid value. Mend it at line 1, column 14."
    ]


def test_a_missing_limit_is_told_with_what_to_add(told: Told) -> None:
    problems = told("range/common.toml", old="least_rise = ", new="least_rize = ")
    assert any(
        problem.startswith(
            'range/common.toml: the limit "least_rise" is missing. Add least_rise = { is = 0.3, unit = "m"'
        )
        for problem in problems
    )
    assert any(problem.endswith('no check reads "least_rize". Did you mean "least_rise"?') for problem in problems)


@pytest.mark.parametrize("figure", ['"0.3"', "true", "nan", "inf", "[0.3]", "{ a = 1 }"])
def test_a_limit_that_is_no_figure_is_told_and_breaks_nothing(told: Told, figure: str) -> None:
    problems = told("range/common.toml", old="least_rise = { is = 0.3", new=f"least_rise = {{ is = {figure}")
    assert problems
    assert all('"least_rise"' in problem for problem in problems)
