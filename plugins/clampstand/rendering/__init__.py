"""Definitions and worked numbers made into pages and cards; this room decides nothing."""
