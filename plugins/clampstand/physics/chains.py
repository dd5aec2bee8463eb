"""Chains of decay with branching: activities after a time, in-growth, progeny gathered on a collector."""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from graphlib import CycleError, TopologicalSorter
from operator import mul

from clampstand.units import OutOfRange, Quantity, number_in, quantity


@dataclass(frozen=True)
class Member:
    """One nuclide of a chain.

    Args:
        name: such as ``Pb-214``.
        half_life: None for a stable end.
        progeny: name and branching fraction of each; names that are not members leave the account.
    """

    name: str
    half_life: Quantity | None
    progeny: tuple[tuple[str, float], ...] = ()

    @cached_property
    def rate(self) -> float:
        """Decay constant in 1/s; nil for a stable member. Raises OutOfRange for a half-life of nought."""
        if self.half_life is None:
            return 0.0
        seconds = number_in(self.half_life, "s")
        if not (math.isfinite(seconds) and seconds > 0):
            raise OutOfRange(f"a half-life is more than zero, and this is {self.half_life:~P}")
        return math.log(2) / seconds


def chain_activities(
    members: Iterable[Member], initial: Mapping[str, Quantity], elapsed: Quantity
) -> dict[str, Quantity]:
    """Activity of every member of a chain some time after given activities.

    Solves dNᵢ/dt = Σ bⱼᵢλⱼNⱼ − λᵢNᵢ (Bateman's equations, with branching) by the exponential of their matrix.
    Activities in Bq, elapsed in s from zero on. Holds for any half-lives, equal ones and ratios of 10²⁴ too.
    Source: Bateman (1910); Pressyanov, Am. J. Phys. 70 (2002) 444.

    >>> strontium = Member("Sr-90", quantity(28.79, "year"), (("Y-90", 1.0),))
    >>> chain = [strontium, Member("Y-90", quantity(64.1, "h"))]
    >>> week = chain_activities(chain, {"Sr-90": quantity(1, "kBq")}, quantity(7, "day"))
    >>> print(f"{week['Y-90']:.0f~P}")
    837 Bq
    """
    ordered = _parents_first(members)
    active = _named(ordered, initial)
    if any(m.half_life is None for m in active):
        raise OutOfRange("a stable nuclide has no activity")
    atoms = {m.name: number_in(initial[m.name], "Bq") / m.rate for m in active}
    after = _atoms_after(ordered, atoms, {}, elapsed)
    return {m.name: quantity(after[m.name] * m.rate, "Bq") for m in ordered}


def chain_atoms(
    members: Iterable[Member], initial: Mapping[str, float], elapsed: Quantity
) -> dict[str, float]:
    """Number of atoms of every member of a chain, stable ends too, some time after given numbers.

    Equations, range and source as :func:`chain_activities`.

    >>> pair = [Member("Rn-220", quantity(55.6, "s"), (("rest", 1.0),)), Member("rest", None)]
    >>> {name: round(n) for name, n in chain_atoms(pair, {"Rn-220": 1000}, quantity(55.6, "s")).items()}
    {'Rn-220': 500, 'rest': 500}
    """
    ordered = _parents_first(members)
    _named(ordered, initial)
    return _atoms_after(ordered, initial, {}, elapsed)


def chain_atoms_in_steps(
    members: Iterable[Member], initial: Mapping[str, float], step: Quantity, steps: int
) -> Iterator[dict[str, float]]:
    """Number of atoms of every member now, and again after each of some even steps of time.

    The matrix of one step is worked out once, and takes the atoms from each step to the next. Equations,
    range and source as :func:`chain_activities`.

    >>> pair = [Member("Rn-220", quantity(55.6, "s"), (("rest", 1.0),)), Member("rest", None)]
    >>> [round(n["Rn-220"]) for n in chain_atoms_in_steps(pair, {"Rn-220": 1000}, quantity(55.6, "s"), 3)]
    [1000, 500, 250, 125]
    """
    ordered = _parents_first(members)
    _named(ordered, initial)
    flow = _flow_over(ordered, {}, step)
    atoms = {m.name: float(initial.get(m.name, 0.0)) for m in ordered}
    yield atoms
    for _ in range(steps):
        atoms = _moved_on(ordered, atoms, flow)
        yield atoms


