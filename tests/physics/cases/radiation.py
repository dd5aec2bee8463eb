"""Which formula answers each reference case on radioactivity, dose, absorption, ranges, ions and counting."""

import re
from collections.abc import Callable
from typing import Any

from clampstand.model.nuclide import Emission, chain_from
from clampstand.physics import (
    attenuation,
    chains,
    counting,
    decay,
    detection,
    dose,
    dose_rules,
    fits,
    ionisation,
    ranges,
)
from clampstand.units import Curve, Quantity, quantity
from physics.reference import curve, materials, nuclides

Inputs = dict[str, Any]
Answer = Callable[[Inputs], Quantity | float | str]

ONE_COUNT = quantity(1, "count")
A_SQUARE_METRE = quantity(1, "decay/m**2")
"""A constant is Gy m²/decay; times this it is a kerma, which can be turned into an exposure."""

MATERIAL = {
    "Pb": "lead",
    "Fe": "iron",
    "Al": "aluminium",
    "H2O": "water",
    "Cu": "copper",
    "PMMA": "acrylic",
    "air": "dry-air",
    "water": "water",
    "water/tissue": "water",
}


def given(inputs: Inputs, name: str, unit: str | None = None) -> Quantity:
    """An input of a case as a quantity; with a unit, a count that the case calls a pure number."""
    entry = inputs[name]
    if not isinstance(entry, dict):
        return quantity(entry, unit or "")
    return quantity(entry["value"], unit or unit_of(entry["unit"]))


def unit_of(written: str) -> str:
    """The registry's expression for a unit as the cases write it."""
    if written in ("1", "text", "n/a"):
        return ""
    words = re.sub(r"\b([cm]?m)([23])\b", r"\1**\2", written.replace("dm3", "dm**3"))
    words = words.replace("(24 h)", "day").replace("dB(A)", "dBA").replace("counts", "count")
    words = {"%": "percent", "dB": "dBA", "rad/(h Ci) at 1 ft": "rad_dose*ft**2/(Ci*h)"}.get(words, words)
    return re.sub(r"(?<=[\w)]) (?=[\w(])", "*", words)


def pure(counted: Quantity) -> Quantity:
    """A result in counts, where the case has a pure number."""
    return counted / ONE_COUNT


# Radioactivity and emissions


def half_life(inputs: Inputs, key: str = "nuclide") -> Quantity:
    return nuclides()[inputs[key]].half_life.value.value


def activity_later(inputs: Inputs) -> Quantity:
    return decay.activity_after(
        given(inputs, "activity_at_reference"), half_life(inputs), given(inputs, "elapsed")
    )


def chain_member(inputs: Inputs) -> Quantity:
    start = {name: quantity(value, "Bq") for name, value in inputs["initial_activity_Bq"].items()}
    members = {m.name: m for parent in start for m in chain_from(nuclides(), parent)}
    return chains.chain_activities(members.values(), start, given(inputs, "elapsed"))[inputs["of"]]


def on_collector(fed: Quantity, collection: Quantity, wait: Quantity) -> dict[str, Quantity]:
    members = chain_from(nuclides(), "Po-218")
    return chains.activities_on_collector(members, {"Po-218": fed}, collection, wait)


def collected(inputs: Inputs) -> Quantity:
    fed = given(inputs, "Po-218 atoms deposited")
    return on_collector(fed, given(inputs, "collection"), given(inputs, "wait"))[inputs["of"]]


def apparent_half_life(inputs: Inputs) -> Quantity:
    start, end = given(inputs, "t1"), given(inputs, "t2")
    at = [on_collector(quantity(100, "1/s"), given(inputs, "collection"), t) for t in (start, end)]
    first, second = (activities["Pb-214"] + activities["Bi-214"] for activities in at)
    return decay.half_life_from_two(first, second, end - start)


def line(kind: str, inputs: Inputs) -> Emission:
    wanted = quantity(inputs["line_keV"], "keV") if "line_keV" in inputs else None
    if wanted is None:
        number, unit = inputs["line"].split()
        wanted = quantity(float(number), unit)
    lines = nuclides()[inputs["nuclide"]].emitted(kind)
    return min(lines, key=lambda emission: abs(emission.energy - wanted))


