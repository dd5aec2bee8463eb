"""The sheet for the wall: the few things that must be read from where the watchers stand."""

from clampstand.model.practical import Practical
from clampstand.rendering.cards.finishing import Card, finished
from clampstand.rendering.contents import Contents
from clampstand.rendering.wall import wall_of


def wall_sheet(practical: Practical, contents: Contents) -> Card | None:
    """The sheet of a practical, one side; None where no step keeps anybody back."""
    wall = wall_of(practical)
    if wall is None:
        return None
    uri, title = f"cards/wall/{practical.id}.html", practical.title
    return finished(uri, title, "wall", contents, practical, practical=practical, wall=wall)
