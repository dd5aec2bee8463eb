"""Every reference figure: a source that exists, and the value of the package it was taken from."""

import chemicals.volume
import pytest
from chemicals import LFL, T_flash
from chemicals.heat_capacity import CRC_standard_data
from chemicals.volume import volume_VDI_PPDS
from CoolProp.CoolProp import PropsSI
from pydantic import ValidationError

from clampstand.model.substance import Substance
from clampstand.physics import carbon_dioxide, chemistry, gas
from clampstand.units import Quantity, q
from physics.reference import citations, substances

FIGURES = [
    pytest.param(of, name, id=f"{of_id}.{name}")
    for of_id, of in substances().items()
    for name in (*of.figures, *of.tables)
]
IEC, NFPA = "IEC 60079-20-1 (2010)", "NFPA 497 (2008)"
CAS = {"ethanol": "64-17-5", "propan-2-ol": "67-63-0", "hydrogen": "1333-74-0"}


def value(substance: str, name: str, unit: str) -> float:
    return float(substances()[substance].quantity(name).m_as(unit))


@pytest.mark.parametrize(("of", "name"), FIGURES)
def test_every_figure_names_a_source_of_the_list(of: Substance, name: str) -> None:
    figure = of.figures.get(name) or of.tables[name]
    assert figure.citation in citations()


def test_what_is_from_memory_says_so_and_every_source_has_its_day() -> None:
    for source in citations().values():
        assert source.kind != "memory" or not source.is_verified
        assert source.on is not None


@pytest.mark.parametrize("substance", [name for name, of in substances().items() if of.formula])
def test_molar_mass_is_that_of_the_formula(substance: str) -> None:
    of = substances()[substance]
    by_formula = chemistry.molar_mass_of(of.formula or "")
    assert value(substance, "molar-mass", "g/mol") == pytest.approx(by_formula.m_as("g/mol"), rel=1e-4)


@pytest.mark.parametrize(
    ("substance", "name", "unit", "wanted"),
    [
        ("carbon-dioxide", "gas-density", "kg/m**3", ("D", "T", 293.15, "P", 101325, "CO2")),
        ("air", "gas-density", "kg/m**3", ("D", "T", 293.15, "P", 101325, "Air")),
        ("ethanol", "liquid-density", "kg/m**3", ("D", "T", 293.15, "P", 101325, "Ethanol")),
        ("ethanol", "vapour-pressure", "Pa", ("P", "T", 293.15, "Q", 1, "Ethanol")),
        ("water", "liquid-density", "kg/m**3", ("D", "T", 293.15, "P", 101325, "Water")),
        ("water", "specific-heat", "J/(kg*K)", ("C", "T", 293.15, "P", 101325, "Water")),
    ],
)
def test_fluids_agree_with_coolprop(substance: str, name: str, unit: str, wanted: tuple) -> None:
    assert value(substance, name, unit) == pytest.approx(PropsSI(*wanted), rel=1e-4)


def test_density_of_propan_2_ol_agrees_with_the_heat_atlas() -> None:
    row = chemicals.volume.rho_data_VDI_PPDS_2.loc["67-63-0"]
    constants = (float(row[name]) for name in ("Tc", "rhoc", "A", "B", "C", "D"))
    atlas = volume_VDI_PPDS(293.15, *constants)
    assert value("propan-2-ol", "liquid-density", "kg/m**3") == pytest.approx(atlas, rel=3e-3)


def test_critical_and_triple_point_agree_with_coolprop() -> None:
    assert value("carbon-dioxide", "critical-temperature", "K") == pytest.approx(
        PropsSI("Tcrit", "CO2"), 1e-6
    )
    assert value("carbon-dioxide", "critical-pressure", "Pa") == pytest.approx(PropsSI("pcrit", "CO2"), 1e-4)
    assert value("carbon-dioxide", "triple-temperature", "K") == pytest.approx(
        PropsSI("Ttriple", "CO2"), 1e-5
    )
    assert value("carbon-dioxide", "triple-pressure", "Pa") == pytest.approx(PropsSI("ptriple", "CO2"), 1e-4)


def same(figure: str, ours: Quantity) -> None:
    its = substances()["carbon-dioxide"].quantity(figure)
    assert float(ours.m_as(its.units)) == pytest.approx(float(its.magnitude), rel=1e-4)


