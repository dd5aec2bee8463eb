"""For every hazard a practical uses, some pack in force sets the limits it is checked against.

Why: where nobody has set a limit, nothing would be found, whatever is written. Silence is not consent: a
missing limit stops a page as surely as a broken one.

Wrong:
    limits:
      radiation.time-out: (left out)

Right:
    limits:
      radiation.time-out: {at_most: 30 min}

Whose: this handbook: a check without a limit cannot fail.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import candidates, containment, is_in_use, needs_tool
from clampstand.checks.supplies import dangerous_supplies, named_supplies
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.limits import expected_sort, sort_of

ID = "no-limit-in-force"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what is not limited cannot be checked")


@dataclass(frozen=True, slots=True)
class Asked:
    """A limit that must be in force: its key, in what circumstances, because of what, and where that is."""

    key: str
    because: str
    spot: Spot
    so: Mapping[str, str] = field(default_factory=dict)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every limit that the sources, supplies and lasers of a practical ask for, once each.

    Where a pack could not be read, that is said already, and nobody knows what would be in it.
    """
    if not lesson.knows_its_limits:
        return
    met: set[tuple[str, ...]] = set()
    for asked in (*_by_sources(lesson), *_by_supplies(lesson), *_by_lasers(lesson)):
        name = (asked.key, *asked.so.values())
        if (
            name in met
            or lesson.limit(asked.key, **asked.so) is not None
            or _is_ill_stated(lesson, asked.key)
        ):
            continue
        met.add(name)
        so = f" for {', '.join(asked.so.values())}" if asked.so else ""
        yield Problem(
            asked.spot,
            f"no pack in force sets {asked.key}{so}, and {asked.because}",
            found=f"packs in force: {', '.join(lesson.book.department.packs)}",
            needed=f"a limit {asked.key}{so}",
            mend="choose a pack that sets it, or write it into the department's own rules",
            whose=RULE,
        )


def _is_ill_stated(lesson: Lesson, key: str) -> bool:
    """Whether a limit of a key is there, and stated so that it limits nothing; another rule says so."""
    of_key = [limit for limit in lesson.book.limits_in_force if limit.key == key]
    return any(sort_of(limit) != expected_sort(key, lesson.book) for limit in of_key)


def _by_sources(lesson: Lesson) -> Iterator[Asked]:
    practical = lesson.practical
    for number, slot in enumerate(practical.sources):
        spot = practical.at("sources", number)
        because = "a source is used"
        keys = ["radiation.sources-out", "radiation.time-out"]
        keys += ["radiation.hand-to-source"] if needs_tool(lesson, slot.name) else []
        keys += [] if practical.pupils == "not there" else ["radiation.watchers-to-source"]
        keys += ["radiation.handling-age"] if practical.pupils == "take part" else []
        yield from (Asked(key, because, spot) for key in keys)
    for candidate in candidates(lesson):
        source = candidate.source
        if is_in_use(source):
            so = {"nuclide": source.nuclide, "form": containment(source)}
            for key in ("radiation.source-activity", "radiation.leak-test-interval"):
                yield Asked(key, f"{source.id} may be used", candidate.spot, so)


def _by_supplies(lesson: Lesson) -> Iterator[Asked]:
    for item_id, spot in named_supplies(lesson).items():
        item = lesson.book.kit.get(item_id)
        if item is not None and item.output is not None:
            so = {"current": item.output.current}
            yield Asked("electrical.touch-voltage", f"{item.name} is used", spot, so)
    for used, output in dangerous_supplies(lesson):
        so = {"current": output.current}
        keys = ["current", "stored-charge", "stored-energy", "discharge-wait", "test-interval"]
        # What a belt drives is limited by its current and by what the dome can store.
        keys += ["voltage"] if output.drive == "mains" else []
        keys += ["series-current"] if any(circuit.through for circuit in used.circuits) else []
        for key in keys:
            yield Asked(f"electrical.{key}", f"{used.item.name} can hurt", used.spot, so)


def _by_lasers(lesson: Lesson) -> Iterator[Asked]:
    for number, line in enumerate(lesson.practical.kit):
        item = lesson.book.kit.get(line.item)
        if item is not None and item.laser_class is not None:
            yield Asked(
                "light.laser-class", f"{item.name} is used", lesson.practical.at("kit", number, "item")
            )
