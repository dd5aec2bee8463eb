"""Decay chains: against radioactivedecay and scipy, by conservation of atoms, and at awkward half-lives."""

import math

import numpy as np
import pytest
import radioactivedecay as rd
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from clampstand.model.nuclide import chain_from
from clampstand.physics import decay
from clampstand.physics.chains import (
    Member,
    activities_on_collector,
    chain_activities,
    chain_atoms,
    equilibrium_shares,
    in_growth,
)
from clampstand.units import OutOfRange, Quantity, q, quantity
from physics.reference import nuclides

TIMES = ["1 s", "30 s", "10 min", "5 h", "3 days", "30 days", "1 year", "40 years", "5000 years"]


def activities(parent: str, elapsed: Quantity) -> dict[str, Quantity]:
    return chain_activities(chain_from(nuclides(), parent), {parent: q("1000 Bq")}, elapsed)


@pytest.mark.parametrize(
    "parent", ["U-238", "Ra-226", "Th-232", "Th-228", "Pb-212", "Sr-90", "Cs-137", "Rn-222"]
)
@pytest.mark.parametrize("elapsed", TIMES)
def test_every_member_agrees_with_radioactivedecay(parent: str, elapsed: str) -> None:
    """Side branches of 0.02 % and less, such as astatine-218, are not in the figures: hence ``abs``."""
    theirs = rd.Inventory({parent: 1000.0}, "Bq").decay(float(q(elapsed).m_as("s")), "s").activities("Bq")
    for name, ours in activities(parent, q(elapsed)).items():
        assert ours.m_as("Bq") == pytest.approx(theirs[name], rel=0.01, abs=2e-4), name


half_lives = st.floats(1e-7, 1e18)


@st.composite
def random_chains(draw: st.DrawFn) -> list[Member]:
    size = draw(st.integers(2, 7))
    members = []
    for place in range(size):
        following = [f"n{later}" for later in range(place + 1, min(place + 3, size))] or ["end"]
        first = draw(st.floats(0, 1))
        shares = [first, 1 - first] if len(following) == 2 else [1.0]
        progeny = tuple(zip(following, shares, strict=True))
        members.append(Member(f"n{place}", quantity(draw(half_lives), "s"), progeny))
    return [*members, Member("end", None)]


@settings(deadline=None, max_examples=60)
@given(random_chains(), st.floats(0, 1e18))
def test_no_atom_is_lost_or_made(members: list[Member], elapsed: float) -> None:
    left = chain_atoms(members, {"n0": 1e6, "n1": 3e5}, quantity(elapsed, "s"))
    assert min(left.values()) >= 0
    assert sum(left.values()) == pytest.approx(1.3e6, rel=1e-10)


@settings(deadline=None, max_examples=60)
@given(half_lives, st.floats(0, 50))
def test_a_chain_of_one_is_plain_decay(half_life: float, count: float) -> None:
    t_half = quantity(half_life, "s")
    chain = chain_activities([Member("a", t_half)], {"a": q("1 kBq")}, count * t_half)["a"]
    assert chain.m_as("Bq") == pytest.approx(
        decay.activity_after(q("1 kBq"), t_half, count * t_half).m_as("Bq"), rel=1e-12
    )


@given(st.floats(0.01, 20))
def test_equal_half_lives_give_the_limit_of_batemans_formula(times: float) -> None:
    """With one λ for both, A₂ = A₁·λt·e^(−λt): the usual formula divides nought by nought there."""
    t_half = q("100 s")
    grown = in_growth(q("1 kBq"), t_half, t_half, times * t_half, quantity(1, ""))
    x = times * math.log(2)
    assert grown.m_as("Bq") == pytest.approx(1000 * x * math.exp(-x), rel=1e-12)


@pytest.mark.parametrize("apart", [1e-15, 1e-12, 1e-9, 1e-6, 1e-3])
def test_nearly_equal_half_lives_agree_with_a_form_that_does_not_cancel(apart: float) -> None:
    slow, t = math.log(2) / 100, 250.0
    fast = slow * (1 + apart)
    expected = 1000 * fast * math.exp(-slow * t) * -math.expm1(-(fast - slow) * t) / (fast - slow)
    grown = in_growth(q("1 kBq"), q("100 s"), quantity(100 / (1 + apart), "s"), q("250 s"), quantity(1, ""))
    assert grown.m_as("Bq") == pytest.approx(expected, rel=1e-3 if apart < 1e-13 else 1e-9)


def test_half_lives_24_powers_of_ten_apart_are_in_balance() -> None:
    uranium = Member("U-238", q("4.468e9 years"), (("Po-212", 1.0),))
    grown = chain_activities(
        [uranium, Member("Po-212", quantity(0.299, "us"))], {"U-238": q("1 kBq")}, q("10 years")
    )
    assert grown["Po-212"].m_as("Bq") == pytest.approx(1000, rel=1e-8)


