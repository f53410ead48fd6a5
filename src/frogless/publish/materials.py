"""What to have ready, and the gauge that every number stands on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from frogless.plan.model import BandPlan, CordPlan, ElasticPlan
from frogless.publish import patterned
from frogless.publish.blocks import Block, Bullets, Heading, Paragraph
from frogless.publish.colours import labelled
from frogless.publish.drafted import Drafted, strands_of, waist_of
from frogless.publish.messages import MESSAGES, say
from frogless.publish.reasons_model import Asked
from frogless.publish.reasons_names import notions, yarns
from frogless.publish.remarks import notes_at
from frogless.publish.shown import about, mass_about
from frogless.stitches.hooks import sizes
from frogless.swatch import within
from frogless.tally.model import Notion, YarnNeed
from frogless.units import Measured, show_fine, show_length, show_long, show_mass

#: A part that takes less of the yarn than this is told together with others as small.
SMALL_SHARE = 0.01
#: Steel hooks have a numbering of their own; in use below this size, mm (common practice).
STEEL = 2.0
#: One for each quarter of an edge.
PINS = 4


def materials(drafted: Drafted) -> tuple[Block, ...]:
    """Yarn, hooks, notions."""
    return (
        Heading(say(drafted, "materials")),
        Bullets(tuple(line.text for line in lines(drafted))),
        *notes_at(drafted, "materials"),
    )


def lines(drafted: Drafted) -> Iterator[Asked]:
    """What the list of materials says, line by line, each with the key of its reason."""
    for key, need in yarns(drafted):
        yield from _yarn(drafted, key, need)
    yield from _hooks(drafted)
    for key, notion in notions(drafted):
        if notion.key != "hook":
            yield Asked(_notion(drafted, notion), key)
    yield from _at_hand(drafted)


def _yarn(drafted: Drafted, key: str, need: YarnNeed) -> Iterator[Asked]:
    units = drafted.units
    told = say(
        drafted, "yarn", name=labelled_yarn(drafted, need),
        length=about(need.length.value, units), low=about(need.length_low, units),
        high=about(need.length_high, units), mass=mass_about(need.mass.value, units),
    )  # fmt: skip
    yield Asked(_with_balls(drafted, need, told), key)
    parts = (say(drafted, "yarn_part", name=n, mass=mass) for n, mass in parts_of(drafted, need))
    yield Asked(say(drafted, "yarn_parts", parts=", ".join(parts)), f"{key}.parts")
    if need is next((n for n in reversed(drafted.tally.yarn) if not n.calibrated), None):
        yield Asked(say(drafted, "yarn_uncalibrated"), key)


def labelled_yarn(drafted: Drafted, need: YarnNeed) -> str:
    """The yarn's name with what its label says, and the colour it is wanted in."""
    yarn = need.swatch.yarn
    category = yarn.category
    said = [] if category is None else [say(drafted, "yarn_category", category=category)]
    label = ", ".join([*said, *([yarn.fibre] if yarn.fibre else [])])
    name = say(drafted, "yarn_label", name=need.name, label=label) if label else need.name
    if not need.colour:
        return name
    return say(drafted, "yarn_colour", which=labelled(drafted, need.colour), name=name)


def _with_balls(drafted: Drafted, need: YarnNeed, told: str) -> str:
    units, yarn = drafted.units, need.swatch.yarn
    label = [show_mass(yarn.ball_mass, units)] if yarn.ball_mass else []
    label += [show_long(yarn.ball_length, units)] if yarn.ball_length else []
    if not need.balls or not label:
        return told
    return say(
        drafted, "yarn_ball" if need.balls == 1 else "yarn_balls", told=told,
        margin=f"{need.margin_percent:g}", balls=need.balls, ball=" / ".join(label),
    )  # fmt: skip


