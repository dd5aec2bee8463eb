"""Printable cards: one sheet of paper for each practical, emergency and skill, outside the site's theme."""

from clampstand.rendering.cards.emergency import emergency_card
from clampstand.rendering.cards.finishing import Card
from clampstand.rendering.cards.practical import practical_card
from clampstand.rendering.cards.skill import skill_card
from clampstand.rendering.contents import Contents


def cards(contents: Contents) -> tuple[Card, ...]:
    """A card for every practical, emergency and skill, in that order."""
    book = contents.book
    return (
        *(practical_card(practical, contents) for practical in book.practicals.values()),
        *(emergency_card(emergency, contents) for emergency in book.emergencies.values()),
        *(skill_card(skill, contents) for skill in book.skills.values()),
    )
