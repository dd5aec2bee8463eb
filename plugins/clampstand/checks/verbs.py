"""The verbs of the trade: what a sentence does to the things it names, and which word of a step says so."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

Kind = Literal[
    "source", "supply", "fed", "shorting", "worn", "flame", "burning", "in the air", "holding", "material"
]
"""What a thing is to the rules: by its properties and by what the practical does with it, not by its name."""


@dataclass(frozen=True, slots=True)
class Verb:
    """One deed as sentences put it.

    Args:
        verbs: any of these begins it.
        particles: and one of these goes with it; any or none where there are none here.
        of: the kind of thing it is done to.
        words: the words of a step of which one must say so, the usual one first.
        straight: whether the thing must follow with no preposition between, as what is done to does.
    """

    verbs: str
    particles: str
    of: Kind
    words: tuple[str, ...]
    straight: bool = True


VERBS: tuple[Verb, ...] = (
    Verb("sign", "out", "source", ("signs_out",)),
    Verb("lift take draw", "out", "source", ("takes_out",)),
    Verb("pick take lift", "up", "source", ("picks_up",)),
    Verb("return", "", "source", ("puts_back",)),
    Verb("put set stand place lay", "back", "source", ("puts_back",)),
    Verb("put set stand place lay", "down into in on through under", "source", ("sets_down", "puts_back")),
    Verb("count", "back", "source", ("counts_back",)),
    Verb("switch turn", "on up", "supply", ("switches_on",)),
    Verb("raise", "", "supply", ("switches_on",)),
    Verb("switch turn", "off", "supply", ("switches_off",)),
    Verb("connect join unplug wire", "", "supply", ("touches", "handles"), straight=False),
    Verb("connect join unplug wire clip stack", "", "fed", ("touches", "handles"), straight=False),
    Verb("wipe put push draw", "", "fed", ("touches", "handles"), straight=False),
    Verb("take", "off", "shorting", ("touches",)),
    Verb("put", "on", "worn", ("puts_on",)),
    Verb("take", "off", "worn", ("takes_off",)),
    Verb("light", "", "flame", ("lights",), straight=False),
    Verb("dry", "", "flame", ("lights",), straight=False),
    Verb("switch turn", "on", "flame", ("lights", "switches_on")),
    Verb("blow put", "out", "burning", ("puts_out",)),
    Verb("switch turn", "off", "burning", ("puts_out", "switches_off")),
    Verb("unplug", "", "burning", ("puts_out",)),
    Verb("carry bring receive", "in", "in the air", ("brings_in",)),
    Verb("carry bring", "in", "holding", ("brings_in",)),
    Verb("carry take hand", "out over", "in the air", ("takes_away",)),
    Verb("carry hand", "out over", "holding", ("takes_away",)),
    Verb("put", "back", "in the air", ("takes_away", "handles")),
    Verb(
        "weigh measure pour tip add drop stir crush cut lift lay press slide push hold rinse wash wipe soak "
        "spread filter tie snip seal scoop tilt unscrew screw collect carry moisten make open put",
        "",
        "material",
        ("handles", "touches", "opens", "closes", "takes_away", "brings_in", "lights"),
        straight=False,
    ),
)
"""What each deed is called in the data; common practice in the language of laboratories."""

PREPOSITIONS = frozenset(
    (
        *("with", "by", "into", "in", "on", "onto", "under", "from", "to", "at", "beside", "over"),
        *("between", "against", "off", "until", "before", "after", "for"),
    )
)
_PARTICLES = frozenset(word for verb in VERBS for word in verb.particles.split())
_NAMES = sorted({name for verb in VERBS for name in verb.verbs.split()})
_BY_VERB = {name: tuple(verb for verb in VERBS if name in verb.verbs.split()) for name in _NAMES}
_ALL = "|".join(sorted(_BY_VERB, key=len, reverse=True))
_BEGINS = re.compile(
    rf"(?:^|[.;,:]\s+|\b(?:and|then|to|or)\s+)({_ALL})(?:es|s)?\b(?:\s+(\w+))?|\{{([^{{}}\n]{{1,300}})\}}",
    re.IGNORECASE,
)
_WORD = re.compile(r"[\w-]+")


@dataclass(frozen=True, slots=True)
class Deed:
    """A thing a sentence names, with the verb it hangs on and the particle that goes with that."""

    verb: str
    particle: str
    thing: str
    straight: bool

    def meanings(self, kinds: frozenset[str]) -> Iterator[Verb]:
        """What it may mean, for a thing of some kinds."""
        for verb in _BY_VERB[self.verb] if kinds else ():
            fits = not verb.particles or self.particle in verb.particles.split()
            if verb.of in kinds and fits and (self.straight or not verb.straight):
                yield verb


@lru_cache(maxsize=4096)
def deeds(sentence: str) -> tuple[Deed, ...]:
    """What a sentence does to each thing it names.

    >>> deeds("Lift {source} out of its {box}, then close it.")[0]
    Deed(verb='lift', particle='out', thing='source', straight=True)
    """
    found: list[Deed] = []
    verb = particle = ""
    since = 0
    marks = list(_BEGINS.finditer(sentence))
    for mark, following in zip(marks, [*marks, None][1:], strict=True):
        if mark[1]:
            verb, since = mark[1].lower(), mark.end(1)
            particle = mark[2].lower() if mark[2] and mark[2].lower() in _PARTICLES else ""
        elif verb:
            rest = sentence[mark.end() : following.start() if following else len(sentence)]
            between = set(_WORD.findall(sentence[since : mark.start()].lower())) - {particle}
            of_it = particle or _first_particle(rest)
            found.append(Deed(verb, of_it, mark[3], not between & PREPOSITIONS))
    return tuple(found)


def _first_particle(text: str) -> str:
    return next((word for word in _WORD.findall(text.lower()) if word in _PARTICLES), "")
