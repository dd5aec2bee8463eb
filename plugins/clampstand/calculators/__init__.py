"""Worked numbers: the catalogue of what a definition may ask to be computed."""

from collections.abc import Mapping

from clampstand.calculators.sheet import Calculator

CALCULATORS: Mapping[str, Calculator] = {}
"""Calculator by the word a definition's ``compute`` uses; every calculator is listed here by hand."""
