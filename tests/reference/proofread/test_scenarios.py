"""Scenarios worked by hand: edges that drift, brackets, repeats that do not come out, two readings,
two dialects, even spreads, things left over from the last pattern."""

from __future__ import annotations

import pytest
from reference.proofread.planted import told
from reference.proofread.worked_texts import BRACKETS, LISTS, STARS_UK, text_of

from frogless.proofread.findings import Finding, Report
from frogless.proofread.run import proofread
from frogless.rows.spread import even_spread


def flat(*counts: int, text: str = "dc in next st and in each st across") -> str:
    """Rows of double crochet, turned, whose turning chain counts, with these counts stated."""
    first = (
        f"Ch {counts[0] + 2}.\nRow 1: Dc in 4th ch from hook (skipped ch count as dc) and in each ch "
        f"across, turn. ({counts[0]} dc)\n"
    )
    return first + "".join(
        f"Row {n}: Ch 3 (counts as dc), {text}, turn. ({count} dc)\n"
        for n, count in enumerate(counts[1:], start=2)
    )


def of(report: Report, kind: str) -> Finding:
    """The one finding of a check."""
    found = [f for f in report.findings if f.kind == kind]
    assert len(found) == 1, told(report)
    return found[0]


def sentence(finding: Finding) -> str:
    """All that a finding says, in lower case."""
    return f"{finding.says}. {finding.works_out_to}. {finding.hint}".lower()


def test_an_edge_that_loses_one_in_every_row_is_named_with_its_cause() -> None:
    """E4: 91, 90, 89, 88: the top of the turning chain is not worked; both edges lean in."""
    drift = sentence(of(proofread(flat(91, 90, 89, 88)), "edge-drift"))
    assert "every row" in drift
    assert "turning chain" in drift
    assert "both" in drift


def test_an_edge_that_loses_one_in_every_second_row_leans_at_one_side() -> None:
    """E4: 91, 91, 90, 90, 89, 89."""
    drift = sentence(of(proofread(flat(91, 91, 90, 90, 89, 89)), "edge-drift"))
    assert "second row" in drift or "other row" in drift
    assert "one edge" in drift


def test_an_edge_that_gains_one_in_every_row_works_the_first_stitch_twice() -> None:
    """E4: the first stitch is worked although the chain already stands for it."""
    drift = sentence(of(proofread(flat(91, 92, 93, 94)), "edge-drift"))
    assert "first st" in drift


@pytest.mark.parametrize(
    "style", ["120 (132, 148, 160, 176, 196)", "120 (132, 148) [160, 176] {196}"]
)
def test_six_numbers_for_seven_sizes_are_found(style: str) -> None:
    """F4: the row is named, and how many numbers there are."""
    report = proofread(
        f"Sizes: 1 (2, 3, 4, 5, 6, 7)\n\nCh {style}, join.\n"
        "Rnd 1: Sc in each ch around. (120 (132, 148, 160, 176, 196, 212) sc)\n"
    )
    finding = of(report, "size-brackets")
    assert report.script.line(finding.span.start) == 3
    assert any(word in sentence(finding) for word in ("6 numbers", "six numbers"))
    assert any(word in sentence(finding) for word in ("7 sizes", "seven sizes"))


def test_repeat_that_does_not_fill_says_how_often_it_fits_and_from_what_it_would() -> None:
    """G1: 78/4 = 19.5; from 80 it gives 100."""
    report = proofread(
        "Ch 78; join.\nRnd 1: Sc in each ch around. (78 sts)\n"
        "Rnd 2: *Dc in next 3, 2 dc in next; rep from * around. (100 sts)\n"
    )
    said = " ".join(sentence(f) for f in report.findings if f.number == 2)
    assert {f.number for f in report.findings} == {2}, told(report)
    assert "19.5" in said or "19 1/2" in said
    assert "80" in said
    assert "100" in said


