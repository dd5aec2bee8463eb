"""The demo department's book, for numbers that rest on its registers and reference figures."""

import pytest

from clampstand.model.book import Book
from demo import demo


@pytest.fixture(scope="session")
def book() -> Book:
    """The demo content; the tests compare what is worked out from it with outside references."""
    return demo().book
