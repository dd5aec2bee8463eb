"""What a change means: which verdicts flip when limits change, and what differs between two contents."""
