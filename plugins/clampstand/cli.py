"""The command ``clampstand``: check, build, explain, export, cards, schema, try-limits, changes."""

import argparse
import io
import os
import sys
from collections.abc import Callable, Sequence
from difflib import get_close_matches
from pathlib import Path

from clampstand import reports
from clampstand.build import Handbook, handbook
from clampstand.calculators import CALCULATORS
from clampstand.checks import RULES
from clampstand.model.book import Book

CLEAN, STOPPED, COULD_NOT_RUN = 0, 1, 2
"""Exit codes: nothing stops; something stops; the command could not do its work at all."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command and returns its exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A console without our signs, as of Windows, prints the rest rather than nothing at all.
            stream.reconfigure(errors="backslashreplace")
    chosen = _parser().parse_args(arguments)
    run: Callable[[argparse.Namespace], int] = chosen.run
    try:
        return run(chosen)
    except (OSError, UnicodeError) as reason:
        print(f"clampstand: {reason}", file=sys.stderr)
        return COULD_NOT_RUN


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        "clampstand", description="Check, explain and publish a practical handbook."
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    check = commands.add_parser("check", help="check every definition; publish nothing")
    _content_option(check)
    check.add_argument(
        "--format", choices=("text", "json", "github", "sarif"), default="text", help="how to print findings"
    )
    check.set_defaults(run=_check)

    build = commands.add_parser("build", help="check, then build the handbook (mkdocs build --strict)")
    build.add_argument(
        "--config", type=Path, default=Path("mkdocs.yml"), help="the site's configuration file"
    )
    build.set_defaults(run=_build)

    explain = commands.add_parser("explain", help="say what a rule asks for, why, and whose rule it is")
    explain.add_argument("rule", help="the rule's id, as a finding prints it in brackets")
    explain.set_defaults(run=_explain)

    export = commands.add_parser("export", help="write the pages as plain Markdown, for any other generator")
    _content_option(export)
    export.add_argument("folder", type=Path, help="where to write; made if it is not there")
    export.set_defaults(run=_export)

    cards = commands.add_parser("cards", help="write the printable cards as PDF, each alone and all in one")
    _content_option(cards)
    cards.add_argument("folder", type=Path, help="where to write; made if it is not there")
    cards.add_argument("--paper", choices=("a4", "letter"), default="a4", help="the paper in the printer")
    cards.set_defaults(run=_cards)

    schema = commands.add_parser("schema", help="write JSON schemas, with which editors complete and explain")
    _content_option(schema)
    schema.add_argument("folder", type=Path, help="where to write; made if it is not there")
    schema.set_defaults(run=_schema)

    trial = commands.add_parser("try-limits", help="list the verdicts that other packs or values would flip")
    _content_option(trial)
    trial.add_argument("--packs", help="the packs to try, with commas between them")
    trial.add_argument("--limits-of", type=Path, metavar="CONTENT", help="another content, to try its limits")
    trial.set_defaults(run=_try_limits)

    meaning = commands.add_parser("changes", help="say what differs in meaning from an older content")
    _content_option(meaning)
    meaning.add_argument("old", type=Path, metavar="OLD_CONTENT", help="the content folder as it was")
    meaning.set_defaults(run=_changes)
    return parser


def _content_option(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--content", type=Path, default=Path("content"), help="the content folder")


def _check(chosen: argparse.Namespace) -> int:
    judged = handbook(chosen.content)
    printed = {
        "text": lambda: _text(judged),
        "json": lambda: reports.as_json(judged.findings),
        "github": lambda: reports.as_github(judged.findings, _in_repository(chosen.content)),
        "sarif": lambda: reports.as_sarif(judged.findings, _in_repository(chosen.content), RULES),
    }[chosen.format]()
    if printed:
        print(printed)
    return STOPPED if judged.stops else CLEAN


def _in_repository(folder: Path) -> str:
    """A folder's path from where the command runs; of one elsewhere only its name, to tell nothing more."""
    here, there = Path.cwd(), folder.resolve()
    return there.relative_to(here).as_posix() if there.is_relative_to(here) else there.name


def _text(judged: Handbook) -> str:
    told = reports.as_text(judged.findings, judged.reading.lines)
    return "\n\n".join(filter(None, (told, reports.tally(judged.findings))))


