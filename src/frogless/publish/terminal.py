"""What the command line prints of a draft: a short summary, told to be read at a glance."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterator, Sequence
from pathlib import Path

from frogless.body.measurements import Measurement
from frogless.fit.flare import describe_fullness
from frogless.fit.model import LandmarkFit
from frogless.plan.model import Landmark, PiecePlan, SectionPlan
from frogless.proof.model import Finding, passing
from frogless.publish.colours import name_of
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.front import edging_name
from frogless.publish.garment import joined, measured
from frogless.publish.messages import say
from frogless.units import as_shown, show_length, show_long, show_mass, show_signed
from frogless.write.rhythm import rhythm_sentence

WIDEST_LABEL = 24
"""Characters of a name that is shown in the margin; a longer one is cut off."""

NOT_OF_THE_GARMENT = frozenset({"hands", "stride"})
"""Cautions of the pattern that the summary does not have: about the work of making, and of the
stride, which the proof warns of."""

DEPTHS = {"hip_girth": "waist_to_hip", "high_hip_girth": "waist_to_high_hip"}
"""How far down a landmark lies, by its girth."""

Entry = tuple[str, str]
"""What stands in the margin, and what is told beside it."""


def summary(
    drafted: Drafted, questions: Sequence[str], written: Sequence[Path], columns: int = 100
) -> str:
    """Counts at the landmarks with ease, sections, yarn with its interval, warnings, files.

    Args:
        columns: characters in a line.
    """
    names = {"body": drafted.basis.body.name, "swatch": drafted.basis.main_swatch.name}
    title = f"{drafted.basis.design.title}, {say(drafted, 'subtitle', **names)}"
    entries = [
        *_pieces(drafted),
        *_yarn(drafted),
        *_proof(drafted, questions),
        *_files(written),
    ]
    table = [*_landmarks(drafted), ""] if drafted.plan.landmarks else []
    lines = [*textwrap.wrap(title, columns), "", *table, *_told(entries, columns)]
    return "\n".join(lines) + "\n"


def _pieces(drafted: Drafted) -> Iterator[Entry]:
    """Sections and edging of a tube; of several pieces what each measures, and the joins."""
    if not drafted.of_pieces:
        yield from (_section(drafted, section) for section in drafted.plan.main.sections)
        yield from _edging(drafted)
        return
    for piece in drafted.plan.pieces:
        yield piece.name, _piece(drafted, piece)
        for section in piece.sections:
            if section.chosen is not None:
                yield _shaped(drafted, piece, section)
    for join in drafted.plan.joins:
        yield "join", f"{join.name}: {joined(drafted, join)}"
    for one in drafted.fit.openings:
        yield "goes on", " ".join(one.reasons)
    if drafted.fit.staying_up:
        yield "stays up", drafted.fit.staying_up


def _piece(drafted: Drafted, piece: PiecePlan) -> str:
    """How many are made, its rows, and what it measures."""
    worked = [row for p in drafted.plan.program.pieces if p.name == piece.name for row in p.rows]
    below = 0 if any(p.name == piece.name and p.bases for p in drafted.plan.program.pieces) else 1
    rows = len(worked) - below or len(piece.counts)
    told = [f"make {piece.number_made}"] if piece.number_made > 1 else []
    told.append(f"{rows} row{'s' * (rows != 1)}")
    return "; ".join([*told, *(measured(drafted, one) for one in piece.measures)])


def _shaped(drafted: Drafted, piece: PiecePlan, section: SectionPlan) -> Entry:
    """A shaped section of one piece of several; how full it is only where it goes round."""
    closed = is_closed(drafted, piece.name)
    name, told = _section(drafted, section, closed=closed)
    if not closed:
        told = told.rpartition("; ")[0].replace("rounds ", "rows ", 1)
    return (name if name.startswith(piece.name) else f"{piece.name}, {name}"), told


def _landmarks(drafted: Drafted) -> Iterator[str]:
    """A table: names to the left, numbers to the right, each column as wide as it has to be."""
    header = (
        "",
        "body",
        drafted.basis.design.garment.kind,
        "ease",
        "stitches",
        "round",
        "depth",
        "",
    )
    pairs = zip(drafted.fit.landmarks, drafted.plan.landmarks, strict=True)
    rows = [header, *(_landmark(drafted, fit, mark) for fit, mark in pairs)]
    widths = [max(map(_cells, column)) for column in zip(*rows, strict=True)]
    for name, *numbers, verdict in rows:
        cells = (_right(number, width) for number, width in zip(numbers, widths[1:], strict=False))
        yield "  ".join((_left(name, widths[0]), *cells, verdict)).rstrip()
    if any(fit.estimated for fit in drafted.fit.landmarks):
        yield "* estimated from a survey, not measured"
    if guessed := _guessed(drafted):
        for source in dict.fromkeys(one.source for one in guessed):
            names = (one.key.replace("_", " ") for one in guessed if one.source == source)
            yield f"* depth {source}: {', '.join(names)}"


def _guessed(drafted: Drafted) -> tuple[Measurement, ...]:
    """The estimated lengths that the depths in the table rest on, each once."""
    found = {one.key: one for mark in drafted.plan.landmarks for one in _rests_on(drafted, mark)}
    return tuple(found.values())


def _rests_on(drafted: Drafted, mark: Landmark) -> tuple[Measurement, ...]:
    """The estimated lengths of the body that a landmark's depth was worked out from."""
    names = [DEPTHS[mark.key]] if mark.key in DEPTHS else []
    if mark.key == "hem" and not drafted.of_pieces:
        told = drafted.basis.because_formula(drafted.basis.design.garment.length, "garment.length")
        names = [step.what for step in told.steps]
    known = (drafted.basis.body.get(name) for name in names)
    return tuple(one for one in known if one is not None and one.estimated)


