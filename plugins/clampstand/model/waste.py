"""The ways of waste."""

from typing import Literal

WasteRoute = Literal[
    "open air",
    "fume cupboard",
    "sink",
    "bin",
    "special waste bottle",
    "sharps bin",
    "autoclave",
    "food waste",
    "supplier",
    "licensed contractor",
    "back to store",
    "reuse",
]
"""The ways something left over may go."""
