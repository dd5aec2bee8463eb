"""Distances, currents, charges and gas against the limits that hold."""