@pytest.mark.parametrize(("below", "as_groups"), [(24, False), (8, True)])
def test_two_readings_are_told_apart_by_the_row_below(below: int, as_groups: bool) -> None:
    """G2: one in each, it uses 24 and makes 24; 2 sc in one and 4 dc in the next, it uses 8."""
    report = proofread(
        f"Ch {below}; join.\nRnd 1: Sc in each ch around. ({below} sts)\n"
        "Rnd 2: (2 sc, 4 dc), repeat 4 times. (24 sts)\n"
    )
    assert told(report) == ()
    second = [row for row in report.reckoning.rows if row.number == 2]
    assert [(row.worked, row.consumed) for row in second] == [(24, below)]
    assert bool(report.assumptions) or not as_groups


def test_reading_that_fits_neither_way_is_found() -> None:
    """G2: on 10 stitches it is wrong, whichever is meant."""
    report = proofread(
        "Ch 10; join.\nRnd 1: Sc in each ch around. (10 sts)\n"
        "Rnd 2: (2 sc, 4 dc), repeat 4 times. (24 sts)\n"
    )
    assert {f.number for f in report.findings} == {2}, told(report)


def test_us_word_in_a_pattern_declared_uk_is_found_at_its_place() -> None:
    """G3: declared UK, contains sc."""
    report = proofread(
        "UK terms.\n\nMake 20 ch, ss to first ch.\nRound 1: 1 dc in each ch to end. 20 sts.\n"
        "Round 2: 1 sc in each st to end. 20 sts.\n"
    )
    finding = of(report, "mixed-terms")
    assert report.script.words(finding.span).lower() == "sc"
    assert report.script.line(finding.span.start) == 5


def test_three_chains_for_a_uk_double_crochet_are_suspicious() -> None:
    """G3: that is the height of a US double crochet."""
    report = proofread(
        "UK terms.\n\nMake 22 ch.\nRow 1: 1 dc in 4th ch from hook, 1 dc in each ch to end, turn.\n"
        "Row 2: 3 ch (counts as 1 dc), 1 dc in each st to end, turn. 20 sts.\n"
        "Row 3: 3 ch (counts as 1 dc), 1 dc in each st to end, turn. 20 sts.\n"
    )
    assert {f.kind for f in report.findings} & {"mixed-terms", "turning-chain"}, told(report)


@pytest.mark.parametrize("name", ["WC-S02 1", "WC-S04", "WC-D02", "WC-H04 M"])
def test_both_dialects_give_the_same_rows(name: str) -> None:
    """G3: what is said in US and in UK terms works the same places into the same stitches."""
    us, uk = (
        proofread(text_of(LISTS[name], style)).reckoning.rows for style in (BRACKETS, STARS_UK)
    )
    facts = [[(r.number, r.worked, r.consumed, dict(r.made)) for r in rows] for rows in (us, uk)]
    assert facts[0] == facts[1]


@pytest.mark.parametrize(("stated", "right"), [(194, True), (196, False)])
def test_increases_spread_evenly_add_up(stated: int, right: bool) -> None:
    """G4: 8 more than 186 are 194."""
    report = proofread(
        "Ch 186; join.\nRnd 1: Sc in each ch around. (186 sts)\n"
        f"Rnd 2: Inc 8 evenly. ({stated} sts)\n"
    )
    assert [(f.kind, f.number) for f in report.findings] == ([] if right else [("row-count", 2)])
    if not right:
        assert "194" in sentence(report.findings[0])


def test_even_spread_is_the_one_worked_by_hand() -> None:
    """G4: 23, 23, 23, 24 twice over, in any rotation, and 194 in all."""
    spread = even_spread(186, 8)
    assert sorted(spread) == [23] * 6 + [24] * 2
    assert spread.index(24, spread.index(24) + 1) - spread.index(24) == 4
    assert sum(spread) + 8 == 194


def test_what_is_left_over_from_the_last_pattern_is_found() -> None:
    """G5: hook 5 mm in the materials, 3.5 mm in the rows; a button that is never used."""
    report = proofread(
        "Materials\nWorsted wool\nHook: 5 mm\n1 button\n\nInstructions\n"
        "With 3.5 mm hook, ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc)\n"
        "Fasten off.\n"
    )
    assert report.script.line(of(report, "hook-differs").span.start) in {3, 7}
    assert report.script.line(of(report, "material-unused").span.start) == 4
