"""A browser and the demo site; without a browser the tests are skipped with a note, unless CI is set."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

ROOT = Path(__file__).parents[2]


def chromium() -> str | None:
    """Where Chromium is: named by CHROMIUM, or on the path."""
    return os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    found = chromium()
    if found is None and not os.environ.get("CI"):
        pytest.skip("no Chromium here: install it, or name it in the variable CHROMIUM")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=found)
        yield started
        started.close()


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo handbook, built as it is published."""
    folder = tmp_path_factory.mktemp("demo") / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(folder)]
    environment = os.environ | {"NO_MKDOCS_2_WARNING": "1"}
    built = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False, env=environment)
    assert built.returncode == 0, built.stderr
    return folder
