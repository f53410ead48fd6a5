"""The text of a design that has nothing that it does not need, to begin with."""

from __future__ import annotations

LEAST = """\
# The least that can be drafted: a straight skirt, held by elastic. Change what you like.
format = "frogless-design/1"
title = "My skirt"
summary = ""

[garment]
kind = "skirt"
length = "55 cm"

[work]
stitch = "double_crochet"
rounds = "joined and turned"
turning_chain = 3

[start]
with = "foundation_double_crochet"
girth = "max(waist_girth + 2 cm, hip_girth / 1.15)"

[[section]]
name = "waist to hip"
shape = "shaped"
to = "hip"
ease = "6 cm"
ease_allowed = ["2 cm", "10 cm"]

[[section]]
name = "hip to hem"
to = "hem"

[waist]
kind = "covered elastic"
percent = 95
width = "6 mm"
stitches_in_each = 1
"""
