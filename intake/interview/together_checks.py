"""What must hold of `together.toml`: every row joins questions that the tree has, each once."""

from collections.abc import Collection

from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.interview.row_checks import entries
from intake.interview.toml_file import TomlFile
from intake.interview.tree_model import TogetherModel
from intake.spec.problem import Problem


def together_problems(file: TomlFile, questions: Collection[str] | None) -> list[Problem]:
    """Everything wrong in the rows. `questions`: the ids of the tree, None while it cannot be read."""
    problems = [
        complain(
            "odd_key", file.name, file.line_of(f"[{key}]"), owner="the file", key=named(key),
            hint=did_you_mean(key, ("together",)),
        )
        for key in file.data
        if key != "together"
    ]  # fmt: skip
    for at, row in entries(file, "together", TogetherModel, problems):
        owner, line = f"together number {at + 1}", file.line_of_key("together", at, "questions")
        if len(row.questions) < 2:
            problems.append(complain("together_one", file.name, line, owner=owner))
        for n, name in enumerate(row.questions):
            if questions is not None and name not in questions:
                at_line = file.line_in_entry("together", at, f'"{name}"')
                hint = did_you_mean(name, sorted(questions))
                problems.append(
                    complain("together_unknown", file.name, at_line, owner=owner, id=named(name), hint=hint)
                )
            elif name in row.questions[:n]:
                problems.append(complain("twice_in_question", file.name, line, owner=owner, field=named(name)))
    return problems
