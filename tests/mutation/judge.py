"""Judges edited definitions quickly, in memory: through the schema, the names and the rules, in turn.

An edit counts as caught when some rule finds more than it found before. What a rule found already, such as
what an exception allows, doesn't count.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import yaml
from pydantic import TypeAdapter, ValidationError

from clampstand.checks import RULES, Lesson, Rule
from clampstand.comparing.meaning import changes
from clampstand.model.base import Entry
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.reading import Reading
from clampstand.reading.newest import with_the_newest
from clampstand.reading.references import wrong_names
from demo import demo
from mutation.edits import Edit, Plain, at
from mutation.same import INDEPENDENT, ONLY_TALKED_OF, SAID_TWICE, independent, only_talked_of, said_twice

SLOW = ("expectation-computable", "expected-value-agrees", "names-in-braces", "prose-agrees")
OF_PRACTICALS = sorted((rule for rule in RULES if rule.check), key=lambda rule: rule.id in SLOW)
OF_BOOKS = [rule for rule in RULES if rule.check_book]

Before = Mapping[str, int]
"""Rule, or rule and practical → how much it finds in the content as it is."""


@dataclass(frozen=True)
class Judged:
    """One edit after judging.

    Args:
        subject: of what: ``practicals/spark-counter``.
        sort: what sort of slip.
        address: where in it.
        was: what stood there.
        now: what stands there.
        caught: the rule that first found it; empty for a survivor.
        told: whether a survivor is among what ``clampstand changes`` tells whoever reviews it.
        proven: for a survivor among the steps, why nothing comes of it, if that can be shown.
    """

    subject: str
    sort: str
    address: str
    was: str
    now: str
    caught: str
    told: bool = False
    proven: str = ""


@cache
def _reading() -> Reading:
    return demo().reading


def content() -> Book:
    """The demo department's book."""
    book = _reading().book
    assert book is not None
    return book


def texts() -> Mapping[str, str]:
    """The demo department's files, by their names from the content folder on."""
    return _reading().texts


@cache
def _file(name: str) -> Plain:
    return yaml.load(texts()[name], yaml.CBaseLoader)


def plain(entry: Entry) -> Plain:
    """A definition as plain data, as its file has it."""
    return at(_file(entry.spot.file), entry.spot.route)


@cache
def before(subject: str) -> Before:
    """What is found in a practical, or with no subject in the whole book, as it is."""
    book = content()
    if subject:
        lesson = Lesson(book.practicals[subject], book)
        return {rule.id: _count(rule, lesson) for rule in OF_PRACTICALS}
    return {rule.id: _count_in(rule, book) for rule in OF_BOOKS}


def _count(rule: Rule, lesson: Lesson) -> int:
    assert rule.check is not None
    return sum(1 for _ in rule.check(lesson))


def _count_in(rule: Rule, book: Book) -> int:
    assert rule.check_book is not None
    return sum(1 for _ in rule.check_book(book))


def in_practical(practical: Practical, book: Book) -> str:
    """The first rule that finds more in a practical than it did; nothing where none does."""
    lesson, known = Lesson(practical, book), before(practical.id)
    more = (rule.id for rule in OF_PRACTICALS if _count(rule, lesson) > known[rule.id])
    return next(more, "")


def in_book(book: Book, shelf: str = "") -> str:
    """The first rule about the whole book, or of those looking at one shelf, that finds more than it did."""
    rules = (rule for rule in OF_BOOKS if not shelf or rule.id in looking_at(shelf))
    return next((rule.id for rule in rules if _count_in(rule, book) > before("")[rule.id]), "")


class _Watched(Mapping[str, Any]):
    """A shelf that notices being looked at."""

    def __init__(self, shelf: Mapping[str, Any]) -> None:
        self.shelf, self.seen = shelf, False

    def __getitem__(self, name: str) -> Any:
        self.seen = True
        return self.shelf[name]

    def __iter__(self) -> Iterator[str]:
        self.seen = True
        return iter(self.shelf)

    def __len__(self) -> int:
        self.seen = True
        return len(self.shelf)


@cache
def looking_at(shelf: str) -> frozenset[str]:
    """The rules about the whole book whose verdict can depend on one shelf."""
    found = set()
    for rule in OF_BOOKS:
        watched = _Watched(content().shelf(shelf))
        _count_in(rule, replace(content(), **{shelf: watched}))
        found |= {rule.id} if watched.seen else set()
    return frozenset(found)


def caught_in_practical(data: Plain, practical: Practical, book: Book) -> str:
    """What catches an edit of a practical: the schema, a name that is nowhere, or a rule."""
    edited = made(type(practical), data, practical)
    if edited is None:
        return "schema"
    changed = replace(book, practicals={**book.practicals, practical.id: edited})
    if wrong_names(edited, changed):
        return "unknown-id"
    return in_practical(edited, changed) or in_book(changed, "practicals")


