"""Dose to skin from beta particles: against a published table, and apart from dose to the body."""

import pytest

from calculators.lessons import with_numbers
from clampstand.calculators.dose import dose_of_the_lesson
from clampstand.calculators.dose_context import doses_in_context
from clampstand.calculators.emissions import beta_branches
from clampstand.calculators.exposures import exposures
from clampstand.units import OutOfRange, q


def doses(book, name: str, slot: str) -> dict:
    found = dose_of_the_lesson(book.practicals[name], book, {"source": slot})
    return {number.id.rpartition("/")[2]: number for number in found}


def test_a_pure_beta_source_gives_dose_to_skin_alone(book):
    found = doses(book, "alpha-beta-gamma-absorbers", "beta source")
    assert {number.kind for number in found.values()} == {"skin dose"}
    assert list(found) == ["skin-of-hands", "skin-of-teacher", "skin-of-watchers"]


def test_dose_to_skin_of_the_hand_is_of_the_size_of_a_published_table(book):
    """Rad Data Handbook (Voss Associates): 3.3 and 5.2 rad/h for each mCi at 10 cm, end points of 2.25 MeV
    and 0.5 MeV. Strontium and yttrium are 94.65 kBq each today, so 217 µGy/h together.
    """
    rate = (3.3 + 5.2) * 10_000 * 94.65 / 37_000
    (stay,) = exposures(book.practicals["alpha-beta-gamma-absorbers"], "beta source", "hands", book)
    assert stay.distance.m_as("mm") == 100
    hand = doses(book, "alpha-beta-gamma-absorbers", "beta source")["skin-of-hands"]
    seen = hand.value.m_as("uSv") / stay.time.m_as("h")
    assert rate / 2 < seen < rate * 2


def test_beyond_their_range_in_air_betas_give_nothing(book):
    """Katz and Penfold: 546 keV end within 0.18 g/cm², which is 1.5 m of air; 2.28 MeV reach some 9 m."""
    strontium, yttrium = beta_branches(book.sources["S-B1"], book)
    assert strontium.reach.m_as("m") == pytest.approx(0.183 / 1.2048e-3 / 100, rel=0.03)
    assert yttrium.reach.m_as("m") == pytest.approx(1.095 / 1.2048e-3 / 100, rel=0.03)
    found = doses(book, "alpha-beta-gamma-absorbers", "beta source")
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    times = {
        who: sum(stay.time.m_as("s") for stay in exposures(practical, "beta source", who, book))
        for who in ("teacher", "watchers")
    }
    teacher, watcher = found["skin-of-teacher"].value, found["skin-of-watchers"].value
    near = book.department.teacher_to_source.low.m_as("m")
    by_square = (2 / near) ** 2 * times["teacher"] / times["watchers"]
    assert (teacher / watcher).m_as("") == pytest.approx(2 * by_square, rel=1e-3)


def test_a_source_that_lets_out_both_gives_both_apart(book):
    found = doses(book, "inverse-square-law", "source")
    kinds = [number.kind for number in found.values()]
    assert kinds == ["dose"] * 3 + ["skin dose"] * 3
    assert "apart" in found["hands"].within
    table = doses_in_context(found.values(), book)
    assert table is not None
    assert [row.worked.kind for row in table.rows] == ["dose"] * 3
    assert [row.worked.kind for row in table.skin] == ["skin dose"] * 3
    assert {limit.key for limit in table.limits} == {"radiation.public-dose"}
    assert {limit.key for limit in table.skin_limits} == {"radiation.public-skin-dose"}
    assert all(row.likened == () for row in table.skin)


def test_alpha_sources_are_left_as_they_were(book):
    found = doses(book, "spark-counter", "source")
    assert {number.kind for number in found.values()} == {"dose"}


def test_nearer_than_the_rule_holds_is_refused(book):
    practical = with_numbers(
        book.practicals["alpha-beta-gamma-absorbers"],
        **{"hand distance": "20 mm", "watchers' distance": "2 m"},
    )
    with pytest.raises(OutOfRange, match="distance"):
        dose_of_the_lesson(practical, book, {"source": "beta source"})


def test_the_part_of_the_limit_is_of_fifty_millisievert(book):
    """GSR Part 3, Schedule III: 50 mSv a year to the skin of the public. 50 mSv / 5 µSv is 10 000."""
    found = doses(book, "alpha-beta-gamma-absorbers", "beta source")
    table = doses_in_context(found.values(), book)
    assert table is not None
    hand = table.skin[0]
    parts = q("50 mSv") / hand.worked.value
    assert hand.part.startswith("one part in ")
    assert int(hand.part[12:].replace("\u202f", "")) == pytest.approx(parts.m_as(""), rel=0.1)
