"""The whole pattern: its parts, their order, and what holds for every edition of every example."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from examples import Example
from published import EDITIONS, EXAMPLES, headings, notes, part, published, rows, shown, text_of

from frogless.publish.blocks import Figure, Heading, Instruction, Note, Table, Terms
from frogless.publish.glossary import rows_text
from frogless.publish.plain import plain
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.units import Units

FRONT = [
    "Schematic", "At a glance", "Materials", "Gauge", "Abbreviations",
    "How the stitches are worked", "Before you start",
]  # fmt: skip
BACK = ["Finishing", "Why these numbers", "What was checked", "About this pattern"]
PIECES = {
    "ring-dance-skirt": ["Skirt", "Elastic cover", "Front strand"],
    "procession-skirt": ["Skirt", "Waistband"],
    "rehearsal-skirt": ["Skirt", "Elastic cover"],
    "whirl-skirt": ["Skirt", "Drawcord"],
    "sunwheel-skirt": ["Skirt", "Elastic cover"],
    "windmill-skirt": ["Skirt", "Elastic cover"],
    "kerchief-skirt": ["Skirt", "Elastic cover"],
    "bellflower-skirt": ["Skirt", "Elastic cover"],
    "hop-garden-skirt": ["Skirt", "Elastic cover"],
    "barn-dance-skirt": ["Skirt", "Elastic cover"],
}
every_edition = pytest.mark.parametrize(
    ("example", "edition"), [(e, d) for e in EXAMPLES for d in EDITIONS], ids=str
)
Edition = tuple[Dialect, Units]


@every_edition
def test_parts_stand_in_the_order_a_maker_needs_them(example: Example, edition: Edition) -> None:
    """What it will be, what to have and know, each piece as it is worked, then why it is so."""
    gauge = {"us": "Gauge", "uk": "Tension"}[edition[0]]
    front = [gauge if name == "Gauge" else name for name in FRONT]
    assert headings(published(example, *edition)) == [*front, *PIECES[example.design], *BACK]


@every_edition
def test_headings_never_stand_alone(example: Example, edition: Edition) -> None:
    """No ladder: under each heading something is said before the next one."""
    for block, after in pairwise(published(example, *edition).blocks):
        assert not (isinstance(block, Heading) and isinstance(after, Heading))


@every_edition
def test_document_says_its_terms_units_and_language(example: Example, edition: Edition) -> None:
    """The language tag follows the terms; units of the other kind do not occur."""
    document = published(example, *edition)
    terms, units = edition
    assert document.language == {"us": "en-US", "uk": "en-GB"}[terms]
    assert f"{terms.upper()} terms" in document.footer
    other = {"cm": r"\d in\b(?! all| next| each)|\d yd\b|\d oz\b", "in": r"\d cm\b|\d m\b"}[units]
    told = text_of(tuple(b for b in document.blocks if not isinstance(b, Instruction)))
    assert re.findall(other, told) == []


@every_edition
def test_spelling_follows_the_terms(example: Example, edition: Edition) -> None:
    """American English has its center, also in the drawings."""
    document = published(example, *edition)
    wrong = "centre" if edition[0] == "us" else "center"
    everything = text_of(document) + text_of(tuple(svg for _, svg in document.drawings))
    assert wrong not in everything.lower()


@every_edition
def test_no_stitch_is_called_by_the_other_dialects_name(example: Example, edition: Edition) -> None:
    """A name that the other dialect alone uses would send a maker astray, wherever it stands."""
    dialect, other = edition[0], "uk" if edition[0] == "us" else "us"
    mine = {s.terms[dialect].name for s in dictionary().values()}
    foreign = {s.terms[other].name for s in dictionary().values()} - mine
    document = published(example, *edition)
    told = text_of(document) + text_of(tuple(svg for _, svg in document.drawings))
    assert [name for name in foreign if re.search(rf"\b{name}s?\b", told, re.IGNORECASE)] == []


@every_edition
def test_no_stitch_is_named_that_the_pattern_does_not_use(
    example: Example, edition: Edition
) -> None:
    """Double crochet is a name in both dialects: who reads it must be able to look it up here."""
    document = published(example, *edition)
    known = {
        word for block in part(document, "Abbreviations") for item in block.items for word in item
    }  # type: ignore[union-attr]
    known |= {
        item[0] for block in part(document, "How the stitches are worked") for item in block.items
    }  # type: ignore[union-attr]
    pace = shown(example, *edition).name("single_crochet")
    named = {s.terms[edition[0]].name for s in dictionary().values() if s.kind == "stitch"}
    told = text_of(document)
    longest_first = "|".join(sorted(map(re.escape, named), key=len, reverse=True))
    for found in set(re.findall(rf"\b(?:{longest_first})\b", told)) - {pace}:
        assert found in known


@every_edition
def test_abbreviations_are_those_that_the_rows_use(example: Example, edition: Edition) -> None:
    """Each one used is explained, and each one explained is used; both sides always."""
    document = published(example, *edition)
    (terms,) = (b for b in part(document, "Abbreviations") if isinstance(b, Terms))
    explained = {short.lower() for short, _ in terms.items}
    stitches = [s for s in dictionary().values() if s.kind in ("stitch", "foundation")]
    known = {s.terms[edition[0]].abbreviation.lower() for s in stitches} | explained
    known |= {"st", "sts", "sp", "sps", "rnd", "rnds", "rs", "ws"}
    longest_first = "|".join(sorted(map(re.escape, known), key=len, reverse=True))
    said = re.sub(r"\d+(?:st|nd|rd|th)\b", "", rows_text(document.blocks)).lower()
    # "ch-2" is a chain, "ch-sp" a chain and a space; "rev dc" is one word.
    used = set(re.findall(rf"(?<![a-z\d])(?:{longest_first})(?![a-z\d])", said))
    assert used | {"rs", "ws"} == explained


@every_edition
def test_every_special_word_of_the_rows_is_explained(example: Example, edition: Edition) -> None:
    """Picots and beads are named in full in the rows; how they are made stands before them."""
    document = published(example, *edition)
    (terms,) = (b for b in part(document, "How the stitches are worked") if isinstance(b, Terms))
    told = {name for name, _ in terms.items}
    said = rows_text(document.blocks)
    for stitch in dictionary().values():
        if stitch.kind in ("ornament", "trim") and stitch.terms[edition[0]].name in said:
            assert stitch.terms[edition[0]].name in told


@every_edition
def test_landmarks_are_told_with_the_plans_numbers(example: Example, edition: Edition) -> None:
    """Counts and rounds as planned, and every ease between body and skirt."""
    drafted = shown(example, *edition)
    (table,) = (
        b for b in part(published(example, *edition), "At a glance") if isinstance(b, Table)
    )
    for row, mark, fit in zip(
        table.rows, drafted.plan.main.landmarks, drafted.fit.landmarks, strict=True
    ):
        assert row[4:6] == (str(mark.count), str(mark.rounds))
        assert (row[3] == "–") == (fit.ease is None)


@every_edition
def test_every_section_tells_how_it_lies_and_ends_with_a_check(
    example: Example, edition: Edition
) -> None:
    """Cones in a word; after the last round of each the count that the rows leave."""
    drafted, document = shown(example, *edition), published(example, *edition)
    skirt = part(document, "Skirt")
    assert len(re.findall("(like a cone|like a disc|ruffles)[.]", text_of(skirt))) == sum(
        s.chosen is not None for s in drafted.plan.main.sections
    )
    checks = [note.text for note in notes(skirt) if note.kind == "check"]
    counts = {row.number: row.count for row in drafted.plan.program.pieces[0].rows}
    assert len(checks) == len(drafted.plan.main.sections)
    for check, section in zip(checks, drafted.plan.main.sections, strict=True):
        assert check.startswith(f"After round {section.last_round}: {counts[section.last_round]} ")


@every_edition
def test_every_row_and_seam_is_published_once(example: Example, edition: Edition) -> None:
    """As many rows as the program has, counted through the labels of folded ones."""
    program = shown(example, *edition).plan.program
    labels = [row.label for row in rows(published(example, *edition).blocks)]
    worked = 0
    for label in labels:
        numbers = [int(n) for n in re.findall(r"\d+", label.partition("(")[0])]
        worked += numbers[1] - numbers[0] + 1 if len(numbers) == 2 else 1
    assert worked == sum(len(piece.rows) for piece in program.pieces) + len(program.seams)


@every_edition
def test_every_count_has_its_because(example: Example, edition: Edition) -> None:
    """Landmarks, sections, edging, waist, strands and yarn, none of them empty or left as keys."""
    drafted, document = shown(example, *edition), published(example, *edition)
    plan = drafted.plan
    (why,) = (b for b in part(document, "Why these numbers") if isinstance(b, Terms))
    parts = (plan.main.landmarks, plan.main.sections, plan.main.strands, drafted.tally.yarn)
    assert len(why.items) == sum(map(len, parts)) + bool(plan.main.edging) + bool(plan.main.waist)
    for _, told in why.items:
        assert told
        assert "_" not in told
    assert str(plan.main.landmarks[0].count) in why.items[0][1]


@every_edition
def test_remarks_and_cautions_are_told_once(example: Example, edition: Edition) -> None:
    """Each stands where it matters, and nowhere else."""
    drafted, document = shown(example, *edition), published(example, *edition)
    told = [n.text for n in notes(document.blocks) if n.kind != "check"]
    elsewhere = sum(r.name == "hang_test" for r in drafted.plan.remarks)
    assert len(told) == len(set(told))
    assert len(told) == len(drafted.plan.remarks) - elsewhere + len(drafted.fit.cautions)


@every_edition
def test_figures_have_words_for_ear_and_eye(example: Example, edition: Edition) -> None:
    """A text that tells what is drawn, and a caption; both drawings are there."""
    document = published(example, *edition)
    figures = [b for b in document.blocks if isinstance(b, Figure)]
    assert {f.key for f in figures} == {key for key, _ in document.drawings}
    for figure in figures:
        assert figure.caption
        assert len(figure.alt) > 100


@every_edition
def test_sentences_are_whole(example: Example, edition: Edition) -> None:
    """No blank of a message is left open, no name of a key shows, no dot is doubled."""
    document = published(example, *edition)
    told = text_of(tuple(b for b in document.blocks if not isinstance(b, Instruction)))
    assert not re.search(r"[{}]|\b[a-z]+_[a-z_]+\b|\.\.| ,| \.", told)
    for block in document.blocks:
        if isinstance(block, Note):
            assert block.title
            assert block.text.endswith((".", ".)"))


def test_text_alone_tells_the_whole_pattern() -> None:
    """Every heading, row and table cell is in the plain text."""
    document = published(Example())
    told = " ".join(plain(document).split())
    for block in document.blocks:
        if isinstance(block, Heading | Instruction):
            assert " ".join(block.text.split()).replace("\u00a0", " ") in told


def test_numbers_stay_with_their_units_but_rows_stay_as_proven() -> None:
    """No-break spaces in sentences and tables; none in the rows, which are read back."""
    document = published(Example())
    glance = next(b for b in document.blocks if isinstance(b, Table))
    assert "72\u00a0cm" in glance.rows[0]
    assert not [row for row in rows(document.blocks) if "\u00a0" in row.text]
