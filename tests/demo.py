"""The demo handbook, read and judged once for all tests that run in one process and change nothing of it."""

from functools import cache
from pathlib import Path

from clampstand.build import Handbook, handbook, sheets, site_pages
from clampstand.checks import RULES
from clampstand.rendering.contents import Contents, Paper
from clampstand.rendering.page import SitePage

CONTENT = Path(__file__).parents[1] / "content"


@cache
def demo() -> Handbook:
    """What the content makes today."""
    return handbook(CONTENT)


@cache
def demo_contents() -> Contents:
    """What its pages are made from."""
    return Contents(demo().book, sheets(demo().lessons), demo().findings, RULES)


@cache
def demo_pages(paper: Paper | None = None) -> tuple[SitePage, ...]:
    """Its pages, with their cards as files for a paper or without."""
    return tuple(site_pages(demo(), paper))
