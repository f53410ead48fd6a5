"""Yokes as small design files, planned, with a body and sleeves of plain rounds worked onto them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from sample_designs import basis, body, swatch, table

from frogless.design.document import PiecesDesign
from frogless.design.pieces.yoke import YokeChoice
from frogless.plan.basis import Basis
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.rows.nodes import Chain, End, Node, Piece, Row, Start, Work

D = "double_crochet"
TURNED = 'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = false'


@dataclass(frozen=True, slots=True)
class YokeDesign:
    """A design of one yoke.

    Args:
        keys: of the yoke, further ones or others.
        work: the lines of [work].
        tables: of further pieces.
    """

    construction: str = "raglan yoke"
    keys: Mapping[str, object] = field(default_factory=dict)
    work: str = TURNED
    tables: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """The design file."""
        keys = {"name": "yoke", "construction": self.construction, **self.keys}
        return "\n".join(
            [
                'format = "frogless-design/1"\ntitle = "Sample"',
                '[garment]\nkind = "top"',
                f'[work]\nstitch = "{D}"\n{self.work}',
                table("[piece]", **keys),
                *self.tables,
            ]
        )


def yoke_basis(
    folder: Path,
    design: YokeDesign,
    *,
    bust: str = "92 cm",
    arm: str = "32 cm",
    sample: str = "",
) -> tuple[Basis, YokeChoice]:
    """The basis of a yoke, and its entry; 16 stitches and 10 rows in 10 cm, counted over 40 cm."""
    someone = body(bust_girth=bust, upper_arm_girth=arm, head_girth="56 cm")
    sample = sample or swatch(64, 40, width="40 cm", height="40 cm")
    found = basis(folder, design.text, someone, sample)
    assert isinstance(found.design, PiecesDesign)
    entry = found.design.piece[0]
    assert isinstance(entry, YokeChoice)
    return found, entry


def edge(made: Made, name: str) -> OfferedEdge:
    """An offered edge by its name."""
    return next(each for each in made.edges if each.name == name)


def continued(made: Made) -> tuple[Piece, ...]:
    """The yoke, two rounds of a body that bridges both underarms, and two of each sleeve."""
    return (
        *made.pieces,
        _begun("body", edge(made, "body")),
        *(_begun(name, edge(made, name)) for name in ("right sleeve", "left sleeve")),
    )


def _begun(name: str, on: OfferedEdge) -> Piece:
    first: list[Node] = []
    for places, bridge in zip(on.places, on.bridges or (0,) * len(on.places), strict=True):
        first += [Work(D, places), *([Chain(bridge, each=True)] if bridge else [])]
    rows = tuple(
        Row(number, "RS", name, nodes, on.count, Start(3), End("first_stitch"))
        for number, nodes in ((1, tuple(first)), (2, (Work(D, on.count),)))
    )
    return Piece(name, True, rows, on.bases)
