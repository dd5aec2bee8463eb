"""The page of words: what each means here, and everything else it is called."""

from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.terms import GLOSSARY


def glossary_page(contents: Contents) -> SitePage:
    """Every term in the order of the alphabet."""
    terms = sorted(contents.book.glossary.values(), key=lambda term: term.term.casefold())
    names = " ".join(name for term in terms for name in term.names)
    return made(
        GLOSSARY,
        "Words",
        "glossary",
        contents,
        terms=terms,
        search=SearchWords("Words of the trade and what they mean.", f"glossary {names}", weight=2.0),
        in_navigation=True,
    )
