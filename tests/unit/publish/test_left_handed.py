"""Patterns for the left hand: the same rows, and what changes sides."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from examples import DESIGNS, GARMENTS, Example
from published import headings, notes, part, published, rows, shown, text_of

from frogless.publish.blocks import Document, Figure, Note, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.glossary import special_stitches
from frogless.publish.left_handed import other_side
from frogless.publish.pattern import pattern
from frogless.publish.planfile import planfile
from frogless.rows.nodes import Work
from frogless.stitches.load import explain_left_handed

EVERY = (*DESIGNS, *GARMENTS)


def left(design: str) -> Drafted:
    """An example for the left hand."""
    return replace(shown(Example(design)), hand="left")


def told(document: Document) -> list[Note]:
    """The notes for left-handers."""
    return [note for note in notes(document.blocks) if note.title == "Left-handed"]


@pytest.mark.parametrize("design", EVERY)
def test_rows_stay_word_for_word(design: str) -> None:
    """They were proven as they are; the note says how to read them."""
    mine, theirs = pattern(left(design)), published(Example(design))
    assert rows(mine.blocks) == rows(theirs.blocks)
    assert headings(mine) == headings(theirs)
    (note,) = told(mine)
    assert note in part(mine, "Before you start")
    assert "Left-handed: work as written" not in text_of(mine)


@pytest.mark.parametrize("design", EVERY)
def test_note_is_there_for_the_left_hand_only(design: str) -> None:
    """The other patterns have their one line."""
    document = published(Example(design))
    assert told(document) == []
    assert "Left-handed: work as written" in text_of(document)


def test_pieces_and_joins_that_change_sides_are_named() -> None:
    """The rows of the left front make the right front, and so with every seam."""
    (note,) = told(pattern(left("fiddler-cardigan")))
    assert "“left front” is the right front, “right front” is the left front" in note.text
    assert "“right shoulder” is the left shoulder" in note.text
    assert "read the other" in note.text
    assert other_side("back, left side of the leftover") == "back, right side of the leftover"


def test_what_is_sewn_on_stays_with_the_wearer() -> None:
    """The strand hangs where the design has it, and the note says so."""
    (note,) = told(pattern(left("ring-dance-skirt")))
    assert "there left and right are the wearer's" in note.text
    sewn = re.compile(r"The strand should measure.*")
    mine, theirs = text_of(pattern(left("ring-dance-skirt"))), text_of(published(Example()))
    assert sewn.findall(mine) == sewn.findall(theirs)
    (plain,) = told(pattern(left("rehearsal-skirt")))
    assert "sewn on in the end" not in plain.text


def at_left_side(drafted: Drafted) -> Drafted:
    """The same, its rounds joined at the wearer's left side by a right-hander."""
    design = drafted.basis.design
    moved = design.model_copy(
        update={"work": design.work.model_copy(update={"join_at": "left side"})}
    )
    return replace(drafted, basis=replace(drafted.basis, design=moved))


def test_join_at_a_side_is_told_where_the_left_hand_has_it() -> None:
    """The mirror image is joined at the other side; from there it goes over the back as before."""
    right = text_of(pattern(at_left_side(shown(Example()))))
    mine = text_of(pattern(replace(at_left_side(shown(Example())), hand="left")))
    assert "the rounds begin and end at the wearer's left side" in right
    assert "the rounds begin and end at the wearer's right side" in mine
    assert "the wearer's left side" not in mine
    assert "Your rounds begin and end at the wearer's right side" in mine
    assert "right-handed maker goes from the join over the back first" in right
    assert "your round goes from the join over the back first" in mine


def test_unturned_rounds_lean_the_other_way() -> None:
    """Only they do."""
    (unturned,) = told(pattern(left("procession-skirt")))
    (turned,) = told(pattern(left("ring-dance-skirt")))
    assert "lean the other way" in unturned.text
    assert "lean the other way" not in turned.text


def test_stitches_are_explained_for_the_left_hand() -> None:
    """Where the words differ: a crab stitch goes back from right to left."""
    drafted = shown(Example())
    key = "reverse_single_crochet"
    words = drafted.stitches[key]
    assert words.left_handed
    piece, *others = drafted.plan.program.pieces
    last = piece.rows[-1]
    crab = replace(last, body=(Work(key), Work("double_crochet")))
    program = replace(
        drafted.plan.program, pieces=(replace(piece, rows=(*piece.rows[:-1], crab)), *others)
    )
    trimmed = replace(drafted, plan=replace(drafted.plan, program=program))
    (right,) = (b for b in special_stitches(trimmed) if isinstance(b, Terms))
    (mine,) = (b for b in special_stitches(replace(trimmed, hand="left")) if isinstance(b, Terms))
    name = drafted.name(key)
    assert dict(mine.items)[name] == explain_left_handed(words, "us")
    assert dict(mine.items)[name] != dict(right.items)[name]
    same = dict(mine.items)["double crochet"]
    assert same == dict(right.items)["double crochet"]


@pytest.mark.parametrize("design", ["windmill-skirt", "fiddler-cardigan"])
def test_drawing_says_for_which_hand_it_is(design: str) -> None:
    """And the page says so at its foot."""
    mine = pattern(left(design))
    captions = [b.caption for b in mine.blocks if isinstance(b, Figure) and b.key == "schematic"]
    assert all(caption.endswith("Drawn for the left hand.") for caption in captions)
    assert captions
    assert mine.footer.endswith("US terms, for the left hand")
    assert (
        dict(mine.drawings)["schematic"] != dict(published(Example(design)).drawings)["schematic"]
    )


def test_plan_file_says_the_hand() -> None:
    """Nothing else in it depends on that."""
    mine, theirs = planfile(left("whirl-skirt")), planfile(shown(Example("whirl-skirt")))
    assert (mine.pop("hand"), theirs.pop("hand")) == ("left", "right")
    assert mine == theirs
