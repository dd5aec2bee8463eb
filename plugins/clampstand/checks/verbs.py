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
    Verb("lift take draw get fetch bring", "out", "source", ("takes_out", "picks_up")),
    Verb("remove", "", "source", ("takes_out", "picks_up")),
    Verb("pick take lift", "up", "source", ("picks_up",)),
    Verb("return", "", "source", ("puts_back",)),
    Verb("put set stand place lay", "back", "source", ("puts_back",)),
    Verb("put set stand place lay", "down into in on through under", "source", ("sets_down", "puts_back")),
    Verb("count", "back", "source", ("counts_back",)),
    Verb("switch turn", "on up", "supply", ("switches_on",)),
    Verb("raise start", "", "supply", ("switches_on",)),
    Verb("power", "up on", "supply", ("switches_on",)),
    Verb("switch turn", "off", "supply", ("switches_off",)),
    Verb("stop", "", "supply", ("switches_off",)),
    Verb("touch", "", "fed", ("touches", "handles", "discharges")),
    Verb("connect join unplug wire", "", "supply", ("touches", "handles"), straight=False),
    Verb("connect join unplug wire clip stack", "", "fed", ("touches", "handles"), straight=False),
    Verb("wipe", "", "supply", ("touches", "handles")),
    Verb("wipe put push draw turn", "", "fed", ("touches", "handles"), straight=False),
    Verb("take", "off", "shorting", ("touches",)),
    Verb("put", "on", "worn", ("puts_on",)),
    Verb("take", "off", "worn", ("takes_off",)),
    Verb("light", "", "flame", ("lights",), straight=False),
    Verb("dry", "", "flame", ("lights",), straight=False),
    Verb("switch turn", "on", "flame", ("lights", "switches_on")),
    Verb("plug", "in", "flame", ("lights", "switches_on")),
    Verb("blow put", "out", "burning", ("puts_out",)),
    Verb("switch turn", "off", "burning", ("puts_out", "switches_off")),
    Verb("unplug", "", "burning", ("puts_out",)),
    Verb("carry bring receive", "in", "in the air", ("brings_in",)),
    Verb("carry bring", "in", "holding", ("brings_in",)),
    Verb("carry take", "out over", "in the air", ("takes_away",)),
    Verb("hand", "out over", "in the air", ("takes_away", "brings_in", "handles")),
    Verb("carry", "out over", "holding", ("takes_away",)),
    Verb("hand", "out over", "holding", ("takes_away", "brings_in", "handles")),
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
        *("between", "against", "off", "until", "before", "after", "for", "about", "near", "behind"),
    )
)
_PARTICLES = frozenset(word for verb in VERBS for word in verb.particles.split())
_NAMES = sorted({name for verb in VERBS for name in verb.verbs.split()})
_BY_VERB = {name: tuple(verb for verb in VERBS if name in verb.verbs.split()) for name in _NAMES}
_ALL = "|".join(sorted(_BY_VERB, key=len, reverse=True))
_NOT_YET = "".join(
    rf"(?<!\b{word} )"
    for word in (
        *("not", "never", "why", "how", "when", "where", "what"),
        *("ready", "able", "about", "used", "asked", "is", "are"),
    )
)
"""Before "to", what makes of it a deed of another time, or none."""
_OTHER_DEED = (
    r"(?:keep|look|leave|watch|read|write|note|check|see|say|tell|ask|wait|talk|discuss|explain|compare|plot)"
)
_OTHER_CLAUSE = (
    r"what|how|why|which|while|when|where|whether|because|who|whose|until|before|after|once|about|that(?! \{)"
)
_FIGURES = r"sure|(?:(?:the|your|all)\s+)*(?:points|crosses|dots)"
"""What makes a figure of speech of a verb: join the points, make sure."""
_SOMEBODY = (
    r"(?:(?:the|an|one|each) )?(?:teacher|technician|(?:second )?adult|volunteer|pupils?|everybody|everyone)"
)
_NO = r"not|never|nobody|cannot|without|don't|doesn't|mustn't|can't"
_MARKS = re.compile(
    rf"(?:(?:^|[,:]\s+)(?:{_SOMEBODY}\s+)?|\b(?:and|then|(?P<or>or)|{_NOT_YET}to)\s+)(?:\w+ly\s+)?"
    rf"(?P<verb>{_ALL})(?:es|s)?\b(?!\s+(?:{_FIGURES})\b)(?:\s+(?P<next>\w+))?"
    rf"|\{{(?P<thing>[^{{}}\n]{{1,300}})\}}"
    rf"|\b(?P<ends>{_OTHER_CLAUSE}|(?:and|then|but)\s+{_OTHER_DEED})\b|\b(?P<no>{_NO})\b",
    re.IGNORECASE,
)
_GOES_ON = re.compile(
    r"\b(?:and|then|but)\s+(?!(?:the|an?|each|every|its|their|your|both|all|one|two|three|any|some)\b)\w",
    re.IGNORECASE,
)
"""After the first thing of a verb, another verb, known or not."""
_HELD = re.compile(
    r"(?:^|[.;]\s+|\b(?:and|then)\s+)(?:hold|bring)\s+(?:the\s+)?\{([^{}\n]{1,300})\}"
    r"(?!\s+(?:in|into)\s+its\b)",
    re.IGNORECASE,
)
_SENTENCES = re.compile(r"[.;]\s+")
_PARTICIPLES = {
    **{"lifted": "lift", "taken": "take", "drawn": "draw", "signed": "sign", "picked": "pick", "put": "put"},
    **{"returned": "return", "counted": "count", "switched": "switch", "turned": "turn", "lit": "light"},
    **{"blown": "blow", "carried": "carry", "brought": "bring", "raised": "raise", "removed": "remove"},
}
_IS_DONE = re.compile(
    r"(?:^|\b(?:and|then|now)\s+)(?:the\s+|each\s+)?\{(?P<thing>[^{}\n]{1,300})\}\s+(?:is|are)\s+(?:then\s+|now\s+)?"
    rf"(?P<verb>{'|'.join(_PARTICIPLES)})\b(?P<rest>[^.;{{}}]*)",
    re.IGNORECASE,
)
"""A thing that something is done to: the clause begins with it."""
_ALREADY = re.compile(r"\b(?:already|still|by now|before|when|while|until|if)\b", re.IGNORECASE)
"""What makes of it a state that there is."""
_IF = re.compile(
    "".join(rf"(?<!\b{word} )" for word in ("see", "check", "ask", "look", "tell", "watch", "know"))
    + r"\b(?:if|unless|in case|should)\b",
    re.IGNORECASE,
)
_WORD = re.compile(r"[\w-]+")


