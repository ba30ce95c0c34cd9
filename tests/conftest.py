"""Options and fixtures that tests of two folders or more use."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--all",
        action="store_true",
        help="visit every page of the written demo in the browser, not one of each kind",
    )
