"""A practical with sources, high voltage or gas names the skill its leader must be signed off for.

Why: what can hurt is not learnt from a page. Where the department has a skill for it, whoever leads the
practical has shown that they have it.

Wrong:
    skills:
      holding:
        title: Holding a source
        aim: Hold it well.
        good_looks_like: [The hand is far away.]
        steps:
          - {do: Take it out., by: teacher, takes: 1 min, takes_out: source}
          - {do: Put it back., by: teacher, takes: 1 min, puts_back: source}
        sign_off: [Does it once.]
        lasts: 12 months
        review: {version: "1", last: 2025-09-02, written_by: author, approved_by: approver, due: 2026-09-01}

Right:
    skills:
      reading:
        title: Reading a scale
        aim: Read it well.
        good_looks_like: [The eye is level.]
        steps:
          - {do: Read it., by: teacher, takes: 1 min, measures: a length}
        sign_off: [Does it once.]
        lasts: 12 months
        review: {version: "1", last: 2025-09-02, written_by: author, approved_by: approver, due: 2026-09-01}

Whose: the department's own rule; competence is a duty of law for such work in most places.
"""

from collections.abc import Callable, Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.skill import Skill

ID = "skills-named"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "what can hurt is led by somebody signed off for it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each sort of danger for which the department has a skill, against the skills the practical asks for."""
    practical, book = lesson.practical, lesson.book
    for what, teaches in _asked(lesson):
        fit = [skill.id for skill in book.skills.values() if teaches(skill)]
        if fit and not set(fit) & set(practical.needs.skills):
            yield Problem(
                practical.at("needs"),
                f"the practical uses {what} and asks for no skill in it",
                found=f"skills: {', '.join(practical.needs.skills) or 'none'}",
                needed=" or ".join(fit),
                mend="write it under needs, skills",
                whose=RULE,
                related=((book.skills[fit[0]].spot, "the skill"),),
            )


def _asked(lesson: Lesson) -> Iterator[tuple[str, Callable[[Skill], bool]]]:
    """What a practical uses, and what a skill in it is known by: by what its steps do, never by its name."""
    kit = lesson.book.kit
    items = [kit[item] for item in lesson.practical.items if item in kit]
    if any(slot.form != "object" for slot in lesson.practical.sources):
        yield "a source", lambda skill: any(step.takes_out for step in skill.steps)
    if next(dangerous_supplies(lesson), None) is not None:
        yield "high voltage", lambda skill: any(step.discharges for step in skill.steps)
    if any(item.turns_to_gas for item in items):
        yield "what turns to gas", lambda skill: any(i in kit and kit[i].turns_to_gas for i in skill.kit)
    if any(item.cylinder for item in items):
        yield "a gas cylinder", lambda skill: any(i in kit and kit[i].cylinder for i in skill.kit)
