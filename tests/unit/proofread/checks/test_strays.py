"""Stitches, chains, groups and words that are not like those around them."""

from __future__ import annotations

import pytest

from frogless.proofread.run import proofread

PLAIN = (
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\n"
    "Row 2: Ch 1, sc in each st across, turn. (20)\n"
    "Row 3: Ch 1, sc in each st across, turn. (20)\n"
    "Row 4: Ch 1, sc in each st across, turn. (20)\n"
)
DOUBLE = (
    "Ch 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\n"
    "Row 2: Ch 3 (counts as dc), skip first dc, dc in each dc across, turn. (20 dc)\n"
)
ROUNDS = (
    "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    "Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"
    "Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24)\n"
    "Fasten off, draw the tail through the last 24 sts.\n"
)


def told(text: str) -> list[tuple[str, int | None]]:
    """Kind and row of what is found."""
    return [(each.kind, each.number) for each in proofread(text).findings]


LISTED = (
    "Abbreviations: ch = chain, hdc = half double crochet, sc = single crochet, st = stitch\n\n"
    + PLAIN.replace("Row 3: Ch 1, sc", "Row 3: Ch 1, hdc")
)


@pytest.mark.parametrize("text", [PLAIN, DOUBLE, ROUNDS, LISTED])
def test_right_pattern_is_not_blamed(text: str) -> None:
    """The patterns that the slips below are planted in."""
    assert told(text) == []


@pytest.mark.parametrize(
    ("text", "old", "new", "found"),
    [
        (PLAIN, "Row 3: Ch 1, sc", "Row 3: Ch 1, hdc", ("stitch-odd", 3)),
        (PLAIN, "Row 3: Ch 1, sc", "Row 3: Ch 2, sc", ("turning-chain", 3)),
        (PLAIN, "hook and in each ch", "hook, dc in each ch", ("stitch-odd", 1)),
        (DOUBLE, "Ch 3 (counts", "Ch 4 (counts", ("turning-chain", 2)),
        (DOUBLE, "skip first dc, dc", "skip first dc, tr", ("count-by-kind", 2)),
        (DOUBLE, "skip first dc", "skip first sc", ("place-missing", 2)),
        (ROUNDS, "next 2 sts, 2 sc", "next 2 sts, 2 hdc", ("stitch-odd", 4)),
        (ROUNDS, "last 24 sts", "last 23 sts", ("row-count", 4)),
        (ROUNDS, "2 sc in each st around.", "2 sc in each st around, 2 sc in each st around.", ("said-twice", 2)),
    ],
)  # fmt: skip
def test_slip_is_found_at_its_row(text: str, old: str, new: str, found: tuple[str, int]) -> None:
    """One thing is changed, and the row is named."""
    assert old in text
    assert found in told(text.replace(old, new, 1))


def test_habit_of_two_rows_is_right() -> None:
    """Two chains before dc, wherever it is begun."""
    text = DOUBLE.replace("Ch 3 (counts", "Ch 2 (counts").replace("4th ch", "3rd ch")
    text = text.replace("Ch 22", "Ch 21")
    again = text.splitlines()[-1].replace("Row 2", "Row 3")
    assert told(f"{text}{again}\n") == []


def test_edging_of_another_stitch_is_right() -> None:
    """A last row of another stitch is meant."""
    text = DOUBLE + "Row 3: Ch 1, sc in each st across. (20 sc)\nFasten off.\n"
    assert told(text) == []


def test_shaping_after_the_end_has_nothing_left() -> None:
    """ "To end, sc2tog"."""
    text = PLAIN + "Row 5: Ch 1, sc in each st to end, sc2tog, turn. (19)\n"
    assert ("row-fills", 5) in told(text)


def test_row_without_the_chain_of_all_others_is_found() -> None:
    """The chain was forgotten."""
    rounds = "".join(
        f"Rnd {n}: Ch 1, sc in each st around, join with sl st to first sc. (20 sc)\n"
        for n in range(1, 6)
    )
    slip = rounds.replace("Rnd 3: Ch 1, sc", "Rnd 3: Sc")
    assert ("turning-chain", 3) in told("Ch 20, join with sl st to form a ring.\n" + slip)
