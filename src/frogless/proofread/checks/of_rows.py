"""The checks of a pattern's rows, in a table."""

from __future__ import annotations

from frogless.proofread.checks.model import Check
from frogless.proofread.checks.rows import (
    arithmetic,
    chains,
    groups,
    heights,
    numbering,
    prose,
    reading,
    rest,
    sizes,
    twice,
)
from frogless.proofread.checks.rows.bars import bars
from frogless.proofread.checks.rows.drift import edge_drift
from frogless.proofread.checks.rows.gaps import gaps
from frogless.proofread.checks.rows.odd import stitch_odd
from frogless.proofread.checks.rows.sides import sides

OF_ROWS: tuple[Check, ...] = (
    Check(
        "row-count",
        "a row makes as many stitches as it states",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: 2 sc in each st around. (14 sc)
        """,
        lambda reading: (
            *arithmetic.row_count(reading),
            *rest.drawn_together(reading),
            *rest.changed_often(reading),
            *rest.along_rows(reading),
            *prose.said_in_words(reading),
        ),
    ),
    Check(
        "row-fills",
        "a row works into all stitches of the row below, and into no more than there are",
        """
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2: Ch 1, sc in next 22 sts, turn. (22 sc)
        """,
        lambda reading: (
            *arithmetic.row_fills(reading),
            *arithmetic.slips_pass(reading),
            *rest.after_the_end(reading),
        ),
    ),
    Check(
        "repeat-comes-out",
        "a repeat fills the row without a rest",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: *Sc in next 3 sts, 2 sc in next st; rep from * around.
        """,
        arithmetic.repeat_comes_out,
    ),
    Check(
        "place-missing",
        "what a row is worked into is there",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: Ch 1, 2 sc in next ch-2 sp, sc in next 5 sts.
        """,
        lambda reading: (*arithmetic.place_missing(reading), *rest.passed_by_name(reading)),
    ),
    Check(
        "count-by-kind",
        "counts by kind of stitch name what is made",
        """
        Ch 22.
        Row 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)
        Row 2: Ch 1, sc in each st across, turn. (20 dc)
        """,
        lambda reading: (*arithmetic.count_by_kind(reading), *rest.squares_of_mesh(reading)),
    ),
    Check(
        "row-range",
        "a range of rows stands for as many as it says to work",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: 2 sc in each st around. (12 sc)
        Rnds 3-8 (4 rnds): Sc in each st around. (12 sc)
        """,
        arithmetic.row_range,
    ),
    Check(
        "repeated-rows",
        "rows that are to be repeated are there and fit onto what they meet",
        """
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2: Ch 1, sc in each st across, turn. (20 sc)
        Row 3: Rep Row 12.
        """,
        lambda reading: (*arithmetic.repeated_rows(reading), *arithmetic.these_rows(reading)),
    ),
    Check(
        "too-long",
        "no row has more stitches than any garment",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: [Sc in next st, ch 99999] 99999 times.
        """,
        arithmetic.too_long,
    ),
    Check(
        "size-brackets",
        "a list in brackets has a number for each size",
        """
        Sizes: S (M, L)
        Ch 21 (25, 29, 33).
        Row 1: Sc in 2nd ch from hook and in each ch across, turn.
        """,
        sizes.size_brackets,
    ),
    Check(
        "sizes-in-order",
        "no size is smaller than the size before it where all others grow",
        """
        Sizes: S (M, L, XL)
        Ch 21 (25, 92, 33).
        Row 1: Sc in 2nd ch from hook and in each ch across, turn.
        """,
        sizes.sizes_in_order,
    ),
    Check(
        "row-numbers",
        "no row is missing, numbered twice, or numbered backwards",
        """
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2: Ch 1, sc in each st across, turn. (20 sc)
        Row 4: Ch 1, sc in each st across, turn. (20 sc)
        """,
        numbering.row_numbers,
    ),
    Check(
        "turning-chain",
        "turning chains count and are as long as in the other rows of their stitch",
        """
        Ch 22.
        Row 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)
        Row 2: Ch 3 (counts as dc), skip first st, dc in each st across, turn. (20 dc)
        Row 3: Ch 3 (counts as dc), skip first st, dc in each st across, turn. (20 dc)
        Row 4: Ch 3 (counts as dc), skip first st, dc in each st across, turn. (20 dc)
        Row 5: Ch 2 (counts as dc), skip first st, dc in each st across, turn. (20 dc)
        """,
        heights.turning_chain,
    ),
    Check(
        "joining",
        "rounds are joined to what they have, and all alike",
        """
        Rnd 1: 12 dc in magic ring; join with sl st to first dc. (12 dc)
        Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st to top of ch-2. (24 dc)
        """,
        chains.joining,
    ),
    Check(
        "sides",
        "right and wrong side follow the turning",
        """
        Ch 21.
        Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2 (WS): Ch 1, sc in each st across, turn. (20 sc)
        Row 3 (RS): Ch 1, sc in each st across, turn. (20 sc)
        Row 4 (RS): Ch 1, sc in each st across, turn. (20 sc)
        """,
        sides,
    ),
    Check(
        "edge-drift",
        "no edge gains or loses a stitch row after row",
        """
        Ch 93.
        Row 1: Dc in 4th ch from hook and in each ch across, turn. (91 dc)
        Row 2: Ch 3 (counts as dc), skip first st, dc in next 89 sts, turn. (90 dc)
        Row 3: Ch 3 (counts as dc), skip first st, dc in next 88 sts, turn. (89 dc)
        Row 4: Ch 3 (counts as dc), skip first st, dc in next 87 sts, turn. (88 dc)
        """,
        edge_drift,
    ),
    Check(
        "stitch-odd",
        "no single stitch of another kind stands in a piece of one stitch",
        """
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2: Ch 1, sc in next 9 sts, 2 sc in next st, sc in next 10 sts, turn. (21 sc)
        Row 3: Ch 1, sc in next 9 sts, 2 dc in next st, sc in next 11 sts, turn. (22 sts)
        Row 4: Ch 1, sc in each st across, turn. (22 sts)
        """,
        stitch_odd,
    ),
    Check(
        "group-shape",
        "groups in one place have the size that is said, and petals are alike on both sides",
        """
        Rnd 1: 8 sc in magic ring. (8 sc)
        Rnd 2: [(Sc, hdc, 3 dc, sc) in next st, sl st in next st] 4 times.
        """,
        lambda reading: (*groups.group_shape(reading), *bars(reading)),
    ),
    Check(
        "gaps-alike",
        "gaps of a row are bridged alike, and both edges are left alike",
        """
        Ch 85.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (84 sc)
        Row 2: Sl st in first 5 sts, ch 1, sc in next 73 sts, turn, leave rem sts unworked. (73 sc)
        """,
        gaps,
    ),
    Check(
        "said-twice",
        "no clause stands twice, one after the other, where once is enough",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: 2 sc in each st around, 2 sc in each st around. (12 sc)
        """,
        twice.said_twice,
    ),
    Check(
        "unclear",
        "every word of a row is understood",
        """
        Rnd 1: 6 sc in magic ring. (6 sc)
        Rnd 2: Frobble the wibble in each st around.
        """,
        reading.unclear,
    ),
    Check(
        "doubtful-reading",
        "nothing may be read in two ways where no count decides",
        """
        Row 1: Fsc 40, turn.
        Row 2: Ch 1, *sc in next 3 sts; rep from * 5 times, leave remaining sts unworked, turn.
        """,
        reading.doubtful_reading,
    ),
)  # fmt: skip
