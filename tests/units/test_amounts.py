"""A person's text becomes a quantity by one strict grammar, and nothing else does."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clampstand.units import (
    KINDS,
    NotAnAmount,
    amounts_in,
    is_over,
    is_same,
    is_under,
    q,
    quantity,
    read_amount,
)

GOOD = {
    "100 mm": ("length", 0.1, "m"),
    "0.10 m": ("length", 0.1, "m"),
    "15 000 ppm": ("fraction", 0.015, ""),
    "15\u202f000 ppm": ("fraction", 0.015, ""),
    "-78.5 °C": ("temperature", 194.65, "K"),
    "−78.5 degC": ("temperature", 194.65, "K"),
    "5 µCi": ("activity", 185e3, "Bq"),
    "5 μCi": ("activity", 185e3, "Bq"),
    "5 uCi": ("activity", 185e3, "Bq"),
    "50 MΩ": ("resistance", 50e6, "ohm"),
    "2 per hour": ("air changes", 2 / 3600, "1/s"),
    "900 J/(kg K)": ("specific heat", 900, "J/(kg*K)"),
    "2 mol/dm³": ("concentration", 2000, "mol/m**3"),
    "25 counts/min": ("count rate", 25 / 60, "count/s"),
}


@pytest.mark.parametrize("text", list(GOOD))
def test_ordinary_writing_is_read_as_meant(text):
    kind, size, unit = GOOD[text]
    amount = read_amount(text, kind)
    assert amount.kind == kind
    assert amount.value.m_as(unit) == pytest.approx(size, rel=1e-12)
    assert str(amount) == text


REFUSED = {
    "2": "no unit",
    "1,5 m": "comma",
    "9**9**9 m": "not a quantity",
    "1e999999 m": "not a quantity",
    "1e400 m": "out of any range",
    "nan m": "not a quantity",
    "inf m": "not a quantity",
    "5 KBq": "not a unit",
    "__import__('os').system('true')": "not a quantity",
    "5 m 5 m": "not a quantity",
    "--5 m": "not a quantity",
    "1 5 m": "not a quantity",
    "0x10 m": "not a quantity",
    "": "not a quantity",
    "m": "not a quantity",
    "9" * 10_000_000: "too long",
    "(" * 10_000: "too long",
    "40 mm to 30 mm": "backwards",
    "5 mm ± -1 mm": "below zero",
    "٣ m": "not a quantity",
}


@pytest.mark.parametrize("text", list(REFUSED), ids=lambda text: text[:24])
def test_anything_else_is_refused_at_once_with_words(text):
    began = time.process_time()
    with pytest.raises(NotAnAmount, match=REFUSED[text]) as refusal:
        read_amount(text)
    assert refusal.value.mend
    assert time.process_time() - began < 1


@given(st.text(max_size=80))
def test_no_text_does_harm(text):
    try:
        amount = read_amount(text)
    except NotAnAmount:
        return  # refused in words, which is all that is asked of it
    assert amount.low <= amount.high


def test_only_slips_of_capitals_are_guessed_at():
    with pytest.raises(NotAnAmount) as refusal:
        read_amount("5 KBq", "activity")
    assert refusal.value.mend == "did you mean kBq?"
    with pytest.raises(NotAnAmount) as refusal:
        read_amount("5 metres", "length")
    assert "did you mean" not in refusal.value.mend
    assert "like 100 mm" in refusal.value.mend


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("5 kHz", "activity"),
        ("1 mSv", "absorbed dose"),
        ("1 mGy", "dose"),
        ("5 mSv/h", "dose"),
        ("3 counts/s", "activity"),
        ("33 °C", "temperature difference"),
        ("5 mA", "voltage"),
        ("2 m", "time"),
    ],
)
def test_unlike_kinds_never_stand_in_for_each_other(text, kind):
    with pytest.raises(NotAnAmount, match="and this is a"):
        read_amount(text, kind)


@pytest.mark.parametrize(("one", "other"), [("5 kBq", "5 kHz"), ("1 Sv", "1 Gy"), ("1 counts/s", "1 Bq")])
def test_the_registry_keeps_like_with_like(one, other):
    assert q(one) != q(other)
    assert not q(one).is_compatible_with(q(other))


def test_ranges_and_tolerances():
    wide = read_amount("30 mm to 40 mm")
    assert (wide.low, wide.high, wide.is_single) == (q("30 mm"), q("40 mm"), False)
    assert read_amount("30 to 40 mm") == wide
    tolerance = read_amount("4.5 kV ± 5 %")
    assert is_same(tolerance.low, q("4.275 kV"))
    assert is_same(tolerance.high, q("4725 V"))
    assert tolerance.value == q("4.5 kV")
    assert read_amount("20 °C ± 2 K").high.m_as("K") == pytest.approx(295.15)


def test_a_boundary_is_neither_over_nor_under():
    assert not is_over(q("0.1 m") + q("0.2 m"), q("0.3 m"))
    assert not is_under(q("100 mm"), q("0.10 m"))
    assert is_under(q("99 mm"), q("0.10 m"))
    assert is_same(q("5 µCi"), q("185 kBq"))


def test_quantities_are_found_in_prose():
    prose = "Hold it at 100 mm for 20 min, then raise to 4.5 kV; see page 12 and drawer P08."
    assert [amount.written for _, amount in amounts_in(prose)] == ["100 mm", "20 min", "4.5 kV"]


# SI brochure, 9th edition, tables 2 to 8; NIST SP 811 (2008), appendix B.8. Each pair is equal by definition.
DEFINED = {
    "1 min": "60 s",
    "1 h": "3600 s",
    "1 day": "86400 s",
    "1 L": "1000 cm³",
    "1 bar": "100 kPa",
    "1 Ci": "37 GBq",
    "1 rem": "10 mSv",
    "1 in": "25.4 mm",
    "1 ft": "304.8 mm",
    "1 lb": "453.59237 g",
    "1 kWh": "3.6 MJ",
    "1 mol/dm³": "1000 mol/m³",
    "10 000 ppm": "1 %",
}


@pytest.mark.parametrize("text", list(DEFINED))
def test_defined_conversions(text):
    assert is_same(q(text), q(DEFINED[text]))


def test_constants_of_conversion_agree_with_codata():
    constants = pytest.importorskip("scipy.constants", reason="CODATA 2022 as published with SciPy")
    assert quantity(1, "eV").m_as("J") == constants.value("electron volt-joule relationship")
    assert quantity(180, "deg").m_as("radian") == pytest.approx(constants.pi, rel=1e-15)
    assert quantity(1, "lb").m_as("kg") == pytest.approx(constants.lb, rel=1e-15)
    assert quantity(1, "in").m_as("m") == pytest.approx(constants.inch, rel=1e-15)
    assert q("0 °C").m_as("K") == constants.zero_Celsius
    assert q("100 °F").m_as("K") == pytest.approx(constants.convert_temperature(100, "F", "K"), rel=1e-12)
    assert quantity(1, "year").m_as("day") == constants.Julian_year / constants.day


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_kind_reads_its_own_example(kind):
    assert read_amount(KINDS[kind].example, kind).value.is_compatible_with(quantity(1, KINDS[kind].coherent))
