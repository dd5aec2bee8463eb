"""A skill that is asked for has to do with the practical: both use some of the same things.

Why: whoever leads must be signed off for what can hurt here. The next name in the list keeps the right people
out and lets the wrong ones in, and the page looks as careful as before.

Wrong:
    skills:
      lighting:
        title: Lighting a burner
        aim: Light it well.
        good_looks_like: [The match comes first.]
        kit: [gas-burner, taper]
        steps:
          - {do: "Light the {gas-burner}.", by: teacher, takes: 1 min, lights: gas-burner}
        sign_off: [Does it once.]
        lasts: 12 months
        review: {version: "1", last: 2025-09-02, written_by: author, approved_by: approver, due: 2026-09-01}
    source bench: {needs: {skills: lighting}}
    timetable: {1: (left out)}

Right:
    skills:
      counting:
        title: Counting
        aim: Count well.
        good_looks_like: [The tube stands still.]
        kit: [pulse-counter, source-stand, taper]
        steps:
          - {do: "Try the {pulse-counter}.", by: teacher, takes: 1 min, measures: counts}
        sign_off: [Does it once.]
        lasts: 12 months
        review: {version: "1", last: 2025-09-02, written_by: author, approved_by: approver, due: 2026-09-01}
    source bench: {needs: {skills: counting}}
    timetable: {1: (left out)}

Whose: this handbook.
"""

from collections.abc import Iterable, Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import can_hurt
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.kit import Item

ID = "skill-is-used"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a skill is asked for where it is used")
ENOUGH = 2
"""Rules, towels and tapes are everywhere: one of them in common says nothing."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every skill the practical asks for that lists kit, against the kit of the practical."""
    practical, book = lesson.practical, lesson.book
    ours = _tools(lesson, practical.items)
    for index, name in enumerate(practical.needs.skills):
        skill = book.skills.get(name)
        theirs = _tools(lesson, skill.kit) if skill is not None else {}
        if not theirs or _is_common(lesson, ours, theirs):
            continue
        yield Problem(
            practical.at("needs", "skills", index),
            f"{name} is asked for, and has hardly anything in common with the practical",
            found=f"in common: {', '.join(sorted(ours.keys() & theirs.keys())) or 'nothing'}",
            needed=f"a skill with one of {', '.join(sorted(theirs))}, or with what can hurt here",
            mend="name the skill that is used here, or list under the skill's kit what it is done with",
            whose=RULE,
            related=((skill.spot, "the skill"),) if skill else (),
        )


def _tools(lesson: Lesson, ids: Iterable[str]) -> dict[str, Item]:
    """The items among some ids but for what is worn, which goes with nearly every skill."""
    kit = lesson.book.kit
    return {name: kit[name] for name in ids if name in kit and kit[name].worn is None}


def _is_common(lesson: Lesson, ours: dict[str, Item], theirs: dict[str, Item]) -> bool:
    shared = ours.keys() & theirs.keys()
    return (
        len(shared) >= ENOUGH
        or any(ours[name].hazards for name in shared)
        or bool(_dangers(lesson, ours.values()) & _dangers(lesson, theirs.values()))
    )


def _dangers(lesson: Lesson, items: Iterable[Item]) -> set[str]:
    """What a skill may be about, whatever the thing is called that has it."""
    return {
        word
        for item in items
        for word, has in (
            ("a laser", item.laser_class),
            ("a cylinder", item.cylinder),
            ("what turns to gas", item.turns_to_gas),
            ("flammable vapour", item.flammable_vapour),
            ("high voltage", item.output is not None and can_hurt(lesson, item.output)),
        )
        if has
    }
