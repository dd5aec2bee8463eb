"""The page that says which printed cards are in force; the code on every card leads to it."""

from collections.abc import Sequence
from dataclasses import dataclass

from clampstand.model.practical import Practical, Review
from clampstand.model.skill import Skill
from clampstand.rendering.cards.finishing import IN_FORCE, Card
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made

_KINDS = {
    "practical": "Practicals",
    "wall": "Sheets for the wall",
    "emergency": "Emergencies",
    "skill": "Skills",
}


@dataclass(frozen=True, slots=True)
class Line:
    """One card in force: where it and its PDF are, the id printed on it, and the review it rests on."""

    title: str
    uri: str
    pdf: str
    card_id: str
    review: Review | None


def in_force_page(cards: Sequence[Card], contents: Contents) -> SitePage:
    """Every card in force, by kind and title, each under its id."""
    return made(
        IN_FORCE,
        "Cards in force",
        "in_force",
        contents,
        kinds=[(name, _lines(cards, kind)) for kind, name in _KINDS.items()],
        search=SearchWords(
            "Type in the id of a printed card, and read whether it is in force.",
            "printed card in force current out of date old print again code QR id PDF "
            + " ".join(card.printed.card_id for card in cards),
        ),
        in_navigation=True,
    )


def _lines(cards: Sequence[Card], kind: str) -> list[Line]:
    lines = [
        Line(
            card.page.title.removesuffix(" (card)"),
            card.page.uri,
            f"{card.kind}/{card.about.id}",
            card.printed.card_id,
            _review(card),
        )
        for card in cards
        if card.kind == kind
    ]
    return sorted(lines, key=lambda line: line.title.casefold())


def _review(card: Card) -> Review | None:
    return card.about.review if isinstance(card.about, Practical | Skill) else None
