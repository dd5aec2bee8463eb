"""Which limit holds: the strictest of the packs in force, in the circumstances."""

import datetime as dt

import pytest

from clampstand.limits import is_laxer, keeps, limits_for, strictest, the_limit
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.department import Department
from clampstand.model.limit import Limit, Pack
from clampstand.units import UnlikeUnits, q


def limit(key: str = "hand", **stated: object) -> Limit:
    """A limit with the parts that do not matter here filled in."""
    filled = {
        "title": "A limit",
        "layer": "local rule",
        "citation": "c",
        "read_on": "2026-01-01",
        "check_again_by": "2027-01-01",
    }
    return Limit.model_validate(filled | {"key": key} | stated)


def book(*packs: Pack, chosen: tuple[str, ...]) -> Book:
    """A book of nothing but packs."""
    department = Department.model_validate(
        {
            "name": "D",
            "packs": list(chosen),
            "computed_for": "2026-01-15",
            "class_size": "30",
            "groups_of": "3",
            "lesson": "60 min",
            "outdoor_carbon_dioxide": "420 ppm",
            "teacher_to_source": "0.5 m",
            "review_every": "12 months",
            "defer": "Local rules first.",
        }
    )
    return Book(department=department, packs={pack.pack: pack for pack in packs})


def pack(name: str, *limits: Limit) -> Pack:
    return Pack(pack=name, title=name, limits=limits)


def test_the_highest_floor_and_the_lowest_ceiling_win():
    floors = [limit(at_least="100 mm"), limit(at_least="0.3 m"), limit(at_least="20 cm")]
    ceilings = [limit(at_most="5 mA"), limit(at_most="2000 µA")]
    assert strictest(floors) is floors[1]
    assert strictest(ceilings) is ceilings[1]
    assert strictest([]) is None


def test_only_packs_in_force_are_asked():
    ours, theirs = pack("ours", limit(at_least="100 mm")), pack("theirs", limit(at_least="1 m"))
    assert the_limit("hand", book(ours, theirs, chosen=("ours",))) is ours.limits[0]
    assert the_limit("hand", book(ours, theirs, chosen=("ours", "theirs"))) is theirs.limits[0]
    assert the_limit("foot", book(ours, chosen=("ours",))) is None


def test_a_limit_for_other_circumstances_does_not_apply():
    dc, ac = (
        limit(at_most="5 mA", applies_to={"current": "dc"}),
        limit(at_most="0.5 mA", applies_to={"current": "ac"}),
    )
    content = book(pack("ours", dc, ac), chosen=("ours",))
    assert limits_for("hand", content, current="dc") == (dc,)
    assert limits_for("hand", content, current="ac") == (ac,)
    assert the_limit("hand", content) is ac, "where the circumstances are not known, the strictest holds"


@pytest.mark.parametrize(
    ("value", "stated", "kept"),
    [
        ("100 mm", {"at_least": "0.10 m"}, True),
        ("99.9 mm", {"at_least": "0.10 m"}, False),
        ("5 mA", {"less_than": "5 mA"}, False),
        ("4.999 mA", {"less_than": "5 mA"}, True),
        ("5 mA", {"at_most": "5 mA"}, True),
        ("185 kBq", {"at_most": "5 µCi"}, True),
        ("186 kBq", {"at_most": "5 µCi"}, False),
        ("2 m", {"more_than": "2 m"}, False),
    ],
)
def test_keeping_to_a_limit(value, stated, kept):
    assert keeps(q(value), limit(**stated)) is kept


def test_float_noise_breaks_no_limit():
    assert keeps(q("0.1 m") + q("0.2 m"), limit(at_most="0.3 m"))


def test_counts_ages_and_intervals_have_limits_too():
    assert keeps(1, limit(at_most_count="1"))
    assert not keeps(2, limit(at_most_count="1"))
    assert keeps(16, limit(at_least_age="16"))
    assert not keeps(15, limit(at_least_age="16"))
    assert keeps(Interval(count=2, unit="year"), limit(at_most_interval="24 months"))
    assert not keeps(Interval(count=25, unit="month"), limit(at_most_interval="2 years"))


def test_unlike_things_cannot_be_compared():
    with pytest.raises(UnlikeUnits):
        keeps(q("5 mA"), limit(at_least="100 mm"))
    with pytest.raises(TypeError):
        keeps(2, limit(at_least="100 mm"))


@pytest.mark.parametrize(
    ("interval", "day", "after"),
    [
        ("24 months", "2024-02-29", "2026-02-28"),
        ("12 months", "2023-02-28", "2024-02-28"),
        ("1 month", "2026-01-31", "2026-02-28"),
        ("1 year", "2025-12-31", "2026-12-31"),
        ("4 weeks", "2026-01-15", "2026-02-12"),
    ],
)
def test_intervals_follow_the_calendar(interval, day, after):
    count, unit = interval.split()
    length = Interval(count=int(count), unit=unit.rstrip("s"))
    assert length.after(dt.date.fromisoformat(day)) == dt.date.fromisoformat(after)


def test_a_limit_of_another_sort_is_none():
    content = book(
        pack("ours", limit(key="radiation.hand-to-source", at_most="100 mm")),
        pack("theirs", limit(key="radiation.hand-to-source", at_least="80 mm")),
        chosen=("ours", "theirs"),
    )
    assert the_limit("radiation.hand-to-source", content).in_words == "at least 80 mm"


def test_limits_no_rule_knows_are_held_to_the_first():
    content = book(
        pack("ours", limit(at_least="100 mm")),
        pack("theirs", limit(at_least="5 mA")),
        chosen=("ours", "theirs"),
    )
    assert the_limit("hand", content).in_words == "at least 100 mm"


def test_no_interval_leaves_the_calendar():
    ages = Interval(count=9999, unit="year")
    assert ages.after(dt.date(2026, 1, 15)) == dt.date.max
    assert ages.before(dt.date(2026, 1, 15)) == dt.date.min
    assert Interval(count=9999, unit="week").after(dt.date(9990, 1, 1)) == dt.date.max


def test_the_rule_of_a_region_takes_the_place_of_its_country_s():
    country = pack("country", limit(layer="law", at_least="2 m"), limit(key="mass", at_most="1 kg"))
    region = pack("region", limit(layer="law", at_least="1 m", supersedes="country"))
    both = book(country, region, chosen=("country", "region"))
    assert the_limit("hand", both) is region.limits[0]
    assert the_limit("mass", both) is country.limits[1]
    assert the_limit("hand", book(country, region, chosen=("country",))) is country.limits[0]


def test_what_supersedes_for_one_current_leaves_the_other():
    country = pack("country", limit(at_most="1 mA", applies_to={"current": "ac"}))
    region = pack("region", limit(at_most="5 mA", applies_to={"current": "dc"}, supersedes="country"))
    both = book(country, region, chosen=("country", "region"))
    assert the_limit("hand", both, current="ac") is country.limits[0]


def test_laxer_is_what_allows_more():
    assert is_laxer(limit(at_least="0.9 m"), limit(at_least="1 m"))
    assert not is_laxer(limit(at_least="100 cm"), limit(at_least="1 m"))
    assert is_laxer(limit(at_most="5 mA"), limit(less_than="5 mA"))
    assert not is_laxer(limit(less_than="5 mA"), limit(at_most="5 mA"))
    assert is_laxer(limit(at_most_interval="25 months"), limit(at_most_interval="2 years"))
    assert not is_laxer(limit(at_most_interval="24 months"), limit(at_most_interval="2 years"))
    assert is_laxer(limit(at_least_age="15"), limit(at_least_age="16"))
