"""When it doesn't work: a fix that touches what a dangerous supply feeds begins with making it safe."""

import html
import re
from dataclasses import replace

import pytest

from clampstand.build import sheets
from clampstand.rendering.contents import Contents
from clampstand.rendering.pages.practical import faults_of, practical_page
from demo import demo

HANDBOOK = demo()
BOOK = HANDBOOK.book

HIGH_VOLTAGE = {
    "spark-counter": ("Dial to zero", "switch off", "wait", "discharge"),
    "ionisation-current": ("Dial to zero", "switch off", "wait", "discharge"),
    "electron-beam-deflection": ("Dial to zero", "switch off", "wait", "discharge"),
    "van-de-graaff-generator": ("Motor off", "wait", "discharge"),
}
"""The practicals that work above 50 V, with what is said first: the generator has a motor and no dial."""


@pytest.mark.parametrize("practical_id", sorted(HIGH_VOLTAGE))
def test_off_wait_discharge_comes_before_every_fix_on_live_parts(practical_id: str):
    practical = BOOK.practicals[practical_id]
    touching = [words for fault, words in faults_of(practical, BOOK) if fault.touches]
    assert touching
    for words in touching:
        places = [words.find(word) for word in HIGH_VOLTAGE[practical_id]]
        assert places == sorted(places)
        assert places[0] == 0


def test_a_fix_that_touches_nothing_live_needs_no_such_words():
    faults = {
        fault.seen: words for fault, words in faults_of(BOOK.practicals["electron-beam-deflection"], BOOK)
    }
    assert faults["The beam is bent before any field is on"] == ""


@pytest.mark.parametrize("practical_id", sorted(set(BOOK.practicals) - set(HIGH_VOLTAGE)))
def test_twelve_volts_need_no_discharging(practical_id: str):
    assert all(words == "" for _, words in faults_of(BOOK.practicals[practical_id], BOOK))


def test_a_supply_nobody_described_counts_as_dangerous():
    kit = {name: item for name, item in BOOK.kit.items() if name != "low-voltage-supply"}
    practical = BOOK.practicals["specific-heat-capacity"]
    assert any(words for _, words in faults_of(practical, replace(BOOK, kit=kit)))


def test_the_page_says_it_before_the_fix():
    page = practical_page(BOOK.practicals["spark-counter"], Contents(BOOK, sheets(HANDBOOK.lessons)))
    said = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page.html)).split())
    assert "Dial to zero, switch off, wait, discharge. Then: Blow the wire clean" in said
