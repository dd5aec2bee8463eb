"""The curves of a practical, drawn from the numbers that its page works out."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

from markupsafe import Markup

from clampstand.calculators.activity_today import activity_today, nuclide_of
from clampstand.calculators.clock import phase_length
from clampstand.calculators.dose import emitter
from clampstand.calculators.given import number_given, source_given
from clampstand.calculators.progeny import COUNTED, atoms_landing, beta_activities, progeny_half_life
from clampstand.calculators.room_air import ROOM_TEMPERATURE, Gas, gas_by_room
from clampstand.calculators.worked import CannotWork
from clampstand.findings import Layer
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.days import written_day
from clampstand.model.practical import Practical
from clampstand.physics.decay import share_left
from clampstand.physics.gas import carbon_dioxide_density
from clampstand.physics.ionisation import share_gathered
from clampstand.physics.room_air import fraction_after, gas_release
from clampstand.rendering.diagrams.bench import distances
from clampstand.rendering.diagrams.curve import Axis, Ceiling, Line, Mark, plot
from clampstand.units import (
    KINDS,
    Formula,
    OutOfRange,
    Quantity,
    best_spelling,
    number_in,
    q,
    quantity,
    shown_best,
)

_POINTS = 40


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing with the words that stand under it."""

    caption: str
    svg: str

    @property
    def drawn(self) -> Markup:
        """The drawing, which is SVG of our own already."""
        return Markup(self.svg)


Drawer: TypeAlias = Callable[[Practical, Book, Mapping[str, str]], Iterator[Picture]]


def pictures_of(practical: Practical, book: Book) -> tuple[Picture, ...]:
    """The curves of what a practical asks to be computed, each once, in its order."""
    found: dict[str, Picture] = {}
    for entry in practical.expect:
        for draw in PLOTS.get(entry.compute or "", ()):
            for picture in _drawn(draw, practical, book, entry.given):
                found.setdefault(picture.caption, picture)
    return tuple(found.values())