def parts_of(drafted: Drafted, need: YarnNeed) -> Iterator[tuple[str, str]]:
    """Name and mass of what each part takes, named as its heading is; small ones together at the end."""
    parts = _by_heading(drafted, need.by_part)
    total = sum(parts.values())
    small = [name for name, grams in parts.items() if grams < SMALL_SHARE * total]
    told = {name: grams for name, grams in parts.items() if name not in small}
    if small:
        told[listed(drafted, small)] = sum(parts[name] for name in small)
    for name, grams in told.items():
        yield name, mass_about(grams, drafted.units)


def _by_heading(drafted: Drafted, by_part: Sequence[tuple[str, float]]) -> dict[str, float]:
    """Grams by heading: sections without their piece, the way round the elastic in its cover.

    Where there are several pieces, those have the headings; a half of one ("front, right side")
    belongs to it.
    """
    pieces = [piece.name for piece in drafted.plan.program.pieces]
    found: dict[str, float] = {}
    for part, grams in by_part:
        piece, _, section = part.partition(": ")
        whose = piece.partition(", ")[0] if drafted.of_pieces else section
        name = whose if section and piece in pieces else part
        name = "elastic cover" if name == "round the elastic" else name
        found[name] = found.get(name, 0.0) + grams
    return found


def listed(drafted: Drafted, names: Sequence[str]) -> str:
    """ "a", "a and b", "a, b and c"."""
    *first, last = names
    return say(drafted, "and", first=", ".join(first), last=last) if first else last


def _hooks(drafted: Drafted) -> Iterator[Asked]:
    """Each size with what it is for: a piece, or a section where a piece takes several."""
    uses: dict[float, list[str]] = {}
    for piece in drafted.plan.program.pieces:
        worked = {row.section: row.hook for row in piece.rows if row.hook}
        first = next(iter(worked.values()), 0.0)
        for section, size in worked.items():
            uses.setdefault(size, []).append(piece.name if size == first else section)
    for strand in strands_of(drafted):
        uses.setdefault(strand.hook, []).append(strand.name)
    for size, parts in uses.items():
        if size:
            names = listed(drafted, list(dict.fromkeys(parts)))
            if drafted.of_pieces and len(uses) == 1:
                names = say(drafted, "all_pieces")
            told = say(drafted, "hook", size=hook_size(drafted, size), parts=names)
            yield Asked(told, _hook_key(drafted, size))


def _hook_key(drafted: Drafted, size: float) -> str:
    """The key of the hook of that size among the notions."""
    begins = f"{show_fine(size, drafted.units)}: "
    hooks = (key for key, notion in notions(drafted) if notion.key == "hook"
             and notion.detail.startswith(begins))  # fmt: skip
    return next(hooks, "")


def hook_size(drafted: Drafted, size: float) -> str:
    """ "3.75 mm (US F-5)"; in mm alone where the standard has no letter."""
    shown, label = show_fine(size, drafted.units), sizes().get(round(size, 4), "")
    if not label:
        return shown
    return say(drafted, "hook_steel" if size < STEEL else "hook_us", size=shown, label=label)


def _notion(drafted: Drafted, notion: Notion) -> str:
    units, waist = drafted.units, waist_of(drafted)
    if notion.key == "elastic" and isinstance(waist, ElasticPlan):
        return say(
            drafted, "notion_elastic", kind=waist.kind, width=show_fine(waist.width, units),
            cut=show_length(waist.cut, units), lap=show_length(waist.lap, units),
            stretch=f"{waist.needed_stretch:.2f}",
        )  # fmt: skip
    key = f"notion_{notion.key}" + ("_one" if notion.pieces == 1 else "")
    if key not in MESSAGES:
        key = key.removesuffix("_one")
    length = "" if notion.length is None else show_length(notion.length, units)
    return say(
        drafted, key if key in MESSAGES else "notion_other", name=notion.key.replace("_", " "),
        pieces=notion.pieces, length=length, detail=notion.detail,
    )  # fmt: skip


def _at_hand(drafted: Drafted) -> Iterator[Asked]:
    """Small things that the text asks for on the way."""
    if needs_pins(drafted):
        yield Asked(say(drafted, "have_pins", pieces=PINS), "notion.pins")
    if isinstance(waist_of(drafted), CordPlan):
        yield Asked(say(drafted, "have_bodkin"))
    if strands_of(drafted):
        yield Asked(say(drafted, "have_glue"))
    yield Asked(say(drafted, "have_scissors"))


