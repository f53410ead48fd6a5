"""The front of a pattern: what could hurt, sizes at a glance, how to read what follows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from frogless.fit.model import GoingOn, LandmarkFit
from frogless.plan.model import BandPlan, CordPlan, EdgingPlan, ElasticPlan, Landmark, Option
from frogless.publish import left_handed
from frogless.publish.authored import authored
from frogless.publish.blocks import Block, Bullets, Heading, Table
from frogless.publish.drafted import Drafted
from frogless.publish.landmark_cells import body_cell, ease_cell
from frogless.publish.messages import say
from frogless.publish.reasons_model import Asked, slugs
from frogless.publish.reasons_names import piece_keys, sections
from frogless.publish.remarks import notes_at
from frogless.rows.nodes import Together
from frogless.rows.walk import nodes
from frogless.tally.pace import FAST, SLOW
from frogless.units import show_length

#: A waist that is drawn in by more than this is called ungathered where its own girth is told, mm.
GATHERED = 25.0

#: Stitches that lead up to a taller one, lowest first.
BY_HEIGHT = ("slip_stitch", "single_crochet", "half_double_crochet", "double_crochet", "treble")

#: What a round that is worked with the right side facing passes first and then, from a join at a
#: side. Seen from outside a right-handed maker works to the left, with the waist edge down; worn,
#: that is to the right: from the wearer's left side on over the back.
FROM_SIDE: Mapping[str, tuple[str, str]] = {
    "left side": ("back", "front"),
    "right side": ("front", "back"),
}


#: Girths that are estimated for what has to pass an opening.
ONLY_PASSES = frozenset({"head_girth", "shoulder_girth", "hand_girth"})


def cautions(drafted: Drafted) -> tuple[Block, ...]:
    """What could hurt and has to be known before anything is bought."""
    notes = notes_at(drafted, "first")
    return (Heading(say(drafted, "cautions")), *notes) if notes else ()


def glance(drafted: Drafted) -> tuple[Block, ...]:
    """Girths by landmark, and the few figures a maker asks first."""
    return (
        Heading(say(drafted, "glance")),
        landmarks_table(drafted),
        Bullets(tuple(figure.text for figure in figures(drafted))),
    )


def landmarks_table(drafted: Drafted) -> Table:
    """At each landmark body, skirt and ease, and the stitches, the round and the depth."""
    keys = ("at", "body", "garment", "ease", "stitches", "round", "depth")
    header = tuple(say(drafted, key) for key in keys)
    rows = tuple(_landmark_row(drafted, fit) for fit in drafted.fit.landmarks)
    return Table(say(drafted, "glance_caption"), header, rows)


def wearing(drafted: Drafted) -> tuple[Block, ...]:
    """How it goes on, what holds it up, and what else is to be known of the figures."""
    told = tuple(figure.text for figure in worn(drafted))
    return (*((Bullets(told),) if told else ()), *notes_at(drafted, "glance"))


def worn(drafted: Drafted) -> Iterator[Asked]:
    """How it goes on and what holds it up, each with the key of its reason."""
    for key, one in openings(drafted):
        yield Asked(say(drafted, "glance_goes_on", sentence=" ".join(one.reasons)), key)
    if drafted.fit.staying_up:
        told = say(drafted, "glance_stays_up", sentence=drafted.fit.staying_up)
        yield Asked(told, "staying_up")


def openings(drafted: Drafted) -> tuple[tuple[str, GoingOn], ...]:
    """What has to pass, each with its key: the openings of several pieces, else the skirt's own."""
    found = drafted.fit.openings
    if not found:
        return (("going_on", drafted.fit.going_on),)
    names = slugs((one.name for one in found), "opening")
    return tuple((f"fit.{name}", one) for name, one in zip(names, found, strict=True))


def _landmark_row(drafted: Drafted, fit: LandmarkFit) -> tuple[str, ...]:
    units = drafted.units
    mark = next(m for m in drafted.plan.main.landmarks if m.key == fit.at)
    return (
        place(drafted, fit.at), body_cell(drafted, fit), show_length(fit.garment, units),
        ease_cell(drafted, fit), str(mark.count), str(mark.rounds),
        show_length(depth_of(drafted, mark), units),
    )  # fmt: skip


