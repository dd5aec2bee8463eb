"""Printable cards for practicals, walls, emergencies and skills, outside the site's theme."""

from clampstand.rendering.cards.emergency import emergency_card
from clampstand.rendering.cards.finishing import Card
from clampstand.rendering.cards.practical import practical_card
from clampstand.rendering.cards.skill import skill_card
from clampstand.rendering.cards.wall import wall_sheet
from clampstand.rendering.contents import Contents


def cards(contents: Contents) -> tuple[Card, ...]:
    """A card for every practical, a sheet for the wall where watchers stand back, emergencies, skills."""
    book = contents.book
    sheets = (wall_sheet(practical, contents) for practical in book.practicals.values())
    return (
        *(practical_card(practical, contents) for practical in book.practicals.values()),
        *(sheet for sheet in sheets if sheet is not None),
        *(emergency_card(emergency, contents) for emergency in book.emergencies.values()),
        *(skill_card(skill, contents) for skill in book.skills.values()),
    )
