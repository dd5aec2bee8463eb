"""A source is moved only with a tool made to grip sources, or by a gloved hand where the register allows it.

Why: a finger on a source gets four hundred times the dose rate at 100 mm, and a source that slips out of
tweezers is on the floor.

Wrong:
    source bench:
      run:
        6: {do: Put it back., holds_with: (left out)}

Right:
    source bench:
      run:
        6: {do: Put it back., holds_with: long-forceps}

Whose: the department's own rule; the distance it keeps is the one in force for hands.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import whose
from clampstand.timeline import Moment

ID = "source-held-with-tool"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "no hand touches a source")
MOVES = {
    "takes_out": "takes {} out",
    "picks_up": "picks {} up",
    "sets_down": "sets {} down",
    "puts_back": "puts {} back",
}


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that moves a source, once a source: with what, and whether that grips sources."""
    for moment in lesson.moments:
        met: set[str] = set()
        for how, words in MOVES.items():
            for slot in getattr(moment.step, how):
                if slot in met:
                    continue
                by_tool = needs_tool(lesson, slot)
                fault = _fault(lesson, moment, how, slot) if by_tool else _bare(lesson, moment)
                if fault:
                    met.add(slot)
                    yield _problem(lesson, moment, how, f"{words.format(slot)} {fault}")


def _fault(lesson: Lesson, moment: Moment, how: str, slot: str) -> str:
    """What is wrong with how a source is held while it is moved; nothing where it is held well."""
    tool_id = moment.step.holds_with
    if tool_id is None:
        before = moment.before.out.get(slot)
        # A tool that took it out still holds it; what stands in a holder must be gripped again.
        grips_anew = how in ("takes_out", "picks_up") or (before is not None and before.standing)
        return "by hand" if grips_anew else ""
    tool = lesson.book.kit.get(tool_id)
    return (
        "" if tool is None or tool.grips_sources else f"with {tool.name}, which is not made to grip sources"
    )


def _bare(lesson: Lesson, moment: Moment) -> str:
    """Who moves what only a gloved hand may with nothing on the hands; nothing where all wear gloves."""
    kit = lesson.book.kit
    gloved = {item_id for item_id, item in kit.items() if item.worn is not None and item.worn.on == "hands"}
    bare = sorted(person for person in moment.step.doers if not moment.during.wears(person) & gloved)
    return f"with the bare hands of the {', '.join(bare)}" if bare else ""


def _problem(lesson: Lesson, moment: Moment, how: str, words: str) -> Problem:
    if "bare hands" in words:
        return Problem(
            lesson.spot(moment.ref, how),
            f"{moment.ref} {words}",
            found="no gloves",
            needed="something worn on the hands",
            mend=f"put gloves on before {moment.ref}",
            whose=RULE,
        )
    tools = [item for item in sorted(lesson.practical.items) if _grips(lesson, item)]
    limit = lesson.limit("radiation.hand-to-source")
    return Problem(
        lesson.spot(moment.ref, "holds_with" if moment.step.holds_with else how),
        f"{moment.ref} {words}",
        found=moment.step.holds_with or "no tool",
        needed="a tool that grips sources",
        mend=f"write holds_with: {tools[0]}" if tools else "put forceps on the kit list and write holds_with",
        whose=whose(limit) if limit else RULE,
    )


def _grips(lesson: Lesson, item_id: str) -> bool:
    return item_id in lesson.book.kit and lesson.book.kit[item_id].grips_sources
