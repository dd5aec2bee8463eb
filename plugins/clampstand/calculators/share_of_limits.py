"""How much of what may be kept without a permit the sources of the register make up, pack by pack."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.activity_today import activity_today
from clampstand.calculators.worked import CannotWork, Input, Worked
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.limit import Limit, Pack
from clampstand.units import Quantity, bare, digits, number_in

EXEMPT = "radiation.exempt-activity"
"""The activity of a nuclide that may be kept without a permit."""


@dataclass(frozen=True, slots=True)
class Share:
    """What one source is of a pack's limit for its nuclide.

    Args:
        source: the source.
        limit: the limit.
        today: its activity on the handbook's day, as a part of the limit.
        nominal: the activity of its certificate, as a part of the limit.
    """

    source: Source
    limit: Limit
    today: float
    nominal: float


def covers_nuclides(pack: Pack) -> bool:
    """Whether a pack says what may be kept of which nuclide."""
    return any(limit.key == EXEMPT for limit in pack.limits)


def counted(book: Book) -> tuple[Source, ...]:
    """The sources that count: they are here, and no permit covers them."""
    return tuple(s for s in book.sources.values() if s.status != "disposed of" and s.permit is None)


def unlimited(source: Source, pack: Pack) -> tuple[str, ...]:
    """The nuclides in a source that a pack has no limit for; progeny may be in the limit of the nuclide."""
    limit = _limit_for(source.nuclide, pack)
    if limit is None:
        return (source.nuclide,)
    others = (name for name in source.in_equilibrium_with if name not in limit.with_progeny)
    return tuple(name for name in others if _limit_for(name, pack) is None)


def shares(book: Book, pack: Pack) -> Iterator[Share]:
    """The shares of every source that counts, its progeny that have limits of their own included.

    Raises:
        CannotWork: the activity of a source cannot be worked out.
    """
    for source in counted(book):
        today, nominal = activity_today(source, book).value, source.activity.high
        limit = _limit_for(source.nuclide, pack)
        own = () if limit is None else limit.with_progeny
        for nuclide in (source.nuclide, *(name for name in source.in_equilibrium_with if name not in own)):
            of_nuclide = _limit_for(nuclide, pack)
            if of_nuclide is not None and of_nuclide.amount is not None:
                edge = of_nuclide.amount.value
                yield Share(source, of_nuclide, _part(today / edge), _part(nominal / edge))


def share_of_limits(book: Book, pack: Pack) -> Worked:
    """The sum of A/L over the store, against the limits of one pack; above one, more is kept than is exempt.

    Where the pack says that each source keeps to its limit by itself, the greatest share.

    Raises:
        CannotWork: the pack has no such limits, or the activity of a source cannot be worked out.
    """
    if not covers_nuclides(pack):
        raise CannotWork(f"{pack.title} does not say what may be kept without a permit")
    found = list(shares(book, pack))
    summed = all(share.limit.combine == "sum of fractions" for share in found)
    gather = sum if summed else lambda parts: max(parts, default=0.0)
    today, nominal = gather([s.today for s in found]), gather([s.nominal for s in found])
    left_out = [name for source in counted(book) for name in unlimited(source, pack)]
    missing = (
        f" No value there for {', '.join(dict.fromkeys(left_out))}: not in the number." if left_out else ""
    )
    return Worked(
        id=f"share-of-limits/{pack.pack}",
        title=f"Share of what may be kept without a permit: {pack.title}",
        value=bare(today),
        kind="fraction",
        shown=f"{digits(today, 3, 'up')} times",
        formula="Σ A/L over the sources" if summed else "the greatest A/L of any source",
        inputs=tuple(_input(share) for share in found),
        day=book.department.computed_for,
        within="as well as the makers’ activities are known",
        note=f"By the certificates {digits(nominal, 3, 'up')} times.{missing}",
    )


def _limit_for(nuclide: str, pack: Pack) -> Limit | None:
    of_key = (limit for limit in pack.limits if limit.key == EXEMPT)
    return next((limit for limit in of_key if limit.applies_to.nuclide == nuclide), None)


def _part(ratio: Quantity) -> float:
    return number_in(ratio, "")


def _input(share: Share) -> Input:
    nuclide = share.limit.applies_to.nuclide
    words = f"{digits(share.today, 3, 'up')} of {share.limit.value}"
    return Input(f"{share.source.id}, {nuclide}", words, "register and limit", share.limit.citation)
