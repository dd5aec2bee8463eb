"""What is asked of each practical beside what it has; run with tests on the path, it rewrites the table."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import yaml

from clampstand.build import sheets
from content.finders import FINDERS, Beside, Fact, step_from
from demo import demo

HERE = Path(__file__).parent
TABLE = HERE / "SIDE_BY_SIDE.md"

FIELDS = (
    "aim",
    "who",
    "time",
    "kit",
    "prepare",
    "set_up",
    "steps",
    "expect",
    "faults",
    "hazards",
    "worn",
    "limits",
    "clear_up",
    "emergency",
    "ask",
    "compute",
    "references",
)
"""What every practical is asked for, in the order of a teacher's page."""

Asked = Mapping[str, Mapping[str, Fact]]
"""By field, the facts asked for: each in words, with how it is found."""


@dataclass(frozen=True)
class Outcome:
    """Whether one fact stands in a definition.

    Args:
        field: the field it belongs to.
        fact: the fact in words.
        there: whether it was found.
        otherwise: how the handbook meets it in another way than was asked for, on purpose.
    """

    field: str
    fact: str
    there: bool
    otherwise: str = ""


def asked_for(practical_id: str) -> Asked:
    """What is asked of one practical."""
    text = (HERE / "asked_for" / f"{practical_id}.yml").read_text(encoding="utf-8")
    asked: Asked = yaml.safe_load(text)
    return asked


def beside(practical_id: str) -> Beside:
    """A practical of the demo handbook with its worked numbers."""
    judged = demo()
    return Beside(judged.book.practicals[practical_id], sheets(judged.lessons)[practical_id], judged.book)


def compared(asked: Asked, definition: Beside) -> Iterator[Outcome]:
    """Every fact that is asked for, looked up in the definition. The steps are found in their order."""
    for field, facts in asked.items():
        reached = 0
        for words, fact in facts.items():
            how = {name: value for name, value in fact.items() if name != "otherwise"}
            if field == "steps":
                place = step_from(definition, how, reached)
                there, reached = place is not None, reached if place is None else place
            else:
                there = FINDERS[next(iter(how))](definition, how)
            yield Outcome(field, words, there, fact.get("otherwise", ""))


def outcomes() -> Mapping[str, tuple[Outcome, ...]]:
    """All practicals of the demo handbook, by id."""
    ids = sorted(demo().book.practicals)
    return {each: tuple(compared(asked_for(each), beside(each))) for each in ids}


HEAD = """\
# What is asked of the practicals, and what they have

For each practical of the demo handbook and each field of its data sheet: how many of the facts asked for
stand in its definition. The facts are in `asked_for/`, in words, each with how it is found;
`test_side_by_side.py` fails on any that is missing. Written by `side_by_side.py`.

"""


def table(of: Mapping[str, tuple[Outcome, ...]]) -> str:
    """The table as Markdown, then what is missing and what is met in another way than was asked for."""
    lines = [
        HEAD,
        f"| practical | {' | '.join(FIELDS).replace('_', ' ')} | in all |\n",
        f"|---|{'---:|' * (len(FIELDS) + 1)}\n",
    ]
    for practical_id, found in of.items():
        cells = [_share([one for one in found if one.field == field]) for field in FIELDS]
        lines.append(f"| {practical_id} | {' | '.join(cells)} | {_share(found)} |\n")
    everything = [one for found in of.values() for one in found]
    lines.append(f"| **{len(of)} practicals** |{' |' * len(FIELDS)} {_share(everything)} |\n")
    lines.extend(_listed("Missing", [(p, o, "") for p, found in of.items() for o in found if not o.there]))
    met = [(p, o, o.otherwise) for p, found in of.items() for o in found if o.otherwise]
    lines.extend(_listed("Met in another way, on purpose", met))
    return "".join(lines)


def _share(found: list[Outcome] | tuple[Outcome, ...]) -> str:
    return f"{sum(one.there for one in found)}/{len(found)}"


def _listed(title: str, rows: list[tuple[str, Outcome, str]]) -> Iterator[str]:
    if rows:
        yield f"\n## {title}\n\n"
        for practical_id, outcome, why in rows:
            said = f"{outcome.fact} ({why})" if why else outcome.fact
            yield f"- {practical_id}, {outcome.field.replace('_', ' ')}: {said}\n"


if __name__ == "__main__":
    TABLE.write_text(table(outcomes()), encoding="utf-8")