def main_beta(inputs: Inputs) -> Emission:
    branch = nuclides()[inputs["nuclide"]].strongest("beta")
    assert branch is not None
    return branch


def caesium_photons(_: Inputs) -> Quantity:
    shares = chains.equilibrium_shares(chain_from(nuclides(), "Cs-137"), "Cs-137")
    barium = line("gamma", {"nuclide": "Ba-137m", "line_keV": 661.66})
    return shares["Ba-137m"] * barium.per_decay * quantity(1, "decay")


def potassium_chloride(_: Inputs) -> Quantity:
    salt = materials()["potassium-chloride"]
    return decay.activity_per_mass_of_compound(
        half_life({"nuclide": "K-40"}),
        salt.quantity("abundance-of-K-40"),
        quantity(1, ""),
        salt.quantity("molar-mass"),
    )


RADIOACTIVITY: dict[str, Answer] = {
    "half-life": half_life,
    "branching fraction": lambda i: nuclides()[i["parent"]].progeny[i["progeny"]],
    "decay constant": lambda i: decay.decay_constant(half_life(i)),
    "mean life": lambda i: decay.mean_life(half_life(i)),
    "decay-corrected activity": activity_later,
    "specific activity": lambda i: decay.specific_activity(
        half_life(i), nuclides()[i["nuclide"]].molar_mass.value
    ),
    "mass of radionuclide for an activity": lambda i: decay.mass_for_activity(
        given(i, "activity"), half_life(i), nuclides()[i["nuclide"]].molar_mass.value
    ),
    "K-40 activity concentration of pure potassium chloride": potassium_chloride,
    "activity of chain member (Bateman)": chain_member,
    "time of maximum daughter activity from pure parent": lambda i: decay.time_of_greatest_daughter(
        half_life(i, "parent"), half_life(i, "daughter")
    ),
    "transient-equilibrium activity ratio daughter/parent (single branch)": lambda i: (
        decay.transient_equilibrium_ratio(half_life(i, "parent"), half_life(i, "daughter"))
    ),
    "activity on a charged collector after collecting Rn-222 progeny": collected,
    "apparent half-life of (Pb-214+Bi-214) beta count between two times": apparent_half_life,
    "alpha line energy": lambda i: line("alpha", i).energy,
    "alpha emission probability per decay": lambda i: line("alpha", i).per_decay * quantity(1, "decay"),
    "gamma line energy": lambda i: line("gamma", i).energy,
    "gamma emission probability per decay": lambda i: line("gamma", i).per_decay * quantity(1, "decay"),
    "662 keV photons per Cs-137 decay (equilibrium)": caesium_photons,
    "principal beta endpoint energy": lambda i: main_beta(i).energy,
    "mean energy of principal beta branch": lambda i: main_beta(i).mean,
}


# Dose


def constant(rate_constant: Callable[..., Quantity], table: str, source: str, cutoff: Quantity) -> Quantity:
    """A constant of a source in equilibrium with its progeny, per decay of the parent."""
    parent = re.split(r"[ +]", source)[0]
    members = chain_from(nuclides(), parent)
    total = rate_constant((), curve(table), cutoff)
    for name, share in chains.equilibrium_shares(members, parent).items():
        total = total + share * rate_constant(nuclides()[name].photons, curve(table), cutoff)
    return total


def kerma_constant(inputs: Inputs) -> Quantity:
    return constant(
        dose.air_kerma_rate_constant,
        "dry-air.energy-absorption",
        inputs["source"],
        given(inputs, "photon_energy_cutoff"),
    )


def ambient_constant(inputs: Inputs) -> Quantity:
    cutoff = (
        given(inputs, "photon_energy_cutoff") if "photon_energy_cutoff" in inputs else quantity(20, "keV")
    )
    return constant(dose.ambient_dose_rate_constant, "ambient-dose.per-fluence", inputs["source"], cutoff)


def w_over_e() -> Quantity:
    return materials()["dry-air"].quantity("energy-per-ion-pair-by-electrons") / ionisation.ELEMENTARY_CHARGE


