"""Radon progeny gathered on a charged balloon: the half-life their count seems to have."""

from collections.abc import Iterator, Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, written
from clampstand.model.book import Book
from clampstand.model.nuclide import chain_from
from clampstand.model.practical import Practical
from clampstand.physics.chains import Member, activities_on_collector, chain_atoms_in_steps
from clampstand.physics.decay import fitted_half_life
from clampstand.units import Amount, Quantity, bare, number_in, quantity, shown

FIRST = "Po-218"
"""What radon turns into first."""
COUNTED = ("Pb-214", "Bi-214")
"""The beta emitters among the progeny, which a counter sees through the rubber."""
_STEPS = 15
"""How often in the window the count is taken, but for the first time."""


def progeny_half_life(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Half-life by a straight line through the beta count of radon progeny.

    ``given: {collection: …, wait: …, window: …, Pb-214: …, Bi-214: …}`` names how long they gather, how long
    until the first count, how long the count is followed, and the activity of each beta emitter in the air
    as a part of that of Po-218. What lands is taken to be what is in the air, atom for atom.
    """
    collection, wait, window = (
        number_given(practical, given, word) for word in ("collection", "wait", "window")
    )
    shares = {name: number_given(practical, given, name) for name in COUNTED}
    landing = atoms_landing(book, shares)
    step = window.value / _STEPS
    counted = beta_activities(book, landing, collection.value, wait.value, step, _STEPS)
    value = fitted_half_life((step * n for n in range(_STEPS + 1)), counted)
    return (
        Worked(
            id="progeny-half-life",
            title="Half-life that the beta count seems to have",
            value=value,
            kind="time",
            shown=shown(value, "min", "time", 2),
            formula="T = −ln 2 / slope of ln(A(Pb-214) + A(Bi-214)) against t, by Bateman's equations",
            inputs=(
                written("time of collecting", collection, f"practical, {given['collection']}"),
                written("wait before the first count", wait, f"practical, {given['wait']}"),
                written("time the count is followed", window, f"practical, {given['window']}"),
                *(_share_input(practical, name, given[name]) for name in COUNTED),
                *(_half_life_input(book, name) for name in (FIRST, *COUNTED)),
            ),
            within="15 %",
            note=f"No half-life of any one nuclide: {' and '.join(COUNTED)} together have their own.",
        ),
    )


def atoms_landing(book: Book, shares: Mapping[str, Amount]) -> dict[str, Quantity]:
    """Atoms of each nuclide landing in a second, up to a common factor: those in the air, activity over λ."""
    in_air = {FIRST: bare(1), **{name: share.value for name, share in shares.items()}}
    return {
        name: quantity(number_in(share, "") * number_in(_half_life(book, name), "s"), "1/s")
        for name, share in in_air.items()
    }


def _half_life(book: Book, name: str) -> Quantity:
    if name not in book.nuclides:
        raise CannotWork(f"there are no figures for {name}")
    half_life: Amount = book.nuclides[name].half_life.value
    return half_life.value


def leading_to(ends: tuple[str, ...], chain: tuple[Member, ...]) -> tuple[Member, ...]:
    """The members of a chain that are an end or turn into one; what comes after changes nothing before it."""
    wanted = set(ends)
    for _ in chain:
        wanted |= {member.name for member in chain if any(name in wanted for name, _ in member.progeny)}
    return tuple(member for member in chain if member.name in wanted)


def beta_activities(
    book: Book,
    landing: Mapping[str, Quantity],
    collection: Quantity,
    wait: Quantity,
    step: Quantity,
    steps: int,
) -> Iterator[Quantity]:
    """Beta activity on the collector a wait after collecting, and again after each of some even steps."""
    chain = leading_to(COUNTED, chain_from(book.nuclides, FIRST))
    rates = {member.name: member.rate for member in chain}
    landed = activities_on_collector(chain, landing, collection, wait)
    atoms = {name: number_in(activity, "Bq") / rates[name] for name, activity in landed.items()}
    for left in chain_atoms_in_steps(chain, atoms, step, steps):
        yield quantity(sum(left[name] * rates[name] for name in COUNTED), "Bq")


def _share_input(practical: Practical, name: str, number_name: str) -> Input:
    number = practical.numbers[number_name]
    return written(
        f"{name} in the air, of Po-218", number.value, f"practical, {number_name}", number.source or ""
    )


def _half_life_input(book: Book, name: str) -> Input:
    half_life = book.nuclides[name].half_life
    return written(f"half-life of {name}", half_life.value, "reference figures", half_life.citation)
