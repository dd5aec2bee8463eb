"""Amounts of substance: molar mass from a formula, solutions and their dilution, gases, electrolysis.

Atomic masses: IUPAC abridged standard atomic weights, Prohaska and others, Pure Appl. Chem. 94 (2022) 573,
for the elements a school meets (taken from the package periodictable 2.1.0).
"""

import re
from collections import Counter
from collections.abc import Mapping

from clampstand.units import OutOfRange, Quantity, Takes, formula, number_in, quantity

GAS_CONSTANT = quantity(8.31446261815324, "J/(mol*K)")
FARADAY = quantity(96485.33212331001, "C/mol")
ATMOSPHERE = quantity(101325, "Pa")
MOLAR_VOLUME_AT_0_DEGREES = quantity(22.41396954e-3, "m**3/mol")

_ATOMIC_MASSES = """
H 1.008 He 4.002602 Li 6.94 Be 9.0121831 B 10.81 C 12.011 N 14.007 O 15.999 F 18.998403162 Ne 20.1797
Na 22.98976928 Mg 24.305 Al 26.9815384 Si 28.085 P 30.973761998 S 32.06 Cl 35.45 Ar 39.95 K 39.0983
Ca 40.078 Ti 47.867 V 50.9415 Cr 51.9961 Mn 54.938043 Fe 55.845 Co 58.933194 Ni 58.6934 Cu 63.546 Zn 65.38
Ga 69.723 Ge 72.63 As 74.921595 Se 78.971 Br 79.904 Kr 83.798 Rb 85.4678 Sr 87.62 Y 88.905838 Zr 91.224
Mo 95.95 Ag 107.8682 Cd 112.414 In 114.818 Sn 118.71 Sb 121.76 Te 127.6 I 126.90447 Xe 131.293
Cs 132.90545196 Ba 137.327 La 138.90547 Ce 140.116 W 183.84 Pt 195.084 Au 196.96657 Hg 200.592 Tl 204.38
Pb 207.2 Bi 208.9804 Th 232.0377 U 238.02891
"""
ATOMIC_MASSES = {element: float(mass) for element, mass in re.findall(r"(\S+) (\S+)", _ATOMIC_MASSES)}
"""Atomic mass by element, in g/mol."""

_LONGEST_FORMULA = 60
_DEEPEST = 3
_TOKEN = re.compile(r"([A-Z][a-z]?|[()])([1-9][0-9]{0,2})?")
_PART = re.compile(r"([1-9][0-9]?)?([A-Z(][A-Za-z0-9()]*)")

_AMOUNT = Takes("mol", at_least=0)
_MOLAR_MASS = Takes("kg/mol", more_than=0)
_CONCENTRATION = Takes("mol/m**3", at_least=0)
_STOCK = Takes("mol/m**3", more_than=0)
_VOLUME = Takes("m**3", at_least=0)
_SHARE = Takes("", more_than=0, at_most=1)


class NotAFormula(ValueError):
    """The text is not the formula of a substance."""


def atoms_in(text: str) -> Counter[str]:
    """How many atoms of each element a formula holds; water of crystallisation follows a dot.

    Counts are whole; brackets may nest three deep. No charges, isotopes or unknown numbers of water.

    Raises:
        NotAFormula: for anything else, at once, whatever the length of the text.

    >>> sorted(atoms_in("CuSO4·5H2O").items())
    [('Cu', 1), ('H', 10), ('O', 9), ('S', 1)]
    """
    if len(text) > _LONGEST_FORMULA:
        raise NotAFormula(f"a formula of {len(text)} characters is too long")
    atoms: Counter[str] = Counter()
    for part in re.split("[·.]", text.strip()):
        match = _PART.fullmatch(part)
        if match is None:
            raise NotAFormula(f"{text} is not a formula such as Ca(OH)2 or CuSO4·5H2O")
        for element, count in _atoms_of_part(match[2]).items():
            atoms[element] += count * int(match[1] or 1)
    return atoms


