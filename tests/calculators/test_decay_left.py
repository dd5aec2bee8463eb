"""What is left of a short-lived nuclide, against radioactivedecay."""

import pytest

from clampstand.calculators.decay_left import decay_left, grown_again


@pytest.mark.parametrize(
    ("nuclide", "number", "seconds"),
    [
        ("Pa-234m", "one minute", 60),
        ("Pa-234m", "two minutes", 120),
        ("Pa-234m", "five minutes", 300),
        ("Ba-137m", "five minutes", 300),
    ],
)
def test_part_left_agrees_with_radioactivedecay(book, nuclide, number, seconds):
    radioactivedecay = pytest.importorskip("radioactivedecay")
    practical = book.practicals["protactinium-half-life"]
    (worked,) = decay_left(practical, book, {"nuclide": nuclide, "time": number})
    stock = radioactivedecay.Inventory({nuclide: 1000.0}, "Bq").decay(seconds, "s")
    assert worked.value.m_as("") == pytest.approx(stock.activities("Bq")[nuclide] / 1000, rel=0.01)


def test_what_grows_again_agrees_with_radioactivedecay(book):
    """Thorium-234 from which all protactinium has been taken, followed for 5.1 min."""
    radioactivedecay = pytest.importorskip("radioactivedecay")
    practical = book.practicals["protactinium-half-life"]
    (worked,) = grown_again(practical, book, {"nuclide": "Pa-234m", "time": "regrowth time"})
    stock = radioactivedecay.Inventory({"Th-234": 1000.0}, "Bq").decay(5.1 * 60, "s")
    assert worked.value.m_as("") == pytest.approx(stock.activities("Bq")["Pa-234m"] / 1000, rel=0.01)
