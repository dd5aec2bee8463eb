"""Numbers that must agree, and text that must agree with them."""
