"""Proves of an edit of steps that nothing comes of it: the step's word was said twice, or two steps commute.

A proof looks at states and at properties of things and never at ids or sentences of the demo. What it cannot
prove is a gap, or has a reason of its own in ``survivors.yml``.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from clampstand.checks import Lesson
from clampstand.checks.endings import endings
from clampstand.checks.gas import about
from clampstand.checks.meeting import met_in
from clampstand.checks.vapours import with_vapours
from clampstand.checks.washing import unwashed
from clampstand.model.practical import Practical
from clampstand.model.step import ACTORS, Step
from clampstand.timeline import Moment, Power, World

SAID_TWICE = "said twice"
ONLY_TALKED_OF = "only talked of"
INDEPENDENT = "independent"
DERIVED = frozenset({"handles", "opens", "touches", "stand", "holds_with", "builds_on", "puts_in"})
"""Words of which the proof compares what follows from them; all others must stand as they stood."""


def said_twice(old: Lesson, new: Lesson) -> bool:
    """Whether every state, everything met, worn, washed, kept away from and built on is the same without a
    word: another word or step says it of the same people, dressed the same."""
    pairs = list(zip(old.moments, new.moments, strict=True))
    return (
        all(_states(old, a) == _states(new, b) and _others(a.step) == _others(b.step) for a, b in pairs)
        and all(_touched_while_fed(old, a) == _touched_while_fed(new, b) for a, b in pairs)
        and all(about(old, a) == about(new, b) for a, b in pairs)
        and [set(v) for _, v in with_vapours(old)] == [set(v) for _, v in with_vapours(new)]
        and _met_elsewhere(old, new)
        and _left(old) == _left(new)
        and _distances(old) == _distances(new)
        and _built_on(old, new)
        and _contained(new) >= _contained(old)
    )


_TALKS = re.compile(r"(?:discuss|talk)\b", re.I)


def only_talked_of(old: Lesson, new: Lesson) -> bool:
    """Whether all that changes is that a talk no longer names the results it is about."""
    pairs = list(zip(old.moments, new.moments, strict=True))
    talks = all(a.step.builds_on == b.step.builds_on or _TALKS.match(a.step.do) for a, b in pairs)
    same = all(_states(old, a) == _states(new, b) and _bare(a.step) == _bare(b.step) for a, b in pairs)
    return talks and same


def _bare(step: Step) -> Mapping[str, Any]:
    return {name: getattr(step, name) for name in Step.model_fields if name not in ("builds_on", "class_")}


def _names(world: World) -> tuple[Any, ...]:
    """A state without the steps it dates from."""
    return (
        frozenset(world.signed_out),
        {slot: (out.held_with, out.standing) for slot, out in world.out.items()},
        {item: (supplied.power, str(supplied.waited)) for item, supplied in world.supplies.items()},
        {person: frozenset(items) for person, items in world.worn.items() if items},
        *(frozenset(part) for part in (world.barriers, world.present, world.vapours, world.lit)),
        frozenset(world.results),
        world.class_here,
    )


def _states(lesson: Lesson, moment: Moment) -> tuple[Any, ...]:
    worlds = (moment.before, moment.handled, moment.during, moment.after)
    if moment.ref.phase == "run" and moment.ref.number == len(lesson.practical.run):
        worlds = (
            *worlds[:3],
            replace(moment.after, class_here=False),
        )  # the class goes at the end of the run
    return tuple(_names(world) for world in worlds)


def _others(step: Step) -> Mapping[str, Any]:
    return {name: getattr(step, name) for name in Step.model_fields if name not in (*DERIVED, "class_")}


def _touched_while_fed(lesson: Lesson, moment: Moment) -> frozenset[str]:
    """The supplies whose live parts hands meet in a step."""
    met = {*moment.step.touches, *moment.step.handles}
    return frozenset(c.supply for c in lesson.practical.circuits if met & {c.supply, *c.feeds})


def _meetings(lesson: Lesson) -> Iterator[tuple[str, str, frozenset[tuple[str, frozenset[str]]], bool]]:
    """What is met and its hazard, who meets it in which clothes, and whether the class is there."""
    for moment in lesson.moments:
        people = frozenset((who, moment.during.wears(who)) for who in moment.step.doers)
        for met in met_in(lesson, moment):
            yield met.what, met.hazard.id, people, moment.during.class_here


def _met_elsewhere(old: Lesson, new: Lesson) -> bool:
    """Whether each meeting that is lost stands elsewhere: the same thing and people, dressed the same."""
    still = list(_meetings(new))
    return all(
        any(what == w and hazard == h and here == c and people <= p for w, h, p, c in still)
        for what, hazard, people, here in _meetings(old)
    )


def _left(lesson: Lesson) -> list[Any]:
    """What is unwashed wherever it matters: when somebody goes, and when somebody eats."""
    asked = {ending.moment.ref for ending in endings(lesson)}
    states = list(unwashed(lesson))
    return [
        {who: frozenset(what) for who, what in state.after.items()}
        for number, state in enumerate(states, start=1)
        if state.moment.ref in asked or state.moment.step.eats or number == len(states)
    ]


def _distances(lesson: Lesson) -> list[Any]:
    """The distance in force in each step in which it matters."""
    found: list[Any] = []
    phase, said = "", dict[str, str]()
    for moment in lesson.moments:
        said = dict(said) if moment.ref.phase == phase else {}
        phase = moment.ref.phase
        said |= moment.step.stand
        found.append({ends: text for ends, text in said.items() if _is_kept_from(ends, moment)})
    return found


def _is_kept_from(ends: str, moment: Moment) -> bool:
    """Whether there is something from which a distance is kept, and somebody who keeps it."""
    during = moment.during
    if ends == "hands":
        return any(not out.standing for out in during.out.values())
    on = any(supplied.power is Power.ON for supplied in during.supplies.values())
    goes_on = bool(during.out or during.lit) if ends == "watchers" else False
    return during.class_here and (goes_on or on)


def _built_on(old: Lesson, new: Lesson) -> bool:
    """Whether everything that is worked out of results is worked out of the same ones in the end."""
    return [_closure(old, moment) for moment in old.moments if not moment.step.measures] == [
        _closure(new, moment) for moment in new.moments if not moment.step.measures
    ] and all(
        set(b.step.builds_on) == set(a.step.builds_on) or _is_used(new, b)
        for a, b in zip(old.moments, new.moments, strict=True)
    )


def _is_used(lesson: Lesson, moment: Moment) -> bool:
    used = {name for each in lesson.moments for name in each.step.builds_on}
    return bool(set(moment.step.measures) & used)


def _closure(lesson: Lesson, moment: Moment) -> frozenset[str]:
    """Every result a step builds on, and those they build on in turn."""
    needs = {name: each.step.builds_on for each in lesson.moments for name in each.step.measures}
    found: set[str] = set()
    waiting = list(moment.step.builds_on)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += needs.get(name, ())
    return frozenset(found)


def _contained(lesson: Lesson) -> frozenset[tuple[str, str]]:
    """What that turns to gas goes into which container, whichever step says so."""
    return frozenset(
        (name, moment.step.puts_in)
        for moment in lesson.moments
        if moment.step.puts_in
        for name in about(lesson, moment)
    )


_LEANS = re.compile(
    r"\b(?:it|them|they|these|those|instead|same|rest|as before|(?:what|that) is left)\b", re.IGNORECASE
)
"""What a sentence says of the sentence before it."""
_AGAIN = re.compile(r"^[^{]*\bagain\b", re.IGNORECASE)
"""What is done again, without a word of what it is done to."""
_QUOTED = re.compile(r"\{([^{}\n]{1,300})\}")
_CHANGES_DANGER = (
    *("takes_out", "picks_up", "sets_down", "puts_back", "switches_on", "switches_off", "waits"),
    *("discharges", "brings_in", "opens", "closes", "lights", "puts_out", "within", "eats", "class_"),
)
"""Words with which a danger begins, changes or ends: next to them an order is never only a habit."""
_DRESSES = ("do", "by", "takes", "name", "after", "warn", "room", "puts_on")
_PAPER = ("measures", "builds_on", "signs_out", "counts_back", "washes", "puts_on", "takes_off", "takes_away")
"""Words of steps that move no apparatus. What else a sentence moves, the data need not say."""


def independent(practical: Practical, phase: str, index: int, old: Lesson, new: Lesson) -> bool:
    """Whether two neighbouring steps commute.

    They speak of different things and neither leans on the other's sentence; no danger begins, changes or
    ends in them; nobody dresses for, washes after or keeps away from what the other does; and the state after
    both is the same, as are the distances in force.
    """
    first, second = practical.steps(phase)[index : index + 2]
    apart = not _things(old, first) & _things(old, second) and not _leans(first) and not _leans(second)
    calm = not (_changes_danger(first, second) or _changes_danger(second, first))
    place = [m.ref.phase for m in old.moments].index(phase) + index
    after = (old.moments[place + 1].after, new.moments[place + 1].after)
    return (
        (apart or _wiring(first, second, old.moments[place].before))
        and calm
        and _names(after[0]) == _names(after[1])
        and not _linked(first, second)
        and not any(_goes_on(step) for step in practical.steps(phase)[index + 2 : index + 3])
        and not _touch_each_other(old, first, second)
        and not _touch_each_other(old, second, first)
        and sorted(map(str, _distances(old))) == sorted(map(str, _distances(new)))
    )


def _changes_danger(step: Step, other: Step) -> bool:
    """Whether a danger begins, changes or ends in a step. What comes in closed is met only when handled, so
    that whoever dresses for it may do so just before or just after."""
    only_dresses = not any(getattr(other, word) for word in Step.model_fields if word not in _DRESSES)
    comes_closed = only_dresses and not step.handles
    words = [word for word in _CHANGES_DANGER if word != "brings_in" or not comes_closed]
    return any(getattr(step, word) for word in words)


def _goes_on(step: Step) -> bool:
    """Whether a step after the two goes on with what the last of them spoke of."""
    return bool(_LEANS.search(step.do.partition("{")[0]))


def _leans(step: Step) -> bool:
    return bool(_LEANS.search(step.do) or _AGAIN.search(step.do))


def _things(lesson: Lesson, step: Step) -> set[str]:
    """Everything a step names in its sentence or its data, but numbers, rooms and people."""
    practical = lesson.practical
    named = {name for name in _QUOTED.findall(step.do) if name not in practical.numbers}
    worn = {name for items in (*step.puts_on.values(), *step.takes_off.values()) for name in items}
    words = (
        *("handles", "touches", "puts_up", "takes_down", "takes_away", "brings_in", "measures"),
        *("signs_out", "counts_back"),
    )
    return named | worn | {name for word in words for name in getattr(step, word)}


def _wiring(first: Step, second: Step, world: World) -> bool:
    """Whether both only join or part leads while everything is off: each end may be the first."""
    words = [word for word in Step.model_fields if word not in (*_DRESSES, "touches")]
    only = not any(getattr(step, word) for step in (first, second) for word in words)
    off = all(supplied.power in (Power.OFF, Power.DISCHARGED) for supplied in world.supplies.values())
    return only and off and not _leans(first) and not _leans(second)


def _linked(first: Step, second: Step) -> bool:
    """Whether the second needs the first by name or result."""
    return first.name in second.after or bool(set(first.measures) & set(second.builds_on))


def _touch_each_other(lesson: Lesson, one: Step, other: Step) -> bool:
    """Whether one dresses or washes, or takes up paper, where the other does what that could be for."""
    met = [lesson.book.kit[name] for name in (*other.handles, *other.touches) if name in lesson.book.kit]
    hands = one.doers & other.doers
    dressed = {person for who in (*one.puts_on, *one.takes_off) for person in ACTORS[who]}
    dresses = bool(dressed & other.doers) and bool(met)
    washes = {place for item in met for place in item.needs_washing} & set(one.washes)
    off = (lesson.book.kit.get(name) for items in other.takes_off.values() for name in items)
    undressed = any(item is not None and item.worn and item.worn.on in ("hands", "body") for item in off)
    washes |= {"hands"} & set(one.washes) if undressed else set()
    washes -= set() if hands else {"hands"}
    moves = bool(one.measures) and not any(getattr(other, word) for word in _PAPER) and not met
    bars = bool(one.puts_up or one.takes_down) and bool(met)
    return dresses or bool(washes) or moves or bars
