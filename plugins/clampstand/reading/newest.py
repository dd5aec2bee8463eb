"""What the records say of sources and supplies goes into them: the newest record holds."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, TypeVar

from clampstand.findings import Route, Spot
from clampstand.model.book import Book
from clampstand.model.department import Source, SupplyUnit
from clampstand.model.record import FaultReport, Inspection, LeakTestDone, SourceCount

R = TypeVar("R", LeakTestDone, Inspection, SourceCount)


def with_the_newest(book: Book) -> Book:
    """The book with every source and supply as its newest records leave it.

    A row supersedes what the register says when it is of the same day or later. Of two tests on one day the
    one that failed holds. What has a fault nobody has cleared is out of use.
    """
    faults = {fault.thing: fault for fault in book.faults.values() if fault.cleared is None}
    return replace(
        book,
        sources={name: _source(one, book, faults.get(name)) for name, one in book.sources.items()},
        supplies={name: _supply(one, book, faults.get(name)) for name, one in book.supplies.items()},
    )


def _source(source: Source, book: Book, fault: FaultReport | None) -> Source:
    values: dict[str, Any] = {}
    written: dict[Route, Spot] = {}
    test = newest([row for row in book.leak_tests.values() if row.source == source.id])
    if test is not None and test.date >= source.leak_test.last:
        values["leak_test"] = source.leak_test.model_copy(update={"last": test.date, "result": test.result})
        written[("leak_test", "last")] = test.at("date")
        written[("leak_test", "result")] = test.at("result")
    seen = newest([row for row in book.source_counts.values() if row.source == source.id and row.seen])
    if seen is not None and seen.date >= source.last_seen:
        values["last_seen"] = seen.date
        written[("last_seen",)] = seen.at("date")
    if fault is not None and source.status == "in use":
        values["status"] = "quarantined"
        written[("status",)] = fault.at("fault")
    return source.superseded(values, written) if values else source


def _supply(unit: SupplyUnit, book: Book, fault: FaultReport | None) -> SupplyUnit:
    values: dict[str, Any] = {}
    written: dict[Route, Spot] = {}
    test = newest([row for row in book.inspections.values() if row.unit == unit.id])
    if test is not None and test.date >= unit.tested:
        values["tested"] = test.date
        written[("tested",)] = test.at("date")
        if test.measured_current is not None:
            values["measured_current"] = test.measured_current
            written[("measured_current",)] = test.at("measured current")
        if test.result == "fail":
            values |= _out_of_use(unit)
            written[("status",)] = test.at("result")
    if fault is not None:
        values |= _out_of_use(unit)
        written[("status",)] = fault.at("fault")
    return unit.superseded(values, written) if values else unit


def _out_of_use(unit: SupplyUnit) -> Mapping[str, str]:
    return {"status": "faulty"} if unit.status == "in use" else {}


def newest(rows: list[R]) -> R | None:
    """The last row by date; of one day, one that failed before one that passed."""
    return max(rows, key=lambda row: (row.date, getattr(row, "result", "") == "fail"), default=None)
