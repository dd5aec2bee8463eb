"""Python and JavaScript agree on every live formula, every panel and every rounding."""

import json
import math
import random
import shutil
import subprocess

import pytest

from clampstand.build import sheets
from clampstand.calculators.worked import CannotWork
from clampstand.checks.engine import lessons_of
from clampstand.rendering.live.compiler import name_of
from clampstand.rendering.live.formulae import LIVE
from clampstand.units import digits
from demo import demo
from rendering.live.trials import (
    RANGES,
    TOLERANCE,
    demo_panels,
    everything,
    expected,
    furthest_apart,
    script_with,
)

needs_node = pytest.mark.skipif(shutil.which("node") is None, reason="there is no node here")


def run_in_node(ending: str, data: object, tmp_path) -> object:
    script = tmp_path / "tried.js"
    reading = "var data = JSON.parse(require('fs').readFileSync(0, 'utf8'));"
    script.write_text(script_with(f"{reading} process.stdout.write(JSON.stringify({ending}));"), "utf-8")
    given = json.dumps(data)
    done = subprocess.run(["node", str(script)], input=given, capture_output=True, text=True, check=True)
    return json.loads(done.stdout)


def test_every_live_formula_is_tried_and_every_panel_keeps_to_them():
    assert {name_of(formula) for formula in LIVE} == set(RANGES)
    used = {name_of(f) for panel in demo_panels().values() for f in panel.formulae()}
    assert used <= set(RANGES)


@needs_node
def test_node_agrees_on_a_thousand_inputs_for_every_formula_and_on_every_panel(tmp_path):
    made = run_in_node("tryAll(data)", everything(), tmp_path)
    apart = furthest_apart(made, expected())
    assert {name: by for name, by in apart.items() if by > TOLERANCE} == {}


@needs_node
def test_node_rounds_as_the_built_page_does(tmp_path):
    drawn = random.Random("digits")
    values = [drawn.choice((-1, 1)) * math.exp(drawn.uniform(-25, 25)) for _ in range(2000)]
    values += [0, 1, 10, 99.5, 999.6, 9.96, 0.0996, 99999, 99999.9, 12345.6, 0.1 + 0.2, 100.00000000000001]
    asked = [[v, f, t] for v in values for f, t in ((2, "up"), (3, "nearest"), (4, "down"))]
    made = run_in_node("data.map(function (one) { return digits(one[0], one[1], one[2]); })", asked, tmp_path)
    different = [
        (one, got, digits(*one)) for one, got in zip(asked, made, strict=True) if digits(*one) != got
    ]
    assert not different


def test_a_panel_begins_at_the_worked_number_of_its_page():
    """Same formula, same figures: the number first shown live is the one printed on the page."""
    book, panels = demo().book, demo_panels()
    compared: set[str] = set()
    for practical_id, sheet in sheets(lessons_of(book)).items():
        for _, found in sheet.numbers:
            for number in () if isinstance(found, CannotWork) else found:
                name = f"{practical_id}: {'/'.join(number.id.split('/')[:2])}"
                if name in panels and name not in compared:
                    panel = panels[name]
                    first = panel.results[0]
                    assert first.printed(first.quantity(panel.start)) == number.shown, number.id
                    compared.add(name)
    assert len(compared) >= 20
