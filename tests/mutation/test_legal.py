"""Legal edits are let through: other names, units, words and order make no rule find anything."""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from clampstand.build import handbook
from clampstand.findings import Finding
from demo import demo
from mutation.edits import Edit
from mutation.judge import caught_in_practical, caught_in_shared, content, plain
from mutation.legal import (
    RENAMED,
    independent_exchanged,
    own_names_changed,
    renamed,
    singles_listed,
    steps_reordered,
    units_changed,
    words_changed,
)

PRACTICALS = pytest.mark.parametrize("practical_id", sorted(content().practicals))


def _counted(findings: tuple[Finding, ...]) -> Counter[tuple[str, str]]:
    return Counter((finding.rule, finding.severity.value) for finding in findings)


@pytest.mark.parametrize("shelf", RENAMED)
def test_other_ids_change_no_verdict(shelf: str, tmp_path: Path) -> None:
    renamed(shelf, tmp_path)
    assert _counted(handbook(tmp_path).findings) == _counted(demo().findings)


def _legal(practical_id: str) -> Iterator[Edit]:
    practical = content().practicals[practical_id]
    data = plain(practical)
    yield own_names_changed(practical)
    yield words_changed(data)
    yield from units_changed(data)
    yield from steps_reordered(data)
    yield from independent_exchanged(practical)


@PRACTICALS
def test_no_legal_edit_of_a_practical_is_found(practical_id: str) -> None:
    practical = content().practicals[practical_id]
    edits = list(_legal(practical_id))
    assert len(edits) >= 4
    assert [
        (str(edit), rule) for edit in edits if (rule := caught_in_practical(edit.data, practical, content()))
    ] == []


@pytest.mark.parametrize("shelf", ["kit", "rooms", "sources", "supplies", "packs"])
def test_no_other_unit_of_a_shared_entry_is_found(shelf: str) -> None:
    found = [
        (entry.id, str(edit), rule)
        for entry in content().shelf(shelf).values()
        if shelf != "packs" or entry.id in content().department.packs
        for edit in units_changed(plain(entry))
        if (rule := caught_in_shared(edit, shelf, entry, content()))
    ]
    assert found == []


@PRACTICALS
def test_a_single_may_be_written_as_a_list(practical_id: str) -> None:
    practical = content().practicals[practical_id]
    listed = list(singles_listed(plain(practical), practical))
    assert len(listed) > 20
