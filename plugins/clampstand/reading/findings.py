"""The findings of this room, made one way: a stop or a warning of the handbook's own, at a place."""

import difflib
from collections.abc import Iterable

from clampstand.findings import Finding, Layer, Place, Severity, Whose

READING = "reading"
"""The rule a file breaks that cannot be read as it stands."""
SCHEMA = "schema"
"""The rule a definition breaks that has a key or a value the handbook does not know."""
UNKNOWN_ID = "unknown-id"
"""The rule a value breaks that names something which is nowhere."""

MOST_FINDINGS = 50
"""Findings told of one file by each part of this room. Whoever has more mends the first fifty first."""

LONGEST_SHOWN = 80
"""Characters of somebody's text a message repeats."""

_WHOSE = {
    READING: Whose(Layer.HANDBOOK, "a file is read one way only, the same by people and by the handbook"),
    SCHEMA: Whose(Layer.HANDBOOK, "a definition has only the keys and values the handbook can check"),
    UNKNOWN_ID: Whose(Layer.HANDBOOK, "whatever is named is defined somewhere"),
}


def stop(rule: str, place: Place, message: str, mend: str = "", found: str = "") -> Finding:
    """A finding that keeps everything from being published."""
    return Finding(place, rule, Severity.STOP, message, shown(found), mend=mend, whose=_WHOSE[rule])


def warning(rule: str, place: Place, message: str, mend: str = "", found: str = "") -> Finding:
    """A finding that is only printed."""
    return Finding(place, rule, Severity.WARNING, message, shown(found), mend=mend, whose=_WHOSE[rule])


def shown(text: str) -> str:
    """Somebody's text, fit for one line of a message: short, and nothing invisible in it."""
    line = " ".join(text.split())
    short = line if len(line) <= LONGEST_SHOWN else line[: LONGEST_SHOWN - 1] + "…"
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in short)


def near(word: str, known: Iterable[str]) -> str:
    """The known word that was probably meant, or nothing.

    >>> near("takes_outt", ["takes", "takes_out", "puts_back"])
    'takes_out'
    """
    if len(word) > LONGEST_SHOWN:  # comparing is quadratic in the length
        return ""
    plain = {each.casefold(): each for each in known}
    matches = difflib.get_close_matches(word.casefold(), sorted(plain), n=1, cutoff=0.65)
    return plain[matches[0]] if matches else ""


def did_you_mean(word: str, known: Iterable[str], otherwise: str) -> str:
    """What to do about a word that is not known."""
    meant = near(word, known)
    return f"did you mean {meant}?" if meant else otherwise


def listed(words: Iterable[str], joint: str = "or", most: int = 12) -> str:
    """Words as a person lists them.

    >>> listed(["a", "b", "c"])
    'a, b or c'
    """
    all_words = list(words)
    if len(all_words) > most:
        return ", ".join(all_words[:most]) + " and others"
    return f" {joint} ".join([", ".join(all_words[:-1]), all_words[-1]] if all_words[1:] else all_words)