def _landmark(drafted: Drafted, fit: LandmarkFit, mark: Landmark) -> tuple[str, ...]:
    units = drafted.units
    body = "–" if fit.body is None else show_length(fit.body, units) + "*" * fit.estimated
    ease = "–" if fit.body is None else _ease(drafted, fit.garment, fit.body)
    return (
        _place(drafted, fit),
        body,
        show_length(fit.garment, units),
        ease,
        str(mark.count),
        str(mark.rounds),
        show_length(fit.depth, units) + "*" * bool(_rests_on(drafted, mark)),
        "" if fit.verdict == "ok" else fit.verdict,
    )


def _place(drafted: Drafted, fit: LandmarkFit) -> str:
    if drafted.of_pieces:
        return f"{drafted.phrases.measurement(fit.at)}, {fit.piece}"
    return say(drafted, fit.at)


def _ease(drafted: Drafted, garment: float, body: float) -> str:
    """Garment less body as both are shown, so that the columns subtract."""
    units = drafted.units
    return show_signed(as_shown(garment, units) - as_shown(body, units), units)


def _section(drafted: Drafted, section: SectionPlan, *, closed: bool = True) -> Entry:
    first, last = section.first_round, section.last_round
    rounds = f"round {first}" if first == last else f"rounds {first}–{last}"
    chosen = section.chosen
    if chosen is None:
        return section.name, f"{rounds}: {section.count_after} stitches"
    rhythm = rhythm_sentence(chosen.rhythm, first - 1, drafted.language, closed=closed)
    stray = show_length(abs(chosen.stray), drafted.units)
    return section.name, (
        f"{rounds}: {section.count_before} to {section.count_after} stitches at {chosen.points} "
        f"shaping points {rhythm}; strays {stray} at most; "
        f"{describe_fullness(section.fullness)} ({section.fullness:.2f})"
    )


def _edging(drafted: Drafted) -> Iterator[Entry]:
    plan = drafted.plan.main.edging
    if plan is not None:
        on = f" on {plan.base_count} stitches"
        # A repeat of one stitch is no repeat to a maker.
        repeats = f", {plan.repeats} repeat{'s' * (plan.repeats != 1)}" * (plan.multiple > 1)
        yield "edging", f"{edging_name(drafted)}{repeats}{on}"


def _yarn(drafted: Drafted) -> Iterator[Entry]:
    units = drafted.units
    for need in drafted.tally.yarn:
        length, low, high = (
            show_long(long, units)
            for long in (need.length.value, need.length_low, need.length_high)
        )
        many = f"{need.balls} ball{'s' * (need.balls != 1)}"
        balls = f"; {many}, {need.margin_percent:g} % to spare" if need.balls else ""
        label = f"yarn {need.colour}".strip()
        named = f"{name}: " if (name := name_of(drafted, need.colour)) else ""
        told = f"{length} ({low} to {high}), {show_mass(need.mass.value, units)}{balls}"
        yield label, named + told


def _proof(drafted: Drafted, questions: Sequence[str]) -> Iterator[Entry]:
    """How many checks pass, the cautions that concern the garment, and every warning once."""
    warned = [f for f in drafted.findings if f.verdict == "warn"]
    yield "proof", passing(drafted.findings)
    for caution in drafted.fit.cautions:
        if caution.key not in NOT_OF_THE_GARMENT:
            yield "caution", caution.sentence
    told = [*questions, *(" ".join((*f.faults, *_ways(drafted, f))) for f in warned)]
    told += [remark.sentence for remark in drafted.plan.remarks if remark.serious]
    yield from (("warning", text) for text in dict.fromkeys(told))


def _ways(drafted: Drafted, found: Finding) -> tuple[str, ...]:
    """What would help, after the warning that it may not go on."""
    if found.name != "goes_on":
        return ()
    tried = drafted.fit.openings or (drafted.fit.going_on,)
    return tuple(dict.fromkeys(way for one in tried for way in one.ways_out))


def _files(written: Sequence[Path]) -> Iterator[Entry]:
    if written:
        names = ", ".join(path.name for path in written)
        yield "written", f"{names} in {written[0].parent}"


def _told(entries: Sequence[Entry], columns: int) -> Iterator[str]:
    """Each text beside its label, wrapped within its own column."""
    margin = max(_cells(_short(label)) for label, _ in entries)
    for label, text in entries:
        lines = textwrap.wrap(text, columns - margin - 2) or [""]
        yield f"{_left(_short(label), margin)}  {lines[0]}"
        yield from (" " * (margin + 2) + line for line in lines[1:])


def _short(name: str) -> str:
    return name if len(name) <= WIDEST_LABEL else name[: WIDEST_LABEL - 1] + "…"


def _left(text: str, width: int) -> str:
    return text + " " * (width - _cells(text))


def _right(text: str, width: int) -> str:
    return " " * (width - _cells(text)) + text


def _cells(text: str) -> int:
    """Columns that a text takes: two for a wide letter, none for a mark set over another."""
    return sum(
        0 if unicodedata.combining(letter) else 1 + (unicodedata.east_asian_width(letter) in "WF")
        for letter in text
    )
