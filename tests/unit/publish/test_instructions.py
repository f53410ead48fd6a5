"""The instructions: order, what is said before rows and after them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import TEXTS, Example
from one_piece import alter
from published import headings, notes, part, published, rows, shown, text_of

from frogless.publish.blocks import Heading, Instruction, Note, Paragraph
from frogless.publish.instructions import capital, instructions, lies, section_sentences, stretched
from frogless.units import show_length


def test_sections_of_the_skirt_stand_in_the_order_worked() -> None:
    """Below the piece, which is a part of the pattern of its own."""
    assert headings(published(Example()), 2) == ["Band", "Waist to hip", "Hip to hem", "Edging"]
    assert text_of(part(published(Example()), "Skirt")).startswith(
        "Begin at the waist; the rounds begin and end at center back."
    )


def test_shaped_section_tells_counts_points_and_rounds() -> None:
    """In one paragraph before its rows, the stray with its sign in words."""
    told = text_of(part(published(Example()), "Skirt")).splitlines()
    shaped = next(t for t in told if t.startswith("From 152"))
    assert "to 192 stitches in 16 rounds: one stitch more at each of 8 shaping points." in shaped
    section = shown(Example()).plan.main.sections[1]
    assert section.chosen is not None
    rounds = [section.first_round - 1 + r for r in section.chosen.rhythm.rounds]
    assert f"(rounds {', '.join(map(str, rounds))})" in shaped
    assert "It widens like a cone." in shaped
    far = show_length(abs(section.chosen.stray), "cm")
    way = "wider" if section.chosen.stray > 0 else "narrower"
    assert f"gets up to {far} {way} than a smooth outline, " in shaped.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("share", "told"),
    [(0.0, "hardly"), (0.4, "widens like a cone"), (-0.25, "narrows like a cone"),
     (1.0, "lies flat"), (1.4, "ruffles")],
)  # fmt: skip
def test_fullness_is_told_in_a_word(share: float, told: str) -> None:
    """What it looks like; the figure stands with the reasons."""
    drafted = shown(Example())
    assert told in lies(drafted, replace(drafted.plan.main.sections[1], fullness=share))


def test_check_follows_the_last_row_of_its_section() -> None:
    """Count, then what the tape should say lying flat and worn."""
    blocks = part(published(Example()), "Skirt")
    at = next(i for i, b in enumerate(blocks) if isinstance(b, Note) and "round 18:" in b.text)
    before = blocks[at - 1]
    assert isinstance(before, Instruction)
    assert before.label.startswith("Rnd 18")
    assert blocks[at].text.replace("\u00a0", " ") == (  # type: ignore[union-attr]
        "After round 18: 192 dc. Lying flat, the work is 53.5 cm across (106.5 cm around) and "
        "20 cm long from the waist edge. Worn, it hangs to 20.5 cm."
    )


def test_worn_length_is_left_out_when_it_is_the_same() -> None:
    """Nothing was hung, or it is too little to be seen on the tape."""
    inches = [n.text for n in notes(instructions(shown(Example(), units="in")))]
    first = next(text for text in inches if text.startswith("After round 2:"))
    assert first.endswith("1 1/4 in long from the waist edge.")
    drafted = shown(Example("procession-skirt"))
    assert stretched(drafted) == 1
    checks = [n.text for n in notes(instructions(drafted)) if n.kind == "check"]
    assert checks
    assert not [text for text in checks if "Worn" in text]


@pytest.mark.parametrize(
    ("design", "body", "told"),
    [
        ("ring-dance-skirt", "dancer-3", "over 248 stitches: 62 repeats of 4."),
        ("procession-skirt", "dancer-3", "Crab stitch edging with the 3.25 mm (US D-3) hook"),
    ],
)
def test_edging_is_told_before_its_rows(design: str, body: str, told: str) -> None:
    """Its name, its hook, its repeats, and what its first round has to change."""
    blocks = instructions(shown(Example(design, body)))
    at = next(i for i, b in enumerate(blocks) if isinstance(b, Heading) and b.text == "Edging")
    assert isinstance(blocks[at + 1], Paragraph)
    assert told in text_of(blocks[at + 1])


def test_edging_says_what_its_first_round_has_to_change() -> None:
    """Where the repeats do not fill the hem as it is."""
    drafted = shown(Example())
    edging = drafted.plan.main.edging
    assert edging is not None
    changed = replace(edging, hem_count=276, base_count=270, correction=-6)
    told = text_of(instructions(replace(drafted, plan=alter(drafted.plan, edging=changed))))
    assert "takes the 276 stitches of the hem to 270, spread evenly." in told


def test_skirt_without_an_edging_ends_with_its_last_section() -> None:
    """Nothing is promised that is not there."""
    drafted = shown(Example())
    plain = replace(drafted, plan=alter(drafted.plan, edging=None))
    assert "repeats of" not in text_of(instructions(plain))


def test_rows_are_those_of_the_writer() -> None:
    """Text and count as they were proven."""
    (foundation, first) = rows(instructions(shown(Example())))[:2]
    assert foundation.text == (
        "Use 3.75 mm hook. Work 152 fdc; without twisting, join with sl st to first fdc to form "
        "a ring."
    )
    assert (first.label, first.count) == ("Rnd 1 (RS)", "152 dc")


def test_capital_is_only_the_first_letter() -> None:
    """Names keep theirs."""
    assert (capital("waist to hip"), capital("")) == ("Waist to hip", "")


@pytest.mark.parametrize("design", TEXTS)
def test_rows_of_other_counts_are_not_told_as_unshaped(design: str) -> None:
    """A disc, a yoke, a shawl and an armhole are shaped, whatever planned them."""
    drafted = shown(Example(design))
    for piece in drafted.plan.pieces:
        for section in piece.sections:
            told = " ".join(section_sentences(drafted, piece.name, section))
            counts = {
                row.count
                for part in drafted.plan.program.pieces
                if part.name == piece.name
                for row in part.rows
                if section.first_round <= row.number <= section.last_round
            }
            if section.pattern is None and len(counts | {section.count_after}) > 1:
                assert "without shaping" not in told
            assert "λ" not in told


def test_disc_tells_its_first_and_its_last_round() -> None:
    """What its rows have, not the ring that it is begun on."""
    drafted = shown(Example("lantern-cap"))
    crown = drafted.plan.main
    counts = [row.count for row in drafted.plan.program.pieces[0].rows]
    first, last = counts[1], counts[crown.sections[0].last_round]
    (told,) = section_sentences(drafted, crown.name, crown.sections[0])
    assert f"{first} stitches in the first, {last} in the last" in told
