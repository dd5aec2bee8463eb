"""What is wrong with a file that is no YAML at all, in words for somebody who has never heard of YAML."""

import re

import yaml

from clampstand.findings import Finding, Place
from clampstand.reading.findings import READING, shown, stop

_TEXT_IN_QUOTES = "put the whole text between double quotes"
_ENOUGH = 300
"""Characters of a line that are looked at: what is wrong shows in its beginning."""
_INDENT = "line the keys of one block up under each other, with spaces"


def syntax_finding(error: yaml.YAMLError, file: str, lines: list[str]) -> Finding:
    """The finding for an error of the YAML parser, at the character a person would look at first."""
    mark = getattr(error, "problem_mark", None)
    context = getattr(error, "context_mark", None)
    problem = str(getattr(error, "problem", ""))
    if mark is None:
        return stop(READING, Place(file, 1, 1), "this file cannot be read", "write it as YAML")
    if context is not None and ("quoted" in str(error) or "flow" in str(error)):
        return _left_open(error, file, lines)
    row, column = min(mark.line, len(lines) - 1), mark.column
    before = next((text for text in reversed(lines[:row]) if text.strip()), "")
    sign = lines[row][column : column + 1]
    message, mend = _words(problem, lines[row][:_ENOUGH], column, sign, before[:_ENOUGH])
    return stop(READING, Place(file, row + 1, column + 1), message, mend, found=lines[row])


def _left_open(error: yaml.YAMLError, file: str, lines: list[str]) -> Finding:
    """An opened quote or bracket: the place to look at is where it was opened, not where the file ends."""
    context, mark = error.context_mark, error.problem_mark  # type: ignore[attr-defined]
    place = Place(file, context.line + 1, context.column + 1)
    if "escape" in str(error):
        place = Place(file, mark.line + 1, mark.column + 1)
        message, mend = "a backslash in double quotes begins something unknown", "use single quotes instead"
    elif "quoted" in str(error):
        message, mend = "a quotation mark is opened here and not closed", "write the closing mark"
    else:
        row, column = _open_bracket(lines, min(context.line, len(lines) - 1), context.column)
        place, bracket = Place(file, row + 1, column + 1), lines[row][column : column + 1]
        message = f"{bracket} is opened here and not closed, or a comma is missing in it"
        mend = f"close it with {_CLOSES.get(bracket, ']')}, or {_TEXT_IN_QUOTES} if it is no list"
    return stop(READING, place, message, mend, found=lines[min(place.line, len(lines)) - 1])


_CLOSES = {"[": "]", "{": "}"}


def _open_bracket(lines: list[str], row: int, column: int) -> tuple[int, int]:
    """Where the innermost bracket was opened that is open at a place; the place itself if none is.

    The parser names the bracket only where it missed its end; where it met something that cannot stand in a
    list it names that, lines further down.
    """
    if lines[row][column : column + 1] in _CLOSES:
        return row, column
    to_open = {close: opens for opens, close in _CLOSES.items()}
    open_now: list[tuple[str, int, int]] = []
    for at, line in enumerate([*lines[:row], lines[row][:column]]):
        for where, sign in enumerate(line):
            if sign in _CLOSES:
                open_now.append((sign, at, where))
            elif sign in to_open and open_now and open_now[-1][0] == to_open[sign]:
                open_now.pop()
    return open_now[-1][1:] if open_now else (row, column)


_AFTER_QUOTE = re.compile(r"\s*(- )?[^:]*:\s+[\"']")
_BRACKET_FIRST = re.compile(r"\s*(- )?([^:]*:\s+)?[{\[]")


def _words(problem: str, line: str, column: int, sign: str, before: str) -> tuple[str, str]:
    """Message and mend for an error, told apart by the line it stands in and the one before."""
    told = "this line does not fit the ones above it", _INDENT
    if "\t" in line[: len(line) - len(line.lstrip())]:
        told = "this line begins with a tab", "use spaces instead of the tab"
    elif "cannot start any token" in problem:
        told = f"a text cannot begin with {shown(sign)}", _TEXT_IN_QUOTES
    elif "mapping values" in problem:
        told = _colon(line, column, before)
    elif "expected key" in problem and _AFTER_QUOTE.match(line):
        told = "there is more text after the closing quotation mark", "use the other sort of quotation marks"
    elif "expected key" in problem and _BRACKET_FIRST.match(line):
        told = "a text that begins with a bracket needs quotation marks", _TEXT_IN_QUOTES
    elif "block sequence entries" in problem:
        told = "a list begins on the line of its key", "begin the list on the next line"
    elif "block scalar" in problem or "comment or line break" in problem:
        told = "a text that begins with > or | begins on the next line", _TEXT_IN_QUOTES
    elif "document start" in problem:
        told = "there is something after the end of the file's content", "take out the line of dots above it"
    elif sign and sign in "]},":
        told = f"{sign} does not belong here", "take it out, or put the text in quotes"
    return told


def _colon(line: str, column: int, before: str) -> tuple[str, str]:
    """Three mistakes end in a colon that cannot be: a second one, one indented too far, none above."""
    if ":" in line[:column]:
        return "there is a second colon in this line", _TEXT_IN_QUOTES
    if re.match(r"\s*(- )?[^:#]+$", before) or re.match(r"\s*(- )?[^:\s]+:\S", before):
        return "the line above has no colon with a space after it", "write the key above, a colon and a space"
    return "this line is indented too far, or the text above it is not finished", _INDENT
