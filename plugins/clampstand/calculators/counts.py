"""How sure counts are: one count, a count above background, and counts repeated to see them scatter."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given, numbers_given
from clampstand.calculators.worked import Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.counting import (
    count_relative_uncertainty,
    count_uncertainty,
    net_rate,
    net_rate_uncertainty,
)
from clampstand.physics.detection import chance_of_more, dispersion, mean_of_counts, spread_of_counts
from clampstand.units import Quantity, digits, is_under, joined, number_in, shown

STATISTICS = "knoll-counting"
_SELDOM, _ALMOST_ALWAYS = 0.05, 0.95


def uncertainty_of_count(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """How sure one count is, as a part of it: ``given: {counts: …}``."""
    counts = number_given(practical, given, "counts")
    part = stated(count_relative_uncertainty, counts.low)
    whole = stated(count_uncertainty, counts.low)
    return (
        Worked(
            id=f"count-uncertainty/{given['counts']}",
            title=f"Uncertainty of {counts}",
            value=part,
            kind="fraction",
            shown=_per_cent(part),
            formula=f"{count_uncertainty.written}, {count_relative_uncertainty.written}",
            inputs=(
                written("counts, N", counts, f"practical, {given['counts']}"),
                Input("standard uncertainty, u", _counts(whole), "statistics of counting", STATISTICS),
            ),
            within="two counts in three lie so near the true mean, 19 in 20 within twice as much",
            page_only=True,
        ),
    )


def net_count(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Net rate of a count above background, and its uncertainty.

    ``given: {counts: …, time: …, background: …, background time: …}``; ``background`` is in counts.
    """
    words = ("counts", "time", "background", "background time")
    amounts = [number_given(practical, given, word) for word in words]
    names = ("counts with it, G", "time, t_G", "counts without, B", "time, t_B")
    rate = stated(net_rate, *(amount.value for amount in amounts))
    spread = stated(net_rate_uncertainty, *(amount.value for amount in amounts))
    inputs = tuple(
        written(name, amount, f"practical, {given[word]}")
        for name, amount, word in zip(names, amounts, words, strict=True)
    )
    title = f"from {amounts[0]} in {amounts[1]}, above the background"
    return (
        Worked(
            id=f"net-count/{given['counts']}",
            title=f"Net rate {title}",
            value=rate,
            kind="count rate",
            shown=_per_minute(rate),
            formula=net_rate.written,
            inputs=inputs,
            within=f"{_per_minute(spread)}, or twice that to be surer",
            note=_verdict(rate, spread),
            page_only=True,
        ),
        Worked(
            id=f"net-count/{given['counts']}/uncertainty",
            title=f"Uncertainty of the net rate {title}",
            value=spread,
            kind="count rate",
            shown=_per_minute(spread),
            formula=net_rate_uncertainty.written,
            inputs=inputs,
            within="a tenth, while there are a hundred counts or more",
            note="From counting alone. Where the tube stands and how the sample lies come on top.",
            page_only=True,
        ),
    )


def _verdict(rate: Quantity, spread: Quantity) -> str:
    """What may be said of a net rate: nothing, where chance alone does as much."""
    if is_under(rate, 2 * spread):
        return "Less than twice its uncertainty, so it may be chance alone."
    return "More than twice its uncertainty, so chance alone seldom does it."


def scatter_of_counts(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Standard deviation of repeated counts beside √N: ``given: {counts: "one, another, …"}``."""
    named = numbers_given(practical, given, "counts")
    counts = [amount.value for _, amount in named]
    mean, spread = stated(mean_of_counts, counts), stated(spread_of_counts, counts)
    chance = stated(chance_of_more, stated(dispersion, counts), len(counts) - 1)
    by_chance = stated(count_uncertainty, mean)
    return (
        Worked(
            id=f"scatter-of-counts/{given['counts']}",
            title="Standard deviation of the repeated counts",
            value=spread,
            kind="counts",
            shown=_counts(spread),
            formula="s = √(Σ (N − N̄)²/(n − 1)), beside √N̄",
            inputs=(
                *(written(name, amount, f"practical, {name}") for name, amount in named),
                Input("mean, N̄", _counts(mean, 3), "of these counts"),
                Input("by chance alone, √N̄", _counts(by_chance), "statistics of counting", STATISTICS),
            ),
            within="of a few counts hardly surer than a factor of two",
            note=_of_scatter(number_in(chance, "")),
            page_only=True,
        ),
    )


def _of_scatter(chance: float) -> str:
    """Whether counts scatter as chance alone would have it, by their chi-square."""
    if chance < _SELDOM:
        return "They scatter more than chance would; something changed between the counts."
    if chance > _ALMOST_ALWAYS:
        return "They scatter less than chance would; look at the counter."
    return f"Chance alone scatters them as much or more {digits(100 * chance, 2)} times in a hundred."


def _per_cent(part: Quantity) -> str:
    return joined(digits(number_in(part, "percent"), 2, "up"), "%")


def _counts(value: Quantity, figures: int = 2) -> str:
    return shown(value, "counts", "counts", figures)


def _per_minute(rate: Quantity) -> str:
    return shown(rate, "counts/min", "count rate", 2)
