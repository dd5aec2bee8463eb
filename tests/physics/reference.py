"""The department's reference substances, read plainly for the tests of physics."""

from functools import cache
from pathlib import Path

import yaml

from clampstand.model.citation import Citation
from clampstand.model.substance import Substance

CONTENT = Path(__file__).parents[2] / "content"


@cache
def substances() -> dict[str, Substance]:
    raw = yaml.load((CONTENT / "reference/substances.yml").read_text("utf-8"), Loader=yaml.BaseLoader)
    return {name: Substance.model_validate(figures) for name, figures in raw.items()}


@cache
def citations() -> dict[str, Citation]:
    raw = yaml.load((CONTENT / "citations/matter.yml").read_text("utf-8"), Loader=yaml.BaseLoader)
    return {name: Citation.model_validate(source) for name, source in raw.items()}
