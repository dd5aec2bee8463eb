"""Takes the pictures of the documents anew: ``python tests/pictures.py``, from the folder of ``mkdocs.yml``.

The demo handbook is built, opened from its folder and photographed: six kinds of page, on a phone and on a
desk, in light and dark, and both sides of a card. It needs Chromium, as the browser tests do, and Pillow.
"""

import io
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from playwright.sync_api import Browser, sync_playwright

if TYPE_CHECKING:
    from PIL.Image import Image

PICTURES = Path(__file__).parents[1] / ".github" / "pictures"
PAGES = {
    "home": "index.html",
    "practical": "practicals/spark-counter.html",
    "preparation": "prep/spark-counter.html",
    "skill": "skills/eht-supply.html",
    "emergency": "emergencies/dropped-source.html",
    "sources": "sources/index.html",
}
CARD = "cards/spark-counter.html"
SIZES = {390: 844, 1280: 900}
SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
COLOURS = 48
"""Colours that text, rules and a few signs need; more make a file larger and no picture clearer."""


def main() -> None:
    """Build, photograph, and put the pictures in their place."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        site = Path(folder) / "site"
        built(site)
        browser = playwright.chromium.launch(
            executable_path=os.environ.get("CHROMIUM") or shutil.which("chromium")
        )
        for name, picture in (*pages(browser, site), ("card", card(browser, site))):
            smaller(picture, name).save(PICTURES / f"{name}.png", optimize=True)
        browser.close()


def built(site: Path) -> None:
    """The demo handbook, as it is published."""
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(site)]
    subprocess.run(command, check=True, env=os.environ | {"NO_MKDOCS_2_WARNING": "1"})


def pages(browser: Browser, site: Path) -> Iterator[tuple[str, bytes]]:
    """The first screen of every kind of page, in both sizes and both schemes."""
    for width, height in SIZES.items():
        for scheme in SCHEMES:
            context = browser.new_context(viewport={"width": width, "height": height}, color_scheme=scheme)
            page = context.new_page()
            for name, address in PAGES.items():
                page.goto((site / address).as_uri())
                page.wait_for_load_state("networkidle")
                yield f"{name}-{width}-{scheme}", page.screenshot()
            context.close()


def card(browser: Browser, site: Path) -> bytes:
    """Both sides of a card beside each other, as they leave the printer."""
    page = browser.new_page(viewport={"width": 1500, "height": 1000}, bypass_csp=True)
    page.goto((site / CARD).as_uri())
    page.emulate_media(media="print")
    page.add_style_tag(content="main { display: flex; gap: 8mm; padding: 4mm; width: max-content; }")
    page.evaluate("document.fonts.ready")
    return page.locator("main").screenshot()


def smaller(picture: bytes, name: str) -> "Image":
    """A picture in few colours; the card, whose type is large, also at three fifths of its size."""
    from PIL import Image  # noqa: PLC0415 - only who takes pictures needs Pillow

    image = Image.open(io.BytesIO(picture)).convert("RGB")
    if name == "card":
        image = image.resize((image.width * 3 // 5, image.height * 3 // 5), Image.Resampling.LANCZOS)
    return image.quantize(COLOURS, method=Image.Quantize.MAXCOVERAGE, dither=Image.Dither.NONE)


if __name__ == "__main__":
    main()
