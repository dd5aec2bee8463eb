"""The tool that grips a source is long enough to keep the hand away.

Why: the hand distance is only as long as the forceps. With short ones the hand is close even when
everything is done as written.

Wrong:
    source bench:
      kit:
        1: {item: short-forceps}
      run:
        3: {do: Take it out., holds_with: short-forceps}
        6: {do: Put it back., holds_with: short-forceps}

Right:
    source bench:
      kit:
        1: {item: just-long-forceps}
      run:
        3: {do: Take it out., holds_with: just-long-forceps}
        6: {do: Put it back., holds_with: just-long-forceps}

Whose: the department's own rule; the law limits the dose, not the length of forceps.
"""

from collections.abc import Iterator

from clampstand.checks.distances import declared
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.limits import keeps, whose
from clampstand.model.kit import Item
from clampstand.units import is_under

ID = "forceps-too-short"
SEVERITY = Severity.STOP
LIMITS = ("radiation.forceps-length", "radiation.hand-to-source")
REACH = Whose(Layer.HANDBOOK, "a hand can be no farther from a source than the tool is long")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each tool that grips a source in some step, once."""
    tools: dict[str, Spot] = {}
    for moment in lesson.moments:
        if moment.step.holds_with and moment.during.out:
            tools.setdefault(moment.step.holds_with, lesson.spot(moment.ref, "holds_with"))
    for tool_id, spot in tools.items():
        tool = lesson.book.kit.get(tool_id)
        if tool is not None and tool.grips_sources:
            yield from _too_short(lesson, tool, spot)


def _too_short(lesson: Lesson, tool: Item, spot: Spot) -> Iterator[Problem]:
    if tool.length is None:
        mend = f"measure {tool.name} and write its length in the kit"
        message = f"{tool.name} grips a source and nobody wrote how long it is"
        yield Problem(spot, message, "no length", "a length", mend, REACH, ((tool.spot, "listed here"),))
        return
    for key in LIMITS:
        limit = lesson.limit(key)
        if limit is not None and limit.amount is not None and not keeps(tool.length.low, limit):
            yield Problem(
                spot,
                f"{tool.name}: {tool.length} long, too short to hold a source with",
                found=str(tool.length),
                needed=limit.in_words,
                mend="take a longer tool of the kit",
                whose=whose(limit),
                related=((tool.spot, "listed here"),),
            )
            return
    for kept in declared(lesson, "hands"):
        if kept.amount.kind == "length" and is_under(tool.length.low, kept.amount.low):
            yield Problem(
                spot,
                f"{tool.name}: {tool.length} long, and {kept.where} is {kept.amount}",
                found=str(tool.length),
                needed=f"at least {kept.amount}",
                mend=f"take a longer tool, or declare a {kept.where} it can keep",
                whose=REACH,
                related=((kept.spot, "declared here"),),
            )
