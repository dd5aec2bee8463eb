"""What a source gives off at each decay of its own nuclide, progeny said to be in it included."""

from clampstand.calculators.activity_today import nuclide_of
from clampstand.calculators.remembered import once_a_book
from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.nuclide import Emission, chain_from
from clampstand.physics.chains import equilibrium_shares
from clampstand.physics.dose import PhotonLine
from clampstand.physics.dose_rules import BetaBranch
from clampstand.physics.ranges import beta_greatest_range, thickness_of
from clampstand.units import Quantity, number_in, q, quantity

BETA_RULE = "katz-penfold-1952"
_THROUGH_DEAD_SKIN = q("70 keV")
"""Softer betas end in the dead layer of the skin, 0.07 mm deep. Common practice."""


@once_a_book
def shares_inside(source: Source, book: Book) -> dict[str, float]:
    """Activity of each nuclide said to be in a source, as a share of that of its own nuclide."""
    nuclide = nuclide_of(source, book)
    inside = {source.nuclide, *source.in_equilibrium_with}
    chain = tuple(member for member in chain_from(book.nuclides, nuclide.id) if member.name in inside)
    return equilibrium_shares(chain, nuclide.id)


@once_a_book
def photon_lines(source: Source, book: Book) -> tuple[PhotonLine, ...]:
    """Photons per decay of a source's own nuclide, with those of the progeny said to be in it."""
    return tuple(
        PhotonLine(line.energy, quantity(number_in(line.per_decay, "1/decay") * share, "1/decay"))
        for name, share in shares_inside(source, book).items()
        for line in book.nuclides[name].photons
    )


@once_a_book
def beta_branches(source: Source, book: Book) -> tuple[BetaBranch, ...]:
    """The betas of a source that get through dead skin, progeny said to be in it included.

    Raises:
        CannotWork: the reference figures have no such betas, or no density of air.
    """
    air = book.materials.get("dry-air")
    if air is None or "density" not in air.figures:
        raise CannotWork("the reference figures have no density of dry-air")
    density = air.figures["density"].value.value
    found = tuple(
        BetaBranch(beta.per_decay * share, _reach(beta, density))
        for name, share in shares_inside(source, book).items()
        for beta in book.nuclides[name].emitted("beta")
        if beta.energy >= _THROUGH_DEAD_SKIN
    )
    if not found:
        raise CannotWork(f"the reference figures have no beta particles of {source.nuclide}")
    return found


def _reach(beta: Emission, density: Quantity) -> Quantity:
    """How far the betas of one end point reach in air."""
    return thickness_of(beta_greatest_range(beta.energy), density)
