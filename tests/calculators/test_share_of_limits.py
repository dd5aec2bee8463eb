"""The store against what may be kept without a permit, reckoned again with other half-lives and by hand."""

import dataclasses

import pytest
import radioactivedecay as rd

from clampstand.calculators.share_of_limits import counted, share_of_limits, shares, unlimited
from clampstand.calculators.worked import CannotWork
from clampstand.checks.engine import verdicts
from clampstand.findings import Severity
from clampstand.model.book import Book
from demo import demo

BOOK = demo().book

LEVELS_KBQ = {"Am-241": 10, "Sr-90": 10, "Co-60": 100, "Cs-137": 10, "Ra-226": 10, "U-238": 10}
"""StrlSchV 2018, Anlage 4, Tabelle 1, Spalte 2, each with its progeny."""


def in_force(*packs: str) -> Book:
    department = BOOK.department.model_copy(update={"packs": packs})
    return dataclasses.replace(BOOK, department=department)


def found_by(rule: str, book: Book) -> dict[str, Severity]:
    return {v.problem.message: v.severity for v in verdicts(book) if v.rule == rule}


def test_the_sum_agrees_with_the_decay_of_another_package() -> None:
    day = BOOK.department.computed_for
    expected = 0.0
    for source in counted(BOOK):
        kilobecquerel = float(source.activity.value.m_as("kBq"))
        start = rd.Inventory({source.nuclide: kilobecquerel}, "kBq")
        left = start.decay((day - source.reference_date).days, "d").activities("kBq")[source.nuclide]
        expected += left / LEVELS_KBQ[source.nuclide]
    worked = share_of_limits(BOOK, BOOK.packs["DE"])
    assert float(worked.value.m_as("")) == pytest.approx(expected, rel=2e-3)
    assert expected > 50


def test_a_disc_of_185_kbq_is_18_and_a_half_times_the_german_level() -> None:
    nominal = {share.source.id: share.nominal for share in shares(BOOK, BOOK.packs["DE"])}
    assert nominal["S-B1"] == pytest.approx(18.5)
    assert nominal["S-G1"] == pytest.approx(1.85)


def test_where_each_counts_by_itself_the_greatest_share_is_given() -> None:
    pack = BOOK.packs["US"]
    found = {share.source.id: share.nominal for share in shares(BOOK, pack)}
    assert found["S-G2"] == pytest.approx(1)  # 10 µCi is 370 kBq
    assert found["S-G1"] == pytest.approx(5)  # 1 µCi is 37 kBq
    assert found["S-B1"] == pytest.approx(50)  # 0.1 µCi is 3.7 kBq
    assert share_of_limits(BOOK, pack).formula == "the greatest A/L of any source"


def test_a_nuclide_that_a_pack_does_not_name_is_not_unlimited() -> None:
    assert unlimited(BOOK.sources["S-A1"], BOOK.packs["US"]) == ("Am-241",)
    assert unlimited(BOOK.sources["S-R1"], BOOK.packs["DE"]) == ()
    messages = found_by("nuclide-has-limit", in_force("US", "department-rules"))
    assert any("S-A1" in message for message in messages)
    assert "Am-241" in share_of_limits(BOOK, BOOK.packs["US"]).note


def test_law_stops_and_guidance_warns() -> None:
    law = found_by("store-within-exemption", in_force("DE", "department-rules"))
    guidance = found_by("store-within-exemption", in_force("international-exemption", "department-rules"))
    assert set(law.values()) == {Severity.STOP}
    assert set(guidance.values()) == {Severity.WARNING}


def test_a_permit_takes_a_source_out_of_the_sum() -> None:
    sources = {key: source.model_copy(update={"permit": "PL-7"}) for key, source in BOOK.sources.items()}
    book = dataclasses.replace(in_force("DE", "department-rules"), sources=sources)
    assert found_by("store-within-exemption", book) == {}
    assert float(share_of_limits(book, book.packs["DE"]).value.m_as("")) == 0


def test_packs_that_limit_no_nuclide_have_no_share() -> None:
    with pytest.raises(CannotWork, match="does not say"):
        share_of_limits(BOOK, BOOK.packs["GB"])


def test_the_interval_of_another_country_is_noticed() -> None:
    found = found_by("leak-test-interval", in_force("US", "department-rules"))
    assert any("S-A1" in message for message in found)
    assert found_by("leak-test-interval", in_force("GB", "department-rules")) == {}
