"""No voltage is used that is over the limit, or more than the supply can give.

Why: insulation, distances and leads were chosen for a voltage. A number above what the supply can give is a
slip, or was written for another supply.

Wrong:
    high tension bench:
      numbers:
        working voltage: {value: 6 kV}
    kit:
      high-supply: {output: {greatest_voltage: 6 kV}}

Right:
    high tension bench:
      numbers:
        working voltage: {value: 5000 V}

Whose: the department's own rule; what a supply can give is physics.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import size_of, voltages_used
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps, whose
from clampstand.units import is_over

ID = "supply-voltage"
SEVERITY = Severity.STOP
LIMIT = "electrical.voltage"
REACH = Whose(Layer.PHYSICS, "a supply gives no more than its greatest voltage")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every voltage declared for a circuit or a switch, against the limit and against the supply."""
    for supply, name, voltage, spot in voltages_used(lesson):
        item = lesson.book.kit.get(supply)
        output = item.output if item is not None else None
        so = {"current": output.current, "drive": output.drive} if output else {}
        limit = lesson.limit(LIMIT, **so)
        if voltage.kind != "voltage":
            message = f"{name} of {supply} is {voltage}, which is no voltage"
            yield Problem(spot, message, str(voltage), "a voltage", "write it like 4.5 kV", REACH)
        elif output is not None and is_over(size_of(voltage), size_of(output.greatest_voltage)):
            yield Problem(
                spot,
                f"{name}: {voltage} is more than {supply} can give",
                found=str(voltage),
                needed=f"at most {output.greatest_voltage}",
                mend="write the voltage that is used, or name the supply that gives it",
                whose=REACH,
                related=((item.at("output", "greatest_voltage"), "what it can give"),) if item else (),
            )
        elif limit is not None and not keeps(size_of(voltage), limit):
            yield Problem(
                spot,
                f"{name}: {voltage} from {supply} is over the limit",
                found=str(voltage),
                needed=limit.in_words,
                mend="use less",
                whose=whose(limit),
            )