def exposure_constant(inputs: Inputs) -> Quantity:
    kerma = kerma_constant(inputs) * A_SQUARE_METRE
    return dose.exposure_from_air_kerma(kerma, w_over_e()) / A_SQUARE_METRE


BACKGROUND = "natural-background"

DOSE: dict[str, Answer] = {
    "air-kerma rate constant": kerma_constant,
    "ambient dose-equivalent rate constant H*(10)": ambient_constant,
    "exposure rate constant (published table)": exposure_constant,
    "air kerma corresponding to 1 R": lambda i: dose.air_kerma_from_exposure(
        given(i, "exposure"), w_over_e()
    ),
    "H*(10) rate from unshielded point source in vacuum (>=20 keV photons)": lambda i: dose.ambient_dose_rate(
        ambient_constant(i), given(i, "activity"), given(i, "distance")
    ),
    "inverse-square ratio": lambda i: dose.rate_ratio(given(i, "d1"), given(i, "d2")),
    "dose-rate reduction from 1 cm (fingers) to 10 cm (forceps)": lambda i: dose.rate_ratio(
        given(i, "d1"), given(i, "d2")
    ),
    "6CEN exposure-rate rule at 1 ft": lambda i: dose_rules.exposure_rate_by_six_cen(
        given(i, "activity"), given(i, "E"), given(i, "photons per decay", "1/decay")
    ),
    "beta dose rate at 1 ft by rule 300 rad/h per Ci": lambda i: dose_rules.beta_dose_rate_by_rule(
        given(i, "activity")
    ),
    "activity giving 1 uSv/h at 0.1 m": lambda i: dose.activity_for_rate(
        given(i, "constant"), quantity(0.1, "m"), quantity(1, "uSv/h")
    ),
    "distance at which the rate falls to 1 uSv/h": lambda i: dose.distance_for_rate(
        given(i, "constant"), given(i, "activity"), quantity(1, "uSv/h")
    ),
    "effective dose to a demonstrator": lambda i: dose.dose(
        given(i, "rate at 30 cm"), given(i, "time per year")
    ),
    "world average natural background effective dose": lambda _: materials()["surroundings"].quantity(
        BACKGROUND
    ),
    "UK average annual dose from all sources (2005 review)": lambda _: materials()["surroundings"].quantity(
        "all-sources"
    ),
    "hourly equivalent of 2.4 mSv/year": lambda _: materials()["surroundings"].quantity(BACKGROUND),
    "1 foot in metres": lambda _: dose_rules.ONE_FOOT,
}


# Absorption, ranges, ions


def coefficient(inputs: Inputs, table: str = "attenuation") -> Quantity:
    return curve(f"{MATERIAL[inputs['material']]}.{table}").at(given(inputs, "photon_energy"))


def density(inputs: Inputs) -> Quantity:
    return materials()[MATERIAL[inputs["material"]]].quantity("density")


def cobalt_in_lead(_: Inputs) -> Quantity:
    lines = nuclides()["Co-60"].photons
    absorption: Curve = curve("dry-air.energy-absorption")
    weights = [dose.kerma_constant_of_line(energy, part, absorption.at(energy)) for energy, part in lines]
    coefficients = [curve("lead.attenuation").at(energy) for energy, _ in lines]
    return attenuation.thickness_for_mixture(
        weights, coefficients, density({"material": "Pb"}), quantity(0.5, "")
    )


def alpha_air_range(inputs: Inputs) -> Quantity:
    air = materials()["dry-air"].quantity("density")
    return ranges.particle_range(given(inputs, "alpha_energy"), curve("dry-air.alpha-range"), air)


def electron_range(inputs: Inputs) -> Quantity:
    table = curve(f"{MATERIAL[inputs['material']]}.electron-range")
    return ranges.particle_range(given(inputs, "energy"), table, density(inputs))


def alpha_pair_energy(_: Inputs) -> Quantity:
    return materials()["dry-air"].quantity("energy-per-ion-pair-by-alphas")


def alpha_current(inputs: Inputs) -> Quantity:
    share = given(inputs, "fraction escaping into air")
    return ionisation.saturation_current(
        given(inputs, "activity"), given(inputs, "alpha_energy"), share, alpha_pair_energy(inputs)
    )