def depth_of(drafted: Drafted, mark: Landmark) -> float:
    """Worn depth of the lower edge of a landmark's last round, mm; the waist edge itself is 0."""
    return drafted.plan.main.depths[mark.rounds] if mark.rounds else 0.0


def place(drafted: Drafted, key: str) -> str:
    """What a landmark is called; the waist says so when its girth is that before it is gathered."""
    name = say(drafted, key)
    gathered = key == "waist_girth" and is_gathered(drafted)
    return say(drafted, "ungathered", at=name) if gathered else name


def is_gathered(drafted: Drafted) -> bool:
    """Whether elastic, cord or band draw the waist in by more than a little."""
    waist = next(m for m in drafted.plan.main.landmarks if m.key == "waist_girth")
    match drafted.plan.main.waist:
        case ElasticPlan(finished=to):
            return waist.garment.value - to > GATHERED
        case BandPlan(girth=to):
            return waist.garment.value - to.value > GATHERED
        case CordPlan():
            body = waist.body
            return body is not None and waist.garment.value - body.value > GATHERED
        case None:
            return False


def figures(drafted: Drafted) -> Iterator[Asked]:
    """Length, edging, stray, what was estimated, time; each with the key of its reason."""
    yield Asked(_length(drafted), "length")
    yield from edgings(drafted)
    yield from greatest_stray(drafted)
    yield from estimated(drafted)
    yield Asked(time(drafted), "time")


def edgings(drafted: Drafted) -> Iterator[Asked]:
    """The edging of every piece that has one, with its repeats."""
    pieces = piece_keys(drafted)
    for piece in drafted.plan.pieces:
        if piece.edging is not None:
            key = "glance_edging" if piece.edging.multiple > 1 else "glance_edging_one"
            told = say(
                drafted, key, name=name_of(drafted, piece.edging), repeats=piece.edging.repeats,
                count=piece.edging.base_count,
            )  # fmt: skip
            yield Asked(told, f"edging.{pieces[piece.name]}")


def hours(drafted: Drafted) -> tuple[int, int]:
    """Whole hours of work at a fast and at a slow pace, one at least."""
    fast, slow = drafted.tally.time_low, drafted.tally.time_high
    return max(round(fast / 3600), 1), max(round(slow / 3600), 1)


def time(drafted: Drafted) -> str:
    """How long it takes."""
    low, high = hours(drafted)
    return say(
        drafted, "glance_time", low=low, high=high, fast=f"{FAST:g}", slow=f"{SLOW:g}",
        stitch=drafted.name("single_crochet"),
    )  # fmt: skip


def _length(drafted: Drafted) -> str:
    """Rounds and length, the edging and the band on top of it."""
    plan, units = drafted.plan, drafted.units
    hem = plan.main.landmarks[-1]
    told = say(
        drafted,
        "glance_length",
        rounds=hem.rounds,
        length=show_length(depth_of(drafted, hem), units),
    )
    if plan.main.edging:
        whole = show_length(plan.main.depths[plan.main.edging.last_round], units)
        told = say(drafted, "glance_length_edging", told=told, length=whole)
    if isinstance(plan.main.waist, BandPlan):
        height = show_length(plan.main.waist.height, units)
        told = say(drafted, "glance_length_band", told=told, height=height)
    return told


def greatest_stray(drafted: Drafted) -> Iterator[Asked]:
    """How far the skirt is from the wanted girth where it is farthest; nothing when it is not."""
    main = drafted.plan.main
    chosen = [(key, s.chosen) for key, piece, s in sections(drafted) if piece is main and s.chosen]
    if chosen:
        key, worst = max(chosen, key=lambda one: abs(one[1].stray))
        for told in stray(drafted, worst, "glance_stray"):
            yield Asked(told, f"{key}.stray")


def stray(drafted: Drafted, option: Option, message: str) -> Iterator[str]:
    """A rhythm's greatest stray in a message with `stray` and `depth`, if it has one."""
    shown = show_length(abs(option.stray), drafted.units)
    if shown.startswith("0 "):
        return
    told = say(drafted, "wider" if option.stray > 0 else "narrower", length=shown)
    depth = show_length(option.stray_at, drafted.units)
    yield say(drafted, message, stray=told, depth=depth)


