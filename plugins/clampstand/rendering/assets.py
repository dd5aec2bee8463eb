"""The look of the site as files: one stylesheet, small scripts, fonts; named by what is in them."""

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from clampstand.rendering.live.script import live_script

ASSETS = Path(__file__).parent / "theme" / "assets"
OVERRIDES = Path(__file__).parent / "theme" / "overrides"

PARTS = Path(__file__).parent / "templates" / "parts"
"""Every part of a page in a folder of its own: its template, its rules for screen and print, its examples."""

_BEFORE, _AFTER = ("tokens.css", "theme.css", "page.css"), ("path.css",)
"""The stylesheet's files before the rules of the parts, and after them: a path sheet sets parts smaller."""
_SCRIPTS = ("narrow.js", "in-force.js")
_SHIM = "iframe-worker.js"
"""The theme fetches a script of this name from another host unless the site has one."""
_FOLDER = "assets/clampstand"
_REMARK = {
    "css": re.compile(rb"/\*.*?\*/\s*", re.DOTALL),
    "js": re.compile(rb"^\s*(?://[^\n]*|/\*.*?\*/[ \t]*)\n", re.DOTALL | re.MULTILINE),
}
"""What is written for whoever changes a file; a telephone need not fetch it."""


@dataclass(frozen=True, slots=True)
class Assets:
    """Files for the site and how pages name them.

    Args:
        files: content by address.
        stylesheet: the address of the stylesheet.
        scripts: the addresses of the scripts.
        shim: the address of the script that lets search work from a folder on a disk.
    """

    files: Mapping[str, bytes]
    stylesheet: str
    scripts: tuple[str, ...]
    shim: str


@cache
def assets() -> Assets:
    """The assets, read once."""
    fonts = [path for path in sorted((ASSETS / "fonts").iterdir()) if path.suffix in (".woff2", ".txt")]
    files: dict[str, bytes] = {f"{_FOLDER}/fonts/{font.name}": font.read_bytes() for font in fonts}
    before, after = ([ASSETS / name for name in names] for names in (_BEFORE, _AFTER))
    sheets = [*before, *sorted(PARTS.glob("*/*.css")), *after]
    sheet = b"\n".join(path.read_bytes() for path in sheets)
    stylesheet = _keep(files, "handbook.css", sheet)
    scripts = tuple(_keep(files, name, (ASSETS / name).read_bytes()) for name in _SCRIPTS)
    scripts = (*scripts, _keep(files, "live.js", live_script()))
    shim = _keep(files, _SHIM, (ASSETS / _SHIM).read_bytes())
    return Assets(files, stylesheet, scripts, shim)


def _keep(files: dict[str, bytes], name: str, content: bytes) -> str:
    """Put a file among the others without its remarks, named by what is in it, and give its address."""
    stem, _, ending = name.rpartition(".")
    content = _REMARK[ending].sub(b"", content)
    address = f"{_FOLDER}/{stem}.{hashlib.sha256(content).hexdigest()[:10]}.{ending}"
    files[address] = content
    return address
