"""Stored mechanical energy against its integral, and the gauge that reads from the atmosphere."""

import math

import pytest
from scipy.integrate import quad

from clampstand.physics import mechanics
from clampstand.units import q, quantity
from physics.reference import substances


def test_energy_of_a_wire_is_the_work_of_stretching_it() -> None:
    modulus = substances()["copper"].quantity("young-modulus")
    wire = q("20 N"), q("2 m"), q("0.28 mm"), modulus
    extension = mechanics.extension_of_wire(*wire)
    stiffness = 120e9 * math.pi * 0.14e-3**2 / 2
    work, _ = quad(lambda x: stiffness * x, 0, extension.m_as("m"))
    assert mechanics.elastic_energy(q("20 N"), extension).m_as("J") == pytest.approx(work)


def test_a_gauge_reads_from_the_atmosphere() -> None:
    """Six bar on the gauge of a two-litre bottle are 3.0 kJ, not the 2.5 kJ of six bar absolute."""
    by_gauge = mechanics.energy_of_compressed_gas(mechanics.absolute_pressure(q("6 bar")), q("2 L"))
    as_absolute = mechanics.energy_of_compressed_gas(q("6 bar"), q("2 L"))
    assert by_gauge.m_as("J") == pytest.approx(3000, rel=1e-3)
    assert as_absolute.m_as("J") == pytest.approx(2493, rel=1e-3)


def test_a_vessel_at_or_below_the_pressure_outside_stores_nothing() -> None:
    assert mechanics.energy_of_compressed_gas(q("0.5 bar"), q("2 L")).m_as("J") == 0
    assert mechanics.energy_of_compressed_gas(mechanics.ATMOSPHERE, quantity(2, "L")).m_as("J") == 0