def test_order_of_members_does_not_matter() -> None:
    members = chain_from(nuclides(), "Th-232")
    day = q("1 day")
    forwards = chain_activities(members, {"Th-232": q("1 kBq")}, day)
    backwards = chain_activities(reversed(members), {"Th-232": q("1 kBq")}, day)
    assert {k: v.magnitude for k, v in forwards.items()} == pytest.approx(
        {k: v.magnitude for k, v in backwards.items()}, rel=1e-12
    )


def progeny_on_wire(wait: str) -> dict[str, Quantity]:
    members = chain_from(nuclides(), "Po-218")
    return activities_on_collector(members, {"Po-218": quantity(100, "1/s")}, q("1 h"), q(wait))


@pytest.mark.parametrize("wait", ["0 s", "10 min", "1 h", "3 h"])
def test_collected_progeny_agrees_with_scipy(wait: str) -> None:
    names = ("Po-218", "Pb-214", "Bi-214")
    rates = [math.log(2) / nuclides()[n].half_life.value.value.m_as("s") for n in names]
    b = [nuclides()["Po-218"].progeny["Pb-214"], nuclides()["Pb-214"].progeny["Bi-214"]]

    def change(t: float, n: np.ndarray) -> list[float]:
        fed = 100.0 if t < 3600 else 0.0
        flow = [r * x for r, x in zip(rates, n, strict=True)]
        return [fed - flow[0], b[0] * flow[0] - flow[1], b[1] * flow[1] - flow[2]]

    end = 3600 + float(q(wait).m_as("s"))
    first = solve_ivp(change, (0, 3600), [0, 0, 0], rtol=1e-10, atol=1e-9, method="LSODA").y[:, -1]
    theirs = (
        first
        if end == 3600
        else solve_ivp(change, (3600, end), first, rtol=1e-10, atol=1e-9, method="LSODA").y[:, -1]
    )
    ours = progeny_on_wire(wait)
    for name, rate, atoms in zip(names, rates, theirs, strict=True):
        assert ours[name].m_as("Bq") == pytest.approx(rate * atoms, rel=1e-4), name


def betas(wait: str) -> Quantity:
    landed = progeny_on_wire(wait)
    return landed["Pb-214"] + landed["Bi-214"]


def test_progeny_does_not_halve_in_thirty_minutes_at_first() -> None:
    """After an hour's gathering two betas fall from 125 Bq to 95 Bq in half an hour: 75 min, later 33 min."""
    assert betas("0 s").m_as("Bq") == pytest.approx(125.2, rel=0.005)
    assert betas("30 min").m_as("Bq") == pytest.approx(95.0, rel=0.005)
    half_hour = decay.half_life_from_two(betas("0 s"), betas("30 min"), q("30 min"))
    later = decay.half_life_from_two(betas("60 min"), betas("90 min"), q("30 min"))
    assert half_hour.m_as("min") == pytest.approx(75, rel=0.01)
    assert later.m_as("min") == pytest.approx(33, rel=0.01)


def test_fitted_half_life_over_an_hour_lies_between_those_of_its_ends() -> None:
    times = [quantity(t, "min") for t in range(0, 61, 10)]
    fitted = decay.fitted_half_life(times, [betas(f"{t} min") for t in range(0, 61, 10)])
    assert 40 < fitted.m_as("min") < 75


def test_shares_in_equilibrium_multiply_branchings() -> None:
    shares = equilibrium_shares(chain_from(nuclides(), "Th-232"), "Th-232")
    assert shares["Tl-208"] == pytest.approx(0.3594, rel=1e-3)
    assert shares["Po-212"] == pytest.approx(0.6406, rel=1e-3)
    assert shares["Ra-224"] == pytest.approx(1)


def test_nonsense_is_refused() -> None:
    a, b = Member("a", q("1 s"), (("b", 1.0),)), Member("b", q("1 s"), (("a", 1.0),))
    for members, start in (([a, b], "a"), ([Member("a", None)], "a"), ([Member("a", q("1 s"))], "c")):
        with pytest.raises(OutOfRange):
            chain_activities(members, {start: q("1 Bq")}, q("1 s"))
    for bad in (Member("a", quantity(0, "s")), Member("a", q("1 s"), (("b", 1.5),))):
        with pytest.raises(OutOfRange):
            chain_activities([bad], {"a": q("1 Bq")}, q("1 s"))
    for amount in (-1.0, math.nan, math.inf):
        with pytest.raises(OutOfRange, match="finite"):
            chain_activities([Member("a", q("1 s"))], {"a": quantity(amount, "Bq")}, q("1 s"))
    with pytest.raises(OutOfRange, match="forwards"):
        chain_activities([Member("a", q("1 s"))], {"a": q("1 Bq")}, quantity(-1, "s"))
    with pytest.raises(OutOfRange, match="not in the chain"):
        equilibrium_shares([a], "c")
