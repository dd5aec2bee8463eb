"""The page of the limits: by topic and key, each with whose it is, where it was read and what rests on it."""

from collections.abc import Mapping

from clampstand.model.limit import Limit
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made


def limits_page(contents: Contents) -> SitePage:
    """Every limit in force."""
    topics = by_topic(contents.book.limits_in_force)
    titles = (limit.title for keys in topics.values() for limits in keys.values() for limit in limits)
    return made(
        "limits/index.html",
        "Limits",
        "limits",
        contents,
        topics=topics,
        search=SearchWords(
            "Every limit, whose it is and where it was read.", " ".join(dict.fromkeys(titles))
        ),
        in_navigation=True,
    )


def by_topic(limits: tuple[Limit, ...]) -> Mapping[str, Mapping[str, list[Limit]]]:
    """Limits by topic, which is what their key begins with, and then by key."""
    topics: dict[str, dict[str, list[Limit]]] = {}
    for limit in sorted(limits, key=lambda one: one.key):
        topics.setdefault(limit.key.partition(".")[0], {}).setdefault(limit.key, []).append(limit)
    return topics
