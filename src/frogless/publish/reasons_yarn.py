"""Why so much yarn, and why so many of everything else."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from frogless.because import Because
from frogless.plan.model import EdgingBeadsPlan
from frogless.publish.drafted import Drafted, strands_of, waist_of
from frogless.publish.materials import PINS, needs_pins, parts_of
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import notions, yarns
from frogless.publish.reasons_steps import line, steps_of
from frogless.publish.reasons_told import why_yarn, yarn_because
from frogless.publish.shown import about, mass_about
from frogless.tally.model import Notion, YarnNeed
from frogless.units import show_fine, show_length


def yarn_entries(drafted: Drafted) -> Iterator[Entry]:
    """Of each yarn the balls, the length, the weight and what each part takes."""
    for key, need in yarns(drafted):
        yield key, partial(yarn_reason, drafted, key, need)
        yield f"{key}.mass", partial(_mass, drafted, key, need)
        yield f"{key}.length", partial(_length, drafted, key, need)
        yield f"{key}.parts", partial(_parts, drafted, key, need)


def yarn_name(drafted: Drafted, need: YarnNeed) -> str:
    """What the back of the pattern calls it."""
    return say(drafted, "why_yarn_of" if need.colour else "why_yarn", letter=need.colour)


def yarn_reason(drafted: Drafted, key: str, need: YarnNeed) -> Reason:
    """Why so many balls; of yarn whose label does not tell what a ball is, why so heavy."""
    steps = list(steps_of(drafted, yarn_because(drafted, need)))
    if not need.balls:
        steps = [*_until_mass(drafted, need), _about(drafted, need)]
    low, high = need.mass.interval()
    note = say(
        drafted, "reason_yarn_interval", low=mass_about(max(low, 0.0), drafted.units),
        high=mass_about(high, drafted.units),
    )  # fmt: skip
    return reasoned(key, yarn_name(drafted, need), steps, why_yarn(drafted, need), (note,))


def _until_mass(drafted: Drafted, need: YarnNeed) -> tuple[ReasonStep, ...]:
    because = yarn_because(drafted, need)
    last = max((n for n, s in enumerate(because.steps) if s.what == "yarn_mass"), default=-1)
    return steps_of(drafted, Because(because.steps[: last + 1]))


def _about(drafted: Drafted, need: YarnNeed) -> ReasonStep:
    return line(drafted, "about", mass_about(need.mass.value, drafted.units))


def _mass(drafted: Drafted, key: str, need: YarnNeed) -> Reason:
    steps = (*_until_mass(drafted, need), _about(drafted, need))
    title = say(drafted, "reason_mass", name=yarn_name(drafted, need))
    return reasoned(f"{key}.mass", title, steps)


def _length(drafted: Drafted, key: str, need: YarnNeed) -> Reason:
    units = drafted.units
    steps = (
        *_until_mass(drafted, need),
        line(drafted, "about", about(need.length.value, units)),
    )
    note = say(
        drafted, "reason_yarn_interval", low=about(need.length_low, units),
        high=about(need.length_high, units),
    )  # fmt: skip
    title = say(drafted, "reason_length", name=yarn_name(drafted, need))
    return reasoned(f"{key}.length", title, steps, None, (note,))


def _parts(drafted: Drafted, key: str, need: YarnNeed) -> Reason:
    steps = (
        *(ReasonStep(name, mass) for name, mass in parts_of(drafted, need)),
        line(drafted, "yarn_mass", mass_about(need.mass.value, drafted.units)),
    )
    title = say(drafted, "reason_parts", name=yarn_name(drafted, need))
    return reasoned(f"{key}.parts", title, steps)


def notion_entries(drafted: Drafted) -> Iterator[Entry]:
    """Hooks, markers, elastic, cord, beads, needles; pins where quarters are pinned."""
    for key, notion in notions(drafted):
        yield key, partial(notion_reason, drafted, key, notion)
    if needs_pins(drafted):
        steps = (line(drafted, "pins", str(PINS)),)
        yield "notion.pins", partial(reasoned, "notion.pins", say(drafted, "reason_pins"), steps)


def notion_name(notion: Notion) -> str:
    """What kind of thing it is."""
    return notion.key.replace("_", " ")


def notion_reason(drafted: Drafted, key: str, notion: Notion) -> Reason:
    """Why so many, so long or of that size."""
    return reasoned(key, notion_name(notion), tuple(_steps(drafted, notion)), notion.detail)


def _steps(drafted: Drafted, notion: Notion) -> Iterator[ReasonStep]:
    waist = waist_of(drafted)
    if notion.key == "hook":
        yield _hook(drafted, notion)
    elif notion.key == "marker" and (notion.pieces or 0) > 1:
        yield line(drafted, "marked_points", str((notion.pieces or 0) - 1))
        yield line(drafted, "marked_join", "1")
        yield line(drafted, "together", str(notion.pieces))
    elif notion.key == "bead":
        yield from _beads(drafted, notion.pieces or 0)
    elif notion.key in ("elastic", "cord") and waist is not None and notion.length is not None:
        shown = show_length(notion.length, drafted.units)
        *steps, last = steps_of(drafted, waist.because)
        yield from steps
        yield replace(last, value_text=shown)
    else:
        yield ReasonStep(notion.detail, str(notion.pieces or 1))


def _hook(drafted: Drafted, notion: Notion) -> ReasonStep:
    """The swatch's own hook, or one that the design asks for, in the measure of the swatch's."""
    size, _, parts = notion.detail.partition(": ")
    swatched = size == show_fine(drafted.basis.hook, drafted.units)
    return line(drafted, "hook_of_swatch" if swatched else "hook_of_design", size, parts=parts)


def _beads(drafted: Drafted, pieces: int) -> Iterator[ReasonStep]:
    """Beads worked in and spare ones, of the strand or the edging that they are for."""
    pairs = [(one.beads, one.spare_beads) for one in strands_of(drafted)]
    pairs += [(one.beads, one.spare) for one in _edging_beads(drafted)]
    beads, spare = next((pair for pair in pairs if sum(pair) == pieces), (pieces, 0))
    yield line(drafted, "beads", str(beads))
    yield line(drafted, "spare_beads", str(spare))
    yield line(drafted, "strung", str(beads + spare))


def _edging_beads(drafted: Drafted) -> Iterator[EdgingBeadsPlan]:
    for piece in drafted.plan.pieces:
        if piece.edging is not None and piece.edging.beads is not None:
            yield piece.edging.beads
