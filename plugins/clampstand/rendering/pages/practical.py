"""The teacher's page of a practical: may I run it, what do I say and do, what will I see."""

from markupsafe import Markup

from clampstand.calculators.dose_context import doses_in_context
from clampstand.calculators.sheet import Sheet
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.checks.supplies import can_hurt_in
from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Expectation, Fault, Phase, Practical
from clampstand.rendering.cards.emergency import calls
from clampstand.rendering.contents import Contents
from clampstand.rendering.diagrams.bench import bench_of
from clampstand.rendering.diagrams.circuit import circuits_of
from clampstand.rendering.diagrams.plots import pictures_of
from clampstand.rendering.key_numbers import key_numbers
from clampstand.rendering.live.catalogue import panels_of
from clampstand.rendering.margins import margins
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.ladder import LEVELS, ladder
from clampstand.rendering.pages.making import made, search_words
from clampstand.rendering.prose import plain, quotes_of
from clampstand.rendering.readiness import against
from clampstand.rendering.terms import with_terms
from clampstand.rendering.titles import has_class, titles_of
from clampstand.rendering.wall import wall_of
from clampstand.units import Quantity

_DOSES = ("dose", "skin dose", "dose rate", "absorbed dose", "absorbed dose rate")


def practical_page(practical: Practical, contents: Contents) -> SitePage:
    """The teacher's page."""
    sheet = contents.sheets[practical.id]
    page = made(
        f"practicals/{practical.id}.html",
        practical.title,
        "practical",
        contents,
        about=practical,
        search=search_entry(practical, contents),
        practical=practical,
        sheet=sheet,
        quotes=quotes_of(practical, contents.book),
        against=against(practical, contents),
        key_numbers=key_numbers(practical, contents),
        has_wall_sheet=wall_of(practical) is not None,
        phases=phases_of(practical),
        titles=titles_of(practical),
        has_class=has_class(practical),
        levels=LEVELS,
        rungs=ladder(practical, contents),
        lengths=lengths(sheet),
        rooms=contents.rooms_of(practical, "run"),
        faults=faults_of(practical, contents.book),
        margins=list(margins(practical, ("set_up", "run", "clear_up"))),
        drawings=drawings(practical, contents),
        over_drawings=over_drawings(practical, contents.book),
        pictures=pictures_of(practical, contents.book),
        calls=calls((e for e in map(contents.book.emergencies.get, practical.emergency) if e), contents.book),
        panels=panels_of(practical, contents.book),
        worked_out=[outcome for outcome in sheet.told_once if not _is_dose(outcome)],
        dose_table=doses_in_context(_worked_numbers(sheet), contents.book),
        doses=[outcome for outcome in sheet.numbers if _is_dose(outcome)],
    )
    return with_terms(page, contents.words)


def phases_of(practical: Practical) -> tuple[Phase, ...]:
    """The phases that have steps. Each numbers its own from 1, as messages and the card do."""
    return tuple(phase for phase in PHASES if practical.steps(phase))


def lengths(sheet: Sheet) -> dict[Phase, Quantity]:
    """How long each phase takes that has steps."""
    return {phase: clocked[-1].ends for phase, clocked in sheet.clocks.items() if clocked}


_MAKE_SAFE = {
    "mains": "Dial to zero, switch off, wait, discharge. Then:",
    "belt": "Motor off, wait, discharge. Then:",
}
"""What is said before a fix that touches what a supply has made live, by what drives the supply."""


def faults_of(practical: Practical, book: Book) -> list[tuple[Fault, str]]:
    """The faults, the common ones first, each with what makes its fix safe: empty where nothing has to be."""
    faults = sorted(practical.when_it_fails, key=lambda fault: not fault.common)
    return [(fault, _make_safe(fault, practical, book)) for fault in faults]


def _make_safe(fault: Fault, practical: Practical, book: Book) -> str:
    """What is said before a fix that touches a supply which can hurt, or what such a supply feeds."""
    for circuit in practical.circuits:
        item = book.kit.get(circuit.supply)
        output = item.output if item else None
        if not {circuit.supply, *circuit.feeds} & set(fault.touches):
            continue
        if output is None:
            return _MAKE_SAFE["mains"]
        if can_hurt_in(book, output):
            return _MAKE_SAFE[output.drive]
    return ""


def search_entry(practical: Practical, contents: Contents) -> SearchWords:
    """What search knows: the words people type, the aim, the kit under all its names, the hazards."""
    book, quotes = contents.book, quotes_of(practical, contents.book)
    kit = [book.kit[item] for item in sorted(practical.items) if item in book.kit]
    hazards = [book.hazards[h.hazard].name for h in practical.hazards if h.hazard in book.hazards]
    return search_words(
        plain(practical.aim, quotes),
        *practical.search,
        *practical.topics,
        *(word for item in kit for word in (item.name, *item.also)),
        *hazards,
        *(plain(fault.seen, quotes) for fault in practical.when_it_fails),
        *(plain(fault.cause, quotes) for fault in practical.when_it_fails),
        tags=("practical", practical.subject),
        weight=4.0,
    )


def drawings(practical: Practical, contents: Contents) -> list[Markup]:
    """Where to stand and how it is wired, as far as the definitions say."""
    drawn = (bench_of(practical, contents.book), *circuits_of(practical, contents.book))
    return [Markup(drawing) for drawing in drawn if drawing]


def over_drawings(practical: Practical, book: Book) -> str:
    """What stands over the drawings: what they show."""
    stands, wired = bool(bench_of(practical, book)), bool(practical.circuits)
    if stands and wired:
        return "Where to stand, and how it is wired"
    return "How it is wired" if wired else "Where to stand"


def _worked_numbers(sheet: Sheet) -> list[Worked]:
    """Every number that could be worked out, in the order of the page."""
    return [n for _, found in sheet.numbers if not isinstance(found, CannotWork) for n in found]


def _is_dose(outcome: tuple[Expectation, tuple[Worked, ...] | CannotWork]) -> bool:
    """Whether a worked-out entry speaks of dose, which has a place of its own on the page."""
    result = outcome[1]
    return not isinstance(result, CannotWork) and any(number.kind in _DOSES for number in result)
