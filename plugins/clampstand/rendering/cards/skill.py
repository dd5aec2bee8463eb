"""The card of a skill: what good looks like and the usual faults, then the steps and the sign-off."""

from clampstand.calculators.clock import clock
from clampstand.model.skill import Skill
from clampstand.rendering.cards.emergency import panel
from clampstand.rendering.cards.finishing import Card, finished
from clampstand.rendering.cards.steps import pauses, points, usual_doer
from clampstand.rendering.contents import Contents


def skill_card(skill: Skill, contents: Contents) -> Card:
    """The card of a skill, two sides."""
    return finished(
        f"cards/skill/{skill.id}.html",
        skill.title,
        "skill",
        contents,
        skill,
        skill=skill,
        quotes=contents.quotes,
        steps_clocked=clock(skill.steps),
        usual_doer=usual_doer(skill.steps),
        pauses=pauses(skill.steps),
        points=points(skill.steps),
        emergencies=panel(skill.emergency, contents, contents.quotes),
    )