def estimated(drafted: Drafted) -> Iterator[Asked]:
    """Which lengths and girths of the body were not measured."""
    measured = drafted.basis.body.measurements.values()
    found = [m for m in measured if m.estimated and _is_used(drafted, m.key)]
    lengths = ", ".join(
        say(
            drafted,
            "length_of",
            name=drafted.phrases.measurement(m.key),
            length=show_length(m.value.value, drafted.units),
        )
        for m in found
    )
    if found:
        yield Asked(say(drafted, "glance_estimated", lengths=lengths), f"body.{found[0].key}")


def _is_used(drafted: Drafted, key: str) -> bool:
    """Whether a number stands on it: what only passes openings is not used where nothing passes."""
    passed = {one.widest_at for one in drafted.fit.openings}
    met = {mark.key for mark in drafted.plan.landmarks}
    return key not in ONLY_PASSES or not drafted.of_pieces or key in passed | met


def edging_name(drafted: Drafted) -> str:
    """What the edging is called in the dialect."""
    plan = drafted.plan.main.edging
    return "" if plan is None else name_of(drafted, plan)


def name_of(drafted: Drafted, plan: EdgingPlan) -> str:
    """What an edging is called in the dialect."""
    return dict(plan.names)[drafted.dialect]


def before(drafted: Drafted) -> tuple[Block, ...]:
    """How the skirt is built, and how to read the rounds."""
    work = drafted.basis.design.work
    lines = [
        say(drafted, f"way_{work.rounds}", join=say(drafted, f"join_{drafted.join_at}")),
        *_spiral_step(drafted),
        *_side_join(drafted),
        *left_handed.line(drafted),
        *_turning_chain(drafted),
        say(drafted, "brackets"),
        *markers(drafted),
        say(drafted, "lengths"),
        *(authored(drafted, note) for note in drafted.basis.design.notes),
    ]
    return (
        Heading(say(drafted, "before")),
        Bullets(tuple(lines)),
        *left_handed.notes(drafted),
        *notes_at(drafted, "before"),
    )


def markers(drafted: Drafted) -> Iterator[str]:
    """What the markers are for, and that they move."""
    marked = [row for piece in drafted.plan.program.pieces for row in piece.rows if row.marks]
    decreasing = [any(isinstance(node, Together) for node, _ in nodes(row.body)) for row in marked]
    if not all(decreasing):
        yield say(drafted, "markers_increase")
    if any(decreasing):
        yield say(drafted, "markers_decrease")
    if marked:
        turned = drafted.basis.design.work.rounds == "joined and turned"
        yield drafted.phrases.say("markers_general" if turned else "markers_general_unturned")


def _spiral_step(drafted: Drafted) -> Iterator[str]:
    """How the step at the beginning and end of a spiral is softened, by lower stitches."""
    work, known = drafted.basis.design.work, drafted.stitches
    if work.rounds != "spiral":
        return
    height = known[work.stitch].height.typical
    lower = [drafted.short(key) for key in BY_HEIGHT if known[key].height.typical < height]
    if len(lower) < 2:
        yield say(drafted, "spiral_step")
        return
    yield say(
        drafted, "spiral_taper", up=", ".join(lower), n=len(lower),
        stitch=drafted.short(work.stitch),
    )  # fmt: skip


def _side_join(drafted: Drafted) -> Iterator[str]:
    """Which way the rounds go from a join at a side, as no maker can see it from the words."""
    ways = FROM_SIDE.get(drafted.basis.design.work.join_at)
    if ways:
        first, second = (say(drafted, way) for way in ways)
        name = "way_side" if drafted.hand == "right" else "way_side_left"
        yield say(drafted, name, first=first, second=second)


def _turning_chain(drafted: Drafted) -> Iterator[str]:
    work = drafted.basis.design.work
    if work.rounds == "spiral" or not work.turning_chain:
        return
    key = "chain_counts" if work.turning_chain_counts else "chain_does_not_count"
    if work.join_into == "top of chain":
        key += "_top"
    told = say(drafted, key, n=work.turning_chain, stitch=drafted.short(work.stitch))
    if any(section.pattern for section in drafted.plan.sections):
        told = f"{told} {say(drafted, 'chain_of_patterns')}"
    yield told
