"""What differs in meaning between two contents: numbers with their ratio, steps that moved, kit, hazards.

Values are compared, not texts: ``1 h`` and ``60 min`` are the same and nothing is said of them.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from clampstand.calculators.kit_totals import KitTotal, total_of
from clampstand.comparing.pairs import moved, pairs
from clampstand.comparing.values import CEILINGS, FLOORS, GUARDS, LEAVE, became, loosens, read
from clampstand.limits import the_limit
from clampstand.model.base import Definition, Interval, is_same_value
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import KitLine, Practical
from clampstand.model.step import Number, Step
from clampstand.reading.names import SHELVES
from clampstand.reading.tables import RECORDS, TIMETABLE_FOLDER
from clampstand.units import shown

_ROWS = frozenset({TIMETABLE_FOLDER, *(kind.shelf for kind in RECORDS.values())})
_NAME = (
    "item",
    "hazard",
    "name",
    "supply",
    "seen",
    "question",
    "says",
    "what",
    "rule",
    "against",
    "do",
    "see",
)
"""What tells one part of a list from the others: the first of these that it has."""


@dataclass(frozen=True, slots=True)
class Change:
    """One difference.

    Args:
        subject: the definition, as ``practicals/spark-counter``.
        what: where in it, in words.
        says: what became of it.
        loosened: True where more is allowed than before, False where less, None where neither can be said.
        reordered: whether a step stands elsewhere; no rule may see it, so it is marked for whoever reads.
    """

    subject: str
    what: str
    says: str
    loosened: bool | None = None
    reordered: bool = False

    def __str__(self) -> str:
        mark = {True: " LOOSENED", False: " tightened", None: " REORDERED" * self.reordered}[self.loosened]
        return f"{self.what}: {self.says}{mark}" if self.what else f"{self.says}{mark}"


def changes(old: Book, new: Book) -> tuple[Change, ...]:
    """Every difference between two contents, by definition; records and the timetable are not compared."""
    found = list(_Definitions(old, new, "department").of(old.department, new.department, ()))
    for shelf in SHELVES:
        before, after = old.shelf(shelf), new.shelf(shelf)
        for its_id in () if shelf in _ROWS else sorted({*before, *after}):
            subject = f"{shelf}/{its_id}"
            if its_id not in after:
                found.append(Change(subject, "", "taken out", True if shelf in GUARDS else None))
            elif its_id not in before:
                found.append(Change(subject, "", "new"))
            elif before[its_id] is not after[its_id]:
                found += _Definitions(old, new, subject).of(before[its_id], after[its_id], ())
    return tuple(found)


@dataclass(frozen=True)
class _Definitions:
    """Compares two states of one definition."""

    before: Book
    after: Book
    subject: str

    def of(self, old: Definition, new: Definition, what: tuple[str, ...]) -> Iterator[Change]:
        """The differences of two definitions of one class, field by field."""
        floor = self._direction_of(new)
        for name in type(new).model_fields:
            one, other = getattr(old, name), getattr(new, name)
            if isinstance(new, Practical) and name == "kit":
                yield from self._kit(old, new)  # type: ignore[arg-type]
            else:
                yield from self._values(one, other, (*what, name.strip("_").replace("_", " ")), name, floor)

    def _direction_of(self, definition: Definition) -> bool | None:
        """Whether the value of a declared number is a floor (True) or a ceiling, by the limit it obeys."""
        limit = None
        if isinstance(definition, Number) and definition.obeys:
            limit = the_limit(definition.obeys, self.after) or the_limit(definition.obeys, self.before)
        return None if limit is None else limit.comparator in FLOORS

    def _values(
        self, old: Any, new: Any, what: tuple[str, ...], name: str, floor: bool | None
    ) -> Iterator[Change]:
        if name in FLOORS or name in CEILINGS:
            floor = name in FLOORS
        elif name != "value":
            floor = None
        if name == "stand":
            old, new, floor = read(old), read(new), True
        if isinstance(old, Definition) and type(old) is type(new) and not isinstance(old, Interval):
            yield from self.of(old, new, what)
        elif isinstance(old, tuple) and isinstance(new, tuple):
            yield from self._lists(old, new, what, name)
        elif isinstance(old, dict) and isinstance(new, dict):
            yield from self._blocks(old, new, what, name)
        elif not is_same_value(old, new):
            yield Change(self.subject, _joined(what), became(old, new), loosens(old, new, name, floor))

    def _blocks(
        self, old: Mapping[str, Any], new: Mapping[str, Any], what: tuple[str, ...], name: str
    ) -> Iterator[Change]:
        for key in dict.fromkeys((*old, *new)):
            if key in old and key in new:
                yield from self._values(old[key], new[key], (*what, key), name, None)
            else:
                yield self._one_sided(what, key, is_new=key in new, name=name)

    def _lists(
        self, old: Sequence[Any], new: Sequence[Any], what: tuple[str, ...], name: str
    ) -> Iterator[Change]:
        steps = any(isinstance(part, Step) for part in (*old, *new))
        matched = pairs([_named(part) for part in old], [_named(part) for part in new], reworded=steps)
        for i, j in matched:
            if i is not None and j is not None:
                part = (*what, f"step {j + 1}" if steps else _named(new[j]))
                yield from self._values(old[i], new[j], part, name, None)
            elif j is not None:
                yield self._one_sided(what, _named(new[j]), is_new=True, name=_guard_in(new[j], name))
            elif i is not None:
                yield self._one_sided(what, _named(old[i]), is_new=False, name=_guard_in(old[i], name))
        for i, j in moved(matched) if steps else ():
            after = f"after step {j}" if j else "to the beginning"
            says = f"step {(i or 0) + 1} moved {after}: {_named(new[j or 0])}"
            yield Change(self.subject, _joined(what), says, reordered=True)

    def _one_sided(self, what: tuple[str, ...], part: str, *, is_new: bool, name: str) -> Change:
        loosened = None
        if name in GUARDS:
            loosened = not is_new
        elif name in LEAVE:
            loosened = is_new
        return Change(self.subject, _joined(what), f"{'added' if is_new else 'taken out'} {part}", loosened)

    def _kit(self, old: Practical, new: Practical) -> Iterator[Change]:
        """The kit by what is put out for the class, whatever changed it."""
        lines = [line.item for line in old.kit], [line.item for line in new.kit]
        for i, j in pairs(*lines):
            was = None if i is None else total_of(old.kit[i], old, self.before)
            now = None if j is None else total_of(new.kit[j], new, self.after)
            item = lines[1][j] if j is not None else lines[0][i or 0]
            told = f"{_total(was)} → {_total(now)}"
            if _total(was) != _total(now):
                yield Change(self.subject, f"kit › {item}", f"{told} for the class")
            elif i is not None and j is not None:
                yield from self._rest_of_line(old.kit[i], new.kit[j])

    def _rest_of_line(self, old: KitLine, new: KitLine) -> Iterator[Change]:
        for name in ("phase", "made_here", "allowance_kept", "note"):
            what = ("kit", new.item, name.replace("_", " "))
            yield from self._values(getattr(old, name), getattr(new, name), what, name, None)


def _guard_in(part: object, name: str) -> str:
    """The field that says what a part is for: of a step that guards somebody, what it does so by."""
    by = (guard for guard in sorted(GUARDS) if isinstance(part, Step) and getattr(part, guard, None))
    return next(by, name)


def _total(total: KitTotal | None) -> str:
    if total is None:
        return "none"
    if total.in_all is None or total.line.amount is None:
        return str(total.count)
    return shown(total.in_all, total.line.amount.unit, total.line.amount.kind)


def _named(part: object) -> str:
    if isinstance(part, Limit):
        so = ", ".join(str(value) for value in part.applies_to.model_dump(exclude_none=True).values())
        return f"{part.key} ({so})" if so else part.key
    names = (getattr(part, name, None) for name in _NAME)
    return next((str(name) for name in names if name is not None), str(part))


def _joined(what: tuple[str, ...]) -> str:
    return " › ".join(what)


def changes_as_text(found: Sequence[Change]) -> str:
    """The changes by definition, what is looser first, and how many of them are."""
    by_subject: dict[str, list[Change]] = {}
    for change in sorted(found, key=lambda one: one.loosened is not True):
        by_subject.setdefault(change.subject, []).append(change)
    parts = ["\n".join([subject, *(f"  {one}" for one in some)]) for subject, some in by_subject.items()]
    loosened = sum(one.loosened is True for one in found)
    return "\n\n".join([*parts, _tally(len(found), loosened, sum(one.reordered for one in found))])


def _tally(found: int, loosened: int, reordered: int) -> str:
    """How many changes there are, how many loosen, and how many change the order of steps."""
    told = f"{found} {'change' if found == 1 else 'changes'} of meaning: "
    told += "1 loosens" if loosened == 1 else f"{loosened or 'none'} loosen{'' if loosened else 's'}"
    return f"{told}, {reordered} of order" if reordered else told
