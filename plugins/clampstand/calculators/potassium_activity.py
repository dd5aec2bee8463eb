"""Activity of the potassium-40 in an amount of potassium chloride, the most ordinary radioactive thing."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.decay import activity_per_mass_of_compound
from clampstand.units import Quantity, bare, shown_best

NUCLIDE, MATERIAL = "K-40", "potassium-chloride"
_ONE_ATOM = bare(1)


def potassium_activity(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Activity of a mass of salt: ``given: {mass: …}``, and ``share`` where only a part is the chloride."""
    mass, (per_mass, inputs) = number_given(practical, given, "mass"), _per_mass(book)
    value, name = per_mass * mass.value, "potassium chloride"
    if "share" in given:
        share = number_given(practical, given, "share")
        value, name = value * share.value, f"salt that is {share} potassium chloride"
        inputs = (written("part of it, w", share, f"practical, {given['share']}"), *inputs)
    return (
        Worked(
            id=f"potassium-activity/{mass}/{given.get('share', 'pure')}",
            title=f"Activity of {mass} of {name}",
            value=value.to("Bq"),
            kind="activity",
            shown=shown_best(value.to("Bq"), "activity", 3),
            formula=f"A = m · {'w · ' if 'share' in given else ''}a, {activity_per_mass_of_compound.written}",
            inputs=(written("mass, m", mass, f"practical, {given['mass']}"), *inputs),
            within="2 %",
            note="Nine decays in ten give a beta particle, and only one in ten a gamma ray.",
        ),
    )


def _per_mass(book: Book) -> tuple[Quantity, tuple[Input, ...]]:
    """Activity per mass of potassium chloride, with what it was worked from."""
    nuclide, material = book.nuclides.get(NUCLIDE), book.materials.get(MATERIAL)
    if nuclide is None or material is None:
        raise CannotWork(f"the reference figures have no {NUCLIDE} or no {MATERIAL}")
    half_life = nuclide.half_life
    part, molar = material.figures["abundance-of-K-40"], material.figures["molar-mass"]
    value = stated(
        activity_per_mass_of_compound, half_life.value.value, part.value.value, _ONE_ATOM, molar.value.value
    )
    return value, (
        written("half-life of potassium-40, T½", half_life.value, "reference figures", half_life.citation),
        written("its part of potassium, x", part.value, part.condition or "", part.citation),
        Input("atoms in a formula unit, n", "1", "KCl"),
        written("molar mass of the salt, M", molar.value, "reference figures", molar.citation),
    )
