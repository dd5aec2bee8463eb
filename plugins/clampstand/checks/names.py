"""The names a practical's things go by, as they may stand in its sentences without braces."""

import re
from collections.abc import Iterator, Mapping
from functools import cached_property

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import Sentence

_QUOTED = re.compile(r"\{[^{}]*\}")
_WORD = re.compile(r"[\w-]+")
SHORTEST = 4
"""A shorter word is too easily another word."""

EXPLAINS = ("title", "aim", "defer", "ask", "misconceptions", "expect")
"""Parts that speak of things in general, not of those that are laid out."""


class Names:
    """The names of the kit, rooms and sources of one practical, and where sentences say them unbound."""

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    @cached_property
    def known(self) -> Mapping[str, str]:
        """Name, in small letters → the id that braces should hold.

        Of kit and rooms only names of two words and more: a blade, a cell or a switch is also just a word.
        """
        practical, book = self._lesson.practical, self._lesson.book
        names: dict[str, str] = {}
        for item in (book.kit[i] for i in sorted(practical.items) if i in book.kit):
            names |= dict.fromkeys((item.name, item.plural or item.name, *item.also), item.id)
        for room in dict.fromkeys(room for rooms in practical.where.values() for room in rooms):
            names |= {book.rooms[room].name: room} if room in book.rooms else {}
        many = {name.casefold(): its_id for name, its_id in names.items() if " " in name}
        slots = {source: slot.name for slot in practical.sources for source in slot.one_of}
        return many | {source.casefold(): slot for source, slot in slots.items()}

    def unbound(self) -> Iterator[tuple[Sentence, str, str]]:
        """Each name that stands without braces: the sentence, the name as it stands, and the id meant."""
        for sentence, text, words in self._instructing:
            for name in dict.fromkeys(self._standing(text, words)):
                yield sentence, name, self.known[name.casefold()]

    def _standing(self, text: str, words: frozenset[str]) -> list[str]:
        """The names in a text as they stand there; a longer name hides a shorter one that is part of it."""
        folded = text.casefold()
        begun = self._by_first_word.keys() & words
        possible = [name for word in begun for name in self._by_first_word[word] if name in folded]
        if not possible:
            return []
        longest_first = "|".join(re.escape(name) for name in sorted(possible, key=len, reverse=True))
        return re.findall(rf"(?<![\w-])(?:{longest_first})(?![\w-])", text, re.IGNORECASE)

    @cached_property
    def _by_first_word(self) -> Mapping[str, tuple[str, ...]]:
        """A word → the names that begin with it."""
        found: dict[str, tuple[str, ...]] = {}
        for name in self.known:
            first = _WORD.search(name)
            if first:
                found[first.group()] = (*found.get(first.group(), ()), name)
        return found

    def misspelt(self) -> Iterator[tuple[Sentence, str, str]]:
        """Each run of words that is a name but for one letter: the sentence, the words, the name."""
        for sentence, text, all_words in self._instructing:
            if self._by_word.keys().isdisjoint(all_words):
                continue  # as in most sentences, and much cheaper to see
            for part in text.split("|"):
                words = _WORD.findall(part)
                lower = [word.casefold() for word in words]
                for start, name in self._begun(lower):
                    run = slice(start, start + len(name))
                    if _nearly(lower[run], name):
                        yield sentence, " ".join(words[run]), " ".join(name)

    def _begun(self, words: list[str]) -> Iterator[tuple[int, tuple[str, ...]]]:
        """Where a name may stand: all its words but one are right, so at least one is."""
        starts = {
            (at - offset, name)
            for at, word in enumerate(words)
            if word in self._by_word
            for offset, name in self._by_word[word]
            if at >= offset and at - offset + len(name) <= len(words)
        }
        yield from sorted(starts)

    @cached_property
    def _by_word(self) -> Mapping[str, tuple[tuple[int, tuple[str, ...]], ...]]:
        """A word → its place in each name of several words that has it."""
        found: dict[str, tuple[tuple[int, tuple[str, ...]], ...]] = {}
        for name in (tuple(name.split()) for name in self.known if " " in name):
            for offset, word in enumerate(name):
                found[word] = (*found.get(word, ()), (offset, name))
        return found

    @cached_property
    def _instructing(self) -> tuple[tuple[Sentence, str, frozenset[str]], ...]:
        """The sentences that say what to do, each without what stands in braces, and with its words."""
        return tuple(
            (sentence, text := _QUOTED.sub(" | ", sentence.text), frozenset(_WORD.findall(text.casefold())))
            for sentence in self._lesson.sentences
            if sentence.route[0] not in EXPLAINS and sentence.route[-1] not in ("seen", "cause")
        )


def _nearly(run: list[str], name: tuple[str, ...]) -> bool:
    """Whether words differ in one of them only, and there by a slip."""
    unlike = [(a, b) for a, b in zip(run, name, strict=True) if a != b]
    return len(unlike) == 1 and is_slip(*unlike[0])


def is_slip(word: str, meant: str) -> bool:
    """Whether a word is another with one letter wrong, missing, too many or in its neighbour's place.

    Words under four letters, and other endings of the same word, are no slips.

    >>> is_slip("tupe", "tube"), is_slip("tueb", "tube"), is_slip("boiled", "boiler"), is_slip("boxes", "box")
    (True, True, False, False)
    """
    if min(len(word), len(meant)) < SHORTEST or abs(len(word) - len(meant)) > 1 or word[0] != meant[0]:
        return False
    first = next((i for i, (a, b) in enumerate(zip(word, meant, strict=False)) if a != b), None)
    if first is None or first >= min(len(word), len(meant)) - 1:
        return False
    swapped = word[:first] + word[first : first + 2][::-1] + word[first + 2 :]
    rests = (word[first + 1 :], meant[first + 1 :]), (word[first + 1 :], meant[first:])
    return swapped == meant or any(a == b for a, b in (*rests, (word[first:], meant[first + 1 :])))
