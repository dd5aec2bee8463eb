"""The pages of the handbook, one kind of page a module."""
