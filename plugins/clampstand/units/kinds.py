"""What kinds of quantity a definition may ask for, and the closed table of units each may be written in."""

from dataclasses import dataclass
from functools import cache

from clampstand.units.registry import Unit, unit


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of quantity.

    Args:
        name: as a person would say it ("dose rate").
        coherent: the unit formulae work in, as a pint expression.
        example: how to write one.
        written: spelling → pint expression, one spelling a unit that may be used.
    """

    name: str
    coherent: str
    example: str
    written: dict[str, str]


def _scaled(symbol: str, pint_symbol: str, prefixes: str) -> dict[str, str]:
    """Spellings of one symbol with metric prefixes; a dot stands for no prefix and u for micro."""
    table: dict[str, str] = {}
    for prefix in prefixes:
        if prefix == ".":
            table[symbol] = pint_symbol
        elif prefix == "u":
            for spelling in ("µ", "μ", "u"):  # micro sign, Greek mu, typewriter
                table[spelling + symbol] = "u" + pint_symbol
        else:
            table[prefix + symbol] = prefix + pint_symbol
    return table


def _over(table: dict[str, str], divisors: dict[str, str]) -> dict[str, str]:
    """Every unit of a table divided by every divisor: ``µSv`` over ``h`` gives ``µSv/h``."""
    return {f"{a}/{b}": f"({x}) / ({y})" for a, x in table.items() for b, y in divisors.items()}


_LENGTH = {**_scaled("m", "m", "num.ck"), "in": "in", "ft": "ft"}
_AREA = {"mm²": "mm**2", "mm2": "mm**2", "cm²": "cm**2", "cm2": "cm**2", "m²": "m**2", "m2": "m**2"}
_VOLUME = {
    **_scaled("L", "L", "um.c"),
    **_scaled("l", "L", "um.c"),
    **{f"{p}m{e}": f"{p}m**3" for p in ("m", "c", "d", "") for e in ("³", "3")},
}
_MASS = {**_scaled("g", "g", "num.k"), "lb": "lb"}
_SHORT_TIME = {**_scaled("s", "s", "num."), "min": "min", "h": "h"}
_LONG_TIME = {"day": "day", "days": "day", "week": "week", "weeks": "week", "year": "year", "years": "year"}
_ENERGY = {**_scaled("J", "J", "um.kM"), **_scaled("eV", "eV", ".kM"), "kWh": "kWh"}
_AMOUNT = _scaled("mol", "mol", "m.")
_RESISTANCE = {**_scaled("Ω", "ohm", "m.kMGT"), **_scaled("ohm", "ohm", "m.kMGT")}
_VOLTAGE = _scaled("V", "V", "um.kM")
_ACTIVITY = {**_scaled("Bq", "Bq", "m.kMG"), **_scaled("Ci", "Ci", "pnum.")}
_GRAY = _scaled("Gy", "Gy", "num.")
_SIEVERT = {**_scaled("Sv", "Sv", "pnum."), "mrem": "mrem", "rem": "rem"}
_PER_TIME = {"s": "s", "min": "min", "h": "h", "day": "day", "year": "year"}
_LITRE = {"L": "L", "l": "L", "dm³": "L", "dm3": "L", "mL": "mL", "cm³": "mL", "cm3": "mL", "m³": "m**3"}
_COUNT = {"count": "count", "counts": "count"}

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("length", "m", "100 mm", _LENGTH),
        Kind("area", "m**2", "4 cm²", _AREA),
        Kind("volume", "m**3", "50 mL", _VOLUME),
        Kind("mass", "kg", "0.4 kg", _MASS),
        Kind("time", "s", "10 min", {**_SHORT_TIME, **_LONG_TIME}),
        Kind("activity", "Bq", "185 kBq", _ACTIVITY),
        Kind("activity per mass", "Bq/kg", "16.6 Bq/g", _over(_ACTIVITY, {"g": "g", "kg": "kg"})),
        Kind("activity concentration", "Bq/m**3", "11 Bq/m³", _over(_ACTIVITY, {"m³": "m**3", "L": "L"})),
        Kind("absorbed dose", "Gy", "5 µGy", _GRAY),
        Kind("absorbed dose rate", "Gy/s", "1.4 µGy/h", _over(_GRAY, _PER_TIME)),
        Kind("dose", "Sv", "5 µSv", _SIEVERT),
        Kind("skin dose", "Sv", "50 mSv", _SIEVERT),
        Kind("dose rate", "Sv/s", "1 µSv/h", _over(_SIEVERT, _PER_TIME)),
        Kind("counts", "count", "400 counts", _COUNT),
        Kind("count rate", "count/s", "25 counts/min", _over(_COUNT, {"s": "s", "min": "min"})),
        Kind("voltage", "V", "4.5 kV", _VOLTAGE),
        Kind("current", "A", "5 mA", _scaled("A", "A", "fpnum.")),
        Kind("resistance", "ohm", "50 MΩ", _RESISTANCE),
        Kind("resistance per length", "ohm/m", "6.3 Ω/m", _over(_RESISTANCE, {"m": "m"})),
        Kind("resistivity", "ohm*m", "4.9e-7 Ω m", {"Ω m": "ohm*m", "ohm m": "ohm*m"}),
        Kind("capacitance", "F", "9 nF", _scaled("F", "F", "pnum.")),
        Kind("charge", "C", "45 µC", _scaled("C", "C", "pnum.")),
        Kind("field strength", "V/m", "3 MV/m", _over(_VOLTAGE, {"m": "m", "cm": "cm", "mm": "mm"})),
        Kind("magnetic flux density", "T", "2 mT", _scaled("T", "T", "um.")),
        Kind("specific charge", "C/kg", "1.76e11 C/kg", {"C/kg": "C/kg"}),
        Kind("energy", "J", "350 mJ", _ENERGY),
        Kind("power", "W", "50 W", _scaled("W", "W", "um.k")),
        Kind("irradiance", "W/m**2", "25.5 W/m²", {"W/m²": "W/m**2", "mW/cm²": "mW/cm**2"}),
        Kind("pressure", "Pa", "57.3 bar", {**_scaled("Pa", "Pa", ".kM"), "bar": "bar", "mbar": "mbar"}),
        Kind(
            "temperature",
            "K",
            "-78.5 °C",
            {"°C": "degC", "degC": "degC", "°F": "degF", "degF": "degF", "K": "K"},
        ),
        Kind("temperature difference", "K", "33 K", {"K": "K"}),
        Kind("frequency", "Hz", "50 Hz", _scaled("Hz", "Hz", ".kM")),
        Kind("air changes", "1/s", "2 per hour", {"per hour": "1/h", "/h": "1/h", "1/h": "1/h"}),
        Kind("fraction", "", "5000 ppm", {"ppm": "ppm", "%": "percent"}),
        Kind("angle", "radian", "45 deg", {"deg": "deg", "°": "deg", "rad": "radian", "mrad": "mradian"}),
        Kind("mass rate", "kg/s", "0.5 kg/h", _over(_MASS, _PER_TIME)),
        Kind("volume rate", "m**3/s", "0.018 m³/h", _over(_VOLUME, _PER_TIME)),
        Kind("density", "kg/m**3", "0.79 g/mL", _over(_MASS, _LITRE)),
        Kind("concentration", "mol/m**3", "2 mol/dm³", _over(_AMOUNT, _LITRE)),
        Kind("amount", "mol", "0.05 mol", _AMOUNT),
        Kind("molar mass", "kg/mol", "44.01 g/mol", {"g/mol": "g/mol"}),
        Kind("specific heat", "J/(kg*K)", "900 J/(kg K)", {"J/(kg K)": "J/(kg*K)"}),
        Kind("specific energy", "J/kg", "571 kJ/kg", _over(_ENERGY, {"kg": "kg", "g": "g"})),
        Kind("mass attenuation", "m**2/kg", "0.11 cm²/g", {"cm²/g": "cm**2/g", "m²/kg": "m**2/kg"}),
        Kind("force", "N", "20 N", _scaled("N", "N", "m.k")),
        Kind("speed", "m/s", "0.5 m/s", _over(_LENGTH, {"s": "s"})),
        Kind("sound level", "dBA", "85 dB(A)", {"dB(A)": "dBA"}),
    )
}

KINDS_BY_SPELLING: dict[str, tuple[str, ...]] = {}
for _kind in KINDS.values():
    for _spelling in _kind.written:
        KINDS_BY_SPELLING[_spelling] = (*KINDS_BY_SPELLING.get(_spelling, ()), _kind.name)


@cache
def unit_written(spelling: str, kind: str) -> Unit:
    """The unit meant by a spelling of the table. Raises KeyError for any other text."""
    return unit(KINDS[kind].written[spelling])
