"""Turning chains, joins and sides that are unlike those of the other rows."""

import pytest

from frogless.proofread.run import proofread

BEGIN = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
ROUND = "Rnd 1: 6 sc in magic ring; join with sl st to first sc. (6 sc)\n"


def _found(text: str, kind: str) -> list[tuple[str, str]]:
    return [(each.row, each.certainty) for each in proofread(text).findings if each.kind == kind]


def _rows(*starts: str) -> str:
    return BEGIN + "".join(
        f"Row {number}: {start}, hdc in each st across, turn. (20 hdc)\n"
        for number, start in enumerate(starts, 2)
    )


def test_chain_that_is_longer_than_all_others_is_told() -> None:
    """Four rows of hdc begin with 2 chains, and one with 3."""
    text = _rows(*["Ch 2 (does not count as a st)"] * 4, "Ch 3 (does not count as a st)")
    assert _found(text, "turning-chain") == [("Row 6", "likely")]


def test_chain_that_counts_in_one_row_only_is_told() -> None:
    """It is said to count once, and not to count elsewhere."""
    text = _rows(*["Ch 2 (does not count as a st)"] * 3, "Ch 2 (counts as hdc)")
    assert ("Row 5", "likely") in _found(text, "turning-chain")


def test_single_chain_that_counts_in_one_row_is_told_there() -> None:
    """It changes neither the foundation nor the rows after it."""
    chains = ["Ch 1 (counts as hdc)", "Ch 1", "Ch 1", "Ch 1"]
    text = _rows(*chains).replace("hdc", "sc")
    assert [(each.row, each.kind) for each in proofread(text).findings] == [
        ("Row 2", "turning-chain")
    ]


def test_low_chain_throughout_is_the_designer_s_way() -> None:
    """Chains of 2 in every row of dc are a habit, not a slip."""
    text = _rows(*["Ch 2 (does not count as a st)"] * 4).replace("hdc", "dc")
    assert _found(text, "turning-chain") == []


def test_chain_before_a_skip_only_leads_up() -> None:
    """An edging of shells begins with one chain, however tall the rows before it are."""
    text = (
        "Ch 12, join.\nRnd 1: Ch 3 (counts as dc), dc in each remaining ch around, join. (12 dc)\n"
    )
    text += "Rnds 2-4: Ch 3 (counts as dc), dc in each st around, join. (12 dc)\n"
    edging = (
        "*sk next st, 5 dc in next st, sk next st, sl st in next st; rep from * around, join.\n"
    )
    assert _found(f"{text}Rnd 5: Ch 1, {edging}", "turning-chain") == []
    decrease = "Ch 2 (does not count as a st), dc2tog, dc in next 10 sts, join. (11 dc)\n"
    assert _found(f"{text}Rnd 5: {decrease}", "turning-chain") == []
    cluster = "Ch 1, *cluster in next st, ch 1, sk next st; rep from * around, join. (6 clusters)\n"
    assert _found(f"{text}Rnd 5: {cluster}", "turning-chain") == []
    mesh = "Ch 4, dc in same st, *ch 1, sk 1, dc in next st; rep from * to last st, ch 2, dc in last st.\n"
    assert _found(f"{text}Rnd 5: {mesh}", "turning-chain") == []


@pytest.mark.parametrize(
    ("join", "found"),
    [
        ("join with sl st to first sc", []),
        ("join with sl st to first st", []),
        ("join", []),
        ("join with sl st to first dc", [("Rnd 2", "likely")]),
        ("join with sl st to top of ch-3", [("Rnd 2", "certain")]),
    ],
)
def test_join_goes_into_what_the_round_has(join: str, found: list[tuple[str, str]]) -> None:
    """A round of sc that begins with a chain of 1 has neither a dc nor the top of a chain of 3."""
    text = ROUND + f"Rnd 2: Ch 1, 2 sc in each st around; {join}. (12 sc)\n"
    assert _found(text, "joining") == found
    assert _found(text.replace("1, 2 sc in each st", "1, BLO 2 sc in each st"), "joining") == found


def test_slip_stitch_that_leads_on_joins_nothing() -> None:
    """It goes to a stitch of the round below."""
    text = "Rnd 1: 12 dc in magic ring; join with sl st to first dc. (12 dc)\n"
    text += "Rnd 2: Sl st to first dc, ch 1, sc in same st and in next 11 sts; join to first sc. (12 sc)\n"
    assert _found(text, "joining") == []


def test_ring_before_the_turning_chain_is_no_turning_chain() -> None:
    """The chain that is joined to a ring is not the one whose top is joined to."""
    text = (
        "Rnd 1: Ch 4, join with sl st to form a ring. Ch 3 (counts as dc), 11 dc in ring; "
        "join with sl st to top of ch-3. (12 dc)\n"
    )
    assert _found(text, "joining") == []


def test_round_that_alone_is_not_joined_may_be_a_slip() -> None:
    """All others are."""
    rounds = [f"Rnd {n}: Ch 1, sc in each st around; join. (6 sc)\n" for n in range(2, 8)]
    rounds[2] = rounds[2].replace("; join", "")
    assert _found(ROUND + "".join(rounds), "joining") == [("Rnd 4", "possible")]


def test_spiral_is_joined_nowhere() -> None:
    """Rounds that all go on without a join are right."""
    rounds = [f"Rnd {n}: Sc in each st around. (6 sc)\n" for n in range(2, 8)]
    assert _found("Rnd 1: 6 sc in magic ring. (6 sc)\n" + "".join(rounds), "joining") == []


def _sided(*sides: str) -> str:
    return BEGIN.replace("Row 1", f"Row 1 ({sides[0]})") + "".join(
        f"Row {number} ({side}): Ch 1, sc in each st across, turn. (20 sc)\n"
        for number, side in enumerate(sides[1:], 2)
    )


def test_sides_alternate_in_turned_rows() -> None:
    """RS, WS, RS, WS is right; the row that breaks it is told, once."""
    assert _found(_sided("RS", "WS", "RS", "WS", "RS"), "sides") == []
    assert _found(_sided("RS", "WS", "RS", "WS", "WS"), "sides") == [("Row 5", "likely")]


def test_side_stays_in_rounds_that_are_not_turned() -> None:
    """Joined rounds without a turn are all worked from one side."""
    rounds = [f"Rnd {n} (RS): Ch 1, sc in each st around; join. (6 sc)\n" for n in range(2, 7)]
    text = ROUND.replace("Rnd 1", "Rnd 1 (RS)") + "".join(rounds)
    assert _found(text, "sides") == []
    assert _found(text.replace("Rnd 6 (RS)", "Rnd 6 (WS)"), "sides") == [("Rnd 6", "likely")]
