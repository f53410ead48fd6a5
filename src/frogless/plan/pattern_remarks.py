"""What is said of sections in stitch patterns beside their numbers."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.plan.model import Remark
from frogless.plan.patterned import Patterned
from frogless.plan.sections import Span
from frogless.plan.tube import Tube

# A row of a column that is a tenth higher or lower than the row of the pattern beside it pulls or
# stands out visibly (own choice: what a maker calls a ruffle or a pucker over ten rows is one row).
UNEVEN = 0.1
# What a base round may widen or narrow before it shows, as the correction of an edging (common
# practice: about one stitch in fifty).
SHOWS = 0.02


def pattern_remarks(tube: Tube) -> Iterator[Remark]:
    """Columns that are not as high as the pattern, and repeats that do not meet the girth above."""
    for span in tube.spans:
        if span.worked is None:
            continue
        if span.worked.column is not None:
            yield from _uneven(span, span.worked)
        elif span.rounds_above:
            yield from _off(tube, span)


def _uneven(span: Span, worked: Patterned) -> Iterator[Remark]:
    if worked.column is None:
        return
    ratio = worked.column.height.value / span.gauge.height.value
    if abs(ratio - 1) <= UNEVEN:
        return
    doing = "stand out in folds" if ratio > 1 else "draw the pattern together"
    yield Remark(
        "columns_uneven",
        f'section "{span.section.name}": rows of its columns are {abs(ratio - 1) * 100:.0f} % '
        f"{'higher' if ratio > 1 else 'lower'} than those of the pattern, so that the columns "
        f"{doing}; take a stitch for them that is as high as the pattern's rows",
    )


def _off(tube: Tube, span: Span) -> Iterator[Remark]:
    above, here = tube.girth(span.rounds_above).value, tube.girth(span.rounds_above + 1).value
    off = here / above - 1
    if abs(off) <= SHOWS:
        return
    last = next(one for one in tube.spans if one.rounds_above + one.rounds == span.rounds_above)
    why = (
        f"as its repeats are {'larger' if off > 0 else 'smaller'}; more stretches between would "
        "step less"
        if last.worked is not None and span.worked is not None and last.key == span.key
        else "as whole repeats come no nearer; a pattern with smaller repeats would"
    )
    yield Remark(
        "pattern_girth",
        f'section "{span.section.name}" begins {tube.basis.show(abs(here - above))} '
        f"{'wider' if off > 0 else 'narrower'} than what is above it, {why}",
        serious=False,
    )
