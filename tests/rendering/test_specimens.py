"""A part of a page stands whole in its folder: template, rules for screen and paper, examples."""

import re

import pytest

from clampstand.rendering.assets import PARTS
from clampstand.rendering.templating import environment
from specimens import examples, parts

_IN_LISTS = ("margins",)
"""Parts that are lists and need no rules of their own."""


@pytest.mark.parametrize("part", parts())
def test_a_part_is_whole(part: str) -> None:
    wanted = {f"{part}.jinja", "examples.jinja"} | (set() if part in _IN_LISTS else {f"{part}.css"})
    assert {path.name for path in (PARTS / part).iterdir()} == wanted


@pytest.mark.parametrize("part", parts())
def test_the_examples_show_everything_the_template_can_do(part: str) -> None:
    text = (PARTS / part / "examples.jinja").read_text(encoding="utf-8")
    made = vars(environment().get_template(f"parts/{part}/{part}.jinja").module)
    own = set(re.findall(r"{% macro (\w+)", (PARTS / part / f"{part}.jinja").read_text(encoding="utf-8")))
    assert own
    assert own <= set(made)
    for macro in own:
        assert re.search(rf"{{{{ {macro}\(", text), f"{part}: no example of {macro}"


@pytest.mark.parametrize("part", [part for part in parts() if part not in _IN_LISTS])
def test_the_examples_show_every_class_that_has_a_rule(part: str) -> None:
    """A rule for a class that no example has is for something that is gone, or an example is missing."""
    rules = re.sub(
        r"/\*.*?\*/|\"[^\"]*\"",
        "",
        (PARTS / part / f"{part}.css").read_text(encoding="utf-8"),
        flags=re.DOTALL,
    )
    styled = set(re.findall(r"\.([a-z][\w-]*)", re.sub(r"{[^{}]*}", "", rules)))
    shown = {name for classes in re.findall(r'class="([^"]*)"', examples(part)) for name in classes.split()}
    assert styled
    assert {name for name in styled - shown if not name.startswith("md-")} == set()  # md- is the theme's


@pytest.mark.parametrize("part", [part for part in parts() if part not in _IN_LISTS])
def test_a_part_has_rules_for_paper(part: str) -> None:
    assert "@media print" in (PARTS / part / f"{part}.css").read_text(encoding="utf-8")
