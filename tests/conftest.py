"""What every room's tests may use."""

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import settings

import tiny

settings.register_profile("crowded", deadline=None)
settings.load_profile("crowded")  # how long one example takes says more about the machine than about the code


@pytest.fixture
def tiny_content(tmp_path: Path) -> Callable[..., Path]:
    """Writes the smallest whole content folder, with changes by file name, and returns it.

    ``tiny_content({"practicals/sparks.yml": "…", "kit/all.yml": None})``
    """

    def build(changes: dict[str, str | bytes | None] | None = None) -> Path:
        return tiny.write(tmp_path, changes)

    return build
