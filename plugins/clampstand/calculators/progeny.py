"""Radon progeny gathered on a charged balloon: the half-life their count seems to have."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Worked, written
from clampstand.model.book import Book
from clampstand.model.nuclide import chain_from
from clampstand.model.practical import Practical
from clampstand.physics.chains import activities_on_collector
from clampstand.physics.decay import fitted_half_life
from clampstand.units import Quantity, quantity, shown

FIRST = "Po-218"
"""What radon turns into, and what lands on the balloon."""
COUNTED = ("Pb-214", "Bi-214")
"""The beta emitters among the progeny, which a counter sees through the rubber."""
_POINTS = 16


def progeny_half_life(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Half-life by a straight line through the beta count of radon progeny.

    ``given: {collection: …, wait: …, window: …}`` names how long they gather, how long until the first count,
    and how long the count is followed.
    """
    collection, wait, window = (
        number_given(practical, given, word) for word in ("collection", "wait", "window")
    )
    if FIRST not in book.nuclides:
        raise CannotWork(f"there are no figures for {FIRST}")
    times = [window.value * (point / (_POINTS - 1)) for point in range(_POINTS)]
    counts = [_beta_activity(book, collection.value, wait.value + time) for time in times]
    value = fitted_half_life(times, counts)
    half_lives = tuple(
        written(
            f"half-life of {name}",
            book.nuclides[name].half_life.value,
            "reference figures",
            book.nuclides[name].half_life.citation,
        )
        for name in (FIRST, *COUNTED)
    )
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
                *half_lives,
            ),
            within="15 %; less if the tube counts alpha particles too",
            note="No half-life of any one nuclide: the mixture has its own, which changes as it is followed.",
        ),
    )


def _beta_activity(book: Book, collection: Quantity, wait: Quantity) -> Quantity:
    """Beta activity on the collector at a time after collecting, for one atom landing a second."""
    chain = chain_from(book.nuclides, FIRST)
    activities = activities_on_collector(chain, {FIRST: quantity(1, "1/s")}, collection, wait)
    return sum((activities[name] for name in COUNTED), quantity(0, "Bq"))
