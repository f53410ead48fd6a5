"""The front of a pattern: sizes at a glance, cautions, materials, gauge, terms, notes."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.model import LandmarkFit
from frogless.publish.blocks import Block, Bullets, Heading, Note, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.rows.walk import nodes, stitch_keys
from frogless.rows.nodes import Chain, Together
from frogless.stitches.load import explain
from frogless.tally.model import Notion, YarnNeed
from frogless.units import show_fine, show_length, show_long, show_mass


# From this ease on a waist with elastic, cord or band is gathered visibly (own choice: the ease of a
# fastened waist, 2.5 cm, and as much again).
GATHERED = 50.0


def glance(drafted: Drafted) -> tuple[Block, ...]:
    """Girths by landmark, and the few figures a maker asks first."""
    header = tuple(
        say(drafted, key) for key in ("at", "body", "garment", "ease", "stitches", "round", "depth")
    )
    rows = tuple(_landmark_row(drafted, fit) for fit in drafted.fit.landmarks)
    return (
        Heading(say(drafted, "glance")),
        Table(say(drafted, "glance_caption"), header, rows),
        Bullets(tuple(_figures(drafted))),
    )


def _landmark_row(drafted: Drafted, fit: LandmarkFit) -> tuple[str, ...]:
    units = drafted.units
    mark = next(m for m in drafted.plan.landmarks if m.key == fit.at)
    body = say(drafted, "none") if fit.body is None else show_length(fit.body, units)
    if fit.estimated:
        body = say(drafted, "estimated_mark", value=body)
    ease = say(drafted, "none") if fit.ease is None else signed(drafted, fit.ease)
    if fit.at == "waist_girth" and drafted.plan.waist and (fit.ease or 0) > GATHERED:
        ease = say(drafted, "ease_gathered", value=ease)
    if fit.verdict != "ok":
        ease = say(drafted, f"verdict_{fit.verdict}", value=ease)
    return (
        say(drafted, fit.at), body, show_length(fit.garment, units), ease, str(mark.count),
        str(mark.rounds), show_length(fit.depth, units),
    )  # fmt: skip


def signed(drafted: Drafted, length: float) -> str:
    """A length with its sign, "+4 cm" or "−1/2 in"."""
    shown = show_length(abs(length), drafted.units)
    if shown.startswith("0 "):
        return shown
    return ("+" if length > 0 else "−") + shown


def _figures(drafted: Drafted) -> Iterator[str]:
    plan, units = drafted.plan, drafted.units
    hem = plan.landmarks[-1]
    yield say(drafted, "glance_rounds", rounds=hem.rounds, length=show_length(hem.depth, units))
    if plan.edging:
        key = "glance_edging" if plan.edging.multiple > 1 else "glance_edging_one"
        yield say(
            drafted, key, name=edging_name(drafted), repeats=plan.edging.repeats,
            count=plan.edging.base_count,
        )  # fmt: skip
        finished = plan.depths[plan.edging.last_round]
        yield say(drafted, "glance_finished", length=show_length(finished, units))
    yield say(drafted, "glance_goes_on", sentence=" ".join(drafted.fit.going_on.reasons))
    yield say(drafted, "glance_stays_up", sentence=drafted.fit.staying_up)
    low, high = (max(round(t / 3600), 1) for t in (drafted.tally.time_low, drafted.tally.time_high))
    yield say(drafted, "glance_time", low=low, high=high)


def edging_name(drafted: Drafted) -> str:
    """What the edging is called in the dialect."""
    plan = drafted.plan.edging
    return "" if plan is None else dict(plan.names)[drafted.dialect]


def cautions(drafted: Drafted) -> tuple[Block, ...]:
    """What could hurt, first."""
    found = drafted.fit.cautions
    if not found:
        return ()
    notes = (
        Note("caution", f"{c.sentence} ({c.source})" if c.source else c.sentence) for c in found
    )
    return (Heading(say(drafted, "cautions")), *notes)


def materials(drafted: Drafted) -> tuple[Block, ...]:
    """Yarn, hooks, notions."""
    yarns = [text for need in drafted.tally.yarn for text in _yarn(drafted, need)]
    notions = [_notion(drafted, n) for n in drafted.tally.notions]
    return (Heading(say(drafted, "materials")), Bullets((*yarns, *notions)))


def _yarn(drafted: Drafted, need: YarnNeed) -> Iterator[str]:
    units, yarn = drafted.units, drafted.basis.main_swatch.yarn
    text = say(
        drafted, "yarn", name=need.name, length=show_long(need.length.value, units),
        low=show_long(need.length_low, units), high=show_long(need.length_high, units),
        mass=show_mass(need.mass.value, units),
    )  # fmt: skip
    if yarn.category is not None:
        text = say(drafted, "yarn_category", yarn=text, category=yarn.category, fibre=yarn.fibre)
    if need.balls and yarn.ball_mass:
        ball = show_mass(yarn.ball_mass, units)
        if yarn.ball_length:
            ball += f" / {show_long(yarn.ball_length, units)}"
        text = say(
            drafted, "yarn_balls", yarn=text, margin=f"{need.margin_percent:g}", balls=need.balls,
            ball=ball,
        )  # fmt: skip
    yield text
    parts = ", ".join(f"{name} {show_mass(mass, units)}" for name, mass in need.by_part)
    yield say(drafted, "yarn_parts", parts=parts)
    if not need.calibrated:
        yield say(drafted, "yarn_uncalibrated")


def _notion(drafted: Drafted, notion: Notion) -> str:
    length = "" if notion.length is None else show_length(notion.length, drafted.units)
    return say(
        drafted, f"notion_{notion.key}", pieces=notion.pieces, length=length, detail=notion.detail
    )


def gauge(drafted: Drafted) -> tuple[Block, ...]:
    """The gauge that every number stands on, how sure it is, and what it is not known for."""
    basis, units = drafted.basis, drafted.units
    main = basis.gauge(basis.design.work.stitch, "work.stitch")
    span = 101.6 if units == "in" else 100.0
    widest = max(drafted.plan.landmarks, key=lambda m: m.count)
    lines = [
        say(
            drafted, "gauge_main", stitches=_figure(span / main.width.value),
            rows=_figure(span / main.height.value), rounds=_rounds(drafted), stitch=drafted.short(main.stitch),
            span=say(drafted, f"span_{units}"), state=say(drafted, f"state_{main.state}"),
            hook=show_fine(basis.hook, units), percent=_figure(100 * main.width.relative),
            girth=show_length(widest.garment.uncertainty, units),
        )
    ]  # fmt: skip
    for section, one in drafted.plan.gauges.items():
        if one.estimated:
            lines.append(
                say(
                    drafted, "gauge_estimated", stitch=drafted.short(one.stitch), section=section,
                    main=drafted.short(main.stitch),
                )
            )  # fmt: skip
    if basis.growth is not None:
        lines.append(say(drafted, "gauge_growth", percent=_figure(100 * basis.growth.value)))
    lines.append(say(drafted, "gauge_check"))
    return (Heading(say(drafted, "gauge")), *(Paragraph(line) for line in lines))


def _rounds(drafted: Drafted) -> str:
    return "rounds"


def _figure(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def abbreviations(drafted: Drafted) -> tuple[Block, ...]:
    """Every abbreviation that the rows use, and what it stands for."""
    used = used_stitches(drafted)
    items = {
        drafted.short(key): drafted.name(key)
        for key in used
        if drafted.stitches[key].kind in ("stitch", "foundation")
    }
    items |= {word: say(drafted, f"abbr_{word}") for word in ("st", "sts", "rnd", "RS", "WS")}
    bodies = [
        node for p in drafted.plan.program.pieces for r in p.rows for node, _ in nodes(r.body)
    ]
    if any(isinstance(node, Chain) and not node.each for node in bodies):
        items["sp"] = say(drafted, "abbr_sp")
    if any(isinstance(node, Together) for node in bodies):
        items["tog"] = say(drafted, "abbr_tog")
    ordered = tuple(sorted(items.items(), key=lambda item: item[0].lower()))
    return (Heading(say(drafted, "abbreviations")), Terms(ordered))


def used_stitches(drafted: Drafted) -> list[str]:
    """Keys of every stitch that rows, joins, chains and seams use."""
    program = drafted.plan.program
    keys = {key for p in program.pieces for r in p.rows for key in stitch_keys(r.body)}
    rows = [r for p in program.pieces for r in p.rows]
    if any(r.start.chains for r in rows):
        keys.add("chain")
    if any(r.end.join != "none" for r in rows):
        keys.add("slip_stitch")
    return sorted(keys | {seam.stitch for seam in program.seams})


def special_stitches(drafted: Drafted) -> tuple[Block, ...]:
    """How the stitches are worked that not everybody knows."""
    items = tuple(
        (drafted.name(key), explain(drafted.stitches[key], drafted.dialect))
        for key in used_stitches(drafted)
        if drafted.stitches[key].how
    )
    return (Heading(say(drafted, "special")), Terms(items)) if items else ()


def before(drafted: Drafted) -> tuple[Block, ...]:
    """How the skirt is built, and how to read the rounds."""
    work = drafted.basis.design.work
    lines = [
        say(drafted, f"way_{work.rounds}", join=say(drafted, f"join_{work.join_at}")),
        *_turning_chain(drafted),
        say(drafted, "brackets"),
        say(drafted, "lengths"),
    ]
    if any(row.marks for piece in drafted.plan.program.pieces for row in piece.rows):
        turned = work.rounds == "joined and turned"
        lines.append(
            drafted.phrases.say("markers_general" if turned else "markers_general_unturned")
        )
    remarks = [
        Note("hint", r.sentence[0].upper() + r.sentence[1:] + ".") for r in drafted.plan.remarks
    ]
    notes = (*lines, *drafted.basis.design.notes)
    return (Heading(say(drafted, "before")), Bullets(notes), *remarks)


def _turning_chain(drafted: Drafted) -> Iterator[str]:
    work = drafted.basis.design.work
    if work.rounds == "spiral" or not work.turning_chain:
        return
    key = "chain_does_not_count_top" if work.join_into == "top of chain" else "chain_does_not_count"
    if work.turning_chain_counts:
        key = "chain_counts"
    yield say(drafted, key, n=work.turning_chain, stitch=drafted.short(work.stitch))
