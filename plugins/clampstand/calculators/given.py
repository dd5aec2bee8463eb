"""What a definition hands a calculator: declared numbers, source slots and circuits, looked up."""

from collections.abc import Mapping

from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.practical import Circuit, Practical
from clampstand.model.substance import Figure, Substance
from clampstand.units import Amount


def number_given(practical: Practical, given: Mapping[str, str], word: str) -> Amount:
    """The declared number that ``given`` names for a word.

    Raises:
        CannotWork: the word is missing, or names no number of the practical.
    """
    name = given.get(word)
    if name is None:
        raise CannotWork(f"it needs to be given {word}: the name of a declared number")
    if name not in practical.numbers:
        raise CannotWork(f"{name} is not a declared number of this practical")
    return practical.numbers[name].value


def numbers_given(
    practical: Practical, given: Mapping[str, str], word: str
) -> tuple[tuple[str, Amount], ...]:
    """The declared numbers that ``given`` names for a word, with commas between: each name with its number.

    Raises:
        CannotWork: the word is missing, or one of the names is no number of the practical.
    """
    names = [name.strip() for name in given.get(word, "").split(",")]
    return tuple((name, number_given(practical, {word: name} if name else {}, word)) for name in names)


def source_given(practical: Practical, book: Book, given: Mapping[str, str]) -> Source:
    """The source in the slot that ``given`` names, or the one of the register; without a word, in ``source``.

    The first choice of the slot that may be used today, or its first choice where none may.

    Raises:
        CannotWork: there is no such slot or source, or none of the slot's sources is on the register.
    """
    name = given.get("source", "source")
    slot = practical.slot(name)
    if slot is None and name in book.sources:  # to compare with one that the practical does not use
        return book.sources[name]
    if slot is None:
        raise CannotWork(f"the practical has no source called {name}")
    known = [book.sources[name] for name in slot.one_of if name in book.sources]
    if not known:
        raise CannotWork(f"none of {', '.join(slot.one_of)} is on the register")
    return next((source for source in known if is_usable(source, book)), known[0])


def is_usable(source: Source, book: Book) -> bool:
    """Whether a source is in use with a leak test that holds on the department's day."""
    test = source.leak_test
    in_date = test.every.after(test.last) >= book.department.computed_for
    return source.status == "in use" and test.result == "pass" and in_date


def circuit_given(practical: Practical, given: Mapping[str, str]) -> Circuit:
    """The circuit whose supply ``given`` names, or the only one.

    Raises:
        CannotWork: there is no such circuit.
    """
    wanted = given.get("circuit")
    for circuit in practical.circuits:
        if wanted in (None, circuit.supply):
            return circuit
    raise CannotWork(f"the practical has no circuit of {wanted or 'any supply'}")


def substance_given(book: Book, given: Mapping[str, str], word: str = "item") -> Substance:
    """The substance of the item that ``given`` names for a word.

    Raises:
        CannotWork: the word is missing, or the kit or the reference figures do not know the substance.
    """
    item = book.kit.get(given.get(word, ""))
    if item is None:
        raise CannotWork(f"it needs to be given {word}: the id of an item of the kit")
    substance = book.substances.get(item.substance or "")
    if substance is None:
        raise CannotWork(f"the reference figures do not know what {item.name} is made of")
    return substance


def figure_of(substance: Substance, name: str) -> Figure:
    """A figure of a substance. Raises CannotWork where the reference figures do not have it."""
    if name not in substance.figures:
        raise CannotWork(f"the reference figures have no {name} of {substance.name}")
    return substance.figures[name]
