"""Abbreviations and how the stitches are worked."""

from __future__ import annotations

import re
from dataclasses import replace

from examples import Example
from published import part, published, shown, text_of

from frogless.publish.blocks import Instruction, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.glossary import abbreviations, rows_text, special_stitches, used_stitches
from frogless.rows.nodes import Together
from frogless.stitches.model import Dialect


def explained(blocks: tuple[object, ...]) -> dict[str, str]:
    """Words and meanings."""
    (terms,) = (b for b in blocks if isinstance(b, Terms))
    return dict(terms.items)


def test_words_are_explained_when_the_rows_say_them() -> None:
    """A row without spaces does not explain them; both sides are, how to read tells of both."""
    rows = (Instruction("Rnd 1 (RS)", "Dc in each st around.", "2 dc"),)
    told = explained(abbreviations(shown(Example()), rows))
    assert {"rnd", "RS", "WS", "st"} <= told.keys()
    assert not {"sps", "rnds"} & told.keys()


def with_decrease(drafted: Drafted) -> Drafted:
    """The same with two stitches worked together in its last piece."""
    program = drafted.plan.program
    *pieces, last = program.pieces
    row = replace(last.rows[-1], body=(*last.rows[-1].body, Together("single_crochet", 2)))
    pieces.append(replace(last, rows=(*last.rows[:-1], row)))
    plan = replace(drafted.plan, program=replace(program, pieces=tuple(pieces)))
    return replace(drafted, plan=plan)


def test_stitches_together_are_explained_as_one_word() -> None:
    """In the words of the dialect, in the list and in how it is worked."""
    dialects: tuple[Dialect, ...] = ("us", "uk")
    drafts = [with_decrease(shown(Example("procession-skirt"), d)) for d in dialects]
    told = [explained(abbreviations(d, ())) for d in drafts]
    assert told[0]["sc2tog"] == "single crochet, 2 together"
    assert told[1]["dc2tog"] == "double crochet, 2 together"
    how = [explained(special_stitches(d)) for d in drafts]
    assert "yarn over and draw through all loops" in how[0]["sc2tog"]
    assert "yarn round hook and draw through all loops" in how[1]["dc2tog"]


def test_stitches_of_chains_joins_and_seams_are_used_ones() -> None:
    """They stand in no body, and a maker has to know them all the same."""
    ring = used_stitches(shown(Example()))
    assert {"chain", "slip_stitch", "picot", "bead"} <= set(ring)
    spiral = used_stitches(shown(Example("procession-skirt")))
    assert {"chain", "slip_stitch", "single_crochet"} <= set(spiral)


def test_rows_are_read_with_labels_and_counts() -> None:
    """Spaces are named in counts alone."""
    told = rows_text(published(Example()).blocks)
    assert "62 ch-1 sps" in told
    assert re.search(r"^Rnds \d+–\d+ \((RS, WS|WS, RS)( in turn)?\): ", told, re.MULTILINE)


def test_names_are_sorted_for_the_eye() -> None:
    """By the alphabet, capitals among the others."""
    names = list(explained(part(published(Example()), "Abbreviations")))
    assert names == sorted(names, key=lambda name: (name.lower(), name))
    assert "chain" in text_of(part(published(Example()), "How the stitches are worked"))
