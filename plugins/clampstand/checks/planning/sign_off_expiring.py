"""A sign-off that ends soon is told while there is time to renew it.

Why: whoever finds out on the morning of the lesson changes the lesson, or does not look.

Wrong:
    sign-offs:
      1: {date: 2025-02-15}

Right:
    sign-offs:
      1: {date: 2025-02-16}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.calculators.sign_offs import newest_sign_offs
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "sign-off-expiring"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "what was learnt is refreshed before it fades")


def check_book(book: Book) -> Iterator[Problem]:
    """The newest sign-off of everybody for everything that ends within the time of warning."""
    today, before = book.department.computed_for, book.department.warn_before
    if before is None:
        return
    for held in newest_sign_offs(book):
        if held.ends is not None and today <= held.ends <= before.after(today):
            entry = held.entry
            yield Problem(
                entry.at("date"),
                f"the sign-off of {entry.person} for {entry.subject[1]} ends on {held.ends}",
                found=f"level {entry.level} on {entry.date}",
                needed=f"renewed by {held.ends}",
                mend="rehearse it and enter a new sign-off",
                whose=RULE,
            )
