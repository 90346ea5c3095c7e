"""Every relation of `intake/sizing/physics` is held against something from outside: none comes in without.

A relation counts as held when a test file of this folder imports it from its own module and a test, or a function that
a test calls, calls it. Files that are skipped where an optional witness is not installed do not count.
"""

import ast
from functools import cache
from pathlib import Path

import pytest

from intake.sizing import physics

HERE = Path(__file__).parent
PHYSICS = Path(physics.__file__).parent
OPTIONAL = "importorskip"


def relations() -> list[tuple[str, str]]:
    """Module and name of each public function in the physics folder."""
    found = []
    for path in sorted(PHYSICS.glob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                found.append((path.stem, node.name))
    return found


def imported(tree: ast.Module) -> dict[str, tuple[str, str]]:
    """Local name -> module and relation, for what a file takes from the physics folder."""
    start = "intake.sizing.physics."
    return {
        alias.asname or alias.name: (node.module.removeprefix(start), alias.name)
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.module is not None and node.module.startswith(start)
        for alias in node.names
    }


def called_in(tree: ast.Module) -> set[str]:
    """Names that are called in a test, or in a function that is called from one, however far down."""
    functions = {node.name: node for node in tree.body if isinstance(node, ast.FunctionDef)}
    reached, ahead = set(), [name for name in functions if name.startswith("test_")]
    while ahead:
        name = ahead.pop()
        if name in reached or name not in functions:
            reached.add(name)
            continue
        reached.add(name)
        calls = (node.func for node in ast.walk(functions[name]) if isinstance(node, ast.Call))
        ahead += [func.id for func in calls if isinstance(func, ast.Name)]
    return reached


@cache
def held() -> set[tuple[str, str]]:
    """Every relation that some test of this folder calls."""
    found: set[tuple[str, str]] = set()
    for path in sorted(HERE.glob("test_*.py")):
        text = path.read_text(encoding="utf-8")
        if OPTIONAL in text:
            continue
        tree = ast.parse(text)
        taken, called = imported(tree), called_in(tree)
        found |= {relation for name, relation in taken.items() if name in called}
    return found


@pytest.mark.parametrize(("module", "name"), relations(), ids=[f"{module}.{name}" for module, name in relations()])
def test_a_relation_is_held_against_something_from_outside(module: str, name: str) -> None:
    assert (module, name) in held(), f"no test in tests/published calls {name} of intake.sizing.physics.{module}"


def test_the_folder_is_read_and_a_mere_mention_does_not_count() -> None:
    assert ("friction", "friction_needed") in relations()
    mention = ast.parse(
        "from intake.sizing.physics.friction import slip_slope\n"
        "def helper():\n    slip_slope(0.1)\n"
        "def test_nothing():\n    assert 'slip_slope'\n"
    )
    assert imported(mention) == {"slip_slope": ("friction", "slip_slope")}
    assert "slip_slope" not in called_in(mention)
    real = ast.parse("def helper():\n    slip_slope(0.1)\ndef test_it():\n    helper()\n")
    assert "slip_slope" in called_in(real)
