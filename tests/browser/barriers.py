"""What axe finds wrong with a page that is open, at more than one width."""

from collections.abc import Iterable

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, ViewportSize

AXE = Axe()
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
BROKEN = """async options => {
  const found = await axe.run(options);
  return found.violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.html.slice(0, 160)}`));
}"""
ONLY_WHAT_IS_WRONG = {"runOnly": RULES, "resultTypes": ["violations"]}
"""The same rules as ever, but no list of all that is right: to write it out takes as long as to judge it."""


def barriers(page: Page, sizes: Iterable[ViewportSize]) -> list[str]:
    """Each thing that breaks a rule: at what width, which rule, and where it stands in the page."""
    page.evaluate(AXE.axe_script)
    found = []
    for size in sizes:
        page.set_viewport_size(size)
        broken: list[str] = page.evaluate(BROKEN, ONLY_WHAT_IS_WRONG)
        found += [f"{size['width']} px: {each}" for each in broken]
    return found
