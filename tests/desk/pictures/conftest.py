"""`--draw` writes the pictures anew instead of comparing with them."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """Known where the pictures are named on the command line: `pytest tests/desk/pictures --draw`."""
    parser.addoption("--draw", action="store_true", default=False, help="write the pictures of the desk anew")


@pytest.fixture
def draws(request: pytest.FixtureRequest) -> bool:
    """True where the pictures are to be written and not compared."""
    return bool(request.config.getoption("--draw", default=False))
