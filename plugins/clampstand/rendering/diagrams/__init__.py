"""Drawings made from numbers: signs, plans, circuits and curves, as SVG text."""
