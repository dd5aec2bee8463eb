"""Which worked number has which live panel, and the panels of a practical."""

from collections.abc import Callable, Iterator, Mapping
from typing import TypeAlias

from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.rendering.live.bench import fringe_panel, heating_panel, series_current_panel, stored_panel
from clampstand.rendering.live.counting import counting_time_panel, decay_left_panel, expected_rate_panel
from clampstand.rendering.live.panel import Panel
from clampstand.rendering.live.radiation import (
    activity_panel,
    dose_rate_panel,
    ion_current_panel,
    stay_panel,
)
from clampstand.rendering.live.room import room_air_panel
from clampstand.rendering.live.statistics import count_panel, net_count_panel, round_area_panel
from clampstand.units import OutOfRange

Maker: TypeAlias = Callable[[Practical, Book, Mapping[str, str]], Iterator[Panel]]
"""Makes the panels of a worked number from what ``given`` names. Raises CannotWork with words."""

PANELS: Mapping[str, Maker] = {
    "activity-today": activity_panel,
    "carbon-dioxide-in-room": room_air_panel,
    "count-uncertainty": count_panel,
    "counting-time": counting_time_panel,
    "decay-left": decay_left_panel,
    "dose-of-the-lesson": stay_panel,
    "dose-rate-at": dose_rate_panel,
    "expected-count-rate": expected_rate_panel,
    "fringe-spacing": fringe_panel,
    "net-count": net_count_panel,
    "round-area": round_area_panel,
    "saturation-current": ion_current_panel,
    "series-current": series_current_panel,
    "stored-charge-and-energy": stored_panel,
    "temperature-rise": heating_panel,
}
"""Panels by the word a definition's ``compute`` uses; a calculator left out has no number to change."""


def panels_of(practical: Practical, book: Book) -> tuple[Panel, ...]:
    """The panels of what a practical asks to be computed, each once, in its order.

    A number that cannot be worked out has no panel: the page says why where the number would stand.
    """
    found: dict[str, Panel] = {}
    for entry in practical.expect:
        for panel in panels_for(entry.compute or "", practical, book, entry.given):
            found.setdefault(panel.id, panel)
    return tuple(found.values())


def panels_for(name: str, practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Panel, ...]:
    """The panels of one worked number; none where it cannot be worked out or has no number to change."""
    try:
        return (
            tuple(panel.proved() for panel in PANELS[name](practical, book, given)) if name in PANELS else ()
        )
    except (CannotWork, OutOfRange):
        return ()
