"""The demo department's book, for numbers that rest on its registers and reference figures."""

from pathlib import Path

import pytest

from clampstand.model.book import Book
from clampstand.reading import read


@pytest.fixture(scope="session")
def book() -> Book:
    """The demo content; the tests compare what is worked out from it with outside references."""
    found = read(Path(__file__).parents[2] / "content").book
    assert found is not None
    return found
