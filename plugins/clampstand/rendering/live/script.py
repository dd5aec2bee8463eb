"""The one script of the live panels: the compiled formulae, then what reads inputs and shows numbers."""

from functools import cache
from pathlib import Path

from clampstand.rendering.live.compiler import script_of
from clampstand.rendering.live.formulae import LIVE

_PAGE_PART = Path(__file__).parent.parent / "theme" / "assets" / "live.js"


@cache
def live_script() -> bytes:
    """A classic script, so that it runs from a folder on a disk, in a scope of its own."""
    inside = script_of(LIVE) + _PAGE_PART.read_text(encoding="utf-8")
    return f'(function () {{\n"use strict";\n{inside}}}());\n'.encode()