def _drawn(draw: Drawer, practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """What can be drawn. A number that cannot be worked out is told of elsewhere on the page."""
    try:
        yield from draw(practical, book, given)
    except (CannotWork, OutOfRange):
        return


def _of_numbers(formula: Formula[Any], *numbers: float) -> float:
    """A formula on plain numbers in units that suit each other: a curve has many points."""
    return float(formula.body(*numbers))


def decay_of_source(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """Activity of a source from its reference date on, with today marked."""
    source = source_given(practical, book, given)
    today = activity_today(source, book)
    half_life = number_in(nuclide_of(source, book).half_life.value.value, "year")
    days = (book.department.computed_for - source.reference_date).days
    age = number_in(quantity(days, "day"), "year")
    span = max(age * 1.3, 20.0)
    spelling = best_spelling(source.activity.value, "activity")
    unit = KINDS["activity"].written[spelling]
    years = [span * n / _POINTS for n in range(_POINTS + 1)]
    start = number_in(source.activity.value, unit)
    line = [(t, start * _of_numbers(share_left, half_life, t)) for t in years]
    mark = Mark("today", (age, number_in(today.value, unit)))
    caption = f"Decay of {source.id} ({source.nuclide}) since {written_day(source.reference_date)}"
    across, upright = Axis("time since its reference date", "years"), Axis("activity", spelling)
    yield Picture(
        f"{caption}; today is {written_day(book.department.computed_for)}.",
        plot(caption, across, upright, [Line(source.id, tuple(line))], marks=[mark]),
    )


def rate_against_distance(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """Dose rate against distance, with the distances kept in the steps marked on it."""
    source = source_given(practical, book, given)
    known = emitter(source, book)
    near, far = q("10 mm"), q("5 m")
    spelling = best_spelling(known.rate_at(q("100 mm")), "dose rate")
    unit = KINDS["dose rate"].written[spelling]

    def rate(distance: Quantity) -> float:
        return number_in(known.rate_at(distance), unit)

    line = tuple((number_in(d, "m"), rate(d)) for d in (near, far))  # by factors it is straight
    kept = [d for d in distances(practical) if d.end in ("hands", "watchers") and near <= d.far <= far]
    marks = [Mark(f"{_WHO[d.end]}, {d.printed}", (number_in(d.far, "m"), rate(d.far))) for d in kept]
    title = f"Dose rate against distance from {source.id} today"
    yield Picture(
        f"{title}; both axes go by factors of ten. Gamma and X-rays only, from the bare source.",
        plot(title, Axis("distance", "m", True), Axis("dose rate", spelling, True), [Line(source.id, line)],
             marks=marks),
    )  # fmt: skip


_WHO = {"hands": "hand", "watchers": "watchers"}


def gas_against_time(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """Carbon dioxide in the first room of each phase against time, shut and ventilated, with the limits."""
    phases: set[str] = set()
    for gas in gas_by_room(practical, book):
        if gas.phase not in phases and gas.release is not None and gas.release.rate is not None:
            phases.add(gas.phase)
            yield _gas_in(gas, gas.release.rate.high, practical, book)


def _gas_in(gas: Gas, rate: Quantity, practical: Practical, book: Book) -> Picture:
    outdoor = book.department.outdoor_carbon_dioxide.value
    release = gas_release(rate, carbon_dioxide_density(ROOM_TEMPERATURE))
    length = number_in(phase_length(practical, gas.phase), "min")

    fixed = (number_in(outdoor, ""), number_in(release, "m**3/s"), number_in(gas.volume.low, "m**3"))

    def line(name: str, air_changes: Quantity) -> Line:
        minutes = [length * n / _POINTS for n in range(_POINTS + 1)]
        rate = number_in(air_changes, "1/s")
        after = (_of_numbers(fraction_after, fixed[0], *fixed, rate, 60 * t) for t in minutes)
        return Line(name, tuple((t, 1e6 * part) for t, part in zip(minutes, after, strict=True)))

    lines = [line("windows shut", q("0 per hour"))]
    needed = practical.needs.room.air_changes
    if needed is not None:
        lines.append(line(f"ventilated, {needed}", needed.low))
    title = f"Carbon dioxide in the {gas.room.name} while it turns to gas at {rate.m_as('kg/h'):g} kg/h"
    return Picture(
        f"{title}. Well mixed, nobody's breath counted.",
        plot(title, Axis("time", "min"), Axis("carbon dioxide", "ppm"), lines, _gas_limits(book)),
    )


def _ppm(fraction: Quantity) -> float:
    return number_in(fraction, "ppm")


def _gas_limits(book: Book) -> list[Ceiling]:
    keys = {"air.carbon-dioxide-15min": "15 min", "air.carbon-dioxide-8h": "8 h"}
    limits = {words: the_limit(key, book) for key, words in keys.items()}
    return [
        Ceiling(f"limit over {words}", _ppm(limit.amount.value), Layer(limit.layer))
        for words, limit in limits.items()
        if limit is not None and limit.amount is not None
    ]


def current_against_voltage(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """Shape of the ion current against voltage, for both ends of where the plateau begins."""
    begins = number_given(practical, given, "plateau")
    ends = {begins.low: "begins early", begins.high: "begins late"}
    top = number_in(begins.high, "kV") * 1.5
    kilovolts = [top * (n + 0.02) / _POINTS for n in range(_POINTS)]
    lines = [
        Line(
            f"{words}, {shown_best(knee, 'voltage')}",
            tuple((v, 100 * _of_numbers(share_gathered, v, number_in(knee, "kV"))) for v in kilovolts),
        )
        for knee, words in ends.items()
    ]
    title = "Ion current against voltage"
    yield Picture(
        f"{title}: the shape, not a prediction. It assumes ions spread evenly between the plates, which meet "
        "or are drawn off, and takes the plateau to begin where nine tenths are gathered. Tracks make real "
        "curves rise less steeply.",
        plot(title, Axis("voltage", "kV"), Axis("current, of the plateau", "%"), lines),
    )


def counts_of_balloon(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Picture]:
    """Beta count of the collected progeny as it falls, beside the half-life it seems to have."""
    collection, wait, window = (
        number_given(practical, given, word).value for word in ("collection", "wait", "window")
    )
    shares = {name: number_given(practical, given, name) for name in COUNTED}
    landing = atoms_landing(book, shares)
    length = number_in(window, "min")
    times = [length * n / 30 for n in range(31)]
    seen = beta_activities(book, landing, collection, wait, window / 30, 30)
    activities = [number_in(one, "Bq") for one in seen]
    counted = tuple((t, 100 * (a / activities[0])) for t, a in zip(times, activities, strict=True))
    (half_life,) = progeny_half_life(practical, book, given)
    left = (float(share_left(half_life.value, quantity(t, "min")).m_as("percent")) for t in times)
    straight = tuple(zip(times, left, strict=True))
    title = "Beta count of the balloon, the first count taken as 100"
    yield Picture(
        f"{title}, as the decay chain gives it, and a single half-life of {half_life.shown} beside it.",
        plot(
            title,
            Axis("time since the first count", "min"),
            Axis("count, of the first", "%"),
            [Line("the chain", counted), Line(f"half-life {half_life.shown}", straight)],
        ),
    )


PLOTS: Mapping[str, tuple[Drawer, ...]] = {
    "activity-today": (decay_of_source,),
    "carbon-dioxide-in-room": (gas_against_time,),
    "dose-of-the-lesson": (rate_against_distance,),
    "dose-rate-at": (rate_against_distance,),
    "progeny-half-life": (counts_of_balloon,),
    "saturation-current": (current_against_voltage,),
}
"""Which curves belong to which worked number."""
