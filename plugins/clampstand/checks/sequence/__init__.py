"""The order of steps."""
