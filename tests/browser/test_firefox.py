"""The handbook in Firefox, opened from a folder on a disk; skipped where there is no Firefox."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

pytest.importorskip("marionette_driver", reason="no driver for Firefox here")
from marionette_driver import By, Wait
from marionette_driver.keys import Keys
from marionette_driver.marionette import Marionette

pytestmark = pytest.mark.browser

NOBODY = {
    "network.proxy.type": 1,
    "network.proxy.http": "127.0.0.1",
    "network.proxy.http_port": 9,
    "network.proxy.ssl": "127.0.0.1",
    "network.proxy.ssl_port": 9,
}
"""Every request to another host ends at a port where nobody listens."""


@pytest.fixture(scope="module")
def firefox(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Marionette]:
    program = shutil.which("firefox-esr") or shutil.which("firefox")
    if program is None:
        pytest.skip("no Firefox here")
    log = tmp_path_factory.mktemp("firefox") / "log"
    driver = Marionette(bin=program, headless=True, prefs=NOBODY, startup_timeout=120, gecko_log=str(log))
    driver.start_session()
    driver.set_window_rect(width=1280, height=900)
    yield driver
    driver.quit()
    driver.cleanup()


def test_search_numbers_and_filters_work_in_firefox_too(firefox: Marionette, site: Path):
    """One test for all, since a Firefox takes longer to start than to do all of it."""
    firefox.navigate((site / "index.html").as_uri())
    firefox.find_element(By.CSS_SELECTOR, "input[name=query]").send_keys("clicky thing")
    Wait(firefox, 20).until(lambda _: "spark-counter" in first_found(firefox))

    firefox.navigate((site / "practicals/inverse-square-law.html").as_uri())
    field = firefox.find_element(By.CSS_SELECTOR, "details.live[data-live] input[type=number]")
    panel = field.find_element(By.XPATH, "./ancestor::details")
    panel.find_element(By.CSS_SELECTOR, "summary").click()
    shown = panel.find_element(By.CSS_SELECTOR, ".live__results")
    before = shown.text
    field.send_keys(Keys.ARROW_UP)
    Wait(firefox, 10).until(lambda _: shown.text not in ("", before))
    assert "NaN" not in shown.text

    firefox.navigate(f"{(site / 'practicals/index.html').as_uri()}?source=none")
    left = firefox.find_elements(By.CSS_SELECTOR, "#practicals-table tbody tr:not([hidden])")
    all_of_them = firefox.find_elements(By.CSS_SELECTOR, "#practicals-table tbody tr")
    assert 0 < len(left) < len(all_of_them)
    assert {row.get_attribute("data-source") for row in left} == {"none"}


def first_found(driver: Marionette) -> str:
    found = driver.find_elements(By.CSS_SELECTOR, ".md-search-result__link")
    return str(found[0].get_attribute("href")) if found else ""
