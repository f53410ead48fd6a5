"""Several stitches worked into one place: what a group is follows from what it works."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from frogless.errors import InputError
from frogless.rows.count import CHAIN, left, worked
from frogless.rows.nodes import Chain, Node, Repeat, Work
from frogless.stitches.model import Ratio, Step, Stitch

STANDS_ON = 1


def group_values(works: tuple[Node, ...], known: Mapping[str, Stitch]) -> dict[str, object]:
    """The values of a group's entry that are counted from what it works.

    Its steps are those of its stitches one after the other; it is as tall as its tallest stitch, and
    as wide as all of them together, as it is along its top.

    Raises:
        InputError: it works no stitch, or something that is not worked into one place.
    """
    steps = tuple(_steps(works, known))
    counts = worked(works)
    stitches = [known[key] for key in counts if known[key].kind == "stitch" and key != CHAIN]
    if not stitches:
        raise InputError("a group works at least one stitch; write it in works")
    tallest = max(stitches, key=lambda stitch: stitch.height.typical)
    return {
        "works": works,
        "steps": steps,
        "stands_on": STANDS_ON,
        "leaves": left(works, {key: stitch.leaves for key, stitch in known.items()}),
        "turning_chain": tallest.turning_chain,
        "chain_counts": tallest.chain_counts,
        "height": tallest.height,
        "width": _total([(known[key].width, times) for key, times in counts.items()]),
    }


def _steps(works: Sequence[Node], known: Mapping[str, Stitch]) -> Iterator[Step]:
    for node in works:
        match node:
            case Work(stitch, times) if known[stitch].stands_on <= STANDS_ON:
                yield from known[stitch].steps * times
            case Chain(times):
                yield Step("chain", times)
            case Repeat(body, times):
                yield from tuple(_steps(body, known)) * times
            case _:
                raise InputError(
                    f"{node} is not worked into one place; a group works stitches that stand on "
                    "one place, and chains"
                )


def _total(widths: Sequence[tuple[Ratio, int]]) -> Ratio:
    return Ratio(
        round(sum(width.low * times for width, times in widths), 2),
        round(sum(width.typical * times for width, times in widths), 2),
        round(sum(width.high * times for width, times in widths), 2),
    )
