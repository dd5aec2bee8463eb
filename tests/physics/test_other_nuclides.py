"""Chains that no practical uses, of radioactivedecay's own half-lives and branchings, against its answers."""

from functools import cache

import pytest
import radioactivedecay as rd

from clampstand.physics import chains, decay
from clampstand.units import OutOfRange, quantity

TOGETHER = [
    ["Co-60", "Cs-137", "Ge-68", "I-131", "K-40", "Mo-99", "Na-22", "Sr-90", "Np-237", "Th-232", "U-235",
     "U-238"],
    ["Am-241", "Ra-226", "Tc-99m", "Th-228"],
    ["Ac-225", "Pb-210", "Ra-224"],
]  # fmt: skip
"""Parents whose chains have no unstable nuclide in common. To ask radioactivedecay of a dozen takes as long
as to ask of one, so a group is asked of at once; each answer still belongs to one parent."""
PARENTS = sorted(parent for group in TOGETHER for parent in group)
TIMES = [(1, "s"), (1, "h"), (30, "day"), (20, "year"), (1e5, "year")]
STARTED = 1e6
"""Becquerels of every parent at the start."""


def members_of(parent: str) -> list[chains.Member]:
    """A nuclide and all it turns into, by radioactivedecay 0.6.1 (ICRP Publication 107)."""
    found: dict[str, chains.Member] = {}
    waiting = [parent]
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        nuclide = rd.Nuclide(name)
        progeny = tuple(
            pair
            for pair in zip(nuclide.progeny(), nuclide.branching_fractions(), strict=True)
            if pair[0] != "SF"
        )
        seconds = nuclide.half_life("s")
        half_life = None if seconds == float("inf") else quantity(seconds, "s")
        found[name] = chains.Member(name, half_life, progeny)
        waiting += [progeny_name for progeny_name, _ in progeny]
    return list(found.values())


@cache
def activities_after(seconds: float, group: int) -> dict[str, float]:
    """Becquerels of everything a group of parents has turned into, in radioactivedecay's high precision."""
    start = dict.fromkeys(TOGETHER[group], STARTED)
    return dict(rd.InventoryHP(start, "Bq").decay(seconds, "s").activities("Bq"))


def reference(parent: str, seconds: float) -> dict[str, float]:
    """The same of one parent: of what is in its chain."""
    group = next(number for number, parents in enumerate(TOGETHER) if parent in parents)
    chain = {member.name for member in members_of(parent)}
    found = {name: left for name, left in activities_after(seconds, group).items() if name in chain}
    assert found.keys() == chain
    return found


@pytest.mark.parametrize("group", TOGETHER, ids=lambda group: group[0])
def test_parents_asked_together_have_no_nuclide_in_common(group: list[str]) -> None:
    names = [member.name for parent in group for member in members_of(parent)]
    unstable = [name for name in names if rd.Nuclide(name).half_life("s") != float("inf")]
    assert len(set(unstable)) == len(unstable)


@pytest.mark.parametrize(("time", "unit"), TIMES)
@pytest.mark.parametrize("parent", PARENTS)
def test_chains_nobody_uses_agree_with_radioactivedecay(parent: str, time: float, unit: str) -> None:
    """Its high-precision mode; activities down to a million-millionth of the parent's are compared."""
    ours = chains.chain_activities(
        members_of(parent), {parent: quantity(STARTED, "Bq")}, quantity(time, unit)
    )
    for name, activity in reference(parent, quantity(time, unit).m_as("s")).items():
        if rd.Nuclide(name).half_life("s") != float("inf") and activity > STARTED * 1e-12:
            assert ours[name].m_as("Bq") == pytest.approx(activity, rel=1e-7), name


@pytest.mark.parametrize("parent", PARENTS)
def test_even_steps_agree_with_one_leap(parent: str) -> None:
    """Twelve months one by one, against radioactivedecay's year in one."""
    members = members_of(parent)
    rates = {member.name: member.rate for member in members}
    start = {parent: STARTED / rates[parent]}
    month = quantity(365.25 / 12, "day")
    *_, last = chains.chain_atoms_in_steps(members, start, month, 12)
    for name, activity in reference(parent, 365.25 * 86400).items():
        if rates[name] and activity > 1e-6:
            assert last[name] * rates[name] == pytest.approx(activity, rel=1e-7), name


def test_technetium_grows_to_its_published_ratio_over_molybdenum() -> None:
    """In transient equilibrium b·λ₂/(λ₂ − λ₁); 65.94 h, 6.015 h and b = 0.8773 by ICRP Publication 107."""
    grown = chains.in_growth(
        quantity(1, "MBq"),
        quantity(65.94, "h"),
        quantity(6.015, "h"),
        quantity(66, "h"),
        quantity(0.8773, ""),
    )
    left = decay.activity_after(quantity(1, "MBq"), quantity(65.94, "h"), quantity(66, "h"))
    assert (grown / left).m_as("") == pytest.approx(0.8773 * 65.94 / (65.94 - 6.015), rel=1e-3)


@pytest.mark.parametrize(
    ("activity", "time"),
    [(-1.0, 1.0), (float("nan"), 1.0), (float("inf"), 1.0), (1.0, -1.0), (1.0, float("nan"))],
)
def test_amounts_and_times_that_cannot_be_are_refused(activity: float, time: float) -> None:
    members = members_of("Co-60")
    with pytest.raises(OutOfRange):
        chains.chain_activities(members, {"Co-60": quantity(activity, "Bq")}, quantity(time, "year"))
    with pytest.raises(OutOfRange):
        list(chains.chain_atoms_in_steps(members, {"Co-60": activity}, quantity(time, "year"), 3))
