"""Slips that no count tells: gaps, edges, first and last stitches, the only chain of its kind."""

from __future__ import annotations

import pytest

from frogless.proofread.run import proofread

YOKE = (
    "Ch 61.\nRow 1: Sc in 2nd ch from hook and in each ch across. (60 sc)\n"
    "Row 2: Ch 3 (counts as dc), dc in next 14 sts, (dc, ch 2, dc) in next st, dc in next 14 sts, "
    "(dc, ch 2, dc) in next st, dc in last 29 sts. (62 dc, 2 ch-2 sps)\n"
    "Row 3: Ch 3 (counts as dc), dc in each dc to first ch-2 sp, ch 5, skip next 16 dc, "
    "dc in next dc, ch 5, skip next 8 dc, dc in each dc to end. (38 dc)\n"
)
VEST = (
    "Ch 61.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (60 hdc)\n"
    "Row 2: Ch 1, hdc in each st across, turn. (60 hdc)\n"
    "Row 3: Sl st in first 5 sts, ch 1, hdc in next 50 sts, turn, leave rem sts unworked. (50 hdc)\n"
    "Row 4: Ch 1, hdc in each st across, turn.\nRow 5: Ch 1, hdc in next 50 sts, turn. (50 hdc)\n"
)
SQUARE = (
    "Rnd 1: Ch 4, join to form a ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] "
    "3 times; join with sl st to top of ch-3. (12 dc, 4 ch-2 sps)\n"
    "Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, "
    "[(3 dc, ch 2, 3 dc) in next ch-2 sp] 3 times; join with sl st to top of ch-3. (24 dc, 4 ch-2 sps)\n"
    "Rnd 3: Ch 1, sc in each dc around, working 3 sc in each ch-2 sp; join. (36 sc)\n"
    "Rnd 4: Ch 1, *sc in next st, 2 dc in next st, sk next st; rep from * around; join with sl st to "
    "first sc. (12 sc, 24 dc)\n"
)


def _told(text: str) -> list[tuple[str, int | None]]:
    return [(each.kind, each.number) for each in proofread(text).findings]


@pytest.mark.parametrize("text", [YOKE, VEST, SQUARE])
def test_right_pattern_is_not_blamed(text: str) -> None:
    """The patterns that the slips below are planted in."""
    assert _told(text) == []


@pytest.mark.parametrize(
    ("text", "old", "new", "found"),
    [
        (YOKE, "ch 5, skip next 16", "skip next 16", ("gaps-alike", 3)),
        (YOKE, "dc in next dc, ch 5, skip next 8", "ch 5, skip next 9", ("gaps-alike", 3)),
        (YOKE, "first ch-2 sp, ch", "first ch-2 sp, ch 5, dc in next dc, ch", ("gaps-alike", 3)),
        (VEST, "first 5 sts", "first 6 sts", ("gaps-alike", 3)),
        (VEST, "5 sts, ch 1, hdc", "5 sts, hdc", ("turning-chain", 3)),
        (VEST, "each st across, turn.\n", "each st to last 2 sts, turn.\n", ("row-fills", 5)),
        (SQUARE, "next 2 dc and", "next 1 dc and", ("row-fills", 2)),
        (SQUARE, "each dc around,", "each dc to last 2 sts,", ("row-count", 3)),
        (SQUARE, "first sc. (12", "first dc. (12", ("joining", 4)),
        (SQUARE, "Ch 3 (counts as dc), (", "Ch 3 (counts as 2 dc), (", ("turning-chain", 2)),
    ],
)  # fmt: skip
def test_slip_is_found_at_its_row(text: str, old: str, new: str, found: tuple[str, int]) -> None:
    """One thing is changed, and the row is named."""
    assert old.lower() in text.lower()
    at = text.lower().rindex(old.lower()) if "counts" in old else text.lower().index(old.lower())
    assert found in _told(text[:at] + new + text[at + len(old) :])


def test_row_without_a_place_for_its_last_stitch_is_told() -> None:
    """A single row stitch of another name for the last stitch."""
    text = "Row 1: Fsc 20, turn. (20 sc)\nRow 2: Ch 1, sc in each st to end, with the last sc in the last st."
    assert ("stitch-odd", 2) in _told(text.replace("last sc", "last dc"))


def test_edging_of_one_stitch_has_it_in_its_corners() -> None:
    """Corners of another stitch than the sides are looked at."""
    text = (
        "Row 1: Fsc 20, turn. (20 sc)\nRnd 1: Ch 1, sc evenly around, 3 sc in each corner, join.\n"
    )
    assert ("stitch-odd", 1) in _told(text.replace("3 sc", "3 hdc"))


