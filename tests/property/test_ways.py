"""Any rows of a pattern, said for any number of repeats, are read back as the same rows."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from property.ways import ways

from frogless.read.pattern_lines import lifted, pattern_lines
from frogless.read.vocabulary import vocabulary
from frogless.rows.walk import flatten
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.pattern_rows import PatternRow, Way
from frogless.write.stitch_pattern import say_way

STITCHES = dictionary()
DIALECTS: tuple[Dialect, ...] = ("us", "uk")
WORDS = {dialect: vocabulary(STITCHES, dialect) for dialect in DIALECTS}


def told(row: PatternRow) -> PatternRow:
    """All that a text can tell of a row: runs of one kind are one run."""
    before, repeat, after = map(flatten, (row.before, row.repeat, row.after))
    return replace(row, before=before, repeat=repeat, after=after)


@settings(max_examples=60, deadline=None)
@given(ways())
def test_rows_come_back_over_any_number_of_repeats(way: Way) -> None:
    """In both dialects, over three repeats and over four: before, repeat, after, start, end, side."""
    expected = tuple(told(row) for row in way.rows)
    for dialect in DIALECTS:
        text = "\n".join(say_way(way, STITCHES, dialect))
        lines = pattern_lines(text, WORDS[dialect], closed=way.closed)
        assert lines.colour == way.colour
        for repeats in (3, 4):
            rows, side = lifted(lines, way.places(repeats), WORDS[dialect])
            assert (tuple(told(row) for row in rows), side) == (expected, way.side), text
