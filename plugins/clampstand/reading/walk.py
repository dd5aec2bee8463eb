"""The events of a YAML file become plain data, with the stretch of text of every key and value."""

import re
from dataclasses import dataclass, field
from typing import Protocol, TypeAlias

import yaml

from clampstand.findings import Finding, Place, Route
from clampstand.reading.findings import MOST_FINDINGS, READING, shown, stop, warning
from clampstand.reading.syntax import syntax_finding

Plain: TypeAlias = "str | list[Plain] | dict[str, Plain]"


class Mark(Protocol):
    """A point of the text, as either of PyYAML's parsers gives it, counted from 0."""

    line: int
    column: int


Stretch: TypeAlias = tuple[Mark, Mark]
"""The marks at both ends of a key or value: made into a place only when somebody asks."""

DEEPEST = 20
MOST_VALUES = 20_000
"""A long practical has about 2000. More is no handbook, and would only fill the memory."""

INVISIBLE = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b\u2028\u2029\u202a-\u202e\u2060\u2066-\u2069\ud800-\udfff\ufeff\ufffe\uffff]"
)
"""Characters that change what a machine reads and not what a person sees."""
_FALSE_INDENT = re.compile("^[ \t]*[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]", re.MULTILINE)
_FALSE_SPACE = re.compile("[\t\n\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]")
_LOST = re.compile(r"[ \t]#[^\s#]")
_NO_NOTE = re.compile(r"#[^\s#]")


def _ends(event: yaml.Event) -> Stretch:
    return event.start_mark, event.end_mark  # type: ignore[return-value]  # the stubs allow for no mark at all


def place_of(start: Mark, end: Mark, lines: list[str], file: str) -> Place:
    """A stretch of text, or of its first line, as a place."""
    line = start.line
    last = end.column if end.line == line else len(lines[line].rstrip()) if line < len(lines) else 0
    return Place(file, line + 1, start.column + 1, max(last - start.column, 1))


class _Enough(Exception):
    """The rest of the file is not worth reading."""


@dataclass(slots=True)
class _Block:
    """A list or block of keys that is open while its events come in."""

    holder: "list[Plain] | dict[str, Plain]"
    route: Route
    start: Mark
    flow: bool
    muted: bool = False
    """Its content is a second version of something: looked through, kept nowhere."""
    key: str | None = None
    """The key that waits for its value."""
    key_muted: bool = False
    inner: Route = ()
    """The route of the value that waits, where it has a key."""


