"""One page of the handbook, finished, before any site generator has seen it."""

from dataclasses import dataclass

TOP = "top-of-page"
"""The anchor of a page's title, to which the way past the navigation leads."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of a page, for its table of contents."""

    level: int
    anchor: str
    title: str


@dataclass(frozen=True, slots=True)
class SearchWords:
    """What search knows of a page: written from the definitions, not fished out of the HTML."""

    about: str
    """What the page is for, in a sentence: all that a list of hits shows under its title."""
    text: str = ""
    """What else it is found by; a list of hits does not show it."""
    tags: tuple[str, ...] = ()
    """What sort of page it is, for whoever reads a list of hits."""
    weight: float = 1.0
    """How much a hit counts: a practical before a rule that mentions the same thing."""


@dataclass(frozen=True, slots=True)
class SitePage:
    """A finished page.

    Args:
        uri: its address in the site, as ``practicals/spark-counter.html``.
        title: its title.
        html: the finished HTML of its article; of the whole document when it stands alone.
        written_in: the content file to edit, as ``practicals/spark-counter.yml``; empty for pages of many.
        stands_alone: True for a document of its own outside the theme, as a printable card is.
        headings: its headings, for the table of contents.
        search: what search knows of it; None keeps it out of search.
        in_navigation: whether the site's navigation lists it; index pages do, single practicals don't.
    """

    uri: str
    title: str
    html: str
    written_in: str = ""
    stands_alone: bool = False
    headings: tuple[Heading, ...] = ()
    search: SearchWords | None = None
    in_navigation: bool = False