def needs_pins(drafted: Drafted) -> bool:
    """Whether something is pinned to the waist quarter by quarter."""
    return isinstance(waist_of(drafted), ElasticPlan | BandPlan)


def gauge(drafted: Drafted) -> tuple[Block, ...]:
    """All that is said of the gauge."""
    return (*counted(drafted), *hanging(drafted), *swatching(drafted))


def counted(drafted: Drafted) -> tuple[Block, ...]:
    """The gauge that every number stands on, how sure it is, and what it is not known for."""
    lines = [_main_gauge(drafted), *patterned.gauges(drafted), *_estimated(drafted)]
    return (Heading(say(drafted, "gauge")), *(Paragraph(line) for line in lines))


def hanging(drafted: Drafted) -> tuple[Block, ...]:
    """How the fabric grows in wear."""
    return (Paragraph(_growth(drafted)),)


def swatching(drafted: Drafted) -> tuple[Block, ...]:
    """How to swatch for it, and what to do when the gauge is another."""
    lines = (_swatch(drafted), say(drafted, "gauge_check"))
    return (*(Paragraph(line) for line in lines), *notes_at(drafted, "gauge"))


def _swatch(drafted: Drafted) -> str:
    """How to swatch for this design: with the hook, the way and the side it is worked with."""
    basis, units = drafted.basis, drafted.units
    work = basis.design.work
    main = basis.gauge(work.stitch, "work.stitch")
    turned = work.rounds == "joined and turned"
    return say(
        drafted, "gauge_swatch_turned" if turned else "gauge_swatch_unturned",
        hook=hook_size(drafted, basis.hook), stitch=drafted.short(work.stitch),
        size=say(drafted, f"size_{units}"), state=say(drafted, f"state_{main.state}"),
    )  # fmt: skip


def _main_gauge(drafted: Drafted) -> str:
    basis, units = drafted.basis, drafted.units
    main = basis.gauge(basis.design.work.stitch, "work.stitch")
    span = 101.6 if units == "in" else 100.0
    widest = _widest(drafted)
    return say(
        drafted, "gauge_main" if widest else "gauge_main_plain", stitches=_figure(span / main.width.value),
        rows=_figure(span / main.height.value), stitch=drafted.short(main.stitch),
        span=say(drafted, f"span_{units}"), state=say(drafted, f"state_{main.state}"),
        hook=hook_size(drafted, basis.hook), percent=_figure(within(main.width)),
        girth=show_length(widest.value * within(main.width) / 100, units) if widest else "",
    )  # fmt: skip


def _widest(drafted: Drafted) -> Measured | None:
    """The widest girth or width that the plan states."""
    marks = [(mark.count, mark.garment) for mark in drafted.plan.landmarks]
    if not marks:
        measures = [m for piece in drafted.plan.pieces for m in piece.measures]
        marks = [(m.count, m.got) for m in measures if m.kind in ("girth", "width")]
    return max(marks, key=lambda mark: mark[0])[1] if marks else None


def _estimated(drafted: Drafted) -> Iterator[str]:
    """Gauges that no swatch was worked for, by stitch."""
    main = drafted.short(drafted.basis.design.work.stitch)
    sections: dict[str, list[str]] = {}
    for section, one in drafted.plan.gauges.items():
        if one.estimated:
            sections.setdefault(drafted.short(one.stitch), []).append(section)
    for stitch, names in sections.items():
        told = listed(drafted, names)
        yield say(drafted, "gauge_estimated", stitch=stitch, sections=told, main=main)


def _growth(drafted: Drafted) -> str:
    """What is planned for; without a hang test how to make one."""
    hanging = drafted.fit.hanging
    if hanging.measured:
        return say(drafted, "gauge_growth", percent=_figure(100 * hanging.growth))
    return hanging.sentence


def _figure(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
