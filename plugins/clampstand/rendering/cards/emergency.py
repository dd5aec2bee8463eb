"""The card of an emergency, and the panel of emergencies that every other card carries in the same place."""

from collections.abc import Iterable
from dataclasses import dataclass

from clampstand.model.book import Book
from clampstand.model.emergency import Emergency
from clampstand.rendering.cards.finishing import Card, finished
from clampstand.rendering.contents import Contents
from clampstand.rendering.prose import Quotes, plain

MOST_ROWS = 4
_ROOM_FOR_ACTIONS = 115
"""Characters a row of the panel holds in two lines; the whole list is on the emergency's own card."""


@dataclass(frozen=True, slots=True)
class Row:
    """One emergency of the panel: its trigger, what to call out, and the first actions."""

    trigger: str
    say: str
    actions: str
    more: bool


@dataclass(frozen=True, slots=True)
class Call:
    """Whom to ring and how."""

    role: str
    call: str


@dataclass(frozen=True, slots=True)
class Panel:
    """The emergencies of a card, at most four, the titles of any others, and last the telephone."""

    rows: tuple[Row, ...]
    others: tuple[str, ...]
    calls: tuple[Call, ...]


def panel(ids: Iterable[str], contents: Contents, quotes: Quotes) -> Panel:
    """The panel of the emergencies a card names, in its order."""
    book = contents.book
    named = [book.emergencies[its_id] for its_id in ids if its_id in book.emergencies]
    shown = named[:MOST_ROWS]
    return Panel(
        tuple(_row(emergency, quotes) for emergency in shown),
        tuple(emergency.title for emergency in named[MOST_ROWS:]),
        calls(shown, book),
    )


def _row(emergency: Emergency, quotes: Quotes) -> Row:
    """As many whole actions as two lines hold, and always the first."""
    sentences = [plain(action.do, quotes) for action in emergency.do]
    taken, length = 1, len(emergency.say or "") + len(sentences[0])
    while taken < len(sentences) and length + 1 + len(sentences[taken]) <= _ROOM_FOR_ACTIONS:
        length += 1 + len(sentences[taken])
        taken += 1
    return Row(emergency.title, emergency.say or "", " ".join(sentences[:taken]), taken < len(sentences))


def calls(emergencies: Iterable[Emergency], book: Book) -> tuple[Call, ...]:
    """Everybody these emergencies ring, each once, in order."""
    ids = dict.fromkeys(contact for emergency in emergencies for contact in emergency.ring)
    known = (book.contacts[its_id] for its_id in ids if its_id in book.contacts)
    return tuple(Call(contact.role, contact.call) for contact in known)


def emergency_card(emergency: Emergency, contents: Contents) -> Card:
    """The card of an emergency: one side, in type that can be read at arm's length."""
    return finished(
        f"cards/emergency/{emergency.id}.html",
        emergency.title,
        "emergency",
        contents,
        emergency,
        emergency=emergency,
        quotes=contents.quotes,
        calls=calls([emergency], contents.book),
    )
