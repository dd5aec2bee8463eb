"""Which formula answers each reference case on electricity, gases, heat, light, chemistry and sound."""

import re
from collections.abc import Callable
from typing import Any

from clampstand.physics import (
    carbon_dioxide,
    chemistry,
    dry_ice,
    electricity,
    electrons,
    gas,
    light,
    mechanics,
    room_air,
    sound,
)
from clampstand.units import Quantity, bare, quantity
from physics.reference import substances

Inputs = dict[str, Any]
Answer = Callable[[Inputs], Quantity | float | str]

WARM = quantity(293.15, "K")
PLAIN = {"1": "", "%": "percent", "mrad": "mradian"}


def given(inputs: Inputs, name: str) -> Quantity:
    """An input of a case as a quantity."""
    entry = inputs[name]
    unit = re.sub(r"m([23])\b", r"m**\1", entry["unit"])
    return quantity(entry["value"], PLAIN.get(unit, unit))


def kelvins(inputs: Inputs, name: str) -> Quantity:
    """A temperature of a case, in kelvins."""
    return given(inputs, name).to("K")


def ppm(inputs: Inputs) -> Quantity:
    return quantity(inputs["ppm"], "ppm")


def co2(name: str) -> Quantity:
    """A reference figure of carbon dioxide."""
    return substances()["carbon-dioxide"].quantity(name)


def figure(inputs: Inputs, name: str) -> Quantity:
    """A reference figure of the substance a case names."""
    return substances()[inputs["substance"]].quantity(name)


def snow(fluid_enthalpy: Quantity) -> Quantity:
    return dry_ice.snow_fraction(
        fluid_enthalpy, co2("gas-enthalpy-at-sublimation"), co2("sublimation-enthalpy")
    )


def vapour(inputs: Inputs, liquid: Quantity) -> Quantity:
    return gas.vapour_volume(liquid, figure(inputs, "liquid-density"), figure(inputs, "molar-mass"), WARM)


def room_release(inputs: Inputs) -> Quantity:
    return room_air.gas_release(given(inputs, "sublimation"), gas.carbon_dioxide_density(WARM))


def hcl_stock(inputs: Inputs) -> Quantity:
    return chemistry.concentration_of_stock(
        given(inputs, "density"), given(inputs, "w/w"), chemistry.molar_mass_of("HCl")
    )


def wire_energy(inputs: Inputs) -> Quantity:
    names = ("force", "length", "diameter", "E")
    extension = mechanics.extension_of_wire(*(given(inputs, name) for name in names))
    return mechanics.elastic_energy(given(inputs, "force"), extension)


def tabled(name: str) -> Quantity:
    """A reference table of carbon dioxide at 20 °C."""
    return substances()["carbon-dioxide"].curve(name).at(WARM)


def air_to_limit(inputs: Inputs) -> Quantity:
    return gas.air_made_flammable(vapour(inputs, quantity(10, "mL")), given(inputs, "LFL"))


ELECTRICITY: dict[str, Answer] = {
    "energy of 45 uC at 15 kV": lambda i: electricity.energy_of_charge(
        given(i, "charge"), given(i, "voltage")
    ),
    "largest accessible capacitance at 45 uC": lambda i: electricity.capacitance_holding(
        quantity(45, "uC"), given(i, "voltage")
    ),
    "electron speed, non-relativistic": lambda i: electrons.electron_speed_classical(given(i, "voltage")),
    "electron speed, relativistic": lambda i: electrons.electron_speed(given(i, "voltage")),
    "shortest bremsstrahlung wavelength": lambda i: electrons.shortest_wavelength(given(i, "voltage")),
    "energy of a charged capacitor": lambda i: electricity.energy_stored(
        given(i, "capacitance"), given(i, "voltage")
    ),
    "charge on 10 nF at 5 kV": lambda i: electricity.charge_stored(
        given(i, "capacitance"), given(i, "voltage")
    ),
    "discharge time to a safe voltage": lambda i: electricity.discharge_time(
        given(i, "V0"), given(i, "V"), given(i, "R"), given(i, "C")
    ),
    "series resistance to limit short-circuit current": lambda i: electricity.resistance_limiting(
        given(i, "voltage"), given(i, "limit")
    ),
    "short-circuit current through a limiting resistor": lambda i: electricity.current_through(
        given(i, "voltage"), given(i, "resistance")
    ),
    "capacitance of an isolated sphere": lambda i: electricity.sphere_capacitance(given(i, "radius")),
    "energy at breakdown field 3 MV/m": lambda i: electricity.dome_greatest_energy(given(i, "radius")),
    "energy of a person charged to 10 kV, 100 pF": lambda i: electricity.energy_stored(
        given(i, "C"), given(i, "V")
    ),
    "peak of 230 V r.m.s. sine": lambda i: electricity.peak_of(given(i, "rms")),
}

