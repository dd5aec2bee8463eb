"""The running clock: when each step begins, from the minutes of the steps before it."""

from dataclasses import dataclass

from clampstand.model.practical import Phase, Practical
from clampstand.model.step import Step
from clampstand.units import Quantity, added_up, number_in, q, quantity


@dataclass(frozen=True, slots=True)
class Clocked:
    """A step with the time it begins and ends, from the start of its phase."""

    step: Step
    begins: Quantity
    ends: Quantity


def clock(steps: tuple[Step, ...]) -> tuple[Clocked, ...]:
    """The steps with their times; each takes its longest where a range is given."""
    clocked: list[Clocked] = []
    minutes, now = 0.0, q("0 min")
    for step in steps:
        minutes += number_in(step.takes.high, "min")
        later = quantity(minutes, "min")
        clocked.append(Clocked(step, now, later))
        now = later
    return tuple(clocked)


def phase_length(practical: Practical, phase: Phase) -> Quantity:
    """How long a phase takes."""
    return added_up((step.takes.high for step in practical.steps(phase)), "min")
