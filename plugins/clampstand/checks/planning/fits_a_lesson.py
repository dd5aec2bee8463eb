"""A practical takes no longer than two lessons of the department.

Why: the day sheet lays lessons side by side by the department's lesson. If that is written a tenth as long as
it is, two lessons in one room no longer meet on paper, and sparks follow vapour into a room too soon.

Wrong:
    department: {lesson: 6 min}

Right:
    department: {lesson: 0.5 h}

Whose: this handbook; a double lesson is the longest that timetables hold, which is common practice.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_over

ID = "fits-a-lesson"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a practical is done within a double lesson")
LESSONS = 2


def check(lesson: Lesson) -> Iterator[Problem]:
    """The time a practical is given, against the department's lesson."""
    practical, department = lesson.practical, lesson.book.department
    if is_over(practical.lesson.value, LESSONS * department.lesson.value):
        yield Problem(
            practical.at("lesson"),
            f"{practical.id} takes {practical.lesson}, and a lesson here lasts {department.lesson}",
            found=str(practical.lesson),
            needed=f"no more than {LESSONS} lessons of {department.lesson}",
            mend="look at the lesson of the department, or part the practical in two",
            whose=RULE,
            related=((department.at("lesson"), "the department's lesson"),),
        )
