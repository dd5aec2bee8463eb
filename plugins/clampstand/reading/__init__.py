"""A content folder becomes a book, the places of everything in it, and what is wrong with it.

The way of a file through this room:

``files``
    finds it. Links, other people's file names, other encodings and files over 1 MB are refused, what nobody
    would read is named. Nothing else here touches the disk.
``places``
    reads a definition's YAML, event by event with ``walk``. Only the shape is taken from YAML, never a
    meaning: every scalar stays the text that was written, so ``no``, ``12:30``, ``010`` and ``1e3`` reach the
    model as they are. A key with nothing after it is a stop. Whatever YAML can do besides lists, keys and
    texts (tags, anchors, merging, several documents) is refused, so that a file means to this handbook what
    it means to a person. ``syntax`` words what is no YAML at all.
``tables``
    reads the tables people keep with a spreadsheet, taken apart by ``grid``. What a spreadsheet does to a
    file (its delimiter, its marks for the encoding and for line ends, empty rows) is met; what would change
    a meaning (dates, decimal commas, formulae, misspelt columns, names of people) is a stop at its cell.
``schema``
    makes definitions of the data, and says in kind words, at the key or value, why one cannot be made. A key
    that is nearly right is put right for the time of looking, to find what is wrong inside its block too.
``reader``
    knows which folder holds what, and tells every definition its id and its spot. A definition that is not
    whole is left out of the book, so that rules meet only whole ones, and is remembered as broken, so that
    nobody is told that it does not exist.
``references``
    looks up everything that is named: one table of fields and shelves in ``names``, one walk.
``newest``
    puts the newest records into the sources and supplies they are about.

Everything found has the rule ``reading``, ``schema`` or ``unknown-id``.
"""

from clampstand.reading.places import Places
from clampstand.reading.reader import Reading, read

__all__ = ["Places", "Reading", "read"]