@dataclass
class Walk:
    """The events of a file become data. A stack of our own, for a recursive parser can be made to crash."""

    text: str
    file: str
    data: "Plain | None" = None
    findings: list[tuple[Route, Finding]] = field(default_factory=list)
    keys: dict[Route, Stretch] = field(default_factory=dict)
    values: dict[Route, Stretch] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.lines = self.text.split("\n")
        self._loses_text = _LOST.search(self.text) is not None
        self._escapes = "\\" in self.text
        self._open: list[_Block] = []
        self._count = 0
        self._documents = 0

    def through(self) -> None:
        """Walk through the whole file. Never raises, whatever is in it."""
        if unseen := self._unseen():
            self._give_up(unseen)
            return
        try:
            for event in yaml.parse(self.text, Loader=yaml.CSafeLoader):
                self._meet(event)
        except yaml.YAMLError as error:
            finding = syntax_finding(error, self.file, self.lines)
            # What was made of the half of a line before the fault would only distract.
            self.findings = [each for each in self.findings if each[1].place.line != finding.place.line]
            self._give_up(finding)
        except _Enough:
            return
        if not self._documents and not self.findings:
            self._give_up(stop(READING, Place(self.file, 1, 1), "this file is empty", "fill it or delete it"))

    def _unseen(self) -> Finding | None:
        """A finding for the first character that nobody can see, if there is one."""
        if match := INVISIBLE.search(self.text):
            message = f"there is an invisible character here (U+{ord(match.group()):04X})"
            return stop(READING, self._at(match.start()), message, "delete it and type the line again")
        if match := _FALSE_INDENT.search(self.text):
            message = "this line begins with a space that is none (a no-break or wide space)"
            return stop(
                READING, self._at(match.end() - 1), message, "delete it and indent with ordinary spaces"
            )
        return None

    def _add(self, route: Route, finding: Finding) -> None:
        self.findings.append((route, finding))
        if len(self.findings) >= MOST_FINDINGS:
            message = "there is too much wrong above: the file is read no further"
            self._give_up(stop(READING, finding.place, message, "mend what is above first"))
            raise _Enough

    def _give_up(self, finding: Finding) -> None:
        """Keep a finding after which the file counts as not read."""
        self.findings.append(((), finding))
        self.data = None

    def _meet(self, event: yaml.Event) -> None:
        """Take in one event."""
        if isinstance(event, yaml.ScalarEvent):
            self._node(event)
            self._scalar(event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self._node(event)
            self._begin(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._finish(event)
        elif isinstance(event, yaml.AliasEvent):
            self._find(
                event, "a text cannot begin with *", "put it in quotes; a file repeats nothing by name"
            )
            self._value("", event)
        elif isinstance(event, yaml.DocumentStartEvent):
            self._documents += 1
            if self._documents > 1:
                self._refuse(event, "a second file begins here", "take out the line of three hyphens")

    def _node(self, event: yaml.NodeEvent) -> None:
        self._count += 1
        if self._count > MOST_VALUES:
            self._refuse(
                event, f"this file has more than {MOST_VALUES} values", "spread it over several files"
            )
        if event.anchor is not None:
            self._find(
                event, "a text cannot begin with &", "put it in quotes; a file repeats nothing by name"
            )
        elif event.tag is not None:  # type: ignore[attr-defined]
            self._find(event, "a text cannot begin with !", "put the text in quotes")

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        text: str = event.value
        if self._escapes and INVISIBLE.search(text):
            self._find(event, "there is an invisible character in this text", "take out the \\ and its code")
            text = ""
        if self._loses_text and not event.style:
            end = _ends(event)[1]
            rest = self.lines[end.line][end.column :]
            if rest[:1] in (" ", "\t") and _NO_NOTE.match(rest.lstrip(" \t")):
                self._lost(end, rest)
        block = self._open[-1] if self._open else None
        if block is not None and isinstance(block.holder, dict) and block.key is None:
            self._key(block, text, event)
        else:
            if not text and not event.style and event.anchor is None and event.tag is None:
                self._nothing(event)
            self._value(text, event)

    def _lost(self, end: Mark, rest: str) -> None:
        place = Place(self.file, end.line + 1, end.column + 1, len(rest.rstrip()))
        message = "the text ends here: what follows a space and # is read by nobody"
        mend = "put the whole text between double quotes, or write a space after # if it is a note"
        self._add(self._route(), warning(READING, place, message, mend, found=rest))

    def _nothing(self, event: yaml.ScalarEvent) -> None:
        """A key without a value. In curly brackets that is mostly a text gone wrong."""
        block = self._open[-1] if self._open else None
        mend = "write the value, or leave the key out"
        if block is not None and block.flow and isinstance(block.holder, dict):
            mend = (
                "a text with a comma, or one that begins with a curly bracket, needs double quotes; "
                "a colon needs a space after it"
            )
        route = self._route()
        place = self._place(*self.keys.get(route, _ends(event)))
        if block is None or not block.muted:
            self._add(route, stop(READING, place, "nothing is written here", mend))

    def _key(self, block: _Block, key: str, event: yaml.ScalarEvent) -> None:
        block.key, block.key_muted = key, block.muted
        block.inner = route = (*block.route, key)
        if block.muted:
            return
        if key == "<<" and not event.style:
            self._find(event, "<< is not a key", "write out what belongs here")
            block.key_muted = True
        elif key in block.holder:
            first = self.keys[route][0]
            message = f"{shown(key)} is written twice; the first is in line {first.line + 1}"
            finding = stop(READING, self._place(*_ends(event)), message, "keep one of the two")
            self._add(route, finding)
            block.key_muted = True
        else:
            self.keys[route] = _ends(event)
            if not key or _FALSE_SPACE.search(key):
                self._find(event, "this key is empty or has a tab or no-break space in it", "type it again")

    def _begin(self, event: yaml.CollectionStartEvent) -> None:
        if len(self._open) >= DEEPEST:
            self._refuse(event, f"this is more than {DEEPEST} blocks deep", "write it flatter")
        block = self._open[-1] if self._open else None
        if block is not None and isinstance(block.holder, dict) and block.key is None:
            self._find(event, "a key cannot be a list or a block", "write a single text before the colon")
            muted = True
        else:
            muted = block is not None and (block.muted or block.key_muted)
        holder: list[Plain] | dict[str, Plain] = {} if isinstance(event, yaml.MappingStartEvent) else []
        self._open.append(_Block(holder, self._route(), _ends(event)[0], bool(event.flow_style), muted))

    def _finish(self, event: yaml.CollectionEndEvent) -> None:
        block = self._open.pop()
        outer = self._open[-1] if self._open else None
        if outer is not None and isinstance(outer.holder, dict) and outer.key is None:
            outer.key, outer.key_muted = "", True  # what just ended was a key
        else:
            self._value(block.holder, event, block.start)

    def _value(self, value: Plain, event: yaml.Event, start: Mark | None = None) -> None:
        """Put a finished value where it belongs."""
        block = self._open[-1] if self._open else None
        if block is None:
            self.data = value
            self.values[()] = _ends(event) if start is None else (start, _ends(event)[1])
            return
        if isinstance(block.holder, dict) and block.key is None:  # an alias instead of a key
            block.key, block.key_muted = "", True
            return
        route = self._route()
        muted = block.muted or block.key_muted
        if isinstance(block.holder, list):
            block.holder.append(value)
        else:
            if not muted:
                block.holder[block.key or ""] = value
            block.key, block.key_muted = None, False
        if not muted:
            self.values[route] = _ends(event) if start is None else (start, _ends(event)[1])

    def _route(self) -> Route:
        """The route of the value that comes next."""
        if not self._open:
            return ()
        block = self._open[-1]
        if isinstance(block.holder, list):
            return (*block.route, len(block.holder))
        return block.inner if block.key else (*block.route, "")

    def _find(self, event: yaml.Event, message: str, mend: str) -> None:
        place = self._place(*_ends(event))
        self._add(self._route(), stop(READING, place, message, mend))

    def _refuse(self, event: yaml.Event, message: str, mend: str) -> None:
        self._give_up(stop(READING, self._place(*_ends(event)), message, mend))
        raise _Enough

    def _place(self, start: Mark, end: Mark) -> Place:
        return place_of(start, end, self.lines, self.file)

    def _at(self, index: int) -> Place:
        before = self.text[:index]
        return Place(self.file, before.count("\n") + 1, index - (before.rfind("\n") + 1) + 1)
