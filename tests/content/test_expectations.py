"""A number a class is told to expect is worked out, or says where it comes from."""

import pytest

from clampstand.model.practical import Expectation, Practical
from content.side_by_side import demo

BOOK = demo().book
DECLARED = [
    pytest.param(practical, entry, id=f"{practical.id}: {entry.at}")
    for practical in BOOK.practicals.values()
    for entry in practical.expect
    if entry.at and not entry.compute
]


def worked_with(practical: Practical) -> set[str]:
    """The declared numbers that a calculator of the same page uses or must agree with."""
    worked = [entry for entry in practical.expect if entry.compute]
    return {name for entry in worked for name in (*entry.given.values(), entry.at) if name}


@pytest.mark.parametrize(("practical", "entry"), DECLARED)
def test_what_is_only_declared_names_its_source_or_is_worked_out_beside_it(
    practical: Practical, entry: Expectation
) -> None:
    number = practical.numbers[entry.at or ""]
    assert entry.source or number.source or entry.at in worked_with(practical)


def test_what_was_never_looked_up_is_marked() -> None:
    """The pages put a mark on every citation that was read from memory, as this one was."""
    assert BOOK.citations["seen-in-class"].read == "memory"


@pytest.mark.parametrize("practical", BOOK.practicals.values(), ids=lambda practical: practical.id)
def test_from_memory_is_said_with_the_mark_wherever_a_class_is_to_see_it(practical: Practical) -> None:
    for entry in practical.expect:
        if entry.note and entry.note.startswith("From memory"):
            assert entry.source == "seen-in-class", entry.see


@pytest.mark.parametrize("practical", BOOK.practicals.values(), ids=lambda practical: practical.id)
def test_every_practical_says_what_may_fail_and_what_pupils_think(practical: Practical) -> None:
    assert len(practical.when_it_fails) >= 3
    assert len(practical.misconceptions) >= 2
    assert len(practical.ask) >= 2
    assert any(fault.common for fault in practical.when_it_fails)
