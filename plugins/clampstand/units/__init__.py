"""Units, amounts and formulae: the only room that touches pint."""

from clampstand.units.amounts import (
    Amount,
    NotAnAmount,
    amounts_in,
    is_over,
    is_same,
    is_under,
    q,
    read_amount,
)
from clampstand.units.curve import Curve
from clampstand.units.formula import Formula, OutOfRange, Takes, exp, formula, ln, sqrt
from clampstand.units.kinds import KINDS, KINDS_BY_SPELLING, Kind
from clampstand.units.printing import bare, best_spelling, digits, joined, ladder, shown, shown_best
from clampstand.units.registry import (
    Quantity,
    Unit,
    UnlikeUnits,
    added_up,
    number_in,
    of_unit,
    quantity,
    unit,
)
from clampstand.units.words import amounts_in_words

__all__ = [
    "KINDS",
    "KINDS_BY_SPELLING",
    "Amount",
    "Curve",
    "Formula",
    "Kind",
    "NotAnAmount",
    "OutOfRange",
    "Quantity",
    "Takes",
    "Unit",
    "UnlikeUnits",
    "added_up",
    "amounts_in",
    "amounts_in_words",
    "bare",
    "best_spelling",
    "digits",
    "exp",
    "formula",
    "is_over",
    "is_same",
    "is_under",
    "joined",
    "ladder",
    "ln",
    "number_in",
    "of_unit",
    "q",
    "quantity",
    "read_amount",
    "shown",
    "shown_best",
    "sqrt",
    "unit",
]