def activities_on_collector(
    members: Iterable[Member], deposited: Mapping[str, Quantity], collection: Quantity, wait: Quantity
) -> dict[str, Quantity]:
    """Activities on a wire or filter that gathers progeny at a steady rate, a wait after gathering ended.

    Bateman's equations with a constant feed of atoms per second; results in Bq, times in s from zero on.
    Holds when whatever has landed stays. Source: as :func:`chain_activities`, with a source term.

    >>> chain = [Member("Po-218", quantity(3.1, "min"), (("Pb-214", 0.9998),)),
    ...          Member("Pb-214", quantity(26.8, "min"))]
    >>> fed = {"Po-218": quantity(100, "1/s")}
    >>> landed = activities_on_collector(chain, fed, quantity(1, "h"), quantity(0, "s"))
    >>> print(f"{landed['Pb-214']:.0f~P}")
    76 Bq
    """
    ordered = _parents_first(members)
    feed = {m.name: number_in(deposited[m.name], "1/s") for m in _named(ordered, deposited)}
    gathered = _atoms_after(ordered, {}, feed, collection)
    after = _atoms_after(ordered, gathered, {}, wait)
    return {m.name: quantity(after[m.name] * m.rate, "Bq") for m in ordered}


def equilibrium_shares(members: Iterable[Member], parent: str) -> dict[str, float]:
    """Activity of each member as a share of its parent's, in secular equilibrium: branchings multiplied.

    Holds when every member is far shorter-lived than the parent and fed for long enough; for a source of a
    known age use :func:`chain_activities`. Source: Bateman (1910), limit of a long-lived parent.

    >>> caesium = Member("Cs-137", quantity(30.1671, "year"), (("Ba-137m", 0.94399),))
    >>> equilibrium_shares([caesium, Member("Ba-137m", quantity(2.552, "min"))], "Cs-137")
    {'Cs-137': 1.0, 'Ba-137m': 0.94399}
    """
    ordered = _parents_first(members)
    if parent not in {m.name for m in ordered}:
        raise OutOfRange(f"not in the chain: {parent}")
    shares = {m.name: float(m.name == parent) for m in ordered}
    for m in ordered:
        for name, branching in m.progeny:
            if name in shares:
                shares[name] += shares[m.name] * branching
    return shares


def in_growth(
    parent_activity: Quantity,
    parent_half_life: Quantity,
    daughter_half_life: Quantity,
    elapsed: Quantity,
    branching: Quantity,
) -> Quantity:
    """Daughter's activity some time after its parent was pure.

    A₂ = b·A₁·λ₂/(λ₂−λ₁)·(e^(−λ₁t) − e^(−λ₂t)), in Bq; half-lives and t in s; branching b from 0 to 1.
    Holds for any two half-lives, equal ones too. Source: Bateman (1910).

    >>> protactinium = in_growth(quantity(1000, "Bq"), quantity(24.1, "day"), quantity(1.17, "min"),
    ...                          quantity(70.2, "s"), quantity(1, ""))
    >>> print(f"{protactinium:.1f~P}")
    500.0 Bq
    """
    pair = (
        Member("parent", parent_half_life, (("daughter", number_in(branching, "")),)),
        Member("daughter", daughter_half_life),
    )
    return chain_activities(pair, {"parent": parent_activity}, elapsed)["daughter"]


def _named(members: list[Member], given: Mapping[str, object]) -> list[Member]:
    """The members that amounts were given for; refuses a name that is no member."""
    chosen = [m for m in members if m.name in given]
    if len(chosen) != len(given):
        raise OutOfRange(f"not in the chain: {', '.join(sorted(set(given) - {m.name for m in members}))}")
    return chosen


def _parents_first(members: Iterable[Member]) -> list[Member]:
    by_name = {m.name: m for m in members}
    graph = {name: [p for p, _ in m.progeny if p in by_name] for name, m in by_name.items()}
    try:
        return [by_name[name] for name in reversed(list(TopologicalSorter(graph).static_order()))]
    except CycleError as error:
        raise OutOfRange(f"the chain runs in a circle through {error.args[1][0]}") from error


