"""The pages of the skills: a list, and for each what good looks like, its steps and its sign-off."""

from clampstand.calculators.clock import clock
from clampstand.model.skill import Skill
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made, search_words


def skills_page(contents: Contents) -> SitePage:
    """Every skill and how long its sign-off holds."""
    skills = sorted(contents.book.skills.values(), key=lambda skill: skill.title.casefold())
    return made(
        "skills/index.html",
        "Skills",
        "skills",
        contents,
        skills=skills,
        paths=sorted(contents.book.practicals.values(), key=lambda practical: practical.title.casefold()),
        search=search_words(
            "What is rehearsed and signed off before somebody runs a practical, and until when it holds.",
            "training sign-off path sheet who signs me off observer allowed",
            *(skill.title for skill in skills),
        ),
        in_navigation=True,
    )


def skill_page(skill: Skill, contents: Contents) -> SitePage:
    """One skill, to rehearse and to be signed off in."""
    return made(
        f"skills/{skill.id}.html",
        skill.title,
        "skill",
        contents,
        about=skill,
        search=search_words(skill.aim, *skill.search, tags=("skill",), weight=4.0),
        skill=skill,
        clocks=clock(skill.steps),
    )
