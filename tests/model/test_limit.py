"""A limit states one value in one way, and says it as a person would."""

import pytest
from pydantic import ValidationError

from clampstand.model.limit import Limit

_REST = {
    "key": "planning.something",
    "title": "Something",
    "layer": "local rule",
    "citation": "department-rules",
    "read_on": "2026-01-05",
    "check_again_by": "2027-01-05",
}


def _limit(**stated: str) -> Limit:
    return Limit.model_validate({**_REST, **stated})


@pytest.mark.parametrize(
    ("stated", "words"),
    [
        ({"at_least": "100 mm"}, "at least 100 mm"),
        ({"less_than": "5 mA"}, "less than 5 mA"),
        ({"at_most_count": "1"}, "at most 1"),
        ({"at_least_age": "16"}, "at least 16 years old"),
        ({"at_most_interval": "24 months"}, "at least once in 24 months"),
    ],
)
def test_a_limit_says_itself_in_words(stated: dict[str, str], words: str) -> None:
    assert _limit(**stated).in_words == words


def test_only_a_quantity_has_an_amount() -> None:
    quantity = _limit(at_least="100 mm").amount
    assert quantity is not None
    assert quantity.written == "100 mm"
    assert _limit(at_most_count="1").amount is None


def test_a_count_of_none_is_a_limit_too() -> None:
    assert _limit(at_most_count="0").value == 0


@pytest.mark.parametrize("stated", [{}, {"at_most": "1 m", "at_least": "1 m"}, {"at_most_count": "1 m"}])
def test_a_limit_states_exactly_one_value(stated: dict[str, str]) -> None:
    with pytest.raises(ValidationError):
        _limit(**stated)
