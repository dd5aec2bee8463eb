"""The smallest activity on a wipe that a count would almost surely notice."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.detection import detection_limit_paired, least_detectable_activity
from clampstand.units import joined, quantity, shown

CITATION = "currie-1968"
_ONE_COUNT_PER_DECAY = quantity(1, "count/decay")


def detection_limit(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Least detectable activity, with a blank counted as long: ``given: {blank: …, time: …, efficiency: …}``.

    ``blank`` is the counts without a sample, ``efficiency`` the counts for each decay as a share.
    """
    blank, time, efficiency = (
        number_given(practical, given, word) for word in ("blank", "time", "efficiency")
    )
    counts = stated(detection_limit_paired, blank.high)
    value = stated(least_detectable_activity, counts, efficiency.low * _ONE_COUNT_PER_DECAY, time.low)
    return (
        Worked(
            id=f"detection-limit/{given['blank']}",
            title=f"Smallest activity that would almost surely be noticed above a blank of {blank}",
            value=value,
            kind="activity",
            shown=shown(value, "Bq", "activity", 2, "up"),
            formula=f"{least_detectable_activity.written}, {detection_limit_paired.written}",
            inputs=(
                written("counts of the blank, B", blank, f"practical, {given['blank']}"),
                written("counting time, t", time, f"practical, {given['time']}"),
                written("counts for each decay, ε", efficiency, f"practical, {given['efficiency']}"),
                Input("k", joined("1.645", ""), "one wrong verdict in twenty, either way", CITATION),
            ),
            within="a factor of two",
            note="With a blank counted as long as the sample. Below ten counts it is a rough guide.",
        ),
    )
