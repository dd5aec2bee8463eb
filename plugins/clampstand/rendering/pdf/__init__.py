"""The printable cards as PDF, set by Typst from the same data as the cards for the browser."""