def _atoms_of_part(part: str) -> Counter[str]:
    """Atoms of a formula without dots, by a stack of open brackets."""
    stack: list[Counter[str]] = [Counter()]
    position = 0
    while position < len(part):
        match = _TOKEN.match(part, position)
        if match is None or (match[1] == "(" and match[2]):
            raise NotAFormula(f"{part} cannot be read from {part[position:]} on")
        position = match.end()
        if match[1] == "(":
            stack.append(Counter())
            if len(stack) > _DEEPEST + 1:
                raise NotAFormula(f"{part} nests its brackets too deep")
            continue
        group = _closed(stack, part) if match[1] == ")" else _element(match[1])
        for element, count in group.items():
            stack[-1][element] += count * int(match[2] or 1)
    if len(stack) != 1:
        raise NotAFormula(f"{part} opens a bracket and does not close it")
    return stack[0]


def _closed(stack: list[Counter[str]], part: str) -> Counter[str]:
    if len(stack) == 1 or not stack[-1]:
        raise NotAFormula(f"{part} closes a bracket that holds nothing")
    return stack.pop()


def _element(symbol: str) -> Counter[str]:
    if symbol not in ATOMIC_MASSES:
        raise NotAFormula(f"{symbol} is not an element of the table")
    return Counter({symbol: 1})


def molar_mass_of(text: str) -> Quantity:
    """Molar mass of a substance from its formula, the water of a hydrate included. Raises NotAFormula.

    >>> f"{molar_mass_of('CuSO4·5H2O').to('g/mol'):.5g~P}"
    '249.68 g/mol'
    """
    return quantity(sum(ATOMIC_MASSES[element] * n for element, n in atoms_in(text).items()), "g/mol")


@formula("mol", "n = m/M", mass=Takes("kg", at_least=0), molar_mass=_MOLAR_MASS)
def amount_of(mass: Quantity, molar_mass: Quantity) -> Quantity:
    """Amount of substance in a mass, ``n = m/M`` (m in kg, M in kg/mol, n in mol).

    >>> f"{amount_of(quantity(1, 'g'), molar_mass_of('NaOH')).to('mol'):.3g~P}"
    '0.025 mol'
    """
    return mass / molar_mass


@formula(
    "kg",
    "m = c·V·M",
    concentration=_CONCENTRATION,
    volume=_VOLUME,
    molar_mass=_MOLAR_MASS,
)
def mass_for_solution(concentration: Quantity, volume: Quantity, molar_mass: Quantity) -> Quantity:
    """Mass of a solid to weigh for a solution, ``m = c·V·M`` (c in mol/m³, V in m³, M in kg/mol, m in kg).

    M is that of what is in the bottle: of the hydrate, water and all, when it is a hydrate.

    >>> m = mass_for_solution(quantity(0.5, "mol/L"), quantity(500, "mL"), molar_mass_of("CuSO4·5H2O"))
    >>> f"{m.to('g'):.3g~P}"
    '62.4 g'
    """
    return concentration * volume * molar_mass


@formula("m**3", "V₁ = c·V/c₁", stock=_STOCK, concentration=_CONCENTRATION, volume=_VOLUME)
def volume_to_dilute(stock: Quantity, concentration: Quantity, volume: Quantity) -> Quantity:
    """Volume of a stock solution to make up to a volume, ``V₁ = c·V/c₁``.

    Concentrations in mol/m³, volumes in m³. More than the volume asked for when the stock is weaker.
    Source: the amount stays the same.

    >>> f"{volume_to_dilute(quantity(2, 'mol/L'), quantity(0.1, 'mol/L'), quantity(1, 'L')).to('mL'):.3g~P}"
    '50 ml'
    """
    return concentration * volume / stock