def _build(chosen: argparse.Namespace) -> int:
    if not chosen.config.is_file():
        raise FileNotFoundError(f"there is no {chosen.config} here; run this where mkdocs.yml is")
    # The theme prints advice about MkDocs 2 on every run; the pins in pyproject.toml are the answer to it.
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    from mkdocs.__main__ import cli as mkdocs  # noqa: PLC0415 - only this command needs MkDocs

    try:
        mkdocs(["build", "--strict", "--config-file", str(chosen.config)], standalone_mode=True)
    except SystemExit as end:
        return CLEAN if not end.code else STOPPED
    return CLEAN


def _explain(chosen: argparse.Namespace) -> int:
    rule = next((rule for rule in RULES if rule.id == chosen.rule), None)
    if rule is None:
        known = sorted(rule.id for rule in RULES)
        meant = get_close_matches(chosen.rule, known, n=1)
        mend = f"did you mean {meant[0]}?" if meant else f"the rules are {', '.join(known)}"
        print(f"clampstand: there is no rule {chosen.rule}; {mend}", file=sys.stderr)
        return COULD_NOT_RUN
    page = rule.page
    print(f"{rule.id} ({rule.severity})\n{page.title}\n\nWhy: {page.why}\n\nWhose: {page.whose}")
    print(f"\nWrong:\n{page.wrong}\n\nRight:\n{page.right}")
    return CLEAN


def _export(chosen: argparse.Namespace) -> int:
    judged = handbook(chosen.content)
    if judged.stops:
        print(_text(judged), file=sys.stderr)
        return STOPPED
    from clampstand.build import markdown_pages  # noqa: PLC0415 - rendering is not on the way of check

    for uri, text in markdown_pages(judged).items():
        _write(chosen.folder / uri, text)
    return CLEAN


def _cards(chosen: argparse.Namespace) -> int:
    judged = handbook(chosen.content)
    if judged.stops:
        print(_text(judged), file=sys.stderr)
        return STOPPED
    from clampstand.build import card_files  # noqa: PLC0415 - rendering is not on the way of check
    from clampstand.rendering.pdf.printing import CannotPrint  # noqa: PLC0415

    try:
        for path, made in dict(card_files(judged, chosen.paper)).items():
            target: Path = chosen.folder / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(made)
    except CannotPrint as reason:
        print(f"clampstand: {reason}; nothing was written", file=sys.stderr)
        return STOPPED
    except ModuleNotFoundError as missing:
        print(f"clampstand: {missing.name} is not installed; pip install 'clampstand[pdf]'", file=sys.stderr)
        return COULD_NOT_RUN
    return CLEAN


def _schema(chosen: argparse.Namespace) -> int:
    from clampstand.reading.editor import schema_files  # noqa: PLC0415 - only this command needs it

    judged = handbook(chosen.content)
    if judged.reading.book is None:
        print(_text(judged), file=sys.stderr)
        return STOPPED
    more = {"rules": [rule.id for rule in RULES], "calculators": list(CALCULATORS)}
    for name, text in schema_files(judged.book, more).items():
        _write(chosen.folder / name, text)
    return CLEAN


def _try_limits(chosen: argparse.Namespace) -> int:
    from clampstand.comparing import limits  # noqa: PLC0415 - only this command needs it

    now = _readable(chosen.content)
    tried = limits.with_limits_of(now, _readable(chosen.limits_of)) if chosen.limits_of else now
    try:
        packs = [name.strip() for name in (chosen.packs or ",".join(now.department.packs)).split(",")]
        found = limits.flips(now, limits.with_packs(tried, packs))
    except limits.NoSuchPack as reason:
        print(f"clampstand: {reason}", file=sys.stderr)
        return COULD_NOT_RUN
    print(limits.flips_as_text(found))
    return STOPPED if any(one.new_stops for one in found.values()) else CLEAN


def _changes(chosen: argparse.Namespace) -> int:
    from clampstand.comparing import meaning  # noqa: PLC0415 - only this command needs it

    found = meaning.changes(_readable(chosen.old), _readable(chosen.content))
    print(meaning.changes_as_text(found))
    return STOPPED if any(change.loosened for change in found) else CLEAN


def _readable(content: Path) -> Book:
    """The content of a folder. Raises OSError where nothing can be compared with it."""
    judged = handbook(content)
    if judged.reading.book is None or judged.reading.broken:
        raise OSError(f"{content} cannot be read as it stands; clampstand check says why")
    return judged.reading.book


def _write(target: Path, text: str) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    sys.exit(main())
