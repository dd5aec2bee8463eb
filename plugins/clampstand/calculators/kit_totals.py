"""Kit for the whole class: so many for each group, times the groups, and the spares."""

from dataclasses import dataclass

from clampstand.model.book import Book
from clampstand.model.practical import KitLine, Practical
from clampstand.units import Quantity


@dataclass(frozen=True, slots=True)
class KitTotal:
    """What the technician puts out of one kit line.

    Args:
        line: the line of the kit list.
        sets: how many classes, groups, pairs, pupils or adults it is for.
        count: how many in all, spares included; for measured-out materials, how many portions.
        amount: how much comes into the room, for what is measured out.
        allowance: how much waits besides.
    """

    line: KitLine
    sets: int
    count: int
    amount: Quantity | None
    allowance: Quantity | None

    @property
    def in_all(self) -> Quantity | None:
        """How much to order or make: what is used and what waits."""
        if self.amount is None:
            return None
        return self.amount if self.allowance is None else self.amount + self.allowance


def sets_for(practical: Practical, book: Book, per: str, class_size: int | None = None) -> int:
    """How many sets a kit line makes up: one a class, or one a group, pair, pupil or adult, rounded up."""
    pupils = book.department.class_size if class_size is None else class_size
    sizes = {"group": practical.groups_of or book.department.groups_of, "pair": 2, "pupil": 1}
    if per == "class":
        return 1
    if per == "adult":
        return practical.needs.adults
    return -(-pupils // sizes[per])


def total_of(line: KitLine, practical: Practical, book: Book, class_size: int | None = None) -> KitTotal:
    """The total of one kit line for the department's class, or for a class of another size."""
    sets = sets_for(practical, book, line.per, class_size)
    count = sets * line.count + line.spare
    amount = None if line.amount is None else line.amount.value * count
    return KitTotal(line, sets, count, amount, None if line.allowance is None else line.allowance.value)


def kit_totals(practical: Practical, book: Book, class_size: int | None = None) -> tuple[KitTotal, ...]:
    """The totals of the whole kit list, in its order."""
    return tuple(total_of(line, practical, book, class_size) for line in practical.kit)


def mass_in_room(item_id: str, practical: Practical, book: Book) -> Quantity | None:
    """The whole class's mass of one material in the room; the allowance counts unless it waits elsewhere."""
    totals = [t for t in kit_totals(practical, book) if t.line.item == item_id and t.amount is not None]
    masses = [t.amount if t.line.allowance_kept else t.in_all for t in totals]
    known = [mass for mass in masses if mass is not None]
    return sum(known[1:], known[0]) if known else None
