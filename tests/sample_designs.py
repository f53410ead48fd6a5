"""Designs, bodies and swatches as small files, so that plans are tested from what a maker writes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path

from frogless.draft import Request, load
from frogless.plan.basis import Basis

JOINED = 'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = false'
Made = Callable[..., Basis]
"""What makes a basis of sections, with changes by name."""

CHAIN = 'with = "chain"\ngirth = "waist_girth"'


def body(**measurements: str) -> str:
    """A body file."""
    lines = [f'{key} = "{value}"' for key, value in measurements.items()]
    return "\n".join(['format = "frogless-body/1"', 'name = "someone"', "[measurements]", *lines])


def swatch(
    stitches: float = 18,
    rows: float = 10,
    *,
    stitch: str = "dc",
    width: str = "10 cm",
    height: str = "10 cm",
    hook: str = "3.5 mm",
    category: int = 3,
    more: str = "",
    readings: Iterable[str] = (),
) -> str:
    """A swatch file with one washed reading, and more of them.

    Args:
        more: lines of the first reading, such as a stretched width.
        readings: the lines of further readings.
    """
    first = (
        f'state = "washed"\nstitches = {stitches:g}\nwidth = "{width}"\nrows = {rows:g}\n'
        f'height = "{height}"\n{more}'
    )
    tables = "\n".join(f"[[reading]]\n{text}" for text in (first, *readings))
    return (
        f'format = "frogless-swatch/1"\nname = "sample"\nstitch = "{stitch}"\nhook = "{hook}"\n'
        f'[yarn]\ncategory = {category}\nfibre = "cotton"\nplies = 4\nball_mass = "50 g"\n'
        f'ball_length = "120 m"\n{tables}\n'
    )


def section(name: str, **keys: object) -> str:
    """One section; a text is quoted, anything else stands as it is."""
    return table("[section]", name=name, **keys)


def table(header: str, **keys: object) -> str:
    """A table of the design, [header] or [[header]]; `from_` is the key `from`."""
    lines = [f"{key.rstrip('_')} = {_written(value)}" for key, value in keys.items()]
    return "\n".join([f"[{header}]", *lines])


def _written(value: object) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, tuple | list):
        return f"[{', '.join(map(_written, value))}]"
    if isinstance(value, dict):
        return f"{{ {', '.join(f'{k} = {v}' for k, v in value.items())} }}"
    return str(value)


@dataclass(frozen=True, slots=True)
class Design:
    """A design to write down: its sections and what else stands in it."""

    sections: tuple[str, ...]
    length: str = "60 cm"
    start: str = CHAIN
    stitch: str = "double_crochet"
    work: str = JOINED
    tables: tuple[str, ...] = field(default=())

    @property
    def text(self) -> str:
        """The design file."""
        return "\n".join(
            [
                'format = "frogless-design/1"\ntitle = "Sample"',
                f'[garment]\nkind = "skirt"\nlength = "{self.length}"',
                f'[work]\nstitch = "{self.stitch}"\n{self.work}',
                f"[start]\n{self.start}",
                *self.sections,
                *self.tables,
            ]
        )


def basis(folder: Path, design: str, body: str, *swatches: str) -> Basis:
    """The basis of three or more texts, written to files and loaded as the program loads them."""
    texts = {"design": design, "body": body}
    texts |= {f"swatch{i}": text for i, text in enumerate(swatches)}
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    paths = tuple(folder / f"swatch{i}.toml" for i in range(len(swatches)))
    request = Request(folder / "design.toml", folder / "body.toml", paths)
    return load(request)[0]