@formula(
    "mol/m**3",
    "c = ρ·w/M",
    density=Takes("kg/m**3", more_than=0),
    mass_fraction=_SHARE,
    molar_mass=_MOLAR_MASS,
)
def concentration_of_stock(density: Quantity, mass_fraction: Quantity, molar_mass: Quantity) -> Quantity:
    """Concentration of a bottle labelled by mass, ``c = ρ·w/M`` (ρ in kg/m³, M in kg/mol, c in mol/m³).

    w is the mass fraction: 36 % hydrochloric acid has 0.36. Source: definitions.

    >>> c = concentration_of_stock(quantity(1.18, "g/mL"), quantity(36, "percent"), molar_mass_of("HCl"))
    >>> f"{c.to('mol/L'):.3g~P}"
    '11.7 mol/l'
    """
    return density * mass_fraction / molar_mass


@formula(
    "mol/m**3",
    "c = 2·S/V_m",
    volume_strength=Takes("", at_least=0, at_most=500),
    molar_volume=Takes("m**3/mol", more_than=0),
)
def peroxide_concentration(
    volume_strength: Quantity, molar_volume: Quantity = MOLAR_VOLUME_AT_0_DEGREES
) -> Quantity:
    """Concentration of hydrogen peroxide from its volume strength, ``c = 2·S/V_m``.

    S volumes of oxygen, at 0 °C and 101.325 kPa, come from one volume of solution: 2 H2O2 → 2 H2O + O2. The
    molar volume at room temperature does not belong here. Source: definition of volume strength.

    >>> f"{peroxide_concentration(quantity(20, '')).to('mol/L'):.3g~P}"
    '1.78 mol/l'
    """
    return 2 * volume_strength / molar_volume


@formula(
    "m**3",
    "V = n·R·T/p",
    amount=_AMOUNT,
    temperature=Takes("K", more_than=0),
    pressure=Takes("Pa", more_than=0, at_most=1e6),
    gas_constant=Takes("J/(mol*K)", more_than=0),
)
def volume_of_gas(
    amount: Quantity,
    temperature: Quantity,
    pressure: Quantity = ATMOSPHERE,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Volume of an amount of gas, ``V = n·R·T/p``, taken as ideal (n in mol, T in K, p in Pa, V in m³).

    >>> f"{volume_of_gas(quantity(1, 'mol'), quantity(293.15, 'K')).to('L'):.3g~P}"
    '24.1 l'
    """
    return amount * gas_constant * temperature / pressure


@formula(
    "kg",
    "m = I·t·M/(z·F)",
    current=Takes("A", at_least=0),
    time=Takes("s", at_least=0),
    molar_mass=_MOLAR_MASS,
    electrons=Takes("", at_least=1, at_most=8),
    faraday=Takes("C/mol", more_than=0),
)
def mass_electrolysed(
    current: Quantity,
    time: Quantity,
    molar_mass: Quantity,
    electrons: Quantity,
    faraday: Quantity = FARADAY,
) -> Quantity:
    """Greatest mass set free or dissolved at an electrode, ``m = I·t·M/(z·F)``.

    I in A, t in s, M in kg/mol, z the electrons for each atom or molecule, m in kg. Source: Faraday's laws.

    >>> m = mass_electrolysed(quantity(0.5, "A"), quantity(20, "min"), molar_mass_of("Cu"), quantity(2, ""))
    >>> f"{m.to('g'):.3g~P}"
    '0.198 g'
    """
    return current * time * molar_mass / (electrons * faraday)


def limiting_reagent(amounts: Mapping[str, tuple[Quantity, int]]) -> str:
    """The reagent that runs out first: the least amount for its number in the equation; the first of equals.

    Args:
        amounts: for each reagent its amount and its number in the balanced equation.

    Raises:
        OutOfRange: without reagents, or for an amount below zero or a number below one.

    >>> limiting_reagent({"Mg": (quantity(0.02, "mol"), 1), "HCl": (quantity(0.03, "mol"), 2)})
    'HCl'
    """
    sound = [amount.m_as("mol") >= 0 and number >= 1 for amount, number in amounts.values()]
    if not sound or not all(sound):
        raise OutOfRange("each reagent needs an amount and a whole number of 1 or more in the equation")
    return min(amounts, key=lambda name: number_in(amounts[name][0], "mol") / amounts[name][1])
