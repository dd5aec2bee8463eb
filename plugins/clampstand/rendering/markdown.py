"""The same pages as plain Markdown, so that any other site generator can take the handbook over."""

import re
from collections.abc import Iterable, Mapping

from markdownify import markdownify

from clampstand.rendering.page import SitePage

_SVG = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_LOCAL_PAGE = re.compile(r"(\]\((?!https?:)[^)\s]*?)\.html((?:#[^)\s]*)?\))")


def as_markdown(page: SitePage) -> str:
    """One page as Markdown; drawings are left out, for words stand beside every one of them.

    Every mark a person might have typed is escaped, so that text stays text in Markdown too.
    """
    text = markdownify(
        _SVG.sub("", page.html),
        heading_style="atx",
        bullets="-",
        escape_misc=True,
        escape_asterisks=True,
        escape_underscores=True,
    )
    lines = (line.rstrip() for line in _LOCAL_PAGE.sub(r"\1.md\2", text).splitlines())
    return re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).strip() + "\n"


def markdown_files(pages: Iterable[SitePage]) -> Mapping[str, str]:
    """Every page of the site proper as a Markdown file, by its path."""
    return {
        page.uri.removesuffix(".html") + ".md": as_markdown(page) for page in pages if not page.stands_alone
    }
