"""A limit states one value in one way, and says it as a person would."""

import pytest
from pydantic import ValidationError
from pydantic_core import PydanticCustomError

from clampstand.model.limit import AppliesTo, Limit, statement_from

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
        ({"at_most_interval": "24 months"}, "no longer than 24 months"),
    ],
)
def test_a_limit_says_itself_in_words(stated: dict[str, str], words: str) -> None:
    assert _limit(**stated).in_words == words


@pytest.mark.parametrize(
    ("stated", "words"),
    [
        ({"at_least": "100 mm"}, "at least 10 cm"),
        ({"less_than": "5 mA"}, "less than 5000 µA"),
        ({"at_most_count": "1"}, "at most 1"),
        ({"at_least_age": "16"}, "at least 16 years old"),
        ({"at_most_interval": "24 months"}, "no longer than 2 years"),
    ],
)
def test_its_words_are_read_again_in_whatever_unit(stated: dict[str, str], words: str) -> None:
    assert _limit(**stated).says.means_as(statement_from(words))


@pytest.mark.parametrize("words", ["at least 10 mm", "at most 100 mm", "more than 100 mm", "at least 100 g"])
def test_other_words_ask_for_something_else(words: str) -> None:
    assert not _limit(at_least="100 mm").says.means_as(statement_from(words))


@pytest.mark.parametrize("words", ["at least 100", "100 mm", "about 100 mm", ""])
def test_words_that_ask_for_nothing_are_refused(words: str) -> None:
    with pytest.raises(PydanticCustomError, match="does not say what a limit asks for"):
        statement_from(words)


def test_what_it_holds_for_is_said_in_a_few_words() -> None:
    assert AppliesTo.model_validate({"nuclide": "Am-241", "form": "sealed"}).in_words == "Am-241, sealed"
    assert AppliesTo.model_validate({"age_under": "18", "age_from": "16"}).in_words == "under 18, from 16"
    assert AppliesTo().in_words == ""


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
