"""The page a writer sees in place of the front page while something stops the handbook."""

from clampstand.findings import Finding
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import article
from clampstand.rendering.templating import headings_of


def stopped_page(findings: tuple[Finding, ...]) -> SitePage:
    """Every finding with its place, the stops first. Needs no book, for there may be none."""
    title = "Not to be published"
    listed = sorted(findings, key=lambda finding: (not finding.stops, finding.place))
    html = article("stopped", "index.html", title=title, findings=listed)
    return SitePage("index.html", title, html, headings=headings_of(html), in_navigation=True)
