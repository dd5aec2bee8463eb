"""What a sentence asks for: the verb at which a second thing to do begins."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from clampstand.checks.verbs import VERBS

_WHAT = "a|all|an|both|each|every|it|its|one|that|the|them|these|this|those|three|two|until|your"
_HOW = "away|back|down|off|on|out|up"
_OPENING = "after|as|at|before|by|during|for|from|if|in|on|once|to|until|when|while|with|without"
_DOING = r"[a-z]*[aeiouy][a-z]*ing"
"""A participle: ``using``, ``holding``; ``bring`` and ``swing`` are none."""
_WHO = "everybody|everyone|her|his|nobody|our|their|they|we|who|you"
_BEGINS = re.compile(r"([^\W\d_]+)(?: +([^\W\d_]+))?")
_JOINED = re.compile(
    r"(?P<how>[;.!](?: +then\b)?|,? +(?:and +)?then\b|,? +and\b|,) +(?:[^\W\d_]+ly +)?"
    r"(?P<verb>[^\W\d_]+)(?= *(?P<next>[^\W\d_]+|\{|$)?)",
    re.IGNORECASE,
)
"""Where a second thing to do may begin."""
_NO_VERB = re.compile(f"{_WHAT}|{_HOW}|{_OPENING}|{_DOING}|{_WHO}")
"""Words that may begin a step all the same."""
_OBJECT = re.compile(rf"\{{|{_WHAT}")
_OPENED = re.compile(rf"(?:{_OPENING}|{_DOING})\b[^,]*(?:, +|$)", re.IGNORECASE)
_NO_REQUEST = re.compile(rf"(?:{_WHAT}|{_WHO}|do not|don't|never)\b", re.IGNORECASE)
"""How a sentence begins that only tells, or forbids."""
_ONE_BREATH = re.compile(r"(?:.* to +)?((?:\w+, +)*\w+)")
"""Verbs with nothing between them: what follows is done to the same thing."""
_NEW_SENTENCE = re.compile(r"[;.!] +")
_QUOTED = re.compile('"[^"]*"|“[^”]*”|‘[^’]*’')
_SOMEBODY = (
    r"(?:(?:the|an?|one|each|every|both) +)?(?:second +)?"
    r"(?:adults?|class|everybody|everyone|groups?|pairs?|persons?|people|pupils?|teachers?|technicians?|they|volunteers?)"
)
_OTHERS_DO = re.compile(
    r"\b(?:agree|ask|decide|discuss|explain|practise|rehearse|remind|show|teach|tell|warn)\b"
    r".*\b(?:how|if|that|to|what|whether|who|why)\b"
    rf"|\b(?:have|let|that|until|when|while) +{_SOMEBODY}\b",
    re.IGNORECASE,
)
"""What somebody is asked, told or shown to do, or does meanwhile: that may be many things."""
_ALONE = frozenset(("listen", "look", "stir", "wait"))
"""Verbs that need no object, and are no nouns where sentences are joined."""
_OF_THE_TRADE = frozenset(
    (
        *("adjust", "attach", "chain", "close", "cover", "decant", "detach", "dilute"),
        *("dip", "disconnect", "empty", "fasten", "fill", "hang", "heat", "hook"),
        *("insert", "loosen", "lower", "mark", "move", "note", "observe", "pack"),
        *("plug", "pull", "read", "record", "release", "remove", "replace", "reset"),
        *("rotate", "say", "shake", "show", "store", "swirl", "tick", "tighten"),
        *("transfer", "write"),
    )
)
"""Verbs of the bench, though none of this book's steps may begin with them."""
_PHRASES = frozenset((("put", "away"), ("step", "back"), ("tidy", "up"), ("write", "down")))


class Known(NamedTuple):
    """What a second thing to do can be known by: its verb, or a verb with the particle that goes with it."""

    verbs: frozenset[str]
    phrases: frozenset[tuple[str, str]]


def known_from(sentences: Sequence[str]) -> Known:
    """The verbs that sentences begin with, and those of the trade."""
    begun = [(m[1].lower(), (m[2] or "").lower()) for do in sentences if (m := _BEGINS.match(do))]
    of_trade = [(verb, how) for v in VERBS for verb in v.verbs.split() for how in v.particles.split() or [""]]
    pairs = [pair for pair in (*begun, *of_trade) if not _NO_VERB.fullmatch(pair[0])]
    return Known(
        _OF_THE_TRADE | _ALONE | {verb for verb, _ in pairs},
        _PHRASES | {pair for pair in pairs if re.fullmatch(_HOW, pair[1])},
    )


def second_deed(do: str, known: Known) -> str:
    """The verb at which a second thing to do begins, or nothing.

    >>> known = known_from(["Rinse it.", "Dry it.", "Open the box."])
    >>> second_deed("Rinse it and dry it.", known), second_deed("Rinse and dry it.", known)
    ('dry', '')
    >>> second_deed("With the tap off, rinse it.", known), second_deed("Ask Y to rinse it and dry it.", known)
    ('', '')
    >>> second_deed("Holding it, dry it.", known), second_deed("With it, dry it and open the box.", known)
    ('', 'open')
    """
    text = _QUOTED.sub(lambda quote: "_" * len(quote[0]), do)
    joints = (m for m in _JOINED.finditer(text) if _is_deed(m, known))
    return next((m["verb"] for m in joints if not _belongs_to_the_first(text, m, known)), "")


def _is_deed(joint: re.Match[str], known: Known) -> bool:
    """Whether what follows a joint is a verb, and not a noun or how something is."""
    verb, following = joint["verb"].lower(), (joint["next"] or "").lower()
    if verb not in known.verbs:
        return False
    if joint["how"].lower().endswith("then"):
        return following not in ("and", "are", "is", "of")
    return bool(_OBJECT.fullmatch(following)) or (verb, following) in known.phrases or verb in _ALONE


def _belongs_to_the_first(text: str, joint: re.Match[str], known: Known) -> bool:
    """Whether it is the first verb after an opening, another for the same thing, or not asked of the doer."""
    *told, sentence = _NEW_SENTENCE.split(text[: joint.start()])
    how = joint["how"].strip(", ").lower()
    if how[:1] in (";", ".", "!"):
        return all(_NO_REQUEST.match(one) for one in (*told, sentence))
    opening = _OPENED.match(sentence)
    if opening and how in ("", "then") and opening.end() == len(sentence):
        return True
    if how.endswith("then"):
        return False
    rest = sentence[opening.end() :] if opening else sentence
    breath = _ONE_BREATH.fullmatch(rest.lower())
    one_breath = breath and all(word in known.verbs for word in re.findall(r"\w+", breath[1]))
    same_thing = how == "and" and one_breath and _OBJECT.fullmatch((joint["next"] or "").lower())
    return bool(same_thing or _NO_REQUEST.match(rest) or _OTHERS_DO.search(sentence))
