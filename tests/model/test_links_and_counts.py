"""Addresses, counts, ages, lists and half-lives: what is refused, and why."""

import pytest
from pydantic import BaseModel, ValidationError

from clampstand.model.base import Age, Definition, Line, Link, Many, SomeTime
from clampstand.model.practical import KitLine


class Linked(Definition):
    """Anything with an address."""

    link: Link


class Lasting(Definition):
    """Anything that lasts."""

    time: SomeTime


class Listed(Definition):
    """Anything with a list."""

    names: Many[Line]


class Aged(Definition):
    """Anybody."""

    age: Age


def refused(kind: type[BaseModel], data: dict[str, str] | dict[str, list[str]]) -> str:
    """What is said against data."""
    with pytest.raises(ValidationError) as caught:
        kind.model_validate(data)
    return caught.value.errors()[0]["msg"]


@pytest.mark.parametrize(
    "address",
    ["https://example.org/a?b=c#d", "http://example.org", "mailto:office@example.org", "tel:+441234567890"],
)
def test_an_address_may_be_linked_to(address: str) -> None:
    assert Linked(link=address).link == address


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JavaScript:alert(1)",
        " javascript:alert(1)",
        "data:text/html,x",
        "vbscript:x",
        "file:///etc/passwd",
        "//example.org",
        "example.org",
        "https:",
        "https://example.org/two words",
        'https://example.org/"><script>',
    ],
)
def test_no_other_address_is_taken(address: str) -> None:
    assert "no address that a page may link to" in refused(Linked, {"link": address})


def test_a_kit_line_lists_at_least_one() -> None:
    assert "nobody and nothing" in refused(KitLine, {"item": "tube", "per": "class", "count": "0"})
    assert KitLine.model_validate({"item": "tube", "per": "class", "count": "1"}).count == 1


def test_a_time_of_nothing_is_no_half_life() -> None:
    assert "no time at all" in refused(Lasting, {"time": "0 s"})
    assert "less than nothing" in refused(Lasting, {"time": "-3 s"})
    assert str(Lasting.model_validate({"time": "3 s"}).time) == "3 s"


def test_a_list_names_nothing_twice() -> None:
    assert "water stands here twice" in refused(Listed, {"names": ["water", "sand", " water"]})
    assert Listed.model_validate({"names": ["water", "sand"]}).names == ("water", "sand")
    assert Listed.model_validate({"names": "water"}).names == ("water",)


def test_an_age_is_one_that_somebody_has() -> None:
    assert "nobody's age" in refused(Aged, {"age": "160"})
    assert "nobody's age" in refused(Aged, {"age": "0"})
    assert Aged.model_validate({"age": "16"}).age == 16