@dataclass(frozen=True, slots=True)
class Deed:
    """A thing a sentence names, with the verb it hangs on and the particle that goes with that.

    Args:
        verb: what is done.
        particle: the word that goes with it, or none.
        thing: what it may be done to.
        straight: whether no preposition stands between the two.
        perhaps: whether it is done only if something happens.
        passive: whether the sentence tells that it is done, and by nobody.
    """

    verb: str
    particle: str
    thing: str
    straight: bool
    perhaps: bool = False
    passive: bool = False

    def meanings(self, kinds: frozenset[str]) -> Iterator[Verb]:
        """What it may mean, for a thing of some kinds. To put a flame out is not to put it somewhere."""
        out = False
        for verb in _BY_VERB[self.verb] if kinds else ():
            fits = not verb.particles or self.particle in verb.particles.split()
            if verb.of in kinds and fits and (self.straight or not verb.straight):
                out = out or verb.of == "burning"
                if not (out and verb.of == "material"):
                    yield verb


def held_in(text: str) -> tuple[str, ...]:
    """What a text says to hold or to bring near.

    >>> held_in("Hold {source} above the cap."), held_in("Hold {sheet} before {source}.")
    (('source',), ('sheet',))
    """
    return tuple(_HELD.findall(text))


@lru_cache(maxsize=4096)
def deeds(text: str) -> tuple[Deed, ...]:
    """What a text does to each thing it names. What it forbids or only describes is no deed.

    >>> deeds("Lift {source} out of its {box}, then close it.")[0]
    Deed(verb='lift', particle='out', thing='source', straight=True, perhaps=False, passive=False)
    >>> deeds("Do not touch it or lift {source} out.")
    ()
    """
    sentences = _SENTENCES.split(text)
    return tuple(
        deed for sentence in sentences for deed in (*_deeds_of(sentence), *_done_to_things(sentence))
    )


def _done_to_things(sentence: str) -> Iterator[Deed]:
    """What a sentence tells is done to a thing it begins with: "{source} is lifted out"."""
    for match in _IS_DONE.finditer(sentence):
        if not _ALREADY.search(match["rest"]) and not _IF.search(sentence):
            verb = _PARTICIPLES[match["verb"].lower()]
            yield Deed(verb, _first_particle(match["rest"]), match["thing"], True, passive=True)


def _deeds_of(sentence: str) -> Iterator[Deed]:
    """What one sentence does: each thing hangs on the last verb before it, unless another clause began."""
    verb = particle = ""
    since, last, forbidden, perhaps = 0, 0, False, bool(_IF.search(sentence))
    marks = list(_MARKS.finditer(sentence))
    for mark, following in zip(marks, [*marks, None][1:], strict=True):
        if mark["verb"]:
            forbidden = forbidden and bool(mark["or"])
            verb, since = "" if forbidden else mark["verb"].lower(), mark.end("verb")
            particle, last = _first_particle(mark["next"] or ""), 0
        elif last and _GOES_ON.search(sentence, last, mark.start()):
            verb, last = "", 0
        elif mark["thing"] and verb:
            last = mark.end()
            rest = sentence[mark.end() : following.start() if following else len(sentence)]
            between = set(_WORD.findall(sentence[since : mark.start()].lower())) - {particle}
            of_it = particle or _first_particle(rest)
            yield Deed(verb, of_it, mark["thing"], not between & PREPOSITIONS, perhaps)
        elif mark["ends"]:
            verb = ""
        forbidden = forbidden or bool(mark["no"])


def _first_particle(text: str) -> str:
    return next((word for word in _WORD.findall(text.lower()) if word in _PARTICLES), "")
