"""Rooms, people, records, dates and time."""
