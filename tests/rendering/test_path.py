"""The path sheet of a practical: everything on it comes from the definitions, in the order of the levels."""

import html
import re

import pytest

from clampstand.build import sheets
from clampstand.rendering.contents import Contents
from clampstand.rendering.pages.path import path_page, rows_to_sign, warned_steps
from clampstand.rendering.pages.practical import practical_page
from clampstand.rendering.pages.skill import skills_page
from demo import demo

HANDBOOK = demo()
BOOK = HANDBOOK.book
CONTENTS = Contents(BOOK, sheets(HANDBOOK.lessons))


def words(page_html: str) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page_html)).split())


def sheet(practical_id: str) -> str:
    return path_page(BOOK.practicals[practical_id], CONTENTS).html


@pytest.mark.parametrize("practical_id", sorted(BOOK.practicals))
def test_the_levels_stand_in_their_order(practical_id: str):
    levels = [int(level) for level in re.findall(r"<h2[^>]*>Level ([0-9]):", sheet(practical_id))]
    assert levels == [0, 1, 2, 3, 4]


@pytest.mark.parametrize("practical_id", sorted(BOOK.practicals))
def test_it_leads_to_all_there_is_to_read(practical_id: str):
    practical, written = BOOK.practicals[practical_id], sheet(practical_id)
    assert f'href="../practicals/{practical_id}.html"' in written
    assert all(f'href="../skills/{skill}.html"' in written for skill in practical.needs.skills)
    assert all(f'href="../emergencies/{name}.html"' in written for name in practical.emergency)
    assert all(f'index.html#{name}"' in written for name in practical.sources_read)


def test_it_names_who_runs_it_alone_and_who_signs():
    """By people.yml and sign-offs.csv T3 is at level 3 for it and T1 above; HOP1 may sign off."""
    said = words(sheet("handling-a-sealed-source"))
    watched = said[said.index("Level 1") : said.index("Level 2")]
    assert "T1, physics teacher" in watched
    assert "T3" not in watched
    assert "HOP1, head of physics" in said[said.index("Level 4") :]


def test_a_technicians_practical_is_watched_with_a_technician():
    said = words(sheet("making-dry-ice"))
    assert "TEC1, senior technician" in said[said.index("Level 1") : said.index("Level 2")]


def test_what_a_skill_looks_for_is_a_box_to_tick():
    skill = BOOK.skills["sealed-source-handling"]
    said = words(sheet("handling-a-sealed-source"))
    assert all(line in said for line in skill.good_looks_like)
    assert sheet("handling-a-sealed-source").count('class="tick"') >= len(skill.sign_off) + len(
        skill.good_looks_like
    )


def test_every_step_with_a_warning_is_rehearsed_under_its_own_number():
    practical = BOOK.practicals["spark-counter"]
    warned = [(one.phase, one.number) for one in warned_steps(practical)]
    assert warned == [
        (phase, number)
        for phase in ("prepare", "set_up", "run", "clear_up")
        for number, step in enumerate(practical.steps(phase), start=1)
        if step.warn
    ]
    assert all(
        f"In the lesson, {number}." in words(sheet("spark-counter"))
        for phase, number in warned
        if phase == "run"
    )


def test_there_is_a_box_for_each_level_of_the_practical_and_of_each_skill():
    practical = BOOK.practicals["source-store-and-wipe-test"]
    rows = list(rows_to_sign(practical, BOOK))
    assert [row.title for row in rows] == [
        practical.title,
        *(BOOK.skills[skill].title for skill in practical.needs.skills),
    ]
    assert sheet("source-store-and-wipe-test").count("<td></td>") == 4 * len(rows)


def test_the_practicals_page_and_the_list_of_skills_lead_to_it():
    practical = BOOK.practicals["spark-counter"]
    assert 'href="../paths/spark-counter.html"' in practical_page(practical, CONTENTS).html
    listed = skills_page(CONTENTS).html
    assert all(f'href="../paths/{name}.html"' in listed for name in BOOK.practicals)
