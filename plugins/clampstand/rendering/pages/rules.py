"""The pages of the rules the handbook checks itself by, each made from its rule's own docstring."""

from clampstand.checks.rule import Rule
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made, search_words


def rules_page(contents: Contents) -> SitePage:
    """Every rule, by family."""
    return made(
        "rules/index.html",
        "Rules",
        "rules",
        contents,
        rules=sorted(contents.rules, key=lambda rule: (rule.family, rule.id)),
        search=search_words("What is checked before anything is published.", "rules checks stop warning"),
        in_navigation=True,
    )


def rule_page(rule: Rule, contents: Contents) -> SitePage:
    """One rule: why, whose, and an example of each kind."""
    return made(
        f"rules/{rule.id}.html",
        rule.page.title.rstrip("."),
        "rule",
        contents,
        search=search_words(rule.page.why, rule.id.replace("-", " "), tags=("rule",), weight=0.1),
        rule=rule,
    )
