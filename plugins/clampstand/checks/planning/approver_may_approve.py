"""A practical is approved by somebody who may approve its hazards, or else its subject.

Why: whoever approves answers for it. A head of department who has never seen a wipe test does not see what is
missing from one.

Wrong:
    department: {approvers: {radiation: supervisor}}

Right:
    department: {approvers: {radiation: [supervisor, approver]}}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose

ID = "approver-may-approve"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "the department says who may approve what")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The approval of the practical and of each of its exceptions."""
    practical = lesson.practical
    what, allowed = _allowed(lesson)
    if not allowed:
        return
    approvals: list[tuple[str, Spot]] = [
        (practical.review.approved_by, practical.at("review", "approved_by")),
        *(
            (exception.approved_by, practical.at("exceptions", index, "approved_by"))
            for index, exception in enumerate(practical.exceptions)
        ),
    ]
    for role, spot in approvals:
        if role not in allowed:
            yield Problem(
                spot,
                f"{role} approved this, and may not approve {what}",
                found=f"approved_by: {role}",
                needed=" or ".join(allowed),
                mend=f"have it approved by {allowed[0]}",
                whose=RULE,
                related=((lesson.book.department.at("approvers"), "who may"),),
            )


def _allowed(lesson: Lesson) -> tuple[str, tuple[str, ...]]:
    """What has to be approved, and who may: by the hazards where the department says so, else the subject."""
    approvers, hazards = lesson.book.department.approvers, lesson.book.hazards
    for entry in lesson.practical.hazards:
        family = hazards[entry.hazard].family if entry.hazard in hazards else ""
        if family in approvers:
            return family, approvers[family]
    subject = lesson.practical.subject
    return subject, approvers.get(subject, ())