VCALC_A, VCALC_B, VCALC_GAMMA = (
    quantity(112.501, "1/(kPa*cm)"),
    quantity(2737.5, "V/(kPa*cm)"),
    quantity(0.01, ""),
)

MATTER_CROSSED: dict[str, Answer] = {
    "mass attenuation coefficient (total, with coherent)": coefficient,
    "narrow-beam half-value layer (with coherent)": lambda i: attenuation.half_value_thickness(
        coefficient(i), density(i)
    ),
    "half-value layer WITHOUT coherent scattering": lambda i: attenuation.half_value_thickness(
        coefficient(i, "attenuation-without-coherent"), density(i)
    ),
    "lead thickness halving Co-60 air kerma (both lines, narrow beam)": cobalt_in_lead,
    "narrow-beam transmission": lambda i: attenuation.transmission(
        coefficient(i), density(i), given(i, "thickness")
    ),
    "number of half-value layers for a factor 10": lambda i: attenuation.half_values_for(
        given(i, "transmission")
    ),
    "alpha CSDA range in dry air at 20 C, 101.325 kPa": alpha_air_range,
    "alpha CSDA range": lambda i: ranges.particle_range(
        given(i, "alpha_energy"), curve("water.alpha-range"), density(i)
    ),
    "alpha range in air by R = 1.24 E - 2.62": lambda i: ranges.alpha_air_range_by_rule(
        given(i, "alpha_energy")
    ),
    "electron CSDA range": electron_range,
    "beta maximum range by Katz-Penfold (412 E^(1.265-0.0954 lnE); 530E-106 above 2.5 MeV)": lambda i: (
        ranges.beta_greatest_range(given(i, "endpoint"))
    ),
    "beta range in air by 12 ft per MeV": lambda i: ranges.beta_air_range_by_rule(given(i, "endpoint")),
    "W/e of dry air for electrons/photons": lambda _: w_over_e(),
    "W of air for alpha particles about 5 MeV": alpha_pair_energy,
    "ion pairs per alpha fully stopped in air": lambda i: ionisation.ion_pairs(
        given(i, "alpha_energy"), alpha_pair_energy(i)
    ),
    "saturation ionisation current": alpha_current,
    "Paschen minimum voltage for air": lambda _: ionisation.paschen_least_voltage(
        VCALC_A, VCALC_B, VCALC_GAMMA
    ),
    "Paschen-law breakdown voltage": lambda i: ionisation.paschen_voltage(
        given(i, "pressure"), given(i, "gap"), given(i, "A"), given(i, "B"), given(i, "gamma")
    ),
    "uniform-field breakdown of air, V = 24.22 d + 6.08 sqrt(d) kV (d in cm, 20 C, 101.3 kPa)": lambda i: (
        ionisation.breakdown_voltage(given(i, "gap"))
    ),
    "breakdown field of air, order of magnitude": lambda _: materials()["dry-air"].quantity(
        "breakdown-field"
    ),
    "air gap a 5 kV supply can flash over (30 kV/cm, uniform field)": lambda i: ionisation.gap_flashed_over(
        given(i, "voltage"), materials()["dry-air"].quantity("breakdown-field")
    ),
}


# Counting


def four(inputs: Inputs) -> tuple[Quantity, Quantity, Quantity, Quantity]:
    return (
        given(inputs, "gross counts", "count"),
        given(inputs, "gross time"),
        given(inputs, "background counts", "count"),
        given(inputs, "background time"),
    )


def rate(inputs: Inputs, name: str) -> Quantity:
    return given(inputs, name, "count/s")


def dead_time(inputs: Inputs) -> Quantity:
    return counting.true_rate(rate(inputs, "observed"), given(inputs, "dead time"))


def background_of(inputs: Inputs) -> Quantity:
    return given(inputs, "background counts", "count")


def least_activity(inputs: Inputs) -> Quantity:
    return detection.least_detectable_activity(
        detection.detection_limit_paired(background_of(inputs)),
        given(inputs, "efficiency", "count/decay"),
        given(inputs, "counting time"),
    )


