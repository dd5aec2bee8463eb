"""The card of a practical: side one for before the lesson, side two for the lesson itself."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from clampstand.calculators.clock import phase_length
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.model.practical import PHASES, Practical
from clampstand.rendering.cards.emergency import panel
from clampstand.rendering.cards.finishing import Card, finished
from clampstand.rendering.cards.kit import kit_by_place, usual_room
from clampstand.rendering.cards.steps import pauses, points, usual_doer
from clampstand.rendering.contents import Contents
from clampstand.rendering.key_numbers import key_numbers
from clampstand.rendering.prose import Quotes, in_a_row, plain, quotes_of, unbroken
from clampstand.rendering.readiness import against
from clampstand.rendering.templating import sentence
from clampstand.rendering.titles import titles_of
from clampstand.rendering.wall import wall_of
from clampstand.units import number_in

_DOSES = ("dose", "absorbed dose")
_TO_SKIN = ("skin dose",)
_WORN_SIGNS = {
    "eyes": ("eye-protection", "eye protection"),
    "face": ("eye-protection", "eye protection"),
    "ears": ("ear-protection", "ear protection"),
}
_COLD_GLOVES = ("insulating-gloves", "gloves against cold")
"""Of gloves only those against cold have a drawn sign; others are in the kit list and the steps."""


@dataclass(frozen=True, slots=True)
class Signed:
    """A sign of the banner and the words beside it."""

    sign: str
    words: str


@dataclass(frozen=True, slots=True)
class Expected:
    """Something to see or measure: what, how much as printed, and how far a good result may lie from it."""

    what: str
    value: str
    within: str = ""


def practical_card(practical: Practical, contents: Contents) -> Card:
    """The card of a practical, two sides."""
    quotes = quotes_of(practical, contents.book)
    sheet = contents.sheets[practical.id]
    kit = kit_by_place(sheet.totals, contents)
    return finished(
        f"cards/{practical.id}.html",
        practical.title,
        "practical",
        contents,
        practical,
        practical=practical,
        sheet=sheet,
        quotes=quotes,
        against=against(practical, contents),
        banner=banner(practical, contents),
        key_numbers=key_numbers(practical, contents),
        kit=kit,
        usual_room=usual_room(kit),
        preparation=preparation(practical),
        usual_doer={phase: usual_doer(practical.steps(phase)) for phase in PHASES},
        pauses={phase: pauses(practical.steps(phase)) for phase in PHASES},
        rooms=contents.rooms_of(practical, "run"),
        expected=list(expected(practical, contents, quotes)),
        dose=dose_sentence(worked(practical, contents)),
        points=points(practical.run),
        titles=titles_of(practical),
        emergencies=panel(practical.emergency, contents, quotes),
        has_wall_sheet=wall_of(practical) is not None,
    )


def banner(practical: Practical, contents: Contents) -> list[Signed]:
    """The hazards by their signs, hazards of one sign together, and then what is worn."""
    by_sign: dict[str, list[str]] = {}
    for here in practical.hazards:
        hazard = contents.book.hazards.get(here.hazard)
        if hazard is not None:
            by_sign.setdefault(hazard.sign, []).append(hazard.name)
    for sign, name in _worn(practical, contents):
        names = by_sign.setdefault(sign, [])
        if name not in names:
            names.append(name)
    return [Signed(sign, sentence(in_a_row(names))) for sign, names in by_sign.items()]


def _worn(practical: Practical, contents: Contents) -> Iterator[tuple[str, str]]:
    """The sign and the words of everything in the kit list that is worn on the body."""
    items = (contents.book.kit.get(line.item) for line in practical.kit)
    for worn in (item.worn for item in items if item is not None and item.worn is not None):
        if worn.on == "hands" and "cold" in worn.against:
            yield _COLD_GLOVES
        elif worn.on in _WORN_SIGNS:
            yield _WORN_SIGNS[worn.on]


def preparation(practical: Practical) -> str:
    """The preparation in one line to tick; its steps are on the preparation page."""
    steps = practical.steps("prepare")
    if not steps:
        return ""
    minutes = round(number_in(phase_length(practical, "prepare"), "min"))
    count = f"{len(steps)} steps" if len(steps) > 1 else "1 step"
    return f"Preparation done: {count}, {minutes}\u00a0min."


def expected(practical: Practical, contents: Contents, quotes: Quotes) -> Iterator[Expected]:
    """What will be seen, in the order it was written; doses stand in a sentence of their own."""
    results = contents.sheets[practical.id].told_once
    for entry in practical.expect:
        result = next(results)[1] if entry.compute else None
        title = plain(entry.see or entry.show or "", quotes)
        if isinstance(result, CannotWork):
            yield Expected(title, "not worked out: see the page")
        elif result is not None:
            yield from (
                Expected(
                    title if len(result) == 1 and title else number.title, number.shown, entry.within or ""
                )
                for number in result
                if not number.page_only and number.kind not in _DOSES + _TO_SKIN
            )
        else:
            number = practical.numbers.get(entry.at or "")
            yield Expected(title, unbroken(str(number.value)) if number else "", entry.within or "")


def dose_sentence(numbers: Sequence[Worked]) -> str:
    """The doses of the lesson in a sentence, and what the greatest compares to; doses to skin in another."""
    doses = [number for number in numbers if number.kind in _DOSES]
    to_skin = [number for number in numbers if number.kind in _TO_SKIN]
    if not doses:
        return _told(to_skin)
    greatest = max(doses, key=lambda number: number_in(number.value, doses[0].value.units))
    compared = greatest.note.split(". ", 1)[0].rstrip(".")
    sentences = (_told(doses), f"{compared}." if compared else "", _told(to_skin))
    return " ".join(sentence for sentence in sentences if sentence)


def _told(doses: Sequence[Worked]) -> str:
    """Doses of one quantity in one sentence, with how far the truth may lie from the last."""
    if not doses:
        return ""
    before, own, after = parted([number.title.split() for number in doses])
    told = ", ".join(f"{words} {number.shown}".strip() for words, number in zip(own, doses, strict=True))
    within = f" (within {doses[-1].within})" if doses[-1].within else ""
    return f"{' '.join([*before, told, *after])}{within}."


def parted(titles: Sequence[Sequence[str]]) -> tuple[list[str], list[str], list[str]]:
    """Titles parted into the words all begin with, what is each one's own, and the words all end with.

    >>> parted([["dose", "to", "hands", "today"], ["dose", "to", "the", "teacher", "today"]])
    (['dose', 'to'], ['hands', 'the teacher'], ['today'])
    """
    shortest = min(len(title) for title in titles)
    same = [len({title[i] for title in titles}) == 1 for i in range(shortest)]
    start = same.index(False) if False in same else shortest
    ends = [len({title[-1 - i] for title in titles}) == 1 for i in range(shortest - start)]
    end = ends.index(False) if False in ends else shortest - start
    first = titles[0]
    own = [" ".join(title[start : len(title) - end]) for title in titles]
    return list(first[:start]), own, list(first[len(first) - end :])


def worked(practical: Practical, contents: Contents) -> list[Worked]:
    """The worked numbers of a practical."""
    results = (result for _, result in contents.sheets[practical.id].numbers)
    return [number for result in results if not isinstance(result, CannotWork) for number in result]
