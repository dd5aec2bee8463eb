"""Formulae: quantities in, quantities out; no files, no definitions, no clock."""
