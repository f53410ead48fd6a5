"""The pipeline, once: the files of a body, a swatch and a design become a proven pattern."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from frogless import files, follow
from frogless.body.estimate import complete
from frogless.body.load import load_body, parse_body
from frogless.body.measurements import Body, known_measurements
from frogless.body.plausible import question
from frogless.design import formulas
from frogless.design.document import Design, PiecesDesign, TubeDesign, named_formulas, tubes
from frogless.design.load import parse_design, read_design
from frogless.draw.mirror import Hand
from frogless.errors import Impossible, Place
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.fit.fit import fit, fit_garment
from frogless.fit.model import Fit, GoingOn
from frogless.own_patterns import library_of
from frogless.plan import basis as basis_
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.plan.model import Plan
from frogless.plan.sections import LANDMARKS
from frogless.proof.model import Subject
from frogless.proof.prove import prove, require
from frogless.publish import terminal
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import drawings, pattern
from frogless.publish.pdf import Paper, pdf
from frogless.publish.plain import plain
from frogless.publish.planfile import dump, planfile
from frogless.publish.webpage import webpage
from frogless.read.grammar import make_ready
from frogless.read.vocabulary import every_word
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.swatch import Swatch, advice, load_swatch, parse_swatch
from frogless.tally.model import Tally
from frogless.tally.tally import tally
from frogless.units import Units
from frogless.write.pattern import write_program

FILES = ("pattern.pdf", "pattern.html", "pattern.txt", "plan.json", "schematic.svg")
"""What a published pattern consists of; the last where there is something to draw."""

DIALECTS: tuple[Dialect, ...] = ("us", "uk")

KEPT = 16
"""Drafts of texts that are remembered: an edit that is taken back, or other terms, cost nothing."""


@dataclass(frozen=True, slots=True)
class Request:
    """What is to be drafted from which files, and how it is to be shown."""

    design: Path
    body: Path
    swatches: tuple[Path, ...]
    terms: Dialect = "us"
    units: Units = "cm"
    hand: Hand = "right"


@dataclass(frozen=True, slots=True)
class Texts:
    """What is to be drafted, as the texts of its files.

    Their faults are told of "design.toml", "body.toml" and "swatch.toml"; of further swatches, of
    "swatch-2.toml" and so on.
    """

    design: str
    body: str
    swatches: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Worked:
    """A draft whose numbers stand and whose proof has not run; nothing is published from it."""

    basis: Basis
    plan: Plan
    fabric: Fabric
    tally: Tally
    fit: Fit
    dialect: Dialect
    units: Units


@dataclass(frozen=True, slots=True)
class Draft:
    """A proven draft, and what the files themselves should be asked about."""

    drafted: Drafted
    questions: tuple[str, ...]


def draft(request: Request) -> Draft:
    """Load, plan, expand, tally, fit and prove. Nothing is published that does not pass its proof.

    Raises:
        InputError: a file has to be mended.
        Impossible: the design asks for what this body and gauge cannot give.
        ProofFailed: a check of the pattern failed.
    """
    basis, questions = load(request)
    drafted = develop(basis, request.terms, request.units)
    return Draft(replace(drafted, hand=request.hand), questions)


def draft_texts(
    texts: Texts, terms: Dialect = "us", units: Units = "cm", hand: Hand = "right"
) -> Draft:
    """As `draft`, of texts that are not in files, or not yet.

    Raises:
        InputError, Impossible, ProofFailed: as `draft`.
    """
    _, questions = load_texts(texts, units)
    return Draft(replace(_proven(texts, units), dialect=terms, hand=hand), questions)


def work_out_texts(
    texts: Texts, terms: Dialect = "us", units: Units = "cm"
) -> tuple[Worked, tuple[str, ...]]:
    """As `work_out`, of texts, and questions about them; `draft_texts` then goes on from there.

    Raises:
        InputError, Impossible: as `work_out`.
    """
    _, questions = load_texts(texts, units)
    return replace(_worked(texts, units), dialect=terms), questions


@lru_cache(maxsize=KEPT)
def _worked(texts: Texts, units: Units) -> Worked:
    """What is worked out of texts: no number of it depends on the terms."""
    basis, _ = load_texts(texts, units)
    return work_out(basis, units=units)


@lru_cache(maxsize=KEPT)
def _proven(texts: Texts, units: Units) -> Drafted:
    """The same, proven, which is done in all terms at once."""
    return prove_worked(_worked(texts, units))


def get_ready() -> None:
    """Makes what drafts of one process share, so that none of them waits for it; takes seconds."""
    for dialect in DIALECTS:
        make_ready(every_word(dialect).terminals)


def develop(basis: Basis, terms: Dialect = "us", units: Units = "cm") -> Drafted:
    """Everything after the files: plan, fabric, tally, fit, proof.

    Raises:
        InputError, Impossible, ProofFailed: as `draft`.
    """
    return prove_worked(work_out(basis, terms, units))


def work_out(basis: Basis, terms: Dialect = "us", units: Units = "cm") -> Worked:
    """What can be shown while the proof still runs: plan, fabric, tally, fit.

    Raises:
        InputError: the design has to be mended.
        Impossible: the design asks for what this body and gauge cannot give.
    """
    return _work_through(basis, plan(basis), terms, units)


def carry_through(basis: Basis, made: Plan, terms: Dialect = "us", units: Units = "cm") -> Drafted:
    """Everything after the plan: fabric, tally, fit, proof.

    Raises:
        Impossible: it does not go on.
        ProofFailed: a check of the pattern failed.
    """
    return prove_worked(_work_through(basis, made, terms, units))


def _work_through(basis: Basis, made: Plan, terms: Dialect, units: Units) -> Worked:
    fabric = expand(made.program, basis.stitches)
    count = tally(
        fabric, made, basis.main_swatch, basis.stitches, units=units, others=basis.swatches
    )
    sits = _fit(basis, made, sum(need.mass.value for need in count.yarn), units)
    if sits.going_on.verdict == "does not pass":
        raise _does_not_go_on(basis, made, sits.going_on)
    return Worked(basis, made, fabric, count, sits, terms, units)


def prove_worked(worked: Worked) -> Drafted:
    """The same, written in every dialect, read back and proven: what may be published.

    Raises:
        ProofFailed: a check of the pattern failed.
    """
    basis, program = worked.basis, worked.plan.program
    texts = {d: write_program(program, basis.stitches, d) for d in DIALECTS}
    bought = tuple(need.colour for need in worked.tally.yarn)
    findings = prove(
        Subject(worked.plan, program, worked.fabric, worked.fit, basis.stitches, texts, bought)
    )
    require(findings)
    return Drafted(
        basis,
        worked.plan,
        worked.fabric,
        worked.tally,
        worked.fit,
        findings,
        worked.dialect,
        worked.units,
    )


def _fit(basis: Basis, made: Plan, grams: float, units: Units) -> Fit:
    design, swatch = basis.design, basis.main_swatch
    stitch, for_children = design.work.stitch, design.garment.for_children
    if isinstance(design, TubeDesign):
        return fit(
            made,
            basis.body,
            swatch,
            stitch=stitch,
            grams=grams,
            for_children=for_children,
            units=units,
        )
    return fit_garment(
        made,
        basis.body,
        swatch,
        kind=design.garment.kind,
        stitch=stitch,
        grams=grams,
        for_children=for_children,
        units=units,
    )


def _does_not_go_on(basis: Basis, made: Plan, going: GoingOn) -> Impossible:
    return Impossible(
        "it does not go on: " + " ".join(going.reasons),
        basis.place(_narrowest(basis, made, going)),
        short_stitches=0,
        short=going.short,
        ways_out=going.ways_out,
    )


def _narrowest(basis: Basis, made: Plan, going: GoingOn) -> str:
    """The key of what ends at the narrowest round: the start, or a section that narrows to it.

    Of a garment of several pieces the piece that the opening belongs to.
    """
    if isinstance(basis.design, PiecesDesign):
        names = [choice.name for choice in basis.design.piece]
        piece = max((n for n in names if going.piece.startswith(n)), key=len, default=names[0])
        return f"piece.{names.index(piece) + 1}"
    ends = [(f"section.{i}", s.girth_after.value) for i, s in enumerate(made.sections, 1)]
    girths = [("start.girth", made.sections[0].girth_before.value), *ends]
    return next((key for key, girth in girths if girth <= going.opening + 0.05), "start.girth")


@dataclass(frozen=True, slots=True)
class Ready:
    """A design and swatches, read and checked, waiting for a body."""

    design: Design
    swatches: tuple[Swatch, ...]
    where: formulas.Where


def read(design: Path, swatches: tuple[Path, ...]) -> Ready:
    """Design and swatches of these files.

    Raises:
        InputError: a file has to be mended.
    """
    return _ready(read_design(design), tuple(load_swatch(path) for path in swatches))


def read_texts(design: str, swatches: tuple[str, ...]) -> Ready:
    """As `read`, of their texts.

    Raises:
        InputError: a text has to be mended.
    """
    names = ("swatch.toml", *(f"swatch-{n}.toml" for n in range(2, len(swatches) + 1)))
    return _ready(parse_design(design, "design.toml"), tuple(map(parse_swatch, swatches, names)))


def _ready(design: files.Document[Design], swatches: tuple[Swatch, ...]) -> Ready:
    return Ready(design.checked, swatches, _where(design))


def load(request: Request) -> tuple[Basis, tuple[str, ...]]:
    """Design, body and swatches, read, checked and brought together; and questions about them.

    Raises:
        InputError: a file has to be mended.
    """
    ready = read(request.design, request.swatches)
    return _together(ready, load_body(request.body), request.units)


@lru_cache(maxsize=KEPT)
def load_texts(texts: Texts, units: Units = "cm") -> tuple[Basis, tuple[str, ...]]:
    """As `load`, of texts.

    Raises:
        InputError: a text has to be mended.
    """
    ready = read_texts(texts.design, texts.swatches)
    return _together(ready, parse_body(texts.body, "body.toml"), units)


def _together(ready: Ready, body: Body, units: Units) -> tuple[Basis, tuple[str, ...]]:
    questions = (
        *question(body),
        *(text for swatch in ready.swatches for text in advice(swatch)),
    )
    return basis_for(ready, body, units), questions


def basis_for(ready: Ready, body: Body, units: Units = "cm") -> Basis:
    """What the planner stands on, with what the body was not measured for estimated.

    Raises:
        InputError: a measurement is missing, or the design has to be mended.
    """
    asked_for = needed(ready.design, ready.where)
    whole = complete(body, asked_for, optional=wished(ready.design, asked_for))
    return basis_.build(
        ready.design,
        whole,
        ready.swatches,
        dictionary(),
        known_measurements(),
        ready.where,
        units,
        library_of(ready.design, ready.where),
    )


def develop_for(ready: Ready, body: Body) -> Drafted:
    """A design that was read, drafted and proven for a body.

    Raises:
        InputError, Impossible, ProofFailed: as `draft`.
    """
    return develop(basis_for(ready, body))


def needed(design: Design, where: formulas.Where) -> tuple[str, ...]:
    """Measurements that a design cannot do without: those in its formulas and at its landmarks."""
    known = known_measurements()
    keys = []
    if isinstance(design, TubeDesign):
        keys = ["waist_girth", "hip_girth"]
    for tube in tubes(design):
        # A finish at the waist is made to the waist, though no formula may name it.
        keys.extend(["waist_girth"] if tube.waist is not None else [])
        for section in tube.section:
            keys.extend(LANDMARKS.get(str(section.to), ()))
    for key, text in named_formulas(design):
        keys.extend(n for n in formulas.names_in(text, where(key)) if n in known)
    return tuple(dict.fromkeys(keys))


PASSES: Mapping[str, tuple[str, ...]] = {
    "top": ("head_girth", "shoulder_girth", "hand_girth"),
    "dress": ("head_girth", "shoulder_girth", "hand_girth"),
    "cardigan": ("hand_girth",),
    "hat": ("head_girth",),
}
"""Girths that have to pass the openings of a garment of several pieces, by its kind."""


def wished(design: Design, needed: tuple[str, ...]) -> tuple[str, ...]:
    """Measurements that the fit is judged by and that are estimated where they can be."""
    if isinstance(design, TubeDesign):
        return ()
    return tuple(key for key in PASSES.get(design.garment.kind, ()) if key not in needed)


def _where(document: files.Document[Design]) -> formulas.Where:
    """Places of keys such as "section.2.girth", counted from 1 as people do."""

    def where(key: str) -> Place:
        return document.place(tuple(int(p) - 1 if p.isdigit() else p for p in key.split(".")))

    return where


def outputs(drafted: Drafted, paper: Paper = "a4") -> dict[str, bytes]:
    """Every file of a published pattern, by name."""
    document = pattern(drafted)
    drawn = dict(document.drawings)
    flat = {"schematic.svg": drawn["schematic"].encode()} if "schematic" in drawn else {}
    return {
        "pattern.pdf": pdf(document, paper),
        "pattern.html": webpage(document).encode(),
        "pattern.txt": plain(document).encode(),
        "plan.json": dump(planfile(drafted)).encode(),
        **flat,
    }


def file_names(drafted: Drafted) -> tuple[str, ...]:
    """The files of its pattern: all, or all but the schematic where no piece has an outline."""
    return FILES if drawings(drafted) else FILES[:-1]


def publish(drafted: Drafted, folder: Path, paper: Paper = "a4") -> Sequence[Path]:
    """Writes every file into a folder, all of them or none.

    Raises:
        InputError: the folder cannot be written to.
    """
    return files.write_all(folder, outputs(drafted, paper))


def plan_text(drafted: Drafted) -> str:
    """The plan file alone, as text."""
    return dump(planfile(drafted))


def terms_note(sentence: str, terms: Dialect) -> str:
    """What the stitches that a sentence names are called in other terms; "" when it names none.

    Files and refusals name stitches in US terms, and the same word is another stitch in UK terms.
    """
    entries = {
        stitch.terms["us"].name: stitch.terms[terms].name for stitch in dictionary().values()
    }
    longest_first = sorted(entries, key=len, reverse=True)
    spaced = sentence.replace("_", " ")
    found = re.findall(rf"\b({'|'.join(map(re.escape, longest_first))})\b", spaced)
    others = [
        f"{name} is {terms.upper()} {entries[name]}"
        for name in dict.fromkeys(found)
        if entries[name] != name
    ]
    if not others:
        return ""
    return f"(Stitches are named in US terms in files and refusals: {', '.join(others)}.)"


def summary(made: Draft, written: Sequence[Path] = (), columns: int = 100) -> str:
    """What the command line prints of a draft."""
    return terminal.summary(made.drafted, made.questions, written, columns)


def card(made: Draft, round_: int, done: int) -> str:
    """The card of a skirt that was laid down in `round_` after `done` shaping points.

    Raises:
        InputError: no such round, or more points done than it has.
    """
    drafted = made.drafted
    stands = follow.standing(drafted.plan, drafted.fabric, round_, done)
    piece = drafted.plan.program.pieces[0]
    return follow.card(stands, piece, drafted.stitches, drafted.dialect, drafted.units)
