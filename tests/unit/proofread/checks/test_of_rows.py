"""The checks of rows and words: each finds its example, and nothing once it is mended."""

from __future__ import annotations

from textwrap import dedent

import pytest

from frogless.proofread.checks.of_rows import OF_ROWS
from frogless.proofread.checks.of_words import OF_WORDS
from frogless.proofread.checks.table import BY_NAME
from frogless.proofread.findings import Finding
from frogless.proofread.run import proofread

#: What is to be changed in the example of each check to make it right.
MENDED = {
    "row-count": ("(14 sc)", "(12 sc)"),
    "row-fills": ("sc in next 22 sts, turn. (22 sc)", "sc in next 20 sts, turn. (20 sc)"),
    "repeat-comes-out": ("next 3 sts", "next 2 sts"),
    "place-missing": ("2 sc in next ch-2 sp", "2 sc in next st"),
    "count-by-kind": (
        "across, turn. (20 dc)\nRow 2: Ch 1, sc",
        "across, turn. (20 dc)\nRow 2: Ch 3, dc",
    ),
    "group-shape": ("3 dc, sc)", "3 dc, hdc, sc)"),
    "gaps-alike": (
        "sc in next 73 sts, turn, leave rem sts unworked. (73 sc)",
        "sc in next 74 sts, turn, leave rem sts unworked. (74 sc)",
    ),
    "said-twice": (", 2 sc in each st around.", "."),
    "row-range": ("(4 rnds)", "(6 rnds)"),
    "repeated-rows": ("Rep Row 12", "Rep Row 2"),
    "too-long": ("ch 99999] 99999 times", "ch 9] 6 times"),
    "size-brackets": ("Ch 21 (25, 29, 33)", "Ch 21 (25, 29)"),
    "sizes-in-order": ("92", "29"),
    "row-numbers": ("Row 4", "Row 3"),
    "turning-chain": ("Ch 2 (", "Ch 3 ("),
    "joining": ("ch-2", "ch-3"),
    "sides": ("Row 4 (RS)", "Row 4 (WS)"),
    "edge-drift": ("", ""),
    "stitch-odd": ("2 dc", "2 sc"),
    "unclear": ("Frobble the wibble", "2 sc"),
    "doubtful-reading": ("rep from * 5 times", "rep from * 5 times more"),
    "undefined-abbreviation": ("st = stitch", "st = stitch\nhdc = half double crochet"),
    "unused-abbreviation": ("dtr = double treble crochet\n", ""),
    "mixed-terms": ("sc in each st across. (20 dc)", "dc in each st across. (20 dc)"),
}
CHECKS = (*OF_ROWS, *OF_WORDS)


def found(text: str) -> tuple[Finding, ...]:
    """What the checks of rows and words find."""
    names = {check.name for check in CHECKS}
    return tuple(each for each in proofread(text).findings if each.kind in names)


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_check_finds_its_example(check) -> None:  # noqa: ANN001
    """One finding, and of that kind only."""
    (only,) = found(dedent(check.example))
    assert only.kind == check.name
    assert only.says
    assert only.works_out_to
    assert only.hint


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_check_is_silent_once_its_example_is_mended(check) -> None:  # noqa: ANN001
    """With the one slip put right, there is nothing."""
    old, new = MENDED[check.name]
    text = dedent(check.example)
    if check.name == "edge-drift":
        for count in (90, 89, 88):
            text = text.replace(f"({count} dc)", "(91 dc)").replace(
                f"next {count - 1} sts", "next 90 sts"
            )
    assert not found(text.replace(old, new, 1))


def test_names_are_plain_and_no_two_alike() -> None:
    """Words joined by hyphens, by which a check is silenced."""
    names = [check.name for check in CHECKS]
    assert len(set(names)) == len(names)
    assert all(name.replace("-", "").isalpha() and name == name.lower() for name in names)
    assert set(names) <= BY_NAME.keys()


def test_silenced_check_says_nothing() -> None:
    """Silencing leaves the others alone."""
    text = dedent(BY_NAME["row-count"].example)
    assert not proofread(text, silenced=("row-count",)).findings
