"""How sure counts are: against sums by hand, numpy and scipy.stats."""

import math

import numpy as np
import pytest
from scipy import stats

from calculators.lessons import given, with_numbers
from clampstand.calculators.counts import net_count, scatter_of_counts, uncertainty_of_count
from clampstand.calculators.worked import CannotWork
from clampstand.units import q

NAME = "background-and-everyday-objects"
NET = {"counts": "gross", "time": "time", "background": "blank", "background time": "blank time"}


def test_a_count_is_as_sure_as_the_poisson_distribution_says(book):
    """scipy.stats: the standard deviation of a Poisson distribution of mean 400, as a part of it."""
    (worked,) = uncertainty_of_count(book.practicals[NAME], book, {"counts": "middling count"})
    assert worked.value.m_as("") == pytest.approx(stats.poisson(400).std() / 400)
    assert worked.shown == "5.0\u00a0%"


def test_a_net_rate_agrees_with_a_sum_by_hand(book):
    """(214 − 126)/5 a minute; √(214 + 126)/5 a minute, for both were counted five minutes."""
    practical = book.practicals[NAME]
    rate, spread = net_count(practical, book, given(practical, "net-count"))
    assert rate.value.m_as("count/min") == pytest.approx(17.6)
    assert spread.value.m_as("count/min") == pytest.approx(math.sqrt(340) / 5)
    assert rate.note.startswith("More than twice")


def test_a_net_rate_within_chance_is_said_to_be(book):
    """A count of 130 above 126 differs by 4, and √256 is 16."""
    practical = with_numbers(
        book.practicals[NAME],
        **{"gross": "130 counts", "time": "300 s", "blank": "126 counts", "blank time": "300 s"},
    )
    rate, _ = net_count(practical, book, NET)
    assert "chance alone" in rate.note
    assert rate.note.startswith("Less than twice")


COUNTS = [(41, 36, 49), (10, 90, 50), (50, 50, 50, 50, 50, 50, 50, 50, 51)]


@pytest.mark.parametrize("counts", COUNTS)
def test_scatter_agrees_with_numpy_and_scipy(book, counts):
    """numpy.std with one degree of freedom gone; scipy.stats.chi2 for the chance."""
    names = [f"count {n}" for n in range(len(counts))]
    numbers = {name: f"{count} counts" for name, count in zip(names, counts, strict=True)}
    practical = with_numbers(book.practicals[NAME], **numbers)
    (worked,) = scatter_of_counts(practical, book, {"counts": ", ".join(names)})
    assert worked.value.m_as("count") == pytest.approx(np.std(counts, ddof=1))
    mean = np.mean(counts)
    chance = stats.chi2.sf(sum((n - mean) ** 2 for n in counts) / mean, len(counts) - 1)
    said = "more than chance" if chance < 0.05 else "less than chance" if chance > 0.95 else "Chance alone"
    assert said in worked.note
    if said == "Chance alone":
        assert float(worked.note.split()[-5]) == pytest.approx(100 * chance, rel=0.05)


def test_one_count_has_no_scatter(book):
    with pytest.raises(CannotWork, match="two counts"):
        scatter_of_counts(book.practicals[NAME], book, {"counts": "middling count"})


def test_a_name_that_is_no_number_is_told(book):
    with pytest.raises(CannotWork, match="odd one is not a declared number"):
        scatter_of_counts(book.practicals[NAME], book, {"counts": "middling count, odd one"})
    with pytest.raises(CannotWork, match="needs to be given counts"):
        scatter_of_counts(book.practicals[NAME], book, {})


def test_no_counts_have_no_relative_uncertainty(book):
    practical = with_numbers(book.practicals[NAME], none="0 counts")
    assert practical.numbers["none"].value.value == q("0 counts")
    with pytest.raises(CannotWork):
        uncertainty_of_count(practical, book, {"counts": "none"})