def _atoms_after(
    ordered: list[Member], initial: Mapping[str, float], feed: Mapping[str, float], elapsed: Quantity
) -> dict[str, float]:
    """Atoms of each member after a time, from initial atoms and a steady feed in atoms per second."""
    return _moved_on(ordered, initial, _flow_over(ordered, feed, elapsed))


def _flow_over(ordered: list[Member], feed: Mapping[str, float], elapsed: Quantity) -> list[list[float]]:
    """What a time makes of a chain: how much of each member, and of the feed, ends as which member."""
    seconds = number_in(elapsed, "s")
    if not (math.isfinite(seconds) and seconds >= 0):
        raise OutOfRange(f"a chain runs forwards in time, and this is {elapsed:~P}")
    _refuse_odd_amounts(feed)
    place = {m.name: i + 1 for i, m in enumerate(ordered)}
    losses = [0.0, *(m.rate for m in ordered)]  # place 0 is the feed, which never runs down
    gains = [[0.0] * len(losses) for _ in losses]
    for name, rate in feed.items():
        gains[place[name]][0] = rate
    for m in ordered:
        for name, share in m.progeny:
            if not 0 <= share <= 1:
                raise OutOfRange(
                    f"a branching fraction lies between 0 and 1, and {m.name} to {name} is {share:g}"
                )
            if name in place:
                gains[place[name]][place[m.name]] = share * losses[place[m.name]]
    return _propagator(losses, gains, seconds)


def _moved_on(
    ordered: list[Member], initial: Mapping[str, float], flow: list[list[float]]
) -> dict[str, float]:
    """Atoms of each member once a flow has worked on initial atoms."""
    _refuse_odd_amounts(initial)
    start = [1.0, *(float(initial.get(m.name, 0.0)) for m in ordered)]
    return {m.name: math.fsum(flow[i + 1][j] * start[j] for j in range(i + 2)) for i, m in enumerate(ordered)}


def _refuse_odd_amounts(amounts: Mapping[str, float]) -> None:
    if not all(0 <= amount < math.inf for amount in amounts.values()):
        raise OutOfRange("a chain starts from, and is fed with, finite amounts that are not below zero")


def _propagator(losses: list[float], gains: list[list[float]], seconds: float) -> list[list[float]]:
    """The exponential of a chain's matrix, by scaling and squaring, without a single subtraction.

    Below the diagonal every term is positive, so nothing cancels; on it each exp(−λt) is computed afresh at
    every doubling, so rounding does not double with the time. Half-lives may be equal, or differ by 24 powers
    of ten. Source: Higham, Functions of Matrices (2008), section 10.3; fresh diagonals suit triangular ones.
    """
    size = len(losses)
    fastest = max(losses)
    doublings = max(0, math.ceil(math.log2(fastest * seconds * 2))) if fastest * seconds > 0.5 else 0
    step = seconds / 2**doublings
    shifted = [[gains[i][j] * step for j in range(size)] for i in range(size)]
    for i in range(size):
        shifted[i][i] = (fastest - losses[i]) * step
    total = _identity(size)
    term = _identity(size)
    for order in range(1, 25):
        term = [[v / order for v in row] for row in _product(term, shifted)]
        before = total
        total = [[a + b for a, b in zip(x, y, strict=True)] for x, y in zip(total, term, strict=True)]
        if order >= size and total == before:
            break  # every place has been reached, and what follows is smaller still
    shrink = math.exp(-fastest * step)
    flow = [[v * shrink for v in row] for row in total]
    for doubling in range(doublings + 1):
        if doubling:
            flow = _product(flow, flow)
        for i in range(size):
            flow[i][i] = math.exp(-losses[i] * step * 2**doubling)
    return flow


def _identity(size: int) -> list[list[float]]:
    return [[float(i == j) for j in range(size)] for i in range(size)]


def _product(left: list[list[float]], right: list[list[float]]) -> list[list[float]]:
    """Product of two lower triangular matrices."""
    columns = list(zip(*right, strict=True))
    return [
        [
            sum(map(mul, row[j : i + 1], column[j : i + 1])) if j <= i else 0.0
            for j, column in enumerate(columns)
        ]
        for i, row in enumerate(left)
    ]
