"""Designs of several pieces as small files, planned and held to the proof."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from frogless.body.load import load_body
from frogless.body.measurements import known_measurements
from frogless.design.document import PiecesDesign
from frogless.design.load import parse_design
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric, RowFabric
from frogless.fit.model import Fit, GoingOn, Hanging
from frogless.plan.basis import Basis, build
from frogless.plan.make import CONSTRUCTIONS, plan
from frogless.plan.model import Measure, PiecePlan, Plan
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.proof.checks import edges, rows, shaping, stitches
from frogless.proof.model import Finding, Subject
from frogless.stitches.load import dictionary
from frogless.swatch import load_swatch

CHECKS: tuple[Callable[[Subject], Finding], ...] = (
    rows.check_places,
    rows.check_repeats,
    rows.check_counts,
    rows.check_planned,
    rows.check_rounds,
    rows.check_numbers,
    shaping.check_markers,
    edges.check_multiples,
    edges.check_begins,
    edges.check_seams,
    edges.check_joins,
    stitches.check_stitches_close,
)
NO_FIT = Fit(
    (),
    GoingOn(0.0, 0.0, False, 0.0, "", 0.0, 0.0, 0.0, 0.0, 0, "passes", ()),
    "",
    Hanging(0.0, False, None, None, ""),
    (),
)
SOMEONE: Mapping[str, str] = MappingProxyType(
    {"bust_girth": "96 cm", "waist_girth": "80 cm", "upper_arm_girth": "34 cm"}
)


@dataclass(frozen=True, slots=True)
class Garment:
    """A plan with its fabric."""

    basis: Basis
    plan: Plan
    fabric: Fabric

    def piece(self, name: str) -> PiecePlan:
        """The plan of a piece."""
        found = self.plan.piece(name)
        assert found is not None, [p.name for p in self.plan.pieces]
        return found

    def rows(self, name: str) -> tuple[RowFabric, ...]:
        """The rows of a piece."""
        return self.fabric.pieces[name]

    def measure(self, piece: str, name: str) -> Measure:
        """One measurement of a piece."""
        found = {m.name: m for m in self.piece(piece).measures}
        assert name in found, list(found)
        return found[name]

    def edges(self, piece: str) -> tuple[OfferedEdge, ...]:
        """The edges that an entry of the design offers."""
        design, made = self.basis.design, dict[str, Made]()
        assert isinstance(design, PiecesDesign)
        for i, choice in enumerate(design.piece, 1):
            construction = CONSTRUCTIONS[choice.construction]
            made[choice.name] = construction(self.basis, choice, f"piece.{i}", made)
        return made[piece].edges

    def faults(self) -> Mapping[str, tuple[str, ...]]:
        """What the proof finds wrong, by check."""
        subject = Subject(self.plan, self.plan.program, self.fabric, NO_FIT, dictionary(), {})
        return {f.name: f.faults for f in (check(subject) for check in CHECKS) if f.faults}


def pieces_basis(
    folder: Path,
    *tables: str,
    sample: str = "",
    person: str = "",
    work: str = "turning_chain = 3",
    stitch: str = "double_crochet",
) -> Basis:
    """The basis of a design of pieces, for someone and a swatch of 18 × 10 double crochets."""
    top = (
        'format = "frogless-design/1"\ntitle = "Sample"\n[garment]\nkind = "top"\n'
        f'[work]\nstitch = "{stitch}"\n{work}'
    )
    text = "\n".join([top, *tables])
    (folder / "body.toml").write_text(person or body(**SOMEONE), encoding="utf-8")
    (folder / "swatch.toml").write_text(sample or swatch(18, 10), encoding="utf-8")
    return build(
        parse_design(text).checked,
        load_body(folder / "body.toml"),
        (load_swatch(folder / "swatch.toml"),),
        dictionary(),
        known_measurements(),
    )


def body(**measurements: str) -> str:
    """A body file."""
    lines = [f'{key} = "{value}"' for key, value in measurements.items()]
    return "\n".join(['format = "frogless-body/1"', 'name = "someone"', "[measurements]", *lines])


def swatch(stitches: float, rows: float, stitch: str = "dc") -> str:
    """A swatch file: so many stitches and rows in 10 cm, washed."""
    return (
        f'format = "frogless-swatch/1"\nname = "sample"\nstitch = "{stitch}"\nhook = "3.5 mm"\n'
        '[yarn]\ncategory = 3\nfibre = "cotton"\nplies = 4\nball_mass = "50 g"\n'
        'ball_length = "120 m"\n[[reading]]\nstate = "washed"\n'
        f'stitches = {stitches:g}\nwidth = "10 cm"\nrows = {rows:g}\nheight = "10 cm"\n'
    )


def garment(folder: Path, *tables: str, **more: str) -> Garment:
    """A design of pieces, planned and expanded."""
    built = pieces_basis(folder, *tables, **more)
    planned = plan(built)
    return Garment(built, planned, expand(planned.program, dictionary()))


def panel(name: str = "front", /, **keys: object) -> str:
    """A panel; tables within it are written as inline tables."""
    given = {"construction": "panel", "name": name, **keys}
    lines = [f"{key.rstrip('_')} = {_value(value)}" for key, value in given.items()]
    return "\n".join(["[[piece]]", *lines])


def _value(value: object) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{k} = {_value(v)}" for k, v in value.items()) + " }"
    if isinstance(value, tuple | list):
        return "[" + ", ".join(map(_value, value)) + "]"
    return f'"{value}"' if isinstance(value, str) else str(value)
