"""Why a gauge is what it is: what was counted on the swatch, over how far."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned, slugs
from frogless.publish.reasons_steps import line, number, per_span
from frogless.swatch import Gauge, Reading, within
from frogless.units import show_fine


def gauges(drafted: Drafted) -> Iterator[tuple[str, Gauge]]:
    """Every gauge that rows are worked to, once, with its key: `gauge.double_crochet`."""
    work = drafted.basis.design.work.stitch
    found = [drafted.basis.gauge(work, "work.stitch"), *drafted.plan.gauges.values()]
    once = {(one.stitch, one.width.value, one.height.value): one for one in reversed(found)}
    kept = tuple(reversed(once.values()))
    for name, one in zip(slugs((g.stitch for g in kept), "stitch"), kept, strict=True):
        yield f"gauge.{name}", one


def gauge_entries(drafted: Drafted) -> Iterator[Entry]:
    """Of each gauge the stitches and the rows."""
    for key, one in gauges(drafted):
        yield key, partial(gauge_reason, drafted, key, one)
        yield f"{key}.rows", partial(_rows, drafted, key, one)


def stitch_name(drafted: Drafted, key: str) -> str:
    """What a stitch is called in the dialect, or a stitch pattern by its key."""
    return drafted.name(key) if key in drafted.stitches else key.replace("_", " ")


def gauge_reason(drafted: Drafted, key: str, one: Gauge) -> Reason:
    """Why there are so many stitches in 10 cm or 4 in."""
    steps = (
        *_counted(drafted, one, "stitches"),
        _per_span(drafted, "gauge_stitches", one.width.value),
    )
    name = stitch_name(drafted, one.stitch)
    percent = number(round(within(one.width), 1))
    notes = (say(drafted, "reason_counted_within", percent=percent), *_hook(drafted, one))
    return reasoned(key, say(drafted, "reason_gauge", name=name), steps, None, notes)


def _rows(drafted: Drafted, key: str, one: Gauge) -> Reason:
    steps = (*_counted(drafted, one, "rows"), _per_span(drafted, "gauge_rows", one.height.value))
    name = stitch_name(drafted, one.stitch)
    percent = number(round(within(one.height), 1))
    notes = (say(drafted, "reason_counted_within", percent=percent),)
    return reasoned(f"{key}.rows", say(drafted, "reason_row_gauge", name=name), steps, None, notes)


def _per_span(drafted: Drafted, name: str, size: float) -> ReasonStep:
    span = say(drafted, f"span_{drafted.units}")
    return line(drafted, name, per_span(drafted, 100 / size), span=span)


def _hook(drafted: Drafted, one: Gauge) -> Iterator[str]:
    if one.hook:
        yield say(drafted, "reason_hook", hook=show_fine(one.hook, drafted.units))


def _counted(drafted: Drafted, one: Gauge, what: str) -> Iterator[ReasonStep]:
    """Each reading of the swatches in that stitch and state; of a stitch nobody swatched its source."""
    if one.estimated:
        source = one.source or say(drafted, "gauge_unswatched")
        size = one.width.value if what == "stitches" else one.height.value
        yield line(drafted, f"size_of_{what}", _small(drafted, size), estimated=True, source=source)
        return
    for swatch in drafted.basis.swatches:
        for reading in swatch.readings:
            count, over = _read(reading, what)
            if reading.stitch == one.stitch and reading.state == one.state and count and over:
                told = say(
                    drafted, f"counted_{what}", count=f"{count:g}", over=_span(drafted, over)
                )
                yield line(drafted, "counted", told, swatch=swatch.name)


def _read(reading: Reading, what: str) -> tuple[float | None, float | None]:
    if what == "stitches":
        return reading.stitches, reading.width
    return reading.rows, reading.height


def _span(drafted: Drafted, over: float) -> str:
    """What was counted over, to the mm: rounded it would not give the gauge."""
    return f"{over / 25.4:.2f} in" if drafted.units == "in" else f"{over / 10:g} cm"


def _small(drafted: Drafted, size: float) -> str:
    return f"{size:.1f} mm" if drafted.units == "cm" else f"{size / 25.4:.2f} in"
