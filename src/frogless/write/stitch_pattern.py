"""A stitch pattern in words, for any number of repeats: "*sc in next st, ch 1; rep from * across"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from frogless.rows.nodes import Piece
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.pattern_rows import Way, worked
from frogless.write.fold import Told, line_of
from frogless.write.ground import Ground, grounds
from frogless.write.phrases import phrases
from frogless.write.row import Place, Said, begun_joined, say_row
from frogless.write.words import Words

#: Told as worked over so many repeats, or the fewest there may be and one more.
_REPEATS = 3


def say_way(
    way: Way, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> tuple[str, ...]:
    """The rows of a pattern, one to a line; first the colour that it begins with, if it has any."""
    words = Words(stitches, dialect, phrases(language))
    places = way.places(max(_REPEATS, way.least + 1))
    rows = worked(way, places, len(way.rows), stitches)
    below = grounds(Piece("", way.closed, rows), Ground(("st",) * places), words)
    lines: list[str] = []
    said = Said()
    # A pattern that says nothing of turning is worked as usual: rows are turned.
    place = Place(
        way.closed, says_unturned=not way.closed and not any(r.end.turn for r in way.rows)
    )
    for i, (row, of, ground) in enumerate(zip(rows, way.rows, below, strict=True)):
        star = len(of.before) if of.repeat else None
        joined = begun_joined(rows, i, closed=way.closed)
        text = say_row(row, said, ground, replace(place, joined=joined), words, star)
        label = line_of([Told(row, text, "")], way.closed, words.phrases).label
        lines.append(f"{label}: {text}")
        said = said.after(row)
    begin = (
        (words.phrases.say("begin_colour", word=words.colour, colour=way.colour),)
        if way.colour
        else ()
    )
    return (*begin, *lines)
