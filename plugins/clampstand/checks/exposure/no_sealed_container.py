"""What turns to gas is never shut in a gas-tight container.

Why: a handful of dry ice in a closed bottle reaches the pressure at which the bottle bursts within minutes.

Wrong:
    cold bench:
      run:
        6: {puts_in: steel-flask}

Right:
    cold bench:
      run:
        6: {puts_in: cold-box}

Whose: physics; carriage regulations ask for vented packages for the same reason.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "no-sealed-container"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "solid that turns to gas in a closed vessel bursts it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that puts something that turns to gas into a container."""
    kit = lesson.book.kit
    for moment in lesson.moments:
        container = kit.get(moment.step.puts_in or "")
        seal = container.container.seal if container and container.container else None
        moved = [
            i for i in (*moment.step.handles, *moment.step.brings_in) if i in kit and kit[i].turns_to_gas
        ]
        if seal == "gas-tight" and moved:
            yield Problem(
                lesson.spot(moment.ref, "puts_in"),
                f"{moment.ref} shuts {', '.join(moved)} in {moment.step.puts_in}, which is gas-tight",
                found=f"{moment.step.puts_in}: gas-tight",
                needed="a container with a loose lid",
                mend="name a container whose lid lies loose",
                whose=RULE,
            )
