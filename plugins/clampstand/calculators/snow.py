"""Making dry ice: the most snow a dip-tube cylinder can give, and the gas let off meanwhile."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.model.substance import Substance
from clampstand.physics.dry_ice import gas_vented, snow_fraction
from clampstand.units import Amount, OutOfRange, Quantity, digits, joined, number_in, shown_best

SUBSTANCE = "carbon-dioxide"


def snow_yield(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Greatest snow fraction and the gas vented for a mass of snow: ``given: {temperature: …, mass: …}``."""
    temperature, mass = number_given(practical, given, "temperature"), number_given(practical, given, "mass")
    carbon_dioxide = book.substances.get(SUBSTANCE)
    if carbon_dioxide is None:
        raise CannotWork(f"the reference figures have no {SUBSTANCE}")
    _there_is_liquid(carbon_dioxide, temperature)
    fraction = _fraction(carbon_dioxide, temperature.high)
    gas = gas_vented(mass.high, fraction)
    most = joined(digits(number_in(fraction, "percent"), 2, "down"), "%")
    inputs = (
        written("temperature of the liquid", temperature, f"practical, {given['temperature']}"),
        _table_input(carbon_dioxide),
        _figure_input("enthalpy of the gas, h_g", carbon_dioxide, "gas-enthalpy-at-sublimation"),
        _figure_input("enthalpy of sublimation, Δh", carbon_dioxide, "sublimation-enthalpy"),
    )
    return (
        Worked(
            id="snow-yield/fraction",
            title=f"Most of the liquid at {temperature} that can become snow",
            value=fraction,
            kind="fraction",
            shown=most,
            formula=snow_fraction.written,
            inputs=inputs,
            within="never more; 10 % to 25 % is usual",
            note="What the energy balance allows when no snow is blown away and no heat comes in.",
        ),
        Worked(
            id="snow-yield/gas",
            title=f"Gas let off, at the least, for {mass} of snow from liquid at {temperature}",
            value=gas,
            kind="mass",
            shown=shown_best(gas, "mass", 2, "up"),
            formula=gas_vented.written,
            inputs=(
                *inputs,
                Input("most that can become snow, w", most, "worked out"),
                Input("share of it that is caught, c", "all", "for the least gas there can be"),
                written("mass of snow, m", mass, f"practical, {given['mass']}"),
            ),
            within="at the least; twice as much is usual",
            note="It comes at once, and not the snow but this gas decides where the work may be done.",
        ),
    )


def _there_is_liquid(carbon_dioxide: Substance, temperature: Amount) -> None:
    """On a day so warm a cylinder holds no liquid, and no snow comes out of it. Raises CannotWork then."""
    critical = carbon_dioxide.figures.get("critical-temperature")
    if critical is not None and temperature.high >= critical.value.value:
        highest = f"{number_in(critical.value.value, 'degC'):.1f} °C"
        raise CannotWork(
            f"at {temperature} a cylinder holds no liquid to make snow from: the most is {highest}"
        )


def _fraction(carbon_dioxide: Substance, temperature: Quantity) -> Quantity:
    try:
        liquid = carbon_dioxide.curve("liquid-enthalpy").at(temperature)
    except OutOfRange:
        raise CannotWork("the table of liquid carbon dioxide does not reach this temperature") from None
    figures = ("gas-enthalpy-at-sublimation", "sublimation-enthalpy")
    return snow_fraction(liquid, *(carbon_dioxide.quantity(name) for name in figures))


def _figure_input(name: str, substance: Substance, figure_name: str) -> Input:
    figure = substance.figures[figure_name]
    return written(name, figure.value, figure.condition or "reference figures", figure.citation)


def _table_input(substance: Substance) -> Input:
    table = substance.tables["liquid-enthalpy"]
    return Input("enthalpy of the liquid, h", "table", table.condition or "reference figures", table.citation)