def test_constants_of_the_formulae_are_the_reference_figures() -> None:
    same("molar-mass", gas.CO2_MOLAR_MASS)
    same("molar-mass", carbon_dioxide.MOLAR_MASS)
    same("critical-temperature", carbon_dioxide.CRITICAL_TEMPERATURE)
    same("critical-temperature", gas.CO2_CRITICAL_TEMPERATURE)
    same("critical-pressure", carbon_dioxide.CRITICAL_PRESSURE)
    same("critical-pressure", gas.CO2_CRITICAL_PRESSURE)
    same("triple-temperature", carbon_dioxide.TRIPLE_TEMPERATURE)
    same("triple-pressure", carbon_dioxide.TRIPLE_PRESSURE)
    same("sublimation-temperature", carbon_dioxide.sublimation_temperature())
    same("gas-density", gas.carbon_dioxide_density(q("20 °C")))


@pytest.mark.parametrize("substance", sorted(CAS))
def test_flammable_limits_agree_with_two_standards(substance: str) -> None:
    limit = value(substance, "lower-flammable-limit", "")
    assert limit == pytest.approx(LFL(CASRN=CAS[substance], method=IEC))
    assert limit == pytest.approx(LFL(CASRN=CAS[substance], method=NFPA), rel=0.07)


@pytest.mark.parametrize("substance", ["ethanol", "propan-2-ol"])
def test_flash_points_agree_with_two_standards_and_not_with_the_wrong_column(substance: str) -> None:
    point = value(substance, "flash-point", "K")
    for method in (IEC, NFPA):
        assert point == pytest.approx(T_flash(CAS[substance], method=method), abs=1.5)
    assert abs(point - T_flash(CAS[substance], method="Serat DIPPR (2017)")) > 15


@pytest.mark.parametrize(
    ("metal", "cas"), [("aluminium", "7429-90-5"), ("copper", "7440-50-8"), ("iron", "7439-89-6")]
)
def test_specific_heats_agree_with_the_molar_heats_of_crc(metal: str, cas: str) -> None:
    molar = float(CRC_standard_data.loc[cas, "Cps"])
    expected = molar / value(metal, "molar-mass", "kg/mol")
    assert value(metal, "specific-heat", "J/(kg*K)") == pytest.approx(expected, rel=2e-3)


def test_snow_table_and_equation_of_saturation_are_one() -> None:
    curve = substances()["carbon-dioxide"].curve("saturation-pressure")
    for celsius in ("-50 °C", "0 °C", "20 °C", "30 °C"):
        by_equation = carbon_dioxide.saturation_pressure(q(celsius)).m_as("bar")
        assert curve.at(q(celsius)).m_as("bar") == pytest.approx(by_equation, rel=1e-3)


RIGHT = {"name": "Salt", "figures": {"molar-mass": {"value": "58.44 g/mol", "citation": "book"}}}


@pytest.mark.parametrize(
    ("figures", "says"),
    [
        ({"taste": {"value": "1 kg", "citation": "book"}}, "not a figure"),
        ({"molar-mass": {"value": "58 g", "citation": "book"}}, "written as a mass"),
        ({"molar-mass": {"value": "58 g/mol"}}, "citation"),
        ({"molar-mass": {"value": "58", "citation": "book"}}, "no unit"),
    ],
)
def test_a_figure_without_unit_source_or_sense_cannot_be_written(figures: dict, says: str) -> None:
    assert Substance.model_validate(RIGHT).quantity("molar-mass").m_as("g/mol") == 58.44
    with pytest.raises(ValidationError, match=says):
        Substance.model_validate({**RIGHT, "figures": figures})


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ([["20 °C", "50 bar"], ["10 °C", "45 bar"]], "rise"),
        ([["20 °C", "50 bar"]], "rise"),
        ([["20 K", "50 bar"], ["30 kg", "60 bar"]], "temperature"),
        ([["10 °C", "50 bar"], ["20 °C", "60 J"]], "written as a energy"),
    ],
)
def test_a_table_out_of_order_cannot_be_written(rows: list, says: str) -> None:
    with pytest.raises(ValidationError, match=says):
        Substance.model_validate(
            {"name": "Gas", "tables": {"saturation-pressure": {"rows": rows, "citation": "book"}}}
        )