def caught_in_shared(edit: Edit, shelf: str, entry: Entry, book: Book) -> str:
    """What catches an edit of an entry that practicals share: in it, in the book, or in some practical."""
    data = edit.data
    edited = made(type(entry), data, entry)
    if edited is None:
        return "schema"
    changed = with_the_newest(_with(book, shelf, entry, edited))
    if wrong_names(edited, changed):
        return "unknown-id"
    found = in_book(changed, "" if shelf == "department" else shelf)
    users = [practical for practical in book.practicals.values() if uses(practical, shelf, entry, book)]
    if shelf == "packs" and edit.where[:1] == ("limits",):
        key = plain(entry)["limits"][edit.where[1]]["key"]
        users = [practical for practical in users if key in asked(practical.id)]
    return found or next((rule for user in users if (rule := in_practical(user, changed))), "")


class _Asking(Lesson):
    """A lesson that remembers which limits were asked for."""

    def limit(self, key: str, **circumstances: str) -> Limit | None:
        self.__dict__.setdefault("keys", set()).add(key)
        return super().limit(key, **circumstances)


@cache
def asked(practical_id: str) -> frozenset[str]:
    """The keys of the limits that judging a practical asks for."""
    lesson = _Asking(content().practicals[practical_id], content())
    for rule in OF_PRACTICALS:
        _count(rule, lesson)
    obeyed = {number.obeys for number in lesson.practical.numbers.values() if number.obeys}
    return frozenset(lesson.__dict__["keys"] | obeyed)


def _with(book: Book, shelf: str, entry: Entry, edited: Any) -> Book:
    if shelf == "department":
        return replace(book, department=edited)
    if shelf == "packs":
        for limit, its in zip(edited.limits, entry.limits, strict=True):  # type: ignore[attr-defined]
            limit.placed(its.id, its.spot)
    return replace(book, **{shelf: {**book.shelf(shelf), entry.id: edited}})


def uses(practical: Practical, shelf: str, entry: Entry, book: Book) -> bool:
    """Whether a change of a shared entry can matter to a practical."""
    its_id = entry.id
    rooms = {room for names in practical.where.values() for room in names}
    match shelf:
        case "sources":
            return any(its_id in slot.one_of for slot in practical.sources)
        case "kit":
            equipment = {item for room in rooms if room in book.rooms for item in book.rooms[room].equipment}
            return its_id in practical.items | equipment
        case "supplies":
            return getattr(entry, "item", "") in practical.items
        case "rooms":
            return its_id in rooms
        case _:
            return True


@cache
def _adapter(kind: type[Entry]) -> TypeAdapter[Any]:
    return TypeAdapter(kind)


def made(kind: type[Entry], data: Plain, like: Entry) -> Any:
    """A definition from plain data, told its id and place; None where the schema refuses it."""
    try:
        return _adapter(kind).validate_python(data).placed(like.id, like.spot)
    except ValidationError:
        return None


def judged(subject: str, edits: Iterator[Edit]) -> Iterator[Judged]:
    """Every edit of a subject such as ``practicals/spark-counter``, judged."""
    book = content()
    shelf, _, its_id = subject.partition("/")
    entry: Any = book.department if shelf == "department" else book.shelf(shelf)[its_id]
    for edit in edits:
        if shelf == "practicals":
            caught = caught_in_practical(edit.data, entry, book)
        else:
            caught = caught_in_shared(edit, shelf, entry, book)
        told = not caught and is_told(edit.data, shelf, entry, book)
        proven = proof(edit, entry, book) if shelf == "practicals" and not caught else ""
        yield Judged(subject, edit.sort, edit.address, edit.was, edit.now, caught, told, proven)


def proof(edit: Edit, practical: Practical, book: Book) -> str:
    """Why nothing comes of an edit of the steps, if that can be shown."""
    if edit.sort not in ("steps swapped", "step emptied", "word left out"):
        return ""
    edited = made(type(practical), edit.data, practical)
    old, new = Lesson(practical, book), Lesson(edited, book)
    if edit.sort == "steps swapped":
        phase, index = edit.where
        return INDEPENDENT if independent(practical, str(phase), int(index), old, new) else ""
    if said_twice(old, new):
        return SAID_TWICE
    return ONLY_TALKED_OF if only_talked_of(old, new) else ""


def is_told(data: Plain, shelf: str, entry: Entry, book: Book) -> bool:
    """Whether the comparison of meanings says anything of an edit that no rule finds."""
    return bool(changes(book, with_the_newest(_with(book, shelf, entry, made(type(entry), data, entry)))))


def by_sort(results: list[Judged]) -> list[tuple[str, int, int]]:
    """Sort, how many edits, how many of them caught."""
    tried = Counter(each.sort for each in results)
    caught = Counter(each.sort for each in results if each.caught)
    return [(sort, number, caught[sort]) for sort, number in sorted(tried.items())]
