"""The smallest handbook that is whole, as files, and single steps and practicals made from plain data."""

from pathlib import Path
from typing import Any

from clampstand.findings import Spot
from clampstand.model.practical import Practical
from clampstand.model.step import Step

TINY: dict[str, str] = {
    "department/department.yml": """\
name: Department of the tests
packs: [house, land]
computed_for: 2026-01-15
class_size: 24
groups_of: 3
lesson: 50 min
outdoor_carbon_dioxide: 420 ppm
review_every: 12 months
teacher_to_source: 0.5 m
defer: Local rules come first.
""",
    "department/contacts.yml": (
        "lead:\n  role: Head of physics\n  call: Room 12\ntechnician:\n  role: Technician\n  call: Room 14\n"
    ),
    "department/rooms.yml": """\
lab:
  name: Laboratory
  level: above ground
  volume: 200 m³
  equipment: fire-blanket
""",
    "department/sources.yml": """\
S-1:
  nuclide: Am-241
  activity: 37 kBq
  reference_date: 2015-01-01
  form: sealed cup
  emits: alpha
  serial: A1
  certificate: C1
  received: 2015-02-01
  position: store
  leak_test: {last: 2025-06-01, result: pass, every: 24 months}
  last_seen: 2026-01-01
  basis: exempt
  status: in use
""",
    "department/supplies.yml": """\
U-1: {item: supply, serial: B1, tested: 2025-06-01, every: 12 months, status: in use}
""",
    "kit/all.yml": """\
supply:
  name: high-tension supply
  output: {greatest_voltage: 5 kV, short_circuit_current: 2 mA, current: dc}
forceps: {name: forceps, length: 200 mm, grips_sources: yes}
plates: {name: plates}
fire-blanket: {name: fire blanket}
""",
    "hazards/all.yml": """\
shock:
  name: electric shock
  family: electricity
  sign: voltage
  harm: It stops the heart.
  controls: [Keep off.]
""",
    "citations/all.yml": (
        "rules: {title: Rules of the house, kind: common practice}\n"
        "advice: {title: Advice of the land, kind: handbook}\n"
    ),
    "limits/house.yml": """\
pack: house
title: Rules of the house
limits:
  - key: radiation.hand-to-source
    title: Hand to source
    layer: local rule
    at_least: 100 mm
    citation: rules
    read_on: 2025-09-01
    check_again_by: 2026-09-01
""",
    "limits/land.yml": """\
pack: land
title: Advice of the land
limits:
  - key: radiation.public-dose
    title: Dose to the public
    layer: guidance
    at_most: 1 mSv
    citation: advice
    read_on: 2025-09-01
    check_again_by: 2026-09-01
""",
    "reference/nuclides.yml": """\
Am-241:
  name: americium-241
  element: Am
  molar_mass: 241.057 g/mol
  half_life: {value: 432.2 years, citation: rules}
  progeny: {Np-237: 1}
  emissions: {alpha: {citation: rules, rows: [[5485.62, 0.847]]}}
""",
    "emergencies/electric-shock.yml": """\
title: Electric shock
when: Somebody is held by a live part.
do: [{do: Switch off at the wall.}]
ring: lead
sign: voltage
""",
    "skills/forceps-work.yml": """\
title: Working with forceps
aim: Take a source up and put it back.
good_looks_like: [Steady hands.]
kit: forceps
steps:
  - {do: "Take the source with {forceps}.", by: teacher, takes: 1 min, takes_out: source, holds_with: forceps}
sign_off: [Steady hands.]
lasts: 12 months
review: {version: 1, last: 2025-09-01, written_by: technician, approved_by: lead, due: 2026-09-01}
""",
    "practicals/sparks.yml": """\
title: Sparks
aim: See sparks in air.
subject: physics
topics: [high voltage]
ages: 14 to 18
led_by: teacher
pupils: watch
needs: {skills: forceps-work}
lesson: 10 min
where: {run: lab}
numbers:
  hand distance: {value: 100 mm, obeys: radiation.hand-to-source}
  working voltage: {value: 4.5 kV, because: sparks begin there}
kit:
  - {item: supply, per: class}
  - {item: forceps, per: class}
  - {item: plates, per: class}
sources: [{one_of: S-1}]
circuits: [{supply: supply, feeds: plates, voltage: working voltage}]
hazards: [{hazard: shock, here: The plates are live., controls: [One hand in the pocket.]}]
run:
  - do: Set {supply} to {working voltage}.
    by: teacher
    takes: 5 min
    switches_on: {supply: working voltage}
  - do: "Bring {source} near in {forceps}, no closer than {hand distance}, from {free: 50 mm} down."
    by: teacher
    takes: 5 min
    takes_out: source
    holds_with: forceps
    stand: {hands: hand distance, watchers: 2 m}
emergency: electric-shock
review: {version: 1, last: 2025-09-01, written_by: technician, approved_by: lead, due: 2026-09-01}
""",
}
"""File, named from the content folder on → its text."""


def write(folder: Path, changes: dict[str, str | bytes | None] | None = None) -> Path:
    """The tiny handbook as a content folder.

    Args:
        folder: where to write it.
        changes: files with another text or further files; None leaves one out.
    """
    content = folder / "content"
    for file, text in {**TINY, **(changes or {})}.items():
        path = content / file
        path.parent.mkdir(parents=True, exist_ok=True)
        if text is not None:
            path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return content


def step(do: str = "Do it.", by: str = "teacher", takes: str = "1 min", **also: Any) -> Step:
    """One step, its values written as in a file: ``step(takes_out="source", holds_with="forceps")``."""
    return Step.model_validate({"do": do, "by": by, "takes": takes, **also})


def practical(its_id: str = "tried", **also: Any) -> Practical:
    """A practical of one step unless told otherwise, its values written as in a file."""
    plain: dict[str, Any] = {
        "title": "Tried",
        "aim": "To be tried.",
        "subject": "physics",
        "topics": ["tests"],
        "ages": "14 to 18",
        "led_by": "teacher",
        "pupils": "watch",
        "needs": {},
        "lesson": "1 min",
        "where": {"run": "lab"},
        "run": [{"do": "Do it.", "by": "teacher", "takes": "1 min"}],
        "review": {
            "version": "1",
            "last": "2025-09-01",
            "written_by": "technician",
            "approved_by": "lead",
            "due": "2026-09-01",
        },
    }
    return Practical.model_validate(plain | also).placed(its_id, Spot(f"practicals/{its_id}.yml"))
