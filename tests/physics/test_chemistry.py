"""Molar masses against chemicals, solutions and their traps, and texts that are no formulae."""

import string
import time

import pytest
from chemicals import molecular_weight, simple_formula_parser
from chemicals.elements import periodic_table
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from clampstand.physics import chemistry as ch
from clampstand.units import OutOfRange, bare, q, quantity


@pytest.mark.parametrize("element", sorted(ch.ATOMIC_MASSES))
def test_atomic_masses_agree_with_the_older_table_of_chemicals(element: str) -> None:
    assert ch.ATOMIC_MASSES[element] == pytest.approx(getattr(periodic_table, element).MW, rel=1.2e-3)


@pytest.mark.parametrize("text", ["NaOH", "HCl", "AgNO3", "KMnO4", "C12H22O11", "H2SO4", "CaCO3", "Na2S2O3"])
def test_molar_mass_agrees_with_chemicals(text: str) -> None:
    theirs = molecular_weight(simple_formula_parser(text))
    assert ch.molar_mass_of(text).m_as("g/mol") == pytest.approx(theirs, rel=1e-3)


@pytest.mark.parametrize(
    ("text", "atoms"),
    [
        ("CuSO4·5H2O", {"Cu": 1, "S": 1, "O": 9, "H": 10}),
        ("CuSO4.5H2O", {"Cu": 1, "S": 1, "O": 9, "H": 10}),
        ("Ca(OH)2", {"Ca": 1, "O": 2, "H": 2}),
        ("(NH4)2Fe(SO4)2·6H2O", {"N": 2, "H": 20, "Fe": 1, "S": 2, "O": 14}),
        ("Al2(SO4)3", {"Al": 2, "S": 3, "O": 12}),
        ("Cu(NH3)4(OH)2", {"Cu": 1, "N": 4, "H": 14, "O": 2}),
        ("CO", {"C": 1, "O": 1}),
        ("Co", {"Co": 1}),
    ],
)
def test_atoms_are_counted(text: str, atoms: dict[str, int]) -> None:
    assert dict(ch.atoms_in(text)) == atoms


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "x", "h2o", "Xx2", "H0", "H01", "(H2O", "H2O)", "()", "Ca()2", "(2H)", "CuSO4·", "5",
        "·5H2O", "CuSO4·xH2O", "SO4^2-", "H2O;", "2.5H2O", "((((H))))", "H9999", "Cu SO4", "H" * 61,
        "__import__('os')",
    ],
)  # fmt: skip
def test_what_is_no_formula_is_refused(text: str) -> None:
    with pytest.raises(ch.NotAFormula):
        ch.atoms_in(text)


@given(text=st.text(alphabet=string.ascii_letters + string.digits + "()·. ", max_size=200))
def test_any_text_is_read_or_refused_at_once(text: str) -> None:
    started = time.process_time()
    try:
        atoms = ch.atoms_in(text)
    except ch.NotAFormula:
        pass
    else:
        assert atoms
        assert all(count >= 1 for count in atoms.values())
    assert time.process_time() - started < 0.2


def test_the_water_of_a_hydrate_is_weighed_too() -> None:
    """Half a litre of 0.5 mol/L: 62.4 g of the blue crystals, or 39.9 g of the white powder."""
    blue, white = (
        ch.mass_for_solution(q("0.5 mol/dm³"), q("500 mL"), ch.molar_mass_of(text))
        for text in ("CuSO4·5H2O", "CuSO4")
    )
    assert blue.m_as("g") == pytest.approx(62.4, abs=0.05)
    assert white.m_as("g") == pytest.approx(39.9, abs=0.05)


def test_volume_strength_is_at_zero_degrees() -> None:
    assert ch.peroxide_concentration(bare(20)).m_as("mol/L") == pytest.approx(1.78, abs=0.005)
    warm = ch.volume_of_gas(q("1 mol"), q("20 °C")) / q("1 mol")
    assert ch.peroxide_concentration(bare(20), warm).m_as("mol/L") == pytest.approx(1.66, abs=0.005)


def test_molar_volume_is_that_of_codata() -> None:
    codata = constants.value("molar volume of ideal gas (273.15 K, 101.325 kPa)")
    assert ch.MOLAR_VOLUME_AT_0_DEGREES.m_as("m**3/mol") == pytest.approx(codata, rel=1e-9)
    assert ch.volume_of_gas(q("1 mol"), q("0 °C")).m_as("m**3") == pytest.approx(codata, rel=1e-8)


@given(
    stock=st.floats(min_value=0.1, max_value=20),
    part=st.floats(min_value=0, max_value=1),
    litres=st.floats(min_value=0.01, max_value=10),
)
def test_dilution_keeps_the_amount(stock: float, part: float, litres: float) -> None:
    strong, weak, made = (
        quantity(stock, "mol/L"),
        quantity(stock * part, "mol/L"),
        quantity(litres, "L"),
    )
    poured = ch.volume_to_dilute(strong, weak, made)
    assert (poured * strong).m_as("mol") == pytest.approx((made * weak).m_as("mol"))
    assert poured <= made * (1 + 1e-9)


def test_copper_plated_in_twenty_minutes() -> None:
    """By hand: 0.5 A for 1200 s is 600 C, 600/96485/2 mol of copper, 0.1976 g."""
    mass = ch.mass_electrolysed(q("0.5 A"), q("20 min"), ch.molar_mass_of("Cu"), bare(2))
    assert mass.m_as("g") == pytest.approx(600 / 96485 / 2 * 63.546, rel=1e-4)


def test_what_runs_out_first() -> None:
    """Magnesium in acid: 2.4 g is 0.1 mol and needs 0.2 mol of acid; 100 mL of 1 mol/L holds 0.1 mol."""
    magnesium = ch.amount_of(q("2.4 g"), ch.molar_mass_of("Mg"))
    assert ch.limiting_reagent({"Mg": (magnesium, 1), "HCl": (q("0.1 mol"), 2)}) == "HCl"
    assert ch.limiting_reagent({"Mg": (magnesium, 1), "HCl": (q("0.5 mol"), 2)}) == "Mg"


@pytest.mark.parametrize("amounts", [{}, {"Mg": ("0.1 mol", 0)}, {"Mg": ("-0.1 mol", 1)}])
def test_an_equation_without_sense_is_refused(amounts: dict) -> None:
    with pytest.raises(OutOfRange):
        ch.limiting_reagent({name: (q(amount), number) for name, (amount, number) in amounts.items()})


def test_concentrated_acid_by_its_label() -> None:
    stock = ch.concentration_of_stock(q("1.18 g/mL"), q("36 %"), ch.molar_mass_of("HCl"))
    assert stock.m_as("mol/L") == pytest.approx(11.65, abs=0.01)
