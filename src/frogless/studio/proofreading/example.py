"""A pattern with three errors in it, to try the room on."""

from __future__ import annotations

NAME = "Dancer’s wrist pouch, with three errors"
TEXT = """\
Dancer's Wrist Pouch

A little pouch for the key and the coins, worn at the wrist while the band plays.

Written in US terms.

ABBREVIATIONS
ch = chain
rep = repeat
rnd = round
sc = single crochet
sc2tog = single crochet 2 together
sl st = slip stitch
sp = space
st(s) = stitch(es)

NOTES
The pouch is worked in a spiral from the middle of the base; do not join the rounds.

INSTRUCTIONS
Rnd 1: 6 sc in magic ring. (6 sts)
Rnd 2: 2 sc in each st around. (12 sts)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sts)
Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (25 sts)
Rnd 5: *Sc in next 3 sts, 2 sc in next st; rep from * around. (30 sts)
Rnd 6: *Sc in next 4 sts, 2 sc in next st; rep from * around. (36 sts)
Rnds 7-10: Sc in each st around. (36 sts)
Rnd 12: *Sc in next 7 sts, sc2tog; rep from * around. (32 sts)
Rnd 13: *Ch 1, skip next st, sc in next 3 sts; rep from * around. (24 sc, 8 ch-1 sps)
Rnd 14: Sc in each sc and in each ch-1 sp around. (32 sts)
Rnd 15: *Sc in next 5 sts, sc2tog; rep from * around. (28 sts)
Sl st in next st. Fasten off and weave in the ends.

Draw a ribbon through the chain spaces.
"""
"""Rnd 4 makes 24; there is no Rnd 11; the repeat of Rnd 15 does not come out over 32 (it needs 6 sc)."""
