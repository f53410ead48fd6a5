"""A whole pattern as a document, much like the ones that Frogless publishes."""

from __future__ import annotations

from frogless.publish.blocks import (
    Block,
    Bullets,
    Document,
    Figure,
    Heading,
    Instruction,
    Note,
    Paragraph,
    Table,
    Terms,
)

SCHEMATIC = """<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="78mm" viewBox="0 0 120 78">
  <title>Skirt, flat</title>
  <desc>Half of each girth, with the depth of each landmark.</desc>
  <g fill="none" stroke="#222222" stroke-width="0.5">
    <path id="outline" d="M42 8 L78 8 L88 30 L98 66 Q60 72 22 66 L32 30 Z"/>
    <path d="M32 30 L88 30" stroke-dasharray="2 1.5" stroke-width="0.3"/>
    <path d="M106 8 L106 66 M104 8 L108 8 M104 66 L108 66" stroke-width="0.3"/>
  </g>
  <g font-family="sans-serif" font-size="4" fill="#222222">
    <text x="60" y="6" text-anchor="middle">waist 36 cm</text>
    <text x="60" y="28" text-anchor="middle">hip 46 cm</text>
    <text x="60" y="76" text-anchor="middle">hem 47 cm</text>
    <text x="109" y="38">43 cm</text>
  </g>
</svg>
"""

INTO_EACH = (
    "Ch 2 (does not count), dc in same st and in each st around, sl st in top of first dc, turn."
)


def _plain_round(number: int, count: int) -> Instruction:
    side = "RS" if number % 2 else "WS"
    return Instruction(f"Rnd {number} ({side})", INTO_EACH, f"{count} dc")


def _shaped_round(number: int, count: int) -> Instruction:
    side = "RS" if number % 2 else "WS"
    text = (
        "Ch 2 (does not count), dc in same st and in each st around, working 2 dc in each marked "
        "st and moving the marker up into the first of the two, sl st in top of first dc, turn."
    )
    return Instruction(f"Rnd {number} ({side})", text, f"{count} dc")


def _body_rounds() -> tuple[Block, ...]:
    rounds: list[Block] = []
    count = 126
    for number in range(3, 20):
        if number % 2:
            count += 4
            rounds.append(_shaped_round(number, count))
        else:
            rounds.append(_plain_round(number, count))
    return tuple(rounds)


def pattern() -> Document:
    """A skirt for one body, about four pages long."""
    blocks: tuple[Block, ...] = (
        Heading("At a glance"),
        Paragraph(
            "A skirt worked from the waist down in joined rounds that are turned, with a covered "
            "elastic at the waist and a picot edging. The counts are for a waist of 72 cm, a hip "
            "of 88.5 cm and 17.5 stitches and 9½ rounds in 10 cm of double crochet, washed and "
            "dried."
        ),
        Figure(
            "schematic",
            "The skirt laid flat: 36 cm wide at the waist, 46 cm at the hip 20 cm below, 47 cm at "
            "the hem; 43 cm long.",
            "Finished measurements, laid flat",
        ),
        Table(
            "Body and skirt, around",
            ("At", "Below the waist", "Body", "Skirt", "Ease"),
            (
                ("Waist", "0 cm", "72 cm", "72 cm", "0 cm"),
                ("High hip", "10 cm", "81.5 cm", "83.5 cm", "+2 cm"),
                ("Hip", "20 cm", "88.5 cm", "92.5 cm", "+4 cm"),
                ("Hem", "43 cm", "", "93.5 cm", ""),
            ),
        ),
        Note("check", "The high hip was not measured; 81.5 cm is estimated from waist and hip."),
        Heading("What you need"),
        Table(
            "Materials",
            ("What", "How much", "For"),
            (
                (
                    "Cotton yarn, category 3 (light), 120 m in 50 g",
                    "410–465 m",
                    "4 balls of 50 g with the usual margin",
                ),
                ("Crochet hook", "3.75 mm", "skirt"),
                ("Crochet hook", "2.25 mm", "edging"),
                ("Elastic, 20 mm wide", "66 cm", "waist, 2 cm of it for the lap"),
                ("Stitch markers", "4", "shaping points"),
            ),
        ),
        Heading("Abbreviations", 2),
        Terms(
            (
                ("ch", "chain"),
                ("dc", "double crochet"),
                ("fdc", "foundation double crochet: chain and first round in one"),
                ("rnd", "round"),
                ("RS, WS", "right side, wrong side"),
                ("sc", "single crochet"),
                ("sl st", "slip stitch"),
                ("st(s)", "stitch(es)"),
                ("picot", "ch 3, sl st through the two front loops at the foot of the chain"),
            )
        ),
        Heading("How to work it"),
        Heading("Waist", 3),
        Bullets(
            (
                "The seam stands at centre back.",
                "Ch 2 at the start of a round does not count as a stitch; the first dc goes into "
                "the same stitch.",
                "Every round is joined and turned, so right and wrong side alternate.",
            )
        ),
        Instruction(
            "Foundation",
            "Starting with ch 3, work 126 fdc; join with sl st without twisting.",
            "126 fdc",
        ),
        Instruction(
            "Rnd 2 (WS)", INTO_EACH + " Place a marker in sts 16, 48, 79 and 111.", "126 dc"
        ),
        Heading("From waist to hip", 2),
        Paragraph("Four stitches are added on round 3, then every 2nd round, eight more times."),
        *_body_rounds(),
        Note(
            "hint",
            "Round 19 lies 20 cm below the waist. Measure around now: 92.5 cm, not stretched.",
        ),
        Heading("From hip to hem", 2),
        Instruction(
            "Rnds 20–39",
            "Rep the last plain round twenty more times, moving no marker.",
            "162 dc each",
        ),
        Instruction(
            "Rnd 40 (WS)",
            "Ch 2 (does not count), 2 dc in first st, dc in each of next 80 sts, 2 dc in next st, "
            "dc in each st to end, sl st in top of first dc, do not turn.",
            "164 dc",
        ),
        Heading("Edging", 2),
        Instruction(
            "Rnd 41 (RS)",
            "With the 2.25 mm hook, ch 1, *sc in next 4 sts, picot, sc in same st, picot, sc in "
            "same st, picot, ch 1; rep from * around, sl st in first sc. Fasten off.",
            "41 repeats",
        ),
        Heading("Finishing"),
        Note(
            "caution",
            "On a child's skirt no cord may be long enough to catch; local rules decide how long.",
        ),
        Paragraph("Weave in the ends. Wash, lay flat to the measurements above, let dry."),
    )
    return Document(
        title="Sunday skirt — waist 72 cm",
        subtitle="For dancer 3, in the main yarn as it is after washing",
        language="en",
        blocks=blocks,
        drawings=(("schematic", SCHEMATIC),),
        footer="US terms. Lengths in cm.",
        author="The dance group",
    )