def counts_of(inputs: Inputs, name: str) -> list[Quantity]:
    return [quantity(n, "count") for n in inputs[name]]


def decay_of_counts(inputs: Inputs, background: float | None = None) -> fits.Fitted:
    times = [quantity(t, "s") for t in inputs["t_s"]]
    off = inputs["background_counts"] if background is None else background
    return fits.half_life_of_counts(times, counts_of(inputs, "gross_counts"), quantity(off, "count"))


def decay_of_current(inputs: Inputs) -> Quantity:
    times = [quantity(t, "s") for t in inputs["t_s"]]
    currents = [quantity(i, "pA") for i in inputs["I_pA"]]
    return fits.half_life_of_currents(times, currents, given(inputs, "sigma_I")).value


def dispersion(inputs: Inputs) -> Quantity:
    return detection.dispersion(counts_of(inputs, "counts"))


COUNTING: dict[str, Answer] = {
    "relative standard uncertainty of a count": lambda i: counting.count_relative_uncertainty(
        given(i, "counts", "count")
    ),
    "counts needed for 1 % relative standard uncertainty": lambda i: pure(
        counting.counts_needed(given(i, "relative uncertainty"))
    ),
    "net count rate": lambda i: pure(counting.net_rate(*four(i))),
    "standard uncertainty of net rate": lambda i: pure(counting.net_rate_uncertainty(*four(i))),
    "optimum time ratio sample+background : background": lambda i: counting.best_time_ratio(
        rate(i, "gross rate"), rate(i, "background rate")
    ),
    "time to spend on the sample": lambda i: counting.best_time_on_source(
        given(i, "total time"), rate(i, "gross rate"), rate(i, "background rate")
    ),
    "true rate, non-paralysable dead time": lambda i: pure(dead_time(i)),
    "Currie critical level, paired blank, 5 % false positive": lambda i: detection.decision_limit_paired(
        background_of(i)
    ),
    "Currie detection limit, paired blank": lambda i: detection.detection_limit_paired(background_of(i)),
    "Currie detection limit, well-known background": lambda i: detection.detection_limit_known(
        background_of(i)
    ),
    "minimum detectable activity": least_activity,
    "minimum detectable activity of a leak-test wipe": least_activity,
    "95 % one-sided upper limit for zero observed counts": lambda i: detection.upper_limit(
        given(i, "counts", "count"), quantity(95, "percent")
    ),
    "Poisson dispersion chi-square": dispersion,
    "p-value of dispersion test (9 d.o.f.)": lambda i: detection.chance_of_more(dispersion(i), 9),
    "half-life from weighted straight-line fit to ln(net)": lambda i: decay_of_counts(i).value,
    "standard uncertainty of that half-life": lambda i: decay_of_counts(i).uncertainty,
    "WRONG half-life if background is not subtracted": lambda i: decay_of_counts(i, 0).value,
    "half-life from ionisation-current decay, constant absolute uncertainty": decay_of_current,
}

CASES: dict[str, Answer] = {**RADIOACTIVITY, **DOSE, **MATTER_CROSSED, **COUNTING}

LIMIT = "a limit of content/limits, tested where limits are"
HABIT = "a figure about people's habits, not a formula"
ELSEWHERE: dict[str, str] = {
    "public effective dose limit": LIMIT,
    "trainee under 18 effective dose limit": LIMIT,
    "adult worker effective dose limit": LIMIT,
    "adult worker skin/extremity equivalent dose limit": LIMIT,
    "public/trainee lens of eye limit": LIMIT,
    "exemption activity (total)": LIMIT,
    "multiple of exemption activity": LIMIT,
    "leak-test action level, US": LIMIT,
    "leak-test acceptance, ISO 9978 wipe": LIMIT,
    "maximum leak-test interval, US sealed sources": LIMIT,
    "lower age for a trainee with the 6 mSv limit": LIMIT,
    "no occupational work with ionising radiation below this age": LIMIT,
    "dose-rate criterion 0.1 m from surface (exempt apparatus; natural radioactive teaching materials"
    " in Germany)": LIMIT,
    "hand-to-source distance achieved with foot-long forceps": HABIT,
}
"""Quantities of these topics that no formula gives, and why."""
