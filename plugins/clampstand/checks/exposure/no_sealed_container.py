"""What turns to gas is never shut in a gas-tight container.

Why: a handful of dry ice in a closed bottle reaches the pressure at which the bottle bursts within minutes. A
container of which nobody wrote how it closes counts as tight.

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

from clampstand.checks.gas import about
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
        if container is None or (container.container and container.container.seal != "gas-tight"):
            continue
        here = {*moment.step.handles, *moment.step.brings_in}
        moved = [item for item in about(lesson, moment) if item in here]
        if moved:
            how = "gas-tight" if container.container else "of a closure nobody wrote down"
            yield Problem(
                lesson.spot(moment.ref, "puts_in"),
                f"{moment.ref} shuts {', '.join(moved)} in {container.id}, which is {how}",
                found=f"{container.id}: {how}",
                needed="a container with a loose lid",
                mend="name a container whose lid lies loose, and say so in the kit",
                whose=RULE,
                related=((container.spot, "the container is described here"),),
            )
