"""Reads a department's practicals from YAML, checks them, works out their numbers and makes them pages."""
