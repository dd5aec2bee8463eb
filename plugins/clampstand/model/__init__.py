"""The nouns of the handbook, as frozen definitions of what a person wrote."""
