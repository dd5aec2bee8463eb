"""The practical with hardly a hazard asks for nothing to wear, to keep from or to log; no rule wants it."""

from clampstand.checks.engine import verdicts
from clampstand.model.practical import PHASES
from demo import demo

CONTROL = "resistance-of-a-wire"


def test_no_rule_finds_anything_to_demand():
    found = [v.rule for v in verdicts(demo().book) if v.subject == f"practicals/{CONTROL}"]
    assert found == []


def test_it_asks_for_no_protection_no_distance_and_no_log():
    book = demo().book
    practical = book.practicals[CONTROL]
    steps = [step for phase in PHASES for step in practical.steps(phase)]
    assert not any(book.kit[item].worn for item in practical.items)
    assert not any(step.puts_on or step.stand or step.puts_up or step.signs_out for step in steps)
    assert not practical.needs.skills
    assert not practical.excludes
    assert "use-log" not in practical.items
    assert practical.exceptions == ()