def test_these_rows_are_those_since_the_last_repeat() -> None:
    """A decrease and two plain rounds are three."""
    text = (
        "Ch 60, join.\nRnd 1: Ch 1, sc in each ch, join. (60)\nRnd 2: Ch 1, sc in each st, join.\n"
        "Rep Rnd 2 until piece is 10 cm long.\n"
        "Dec rnd: Ch 1, sc2tog, sc to last 2 sts, sc2tog, join. (58)\nWork 2 rnds plain.\n"
        "Rep these 3 rnds 2 times more. (54)\n"
    )
    assert ("repeated-rows", None) not in _told(text)
    assert ("repeated-rows", None) in _told(text.replace("these 3", "these 4"))


def test_stitches_skipped_for_the_neck_leave_the_other_shoulder() -> None:
    """62 less 14 and 34 are 14."""
    text = (
        "Row 1: Fsc 62, turn. (62 sc)\n"
        "Next row: Ch 1, sc in first 14 sts, turn, leave rem sts unworked. (14 sc)\nFasten off.\n"
        "Skip next 34 sts for the neck and join yarn in the next st.\n"
        "Next row: Ch 1, sc in same st and in each st across. (14 sc)\nFasten off.\n"
    )
    assert _told(text) == []
    assert _told(text.replace("34 sts", "33 sts")) == [("row-count", None)]


def test_round_is_joined_to_the_top_of_what_its_chain_stands_for() -> None:
    """Of 4 chains that stand for dc and ch 1 the third is the top."""
    text = "Rnd 1: Ch 4 (counts as dc, ch 1), [dc, ch 1] 7 times in magic ring; join to 3rd ch of ch-4. (8 dc)\n"
    assert _told(text) == []
    assert ("joining", 1) in _told(text.replace("3rd", "2nd"))


SHELLS = (
    "Shell = 5 dc in one stitch\nCh 56.\n"
    "Row 1: Sc in 2nd ch from hook, *sk 2 ch, shell in next ch, sk 2 ch, sc in next ch; rep from * "
    "across, turn. (9 shells, 10 sc)\n"
    "Row 2: Ch 5 (counts as dc and ch 2), sk 2 dc, sc in next dc, ch 2, dc in next sc, *ch 2, sk 2 dc, "
    "sc in next dc, ch 2, dc in next sc; rep from * across, turn. (10 dc, 9 sc, 18 ch-2 sps)\n"
)
EDGED = (
    "Row 1: Fsc 37, turn. (37 sc)\n"
    "Row 2: Ch 4 (counts as dc and ch 1), dc in same st, *sk 3 sts, (dc, ch 2, dc) in next st; rep from "
    "* to last 4 sts, sk 3 sts, (dc, ch 1, dc) in last st, turn.\n"
)
MESH = (
    "Row 1: Fsc 21, turn. (21 sc)\n"
    "Row 2: Ch 3 (counts as dc), dc in next st, *ch 2, sk 2 sts, dc in next 2 sts; rep from * to last 3 "
    "sts, ch 1, sk 1 st, dc in last 2 sts, turn.\n"
)


@pytest.mark.parametrize(
    ("text", "old", "new", "kind"),
    [
        (SHELLS, "*ch 2, sk 2 dc", "*ch 2, sk 3 dc", "row-fills"),
        (EDGED, "dc in same st, ", "", "group-shape"),
        (EDGED, "(dc, ch 1, dc)", "(dc, ch 1, hdc)", "group-shape"),
        (MESH, "*ch 2", "*ch 3", "group-shape"),
        (SQUARE, "next 2 dc and", "next 3 dc and", "row-fills"),
    ],
)
def test_lace_is_alike_throughout(text: str, old: str, new: str, kind: str) -> None:
    """A shell is entered where the others are, a bar is as long as what it passes over."""
    assert _told(text) == []
    assert kind in {each for each, _ in _told(text.replace(old, new, 1))}


def test_stitches_along_the_ends_of_rows_suit_their_number() -> None:
    """72 along 72 rows, and not along 27."""
    text = (
        "Row 1: Fsc 9, turn. (9 sc)\nRow 2: Ch 1, sc in each st across, turn. (9 sc)\n"
        "Repeat Row 2 until there are 72 rows.\n"
        "Rnd 1: Ch 1, work 72 sc evenly around the edge of the band, join. (72 sc)\n"
    )
    assert _told(text) == []
    assert _told(text.replace("72 rows", "27 rows")) == [("row-count", 1)]
