"""Every part of a page with its examples, on one sheet: ``python tests/specimens.py FILE.html``.

For whoever changes how a part looks: open the file in a browser, narrow the window, switch to dark, print it.
The examples stand beside each part's template and rules, in ``rendering/templates/parts/<part>/``, and draw
on the demo where a part needs more than words. With Python's path at ``tests``, as pytest has it.
"""

import sys
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import SimpleNamespace

from clampstand.calculators.dose_context import doses_in_context
from clampstand.calculators.worked import CannotWork
from clampstand.rendering.assets import ASSETS, PARTS, assets
from clampstand.rendering.contents import Contents
from clampstand.rendering.diagrams.plots import pictures_of
from clampstand.rendering.live.catalogue import panels_of
from clampstand.rendering.live.totals import totals_of
from clampstand.rendering.pages.ladder import LEVELS, ladder
from clampstand.rendering.pages.practical import drawings
from clampstand.rendering.templating import environment
from clampstand.rendering.titles import titles_of
from demo import demo_contents

_FRAME = """
html { font-size: 125%; }
body { background: var(--paper); color: var(--ink); font: .8rem "Clampstand Sans", sans-serif; margin: 1rem; }
a { color: var(--link); }
"""
"""What the theme does around the parts, as far as they lean on it."""


def parts() -> list[str]:
    """The names of all parts, which are those of their folders."""
    return sorted(folder.name for folder in PARTS.iterdir())


@cache
def _demo() -> Contents:
    """The demo, with cards as PDF beside its pages."""
    return replace(demo_contents(), paper="a4")


@cache
def _lesson(its_id: str) -> SimpleNamespace:
    """What the pages of one practical of the demo show in their parts."""
    contents = _demo()
    practical, sheet = contents.book.practicals[its_id], contents.sheets[its_id]
    numbers = [n for _, found in sheet.numbers if not isinstance(found, CannotWork) for n in found]
    return SimpleNamespace(
        practical=practical,
        titles=titles_of(practical),
        totals=sheet.totals,
        clocks=sheet.clocks,
        outcomes=sheet.numbers,
        numbers=numbers,
        doses=doses_in_context(numbers, contents.book),
        rungs=ladder(practical, contents),
        drawings=drawings(practical, contents),
        pictures=pictures_of(practical, contents.book),
        panels=panels_of(practical, contents.book),
        other_sizes=totals_of(practical, contents.book),
    )


def examples(part: str) -> str:
    """The examples of one part as HTML."""
    contents = _demo()
    return (
        environment()
        .get_template(f"parts/{part}/examples.jinja")
        .render(
            contents=contents,
            book=contents.book,
            quotes=contents.quotes,
            day=contents.day,
            levels=LEVELS,
            lesson=_lesson,
            cannot=CannotWork,
        )
    )


def page() -> str:
    """All examples on one page, with the handbook's stylesheet and without the theme."""
    shown = "\n".join(f"<section><h2>{part}</h2>\n{examples(part)}</section>" for part in parts())
    style = assets().files[assets().stylesheet].decode()
    style = style.replace("fonts/", f"{(ASSETS / 'fonts').as_uri()}/") + _FRAME
    return (
        '<!doctype html>\n<html lang="en-GB" dir="ltr"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>The parts of a page</title><style>{style}</style></head>\n"
        f'<body><main class="md-typeset"><h1>The parts of a page</h1>\n{shown}</main></body></html>\n'
    )


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(page(), encoding="utf-8")