GASES: dict[str, Answer] = {
    "sublimation temperature at 101.325 kPa": lambda _: carbon_dioxide.sublimation_temperature(),
    "triple-point temperature": lambda _: co2("triple-temperature"),
    "triple-point pressure": lambda _: co2("triple-pressure"),
    "enthalpy of sublimation at the normal sublimation point": lambda _: co2("sublimation-enthalpy"),
    "density of solid CO2": lambda _: co2("solid-density"),
    "gas volume from 1 kg at 20 C, 101.325 kPa": lambda i: gas.gas_volume(
        given(i, "mass"), gas.carbon_dioxide_density(kelvins(i, "T"))
    ),
    "gas volume from 1 kg at 0 C": lambda i: gas.gas_volume(
        given(i, "mass"), gas.carbon_dioxide_density(kelvins(i, "T"))
    ),
    "volume ratio gas (20 C) to solid": lambda i: (
        given(i, "solid density") / gas.carbon_dioxide_density(WARM)
    ),
    "density of CO2 relative to air, both 20 C": lambda _: gas.relative_density(
        gas.carbon_dioxide_density(WARM), substances()["air"].quantity("gas-density")
    ),
    "density of CO2 gas at 20 C": lambda _: gas.carbon_dioxide_density(WARM),
    "saturation pressure of liquid CO2 at 20 C": lambda _: carbon_dioxide.saturation_pressure(WARM),
    "density of saturated liquid CO2 at 20 C": lambda _: tabled("liquid-density"),
    "maximum snow mass fraction, isenthalpic expansion of saturated liquid to 1 atm": lambda i: snow(
        substances()["carbon-dioxide"].curve("liquid-enthalpy").at(kelvins(i, "liquid temperature"))
    ),
    "same from the vapour space (no dip tube) at 20 C": lambda _: snow(tabled("vapour-enthalpy")),
    "mass concentration of 5000 ppm at 20 C": lambda i: gas.mass_concentration(
        ppm(i), co2("molar-mass"), kelvins(i, "T")
    ),
    "mass concentration of 15000 ppm at 25 C": lambda i: gas.mass_concentration(
        ppm(i), co2("molar-mass"), kelvins(i, "T")
    ),
    "steady-state CO2 with ventilation (well mixed)": lambda i: room_air.steady_fraction(
        given(i, "outdoor"), room_release(i), given(i, "room"), given(i, "ventilation")
    ),
    "CO2 after 1 h": lambda i: room_air.fraction_after(
        given(i, "outdoor"),
        given(i, "outdoor"),
        room_release(i),
        given(i, "room"),
        given(i, "ventilation"),
        given(i, "t"),
    ),
    "CO2 rise if a mass sublimes with no ventilation (simple dilution)": lambda i: (
        room_air.rise_in_closed_room(given(i, "mass"), gas.carbon_dioxide_density(WARM), given(i, "room"))
    ),
    "largest mass that can sublime in an unventilated room and stay under 5000 ppm": lambda i: (
        room_air.greatest_mass_for_limit(
            quantity(5000, "ppm"), given(i, "outdoor"), gas.carbon_dioxide_density(WARM), given(i, "room")
        )
    ),
    "oxygen fraction when CO2 has reached 1.5 % by displacement": lambda i: room_air.oxygen_left(
        given(i, "CO2"), given(i, "O2 normal")
    ),
    "published sublimation in an insulated cooler, lower figure": lambda _: co2("least-box-loss"),
    "published sublimation in an insulated cooler, upper figure": lambda _: co2("greatest-box-loss"),
    "ideal-gas pressure if 100 g sublimes in a sealed 500 mL bottle at 20 C (added to 1 atm)": lambda i: (
        carbon_dioxide.ideal_pressure(given(i, "mass"), given(i, "volume"), WARM)
    ),
}

OTHERS: dict[str, Answer] = {
    "MPE for visible light, 0.25 s": lambda i: light.visible_exposure_limit(given(i, "t")),
    "irradiance of 1 mW through a 7 mm pupil": lambda i: light.irradiance(
        given(i, "power"), given(i, "aperture")
    ),
    "nominal ocular hazard distance": lambda i: light.hazard_distance(
        given(i, "power"), given(i, "beam diameter"), given(i, "divergence"), given(i, "MPE")
    ),
    "beam diameter after 10 m": lambda i: light.beam_diameter_at(
        given(i, "initial"), given(i, "divergence"), given(i, "distance")
    ),
    "daily exposure from 94 dB(A) for 1 h": lambda i: sound.daily_exposure(
        quantity(i["L"]["value"], "dBA"), given(i, "t")
    ),
    "two 80 dB sources together": lambda _: float(sound.sum_of_levels([quantity(80, "dBA")] * 2).m_as("dBA")),
    "lower flammable limit (volume fraction)": lambda i: figure(i, "lower-flammable-limit"),
    "flash point": lambda i: figure(i, "flash-point"),
    "vapour volume from 1 mL of liquid at 20 C (ideal gas)": lambda i: gas.vapour_volume(
        quantity(1, "mL"), given(i, "density"), figure(i, "molar-mass"), WARM
    ),
    "air volume that 10 mL can bring to the LFL": air_to_limit,
    "saturated vapour volume fraction of ethanol at 20 C": lambda _: gas.saturated_fraction(
        substances()["ethanol"].quantity("vapour-pressure")
    ),
    "lower flammable limit of hydrogen": lambda _: substances()["hydrogen"].quantity("lower-flammable-limit"),
    "mass of solid for a solution": lambda i: chemistry.mass_for_solution(
        given(i, "concentration"), given(i, "volume"), chemistry.molar_mass_of(i["solute"])
    ),
    "volume of 36 % w/w hydrochloric acid (1.18 g/mL) for 1.00 L of 1.0 mol/L": lambda i: (
        chemistry.volume_to_dilute(hcl_stock(i), quantity(1, "mol/L"), quantity(1, "L"))
    ),
    "concentration of 20-volume hydrogen peroxide (gas at 0 C, 101.325 kPa)": lambda i: (
        chemistry.peroxide_concentration(bare(i["volume strength"]))
    ),
    "elastic energy in a stretched copper wire": wire_energy,
    "stored energy of compressed air, Brode": lambda i: mechanics.energy_of_compressed_gas(
        given(i, "absolute pressure"), given(i, "volume")
    ),
}

CASES: dict[str, Answer] = {**ELECTRICITY, **GASES, **OTHERS}
