"""The pressure over a liquid in a closed vessel: what a cylinder shows as long as any liquid is left."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.units import OutOfRange, shown

TABLE = "saturation-pressure"


def saturation_pressure(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Saturation pressure at a declared temperature: ``given: {substance: …, temperature: …}``.

    From the substance's published table, a straight line between its rows.
    """
    substance = book.substances.get(given.get("substance", ""))
    if substance is None or TABLE not in substance.tables:
        raise CannotWork(f"there is no {TABLE} of {given.get('substance', 'a substance')} in the figures")
    temperature = number_given(practical, given, "temperature")
    table = substance.tables[TABLE]
    try:
        value = substance.curve(TABLE).at(temperature.value)
    except OutOfRange:
        raise CannotWork(f"the table of {substance.name} does not reach {temperature}") from None
    return (
        Worked(
            id=f"saturation-pressure/{substance.id}/{temperature}",
            title=f"Pressure over liquid {substance.name[:1].lower()}{substance.name[1:]} at {temperature}",
            value=value,
            kind="pressure",
            shown=shown(value, "bar", "pressure", 3, "up"),
            formula="p = p(T)",
            inputs=(
                written("temperature of the liquid, T", temperature, f"practical, {given['temperature']}"),
                Input("saturation pressure, p(T)", "table", table.condition or "reference", table.citation),
            ),
            within="1 % as long as any liquid is left",
            note="It does not tell how much is left.",
        ),
    )
