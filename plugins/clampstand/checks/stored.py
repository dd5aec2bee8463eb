"""What a dangerous supply and everything connected to it store, against a limit."""

from collections.abc import Iterator
from typing import Literal

from clampstand.calculators.circuits import stored_charge_and_energy
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Problem
from clampstand.limits import keeps, whose


def over_the_limit(lesson: Lesson, key: str, what: Literal["charge", "energy"]) -> Iterator[Problem]:
    """The problem of every supply that stores more than a limit, once a supply."""
    for used, output in dangerous_supplies(lesson):
        limit = lesson.limit(key, current=output.current)
        if limit is None or not used.circuits:
            continue
        try:
            charge, energy = stored_charge_and_energy(used.circuits[0], lesson.practical, lesson.book)
        except CannotWork:
            continue  # a supply nothing is known of is the matter of another rule
        worked = charge if what == "charge" else energy
        if not keeps(worked.value, limit):
            inputs = ", ".join(f"{entry.name} {entry.value}" for entry in worked.inputs)
            yield Problem(
                lesson.practical.at("circuits", lesson.practical.circuits.index(used.circuits[0])),
                f"{worked.shown} of {what} stay in {used.item.name} and what it feeds",
                found=f"{worked.shown} ({worked.formula}; {inputs})",
                needed=limit.in_words,
                mend="connect less capacitance, or use a supply of lower voltage",
                whose=whose(limit),
            )
