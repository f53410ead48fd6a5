"""The checks of a pattern's words, in a table."""

from __future__ import annotations

from frogless.proofread.checks.model import Check
from frogless.proofread.checks.words.abbreviations import (
    undefined_abbreviation,
    unused_abbreviation,
)
from frogless.proofread.checks.words.terms import mixed_terms

OF_WORDS: tuple[Check, ...] = (
    Check(
        "undefined-abbreviation",
        "every abbreviation that the rows use is in the list",
        """
        Abbreviations
        ch = chain
        sc = single crochet
        st = stitch

        Instructions
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
        Row 2: Ch 2, hdc in each st across. (20 hdc)
        """,
        undefined_abbreviation,
    ),
    Check(
        "unused-abbreviation",
        "every abbreviation of the list is used",
        """
        Abbreviations
        ch = chain
        dtr = double treble crochet
        sc = single crochet

        Instructions
        Ch 21.
        Row 1: Sc in 2nd ch from hook and in each ch across. (20 sc)
        """,
        unused_abbreviation,
    ),
    Check(
        "mixed-terms",
        "US and UK terms are not mixed",
        """
        Written in UK terms.

        Ch 21.
        Row 1: Dc in 2nd ch from hook and in each ch across, turn. (20 dc)
        Row 2: Ch 1, sc in each st across. (20 dc)
        """,
        mixed_terms,
    ),
)
