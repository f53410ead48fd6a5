"""The words of the rows: every abbreviation that is used, and how the stitches are worked."""

from __future__ import annotations

import re
from collections.abc import Iterable

from frogless.publish.blocks import Block, Heading, Instruction, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.rows.nodes import Chain, Together
from frogless.rows.walk import nodes, stitch_keys
from frogless.stitches.load import explain, explain_left_handed, words

#: Words of the rows that are no stitches.
PLAIN_WORDS = ("st", "sts", "sp", "sps", "rep", "rnd", "rnds", "RS", "WS")


def abbreviations(drafted: Drafted, rows: tuple[Block, ...]) -> tuple[Block, ...]:
    """Every abbreviation that the rows use, and what it stands for.

    Args:
        rows: the blocks with the rows; what they do not say is not explained.
    """
    items = {
        drafted.short(key): drafted.name(key)
        for key in used_stitches(drafted)
        if drafted.stitches[key].kind in ("stitch", "foundation")
    }
    said = {word.lower() for word in re.findall(r"[A-Za-z]+", rows_text(rows))}
    # How to read the rounds tells of both sides, also where one of them alone ever faces.
    said |= {"rs", "ws"}
    items |= {word: say(drafted, f"abbr_{word}") for word in PLAIN_WORDS if word.lower() in said}
    items |= {
        together(drafted, node): say(
            drafted, "abbr_tog", stitch=drafted.name(node.stitch), n=node.places
        )
        for node in _together(drafted)
    }
    ordered = tuple(sorted(items.items(), key=lambda item: (item[0].lower(), item[0])))
    return (Heading(say(drafted, "abbreviations")), Terms(ordered))


def rows_text(blocks: tuple[Block, ...]) -> str:
    """Labels, texts and counts of all rows."""
    rows = (block for block in blocks if isinstance(block, Instruction))
    return "\n".join(f"{row.label}: {row.text} ({row.count})" for row in rows)


def together(drafted: Drafted, node: Together) -> str:
    """How stitches worked together are written: "sc2tog"."""
    return drafted.phrases.say("together", stitch=drafted.short(node.stitch), places=node.places)


def _together(drafted: Drafted) -> Iterable[Together]:
    """Each kind of stitches worked together once, in the order met."""
    bodies = (row.body for piece in drafted.plan.program.pieces for row in piece.rows)
    met = (node for body in bodies for node, _ in nodes(body))
    return dict.fromkeys(node for node in met if isinstance(node, Together))


def used_stitches(drafted: Drafted) -> list[str]:
    """Keys of every stitch that rows, joins, chains and seams use."""
    program = drafted.plan.program
    rows = [row for piece in program.pieces for row in piece.rows]
    keys = {key for row in rows for key in stitch_keys(row.body)}
    made = [isinstance(node, Chain) for row in rows for node, _ in nodes(row.body)]
    if any(made) or any(row.start.chains for row in rows):
        keys.add("chain")
    if any(row.end.join != "none" for row in rows):
        keys.add("slip_stitch")
    return sorted(keys | {seam.stitch for seam in program.seams})


def special_stitches(drafted: Drafted) -> tuple[Block, ...]:
    """How each stitch is worked, by name, with the maker's hand."""
    told = explain_left_handed if drafted.hand == "left" else explain
    items = {
        drafted.name(key): told(drafted.stitches[key], drafted.dialect)
        for key in used_stitches(drafted)
        if drafted.stitches[key].how
    }
    for node in _together(drafted):
        items[together(drafted, node)] = say(
            drafted, "how_tog", stitch=drafted.short(node.stitch),
            yarn_over=words(drafted.dialect)["yarn_over"].name,
        )  # fmt: skip
    ordered = tuple(sorted(items.items()))
    return (Heading(say(drafted, "special")), Terms(ordered)) if ordered else ()
