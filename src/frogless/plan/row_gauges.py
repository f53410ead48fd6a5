"""The gauges that the rows of a piece are worked to, where a row is not of the piece's own stitch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from frogless.plan.basis import Basis
from frogless.rows.nodes import Row
from frogless.rows.walk import stitch_keys
from frogless.swatch import Gauge


def gauges_in(basis: Basis, row: Row, own: Gauge | None = None) -> list[Gauge]:
    """The gauge of each stitch of a row, as of a trim.

    Args:
        own: of the piece's own stitch, when its hook is not that of a trim.
    """
    keys = [key for key in sorted(stitch_keys(row.body)) if basis.stitches[key].kind == "stitch"]
    return [own if own and key == own.stitch else basis.trim_gauge(key) for key in keys]


def height_of(basis: Basis, row: Row, own: Gauge | None = None) -> float:
    """A row is as high as its tallest stitch, mm."""
    return max((gauge.height.value for gauge in gauges_in(basis, row, own)), default=0.0)


def by_section(
    basis: Basis, known: Mapping[str, Gauge], rows: Iterable[Row], own: Gauge | None = None
) -> dict[str, Gauge]:
    """The gauge of every section that rows name: those known, and of others their first stitch's."""
    found = dict(known)
    # Rows of the same stitches have the same gauges, and a piece has few kinds of rows.
    gauges: dict[frozenset[str], list[Gauge]] = {}
    for row in rows:
        keys = stitch_keys(row.body)
        if keys not in gauges:
            gauges[keys] = gauges_in(basis, row, own)
        for gauge in gauges[keys]:
            found.setdefault(row.section, gauge)
    return found
