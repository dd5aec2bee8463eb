"""What a straight line through readings says: where a detector counts, and a half-life above background."""

from collections.abc import Callable, Mapping
from typing import ParamSpec

from clampstand.calculators.given import number_given, numbers_given
from clampstand.calculators.worked import CannotWork, Worked, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.fits import Fitted, effective_centre, half_life_of_counts
from clampstand.units import Amount, OutOfRange, Quantity, UnlikeUnits, shown

P = ParamSpec("P")


def centre_of_detector(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """How far behind their faces source and tube lie together, by the inverse-square line.

    ``given: {distances: "one, another, …", counts: "…", times: "…"}`` names as many of each, three or more;
    the counts are without background.
    """
    words = ("distances", "counts", "times")
    distances, counts, times = (numbers_given(practical, given, word) for word in words)
    if not len(distances) == len(counts) == len(times):
        raise CannotWork("every distance needs its counts and its time")
    taken = list(zip(_values(counts), _values(times), strict=True))
    fitted = _fitted(effective_centre, _values(distances), [n / t for n, t in taken], [n for n, _ in taken])
    return (
        Worked(
            id="effective-centre",
            title="How far behind its window the tube counts, by these readings",
            value=fitted.value,
            kind="length",
            shown=shown(fitted.value, "mm", "length", 2),
            formula="1/√R = (d + c)/√k, a line weighted by N, which meets zero at −c",
            inputs=tuple(
                written(name, amount, f"practical, {name}")
                for named in (distances, counts, times)
                for name, amount in named
            ),
            within=f"{shown(fitted.uncertainty, 'mm', 'length', 2, 'up')}, from counting alone",
            note="The depth of the source behind its own face is in it.",
            page_only=True,
        ),
    )


def half_life_measured(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Half-life by a line through counts of equal length, background taken off each.

    ``given: {counts: "one, another, …", every: …, background: …}``: ``every`` is the time from the beginning
    of one count to that of the next, ``background`` what one count of that length has without the source.
    """
    counts = numbers_given(practical, given, "counts")
    every, background = (number_given(practical, given, word) for word in ("every", "background"))
    times = [every.value * n for n in range(len(counts))]
    fitted = _fitted(half_life_of_counts, times, _values(counts), background.value)
    return (
        Worked(
            id="half-life-of-counts",
            title="Half-life by the line through these counts",
            value=fitted.value,
            kind="time",
            shown=shown(fitted.value, "s", "time", 2),
            formula="ln(N − B) = ln N₀ − t·ln 2/T½, a line weighted by (N − B)²/N",
            inputs=(
                *(written(name, amount, f"practical, {name}") for name, amount in counts),
                written("from one count to the next", every, f"practical, {given['every']}"),
                written("background in one count, B", background, f"practical, {given['background']}"),
            ),
            within=f"{shown(fitted.uncertainty, 's', 'time', 2, 'up')}, from counting alone",
            note="Twice that far off is no wonder. Left-in background makes it too long.",
            page_only=True,
        ),
    )


def _values(named: tuple[tuple[str, Amount], ...]) -> list[Quantity]:
    return [amount.value for _, amount in named]


def _fitted(fit: Callable[P, Fitted], *args: P.args, **kwargs: P.kwargs) -> Fitted:
    """What a fit gives. Raises CannotWork for readings it cannot lay a line through."""
    try:
        return fit(*args, **kwargs)
    except (OutOfRange, UnlikeUnits) as reason:
        raise CannotWork(str(reason)) from None
