"""A nuclide: half-life, what it turns into, and what it emits at each decay."""

from collections.abc import Mapping
from functools import cached_property
from typing import ClassVar, NamedTuple

from pydantic import model_validator

from clampstand.model.base import Definition, Entry, Id, Line, MolarMass, Number, SomeTime, Words, fault
from clampstand.model.substance import Figure
from clampstand.physics.chains import Member
from clampstand.physics.dose import PhotonLine
from clampstand.units import Quantity, quantity


class HalfLife(Figure):
    """A half-life, its uncertainty and where it was read."""

    value: SomeTime


class Emission(NamedTuple):
    """One line or beta branch: its energy (a beta's end point), its mean energy, and particles per decay."""

    energy: Quantity
    mean: Quantity
    per_decay: Quantity


class Lines(Definition):
    """Particles of sharp energies: rows of energy in keV and yield per decay of the nuclide itself."""

    citation: Id
    rows: tuple[tuple[Number, Number], ...]

    @cached_property
    def emissions(self) -> tuple[Emission, ...]:
        """The rows as quantities."""
        return tuple(_emission(energy, energy, part) for energy, part in self.rows)


class Branches(Definition):
    """Betas or positrons: rows of end point and mean energy in keV, and yield per decay."""

    citation: Id
    rows: tuple[tuple[Number, Number, Number], ...]

    @cached_property
    def emissions(self) -> tuple[Emission, ...]:
        """The rows as quantities."""
        return tuple(_emission(*row) for row in self.rows)


class Emissions(Definition):
    """What a nuclide emits, by kind; a kind left out is one it does not emit to speak of."""

    alpha: Lines | None = None
    beta: Branches | None = None
    positron: Branches | None = None
    gamma: Lines | None = None
    x: Lines | None = None
    annihilation: Lines | None = None

    @property
    def kinds(self) -> dict[str, Lines | Branches]:
        """The kinds that are there, by name."""
        kinds = {name: getattr(self, name) for name in type(self).model_fields}
        return {name: rows for name, rows in kinds.items() if rows is not None}


class Nuclide(Entry):
    """A radioactive nuclide. Its id is how it is written: ``Am-241``, ``Ba-137m``."""

    shelf: ClassVar[str] = "nuclides"

    name: Line
    element: Id
    molar_mass: MolarMass
    half_life: HalfLife
    progeny: dict[Id, Number]
    """Branching fractions by name."""
    emissions: Emissions
    note: Words | None = None

    @model_validator(mode="after")
    def _fractions_make_sense(self) -> "Nuclide":
        if any(not 0 < share <= 1 for share in self.progeny.values()) or sum(self.progeny.values()) > 1.001:
            raise fault(
                "the branching fractions add up to more than one", "write parts of one for each progeny"
            )
        numbers = (number for rows in self.emissions.kinds.values() for row in rows.rows for number in row)
        if any(number <= 0 for number in numbers):
            raise fault("an energy or yield is not above zero", "leave out what is not emitted")
        return self

    def emitted(self, kind: str) -> tuple[Emission, ...]:
        """What it emits of a kind: alpha, beta, positron, gamma, x or annihilation."""
        rows = self.emissions.kinds.get(kind)
        return rows.emissions if rows else ()

    def strongest(self, kind: str) -> Emission | None:
        """The most frequent line or branch of a kind, if it emits any."""
        return max(self.emitted(kind), key=lambda emission: emission.per_decay, default=None)

    @cached_property
    def photons(self) -> tuple[PhotonLine, ...]:
        """Its gamma, X-ray and annihilation lines, per decay of itself."""
        lines = (line for kind in ("gamma", "x", "annihilation") for line in self.emitted(kind))
        return tuple(PhotonLine(line.energy, line.per_decay) for line in lines)

    @property
    def member(self) -> Member:
        """Itself as a member of a decay chain."""
        return Member(self.id, self.half_life.value.value, tuple(self.progeny.items()))

    @property
    def citations(self) -> tuple[str, ...]:
        """Every source its figures name, each once, in the order they stand."""
        of_emissions = (rows.citation for rows in self.emissions.kinds.values())
        return tuple(dict.fromkeys((self.half_life.citation, *of_emissions)))


def chain_from(nuclides: Mapping[str, Nuclide], parent: str) -> tuple[Member, ...]:
    """A nuclide and every progeny there are figures for, each once. Raises KeyError for no such parent."""
    found: dict[str, Member] = {}
    waiting = [nuclides[parent].id]
    while waiting:
        name = waiting.pop(0)
        if name in nuclides and name not in found:
            found[name] = nuclides[name].member
            waiting.extend(nuclides[name].progeny)
    return tuple(found.values())


def _emission(energy: float, mean: float, per_decay: float) -> Emission:
    return Emission(quantity(energy, "keV"), quantity(mean, "keV"), quantity(per_decay, "1/decay"))
