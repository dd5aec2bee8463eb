"""What a lesson needs prepared can be done between the technician's start and the lesson.

Why: a preparation that begins with too little time is hurried or left out, and what is left out is the test
of the counter and the look at the leads.

Wrong:
    source bench:
      prepare:
        1: {takes: 56 min}

Right:
    source bench:
      prepare:
        1: {takes: 55 min}

Whose: this handbook: better found the day before.
"""

import math
from collections.abc import Iterator

from clampstand.calculators.day import at_once, in_words, lessons_to_come, set_up_length, start_by
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "prep-fits-before"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "preparing begins no earlier than the technician's day")


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come, against the hour the first technician starts."""
    starts = book.department.technician_starts
    if starts is None:
        return
    for lesson in lessons_to_come(book):
        begin = start_by(lesson, book)
        if begin.date() < lesson.date or begin.time() < starts:
            needs = math.ceil(set_up_length(lesson, book).m_as("min"))
            there = (lesson.start.hour - starts.hour) * 60 + lesson.start.minute - starts.minute
            yield Problem(
                lesson.at("start"),
                f"{in_words(lesson)} {at_once(lesson)}: {needs} min to prepare it, {max(there, 0)} there",
                found=f"begin by {begin:%H:%M}; the technician starts at {starts:%H:%M}",
                needed=f"begin at {starts:%H:%M} or later",
                mend="prepare it the day before, or swap it with a later period",
                whose=RULE,
            )
