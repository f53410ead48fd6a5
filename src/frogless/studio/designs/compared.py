"""Two texts of a design, drafted for the same body in the same yarn: what differs in the garment."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from frogless.draft import Texts, draft_texts
from frogless.errors import FroglessError
from frogless.publish.drafted import Drafted
from frogless.stitches.model import Dialect
from frogless.studio.designs.checked import Table, counts_of
from frogless.studio.designs.facts import refuse_overgrown
from frogless.units import Units


@dataclass(frozen=True, slots=True)
class Differences:
    """One sentence for each difference; or why there is none to tell."""

    sentences: tuple[str, ...] = ()
    why: str = ""


def compare_drafts(
    before: str,
    after: str,
    body: str,
    swatches: tuple[str, ...],
    terms: Dialect = "us",
    units: Units = "cm",
) -> Differences:
    """What differs between two texts of a design once they are drafted."""
    drafted: list[Drafted] = []
    for name, text in (("The first", before), ("The second", after)):
        try:
            refuse_overgrown(text)
            drafted.append(draft_texts(Texts(text, body, swatches), terms, units).drafted)
        except FroglessError as error:
            return Differences(why=f"{name} cannot be drafted: {error.faults[0].message}")
    return Differences(tuple(_counts(*drafted)))


def _counts(before: Drafted, after: Drafted) -> Iterator[str]:
    old, new = counts_of(before), counts_of(after)
    if old.header != new.header:
        yield f"{old.caption} became {new.caption.lower()}"
        return
    yield from _rows(old, new)


def _rows(old: Table, new: Table) -> Iterator[str]:
    was, now = ({row[0]: row[1:] for row in table.rows} for table in (old, new))
    for name in dict.fromkeys((*was, *now)):
        if name not in now:
            yield f"{name}: no more"
        elif name not in was:
            yield f"{name}: new"
        else:
            changes = [
                f"{head.lower()} {a} → {b}"
                for head, a, b in zip(new.header[1:], was[name], now[name], strict=True)
                if a != b
            ]
            if changes:
                yield f"{name}: {', '.join(changes)}"
