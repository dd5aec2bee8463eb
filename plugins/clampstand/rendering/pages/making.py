"""What every page goes through on its way from a template to a finished page."""

from clampstand.model.base import Entry
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import TOP, SearchWords, SitePage
from clampstand.rendering.templating import headings_of, rendered


def made(
    uri: str,
    title: str,
    template: str,
    contents: Contents,
    *,
    about: Entry | None = None,
    search: SearchWords | None = None,
    in_navigation: bool = False,
    **context: object,
) -> SitePage:
    """A finished page from a template of ``templates/pages``.

    Args:
        uri: its address in the site.
        title: its title, as text.
        template: the template's name without its ending.
        contents: what every page may look up.
        about: the definition it shows, whose file the edit link opens.
        search: what search knows of it.
        in_navigation: whether the navigation lists it.
        context: what else the template shows.
    """
    html = article(template, uri, title=title, contents=contents, book=contents.book, **context)
    return SitePage(
        uri,
        title,
        html,
        written_in=about.spot.file if about else "",
        headings=headings_of(html),
        search=search,
        in_navigation=in_navigation,
    )


def article(template: str, uri: str, **context: object) -> str:
    """A template of ``templates/pages`` filled in, its title under the anchor that every page has."""
    return rendered(f"pages/{template}.jinja", uri, **context).replace("<h1>", f'<h1 id="{TOP}">', 1)


def search_words(
    about: str, *texts: str | None, tags: tuple[str, ...] = (), weight: float = 1.0
) -> SearchWords:
    """What search should know, from texts of which some may be missing; each text once."""
    return SearchWords(about, " ".join(dict.fromkeys(text for text in texts if text)), tags, weight)
