"""The plan file: everything that was decided, as data, for programs (schema/plan.schema.json)."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from typing import Any

from frogless.because import Because
from frogless.fit.flare import describe_fullness
from frogless.fit.model import GoingOn, LandmarkFit
from frogless.plan.model import (
    Evidence,
    JoinPlan,
    Landmark,
    Measure,
    PatternPlan,
    PiecePlan,
    SectionPlan,
)
from frogless.publish.colours import name_of
from frogless.publish.drafted import Drafted
from frogless.rows.colours import begun_in
from frogless.rows.nodes import Piece
from frogless.tally.model import Notion, YarnNeed
from frogless.write.ground import edge_ground
from frogless.write.pattern import say_line, write_rows
from frogless.write.words import Words

Json = dict[str, Any]


def planfile(drafted: Drafted) -> Json:
    """The plan as JSON data, one size. Lengths in mm, yarn in metres, times in seconds."""
    return {
        "format": "frogless-plan/1",
        "title": drafted.basis.design.title,
        "terms": drafted.dialect,
        "units": drafted.units,
        "language": drafted.language,
        "hand": drafted.hand,
        "sizes": [_size(drafted)],
    }


def dump(plan: Json) -> str:
    """The plan file as text."""
    return json.dumps(plan, ensure_ascii=False, indent=1) + "\n"


def _size(drafted: Drafted) -> Json:
    body, plan, tally = drafted.basis.body, drafted.plan, drafted.tally
    measured = body.measurements
    return {
        "size": body.name,
        "body": {key: _mm(m.value.value) for key, m in measured.items()},
        "estimated": [key for key, m in measured.items() if m.estimated],
        "pieces": [_piece(drafted, piece) for piece in plan.program.pieces],
        **_joins(plan.joins),
        "fit": [
            _fit(fit, mark, named=drafted.of_pieces)
            for fit, mark in zip(drafted.fit.landmarks, plan.landmarks, strict=True)
        ],
        "going_on": _going_on(drafted.fit.going_on),
        **_openings(drafted.fit.openings),
        "materials": {
            "yarn": [_yarn(drafted, need) for need in tally.yarn],
            "notions": [_notion(notion) for notion in tally.notions],
            "stitches": tally.stitches,
            "time_low_s": round(tally.time_low),
            "time_high_s": round(tally.time_high),
        },
        "remarks": [
            {"name": r.name, "sentence": r.sentence, "serious": r.serious} for r in plan.remarks
        ],
        "cautions": [
            {"name": c.key, "sentence": c.sentence, "source": c.source}
            for c in drafted.fit.cautions
        ],
        "checks": [
            {"name": f.name, "verdict": f.verdict, "looked_at": f.looked_at, "detail": f.detail}
            for f in drafted.findings
        ],
    }


def _joins(joins: Sequence[JoinPlan]) -> Json:
    """The joins under their key; nothing when there are none."""
    if not joins:
        return {}
    data = [
        {
            "name": join.name,
            "first": join.first,
            "second": join.second,
            "first_mm": _mm(join.first_length.value),
            "second_mm": _mm(join.second_length.value),
            "limit_mm": _mm(join.limit),
            "because": because_data(join.because),
        }
        for join in joins
    ]
    return {"joins": data}


def _openings(openings: Sequence[GoingOn]) -> Json:
    if not openings:
        return {}
    told = [{"name": one.name, "piece": one.piece, **_going_on(one)} for one in openings]
    return {"openings": told}


def _piece(drafted: Drafted, piece: Piece) -> Json:
    plan = drafted.plan.piece(piece.name)
    return {
        "name": piece.name,
        **({"colour": piece.colour} if piece.colour else {}),
        **(_made(plan) if plan and drafted.of_pieces else {}),
        "sections": [_section(s) for s in plan.sections] if plan else [],
        "rows": list(_rows(drafted, piece, plan)),
    }


def _made(plan: PiecePlan) -> Json:
    """How many of it, and its finished measurements."""
    return {
        "construction": plan.construction,
        "number_made": plan.number_made,
        "measures": [_measure(measure) for measure in plan.measures],
    }


def _measure(measure: Measure) -> Json:
    return {
        "name": measure.name,
        "kind": measure.kind,
        "got_mm": _mm(measure.got.value),
        "wanted_mm": None if measure.wanted is None else _mm(measure.wanted),
        "count": measure.count,
        "because": because_data(measure.because),
    }


def _section(section: SectionPlan) -> Json:
    data: Json = {
        "name": section.name,
        "stitch": section.stitch,
        "first_row": section.first_round,
        "last_row": section.last_round,
        "count_before": section.count_before,
        "count_after": section.count_after,
        "shape": describe_fullness(section.fullness),
        "fullness": round(section.fullness, 4),
    }
    if section.pattern is not None:
        data["pattern"] = _pattern(section.pattern)
    if section.because.steps:
        data["because"] = because_data(section.because)
    if (chosen := section.chosen) is not None:
        sign = 1 if section.count_after > section.count_before else -1
        data |= {
            "points": chosen.points,
            "add": sign * chosen.add,
            "shaping_rows": [section.first_round - 1 + r for r in chosen.rhythm.rounds],
            "stray_mm": _mm(chosen.stray),
            "stray_depth_mm": _mm(chosen.stray_at),
        }
    if section.evidence is not None:
        data["evidence"] = _evidence(section.evidence, section.first_round - 1)
    return data


def _pattern(plan: PatternPlan) -> Json:
    """The stitch pattern of a section, and its stretches between rows that change the count."""
    bands = [
        {
            "first_row": band.first_round,
            "last_row": band.last_round,
            "base": band.base,
            "repeats": band.repeats,
            "column": band.column,
        }
        for band in plan.bands
    ]
    return {
        "key": plan.key,
        "parameters": dict(plan.parameters),
        "multiple": plan.multiple,
        "offset": plan.offset,
        "row_repeat": plan.row_repeat,
        "shape_by": plan.shape_by,
        "columns": plan.columns,
        "base_rows": list(plan.based),
        "bands": bands,
    }


def _evidence(evidence: Evidence, above: int) -> Json:
    """How good a rhythm is; rows are counted through the piece, of which `above` lie above it."""
    return {
        "clauses": evidence.clauses,
        "most_clauses": evidence.most_clauses,
        "stray_mm": _mm(evidence.stray),
        "least_mm": _mm(evidence.least),
        "bound_mm": _mm(evidence.bound),
        "indifference_mm": _mm(evidence.indifference),
        "binding": list(evidence.binding),
        "runners_up": [
            {
                "clauses": other.clauses,
                "stray_mm": _mm(other.stray),
                "stray_depth_mm": _mm(other.stray_at),
                "cost_mm": _mm(other.cost),
                "shaping_rows": [above + row for row in other.rhythm.rounds],
            }
            for other in evidence.runners_up
        ],
    }


def _rows(drafted: Drafted, piece: Piece, plan: PiecePlan | None) -> Iterable[Json]:
    words = Words(drafted.stitches, drafted.dialect, drafted.phrases)
    base = edge_ground(drafted.plan.program, piece, words)
    lines = write_rows(piece, drafted.stitches, drafted.dialect, drafted.language, base)
    before = None
    depths = plan.depths if plan and len(plan.depths) == len(piece.rows) else None
    colours = begun_in(piece)
    for i, (row, line) in enumerate(zip(piece.rows, lines, strict=True)):
        change = 0 if before is None else row.count - before
        data: Json = {
            "number": row.number,
            "section": row.section,
            "side": row.side,
            **({"colour": colours[i]} if colours[i] else {}),
            "count": row.count,
            "added": max(change, 0),
            "removed": max(-change, 0),
            "text": say_line(line, words),
        }
        gauge = drafted.plan.gauges.get(row.section)
        if gauge is not None:
            wide = row.count * gauge.width.value
            if plan is not None and len(plan.girths) == len(piece.rows):
                wide = plan.girths[i]
            data["girth_mm" if piece.closed else "width_mm"] = _mm(wide)
        if depths:
            data["depth_mm"] = _mm(depths[i])
        before = row.count
        yield data


def _fit(fit: LandmarkFit, mark: Landmark, *, named: bool) -> Json:
    return {
        "at": fit.at,
        **({"piece": fit.piece} if named else {}),
        "depth_mm": _mm(fit.depth),
        "body_mm": None if fit.body is None else _mm(fit.body),
        "garment_mm": _mm(fit.garment),
        "low_mm": _mm(fit.low),
        "high_mm": _mm(fit.high),
        "wanted_mm": _mm(fit.wanted),
        "ease_mm": None if fit.ease is None else _mm(fit.ease),
        "estimated": fit.estimated,
        "verdict": fit.verdict,
        "because": because_data(mark.because),
    }


def _going_on(going: GoingOn) -> Json:
    return {
        "verdict": going.verdict,
        "opening_mm": _mm(going.opening),
        "stretch": round(going.stretch, 4),
        "measured": going.measured,
        "widest_at": going.widest_at,
        "widest_mm": _mm(going.widest),
        "short_mm": _mm(going.short),
        "needed_stretch": round(going.needed_stretch, 4),
        "over": going.over,
        "ways_out": list(going.ways_out),
        "reasons": list(going.reasons),
    }


def _yarn(drafted: Drafted, need: YarnNeed) -> Json:
    low, high = need.mass.interval()
    return {
        "name": need.name,
        **(_colour(drafted, need) if need.colour else {}),
        "metres": round(need.length.value / 1000, 1),
        "metres_low": round(need.length_low / 1000, 1),
        "metres_high": round(need.length_high / 1000, 1),
        "grams": round(need.mass.value, 1),
        "grams_low": round(max(low, 0.0), 1),
        "grams_high": round(high, 1),
        "balls": need.balls,
        "margin_percent": need.margin_percent,
        "calibrated": need.calibrated,
        "parts": {name: round(mass, 1) for name, mass in need.by_part},
        "because": because_data(need.because),
    }


def _colour(drafted: Drafted, need: YarnNeed) -> Json:
    """Its letter, what people call it, and the ends that it leaves."""
    named = name_of(drafted, need.colour)
    return {"colour": need.colour, "colour_name": named or None, "ends": need.ends}


def _notion(notion: Notion) -> Json:
    return {
        "name": notion.key,
        "pieces": notion.pieces,
        "length_mm": None if notion.length is None else _mm(notion.length),
        "detail": notion.detail,
    }


def because_data(because: Because) -> list[Json]:
    """The steps of a because as data."""
    return [
        {
            "what": step.what,
            "value": round(step.value, 4),
            "unit": step.unit,
            "note": step.note,
            "estimated": step.estimated,
        }
        for step in because.steps
    ]


def _mm(value: float) -> float:
    return round(value, 2)
