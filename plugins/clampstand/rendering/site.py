"""Every page of the site, in one list, in one order."""

from collections.abc import Iterator

from clampstand.rendering.cards import cards
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.days import day_pages, days_page
from clampstand.rendering.pages.due import due_page
from clampstand.rendering.pages.emergency import emergencies_page, emergency_page
from clampstand.rendering.pages.glossary import glossary_page
from clampstand.rendering.pages.in_force import in_force_page
from clampstand.rendering.pages.limits import limits_page
from clampstand.rendering.pages.lists import citations_page, home_page, kit_page, practicals_page
from clampstand.rendering.pages.numbers import numbers_page
from clampstand.rendering.pages.path import path_page
from clampstand.rendering.pages.practical import practical_page
from clampstand.rendering.pages.prep import prep_page
from clampstand.rendering.pages.rules import rule_page, rules_page
from clampstand.rendering.pages.skill import skill_page, skills_page
from clampstand.rendering.pages.sources import sources_page

_INDEXES = (
    home_page,
    practicals_page,
    emergencies_page,
    skills_page,
    sources_page,
    kit_page,
    limits_page,
    numbers_page,
    rules_page,
    citations_page,
    due_page,
    days_page,
    glossary_page,
)
"""The pages the navigation lists, in its order."""


def pages(contents: Contents) -> Iterator[SitePage]:
    """The pages of the handbook: the indexes, then one or two for every definition."""
    for make in _INDEXES:
        yield make(contents)
    for practical in contents.book.practicals.values():
        yield practical_page(practical, contents)
        yield prep_page(practical, contents)
        yield path_page(practical, contents)
    for emergency in contents.book.emergencies.values():
        yield emergency_page(emergency, contents)
    for skill in contents.book.skills.values():
        yield skill_page(skill, contents)
    yield from day_pages(contents)
    for rule in contents.rules:
        yield rule_page(rule, contents)
    printable = cards(contents)
    yield in_force_page(printable, contents)
    yield from (card.page for card in printable)
