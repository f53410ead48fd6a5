"""What a body and a swatch do not tell of a design: what is estimated without, and what cannot be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from frogless.body.load import parse_body
from frogless.errors import InputError
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.studio.needs import Needs, measurement_name, needs
from frogless.swatch import Swatch, has_gauge, parse_swatch


@dataclass(frozen=True, slots=True)
class Lack:
    """Something that is not known, and what it would be good for."""

    name: str
    why: str


def body_lacks(design_text: str, body_text: str) -> tuple[Lack, ...]:
    """Measurements that would make it surer; nothing of texts that have to be mended first."""
    need = needs(design_text)
    try:
        measured = parse_body(body_text, "body.toml").measurements
    except InputError:
        return ()
    return tuple(
        Lack(measurement_name(one.key), one.why) for one in need.worth if one.key not in measured
    )


def swatch_lacks(
    design_text: str, swatch_texts: tuple[str, ...], terms: Dialect
) -> tuple[Lack, ...]:
    """Stitches that no swatch was worked in, and whose gauge is estimated from the main stitch."""
    try:
        swatches = tuple(parse_swatch(text, "swatch.toml") for text in swatch_texts)
    except InputError:
        return ()
    return tuple(_stitches(needs(design_text), swatches, terms))


def _stitches(need: Needs, swatches: tuple[Swatch, ...], terms: Dialect) -> Iterator[Lack]:
    for one in need.stitches:
        if not any(has_gauge(swatch, one.key) for swatch in swatches):
            name = dictionary()[one.key].terms[terms].name
            yield Lack(name[:1].upper() + name[1:], "Its gauge is estimated from the main stitch.")
