"""Findings as a person reads them in a terminal."""

from collections.abc import Iterable, Mapping, Sequence

from clampstand.findings import Finding, Place
from clampstand.model.days import days_in_words

_WINDOW = 92
"""Characters of a source line that are shown; longer lines show the part around the mark."""

SourceLines = Mapping[str, Sequence[str]]
"""The lines of each content file, for showing the text a finding is about."""


def as_text(findings: Iterable[Finding], lines: SourceLines) -> str:
    """Findings one below the other, each with its line and a mark under the place."""
    return "\n\n".join(one_as_text(finding, lines) for finding in findings)


def one_as_text(finding: Finding, lines: SourceLines) -> str:
    """One finding: where, what, the line itself, what is needed, whose rule it is, how to mend it.

    Days are in words where they are read, and as the files have them where they are typed.
    """
    head = f"{_address(finding.place)}: {finding.severity} [{finding.rule}] {days_in_words(finding.message)}"
    parts = [head, *_marked(finding.place, lines, "^")]
    for place, words in finding.related:
        parts += [f"  {_address(place)}: {words}", *_marked(place, lines, "-")]
    if finding.found:
        parts.append(f"  found:  {finding.found}")
    if finding.needed:
        parts.append(f"  needed: {finding.needed}")
    if finding.whose is not None:
        where = f" ({_address(finding.whose_place)})" if finding.whose_place else ""
        cited = f", from {finding.whose.citation}" if finding.whose.citation else ""
        parts.append(f"  whose:  {finding.whose.layer} – {finding.whose.says}{cited}{where}")
    if finding.mend:
        parts.append(f"  mend:   {finding.mend}")
    return "\n".join(parts)


def _address(place: Place) -> str:
    return f"{place.file}:{place.line}:{place.column}"


def _marked(place: Place, lines: SourceLines, mark: str) -> list[str]:
    """The line of a place with marks under it; nothing where the line is not known."""
    known = lines.get(place.file, ())
    if not 1 <= place.line <= len(known):
        return []
    text = known[place.line - 1].rstrip("\r\n").replace("\t", " ")
    start = max(0, place.column - 1 - _WINDOW // 2) if len(text) > _WINDOW else 0
    shown = text[start : start + _WINDOW]
    at = place.column - 1 - start
    width = max(1, min(place.width, len(shown) - at))
    gutter = len(str(place.line))
    return [f"  {place.line} | {shown}", f"  {' ' * gutter} | {' ' * at}{mark * width}"]


def tally(findings: Sequence[Finding]) -> str:
    """How many stops and warnings there are, in words."""
    stops = sum(finding.stops for finding in findings)
    warnings = len(findings) - stops
    return f"{stops} stop{'s' if stops != 1 else ''}, {warnings} warning{'s' if warnings != 1 else ''}"
