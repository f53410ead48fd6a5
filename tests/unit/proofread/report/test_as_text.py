"""The report on a terminal."""

from __future__ import annotations

from dataclasses import replace

import pytest
from proofread_reports import PROVEN, REPORT, TEXT, span

from frogless.proofread.as_text import told
from frogless.proofread.findings import Finding, NotUnderstood
from frogless.proofread.words.model import Terms
from frogless.proofread.work.model import Assumption

GOLDEN = """\
line 7      CROWN, Rnd 3: "20 sc"
            works out to: 18 sc
            The repeat is worked 6 times and makes 3 each time. Two stitches too many are stated.
            [count, certain]

line 8      CROWN, Rnd 4, size S: "Sc in next 10 (12) sts"
            says: 10 sts; works out to: 18 sts
            8 stitches of Rnd 3 are left over.
            [too-few, likely]

line 8      not understood: Rnd 4: "as you hear the drum"; perhaps a remark

line 5      assumed: "a ring" is an adjustable ring.
            assumed: The work is not turned between rounds.

file        Read as it stands.
terms       US, guessed: "sc" (line 5)
sizes       S, M
left out    gauge
understood  87.7 % of the letters of the instructions
result      2 places where it does not add up; 3 of 4 rows worked out, not Rnd 4
"""


def test_report_is_told_line_by_line() -> None:
    """Findings, what is left open, and the sum of it, each with its place."""
    assert told(REPORT, remarks=["Read as it stands."]) == GOLDEN


def test_pattern_that_is_proven_says_so() -> None:
    """With the terms that it was read in, which may be wrong all the same."""
    text = told(PROVEN)
    assert text.startswith("terms ")
    assert text.endswith("result      everything adds up; 2 rows worked out\n")


def test_row_that_could_not_be_worked_out_is_no_proof() -> None:
    """Though nothing was found in it."""
    report = replace(REPORT, findings=(), not_understood=())
    assert not report.proven
    assert "not proven, though nothing was found; 3 of 4 rows worked out, not Rnd 4" in told(report)


@pytest.mark.parametrize("columns", [60, 80, 100])
def test_no_line_is_wider_than_the_terminal(columns: int) -> None:
    """However long the words are that are quoted."""
    long = Finding("count", span(TEXT.strip()), "20 sc " * 30, "18 sc", "Why? " * 90, "possible")
    text = told(replace(REPORT, findings=(long,)), columns)
    assert max(map(len, text.splitlines())) <= columns
    assert "…" in text


def test_size_that_was_asked_for_is_named() -> None:
    """So that nobody takes one size for all."""
    assert "sizes       S, M; M was asked for\n" in told(REPORT, size="M")


def test_sizes_without_names_are_told_as_such() -> None:
    """So that nobody looks for them in the pattern."""
    script = replace(REPORT.script, sizes=("1", "2"), sizes_at=None)
    assert "sizes       1, 2 (the pattern names none)\n" in told(replace(REPORT, script=script))


def test_words_between_rows_say_so() -> None:
    """They are mostly remarks, and matter less than those of a row."""
    between = replace(REPORT.not_understood[0], row="")
    assert "not understood: between rows: " in told(replace(REPORT, not_understood=(between,)))


@pytest.mark.parametrize(
    ("terms", "says"),
    [
        (Terms("uk"), "UK, as asked for"),
        (Terms("uk", declared="us"), "UK, as asked for"),
        (Terms("uk", declared="uk"), "UK, as the pattern says"),
    ],
)
def test_terms_say_where_they_come_from(terms: Terms, says: str) -> None:
    """From whoever asks, or from the pattern."""
    assert f"terms       {says}\n" in told(replace(REPORT, terms=terms))


def test_share_is_whole_only_when_everything_is_understood() -> None:
    """99.99 % is not 100 %."""
    assert "understood  99.9 % of" in told(replace(REPORT, understood=0.9999))
    assert "understood  100 % of" in told(PROVEN)


def test_words_that_are_a_finding_are_not_told_twice() -> None:
    """The check for what is unclear finds them; left out, they are listed all the same."""
    (open_,) = REPORT.not_understood
    found = Finding("unclear", open_.span, "as you hear the drum", "", "Say it anew.", "likely")
    assert told(replace(REPORT, findings=(found,))).count("not understood:") == 1
    assert "not understood:" in told(replace(REPORT, findings=()))


def test_what_is_unclear_is_told_once_for_a_row() -> None:
    """All words of it together, and what follows from them where it is met first."""
    row = replace(REPORT.told[3], span=span("Sc in next 10 (12) sts as you hear the drum"))
    drum, sts = span("as you hear the drum"), span("sts as")
    found = tuple(
        Finding("unclear", one, "drum", "not understood", "Say it anew.", "likely", row="Rnd 4")
        for one in (sts, drum)
    )
    text = told(
        replace(
            REPORT,
            told=(*REPORT.told[:3], row),
            findings=found,
            not_understood=(NotUnderstood(sts, "", "Rnd 4"), NotUnderstood(drum, "", "Rnd 4")),
        )
    )
    assert text.startswith('line 8      Rnd 4: not understood: "sts as", "as you hear the drum"\n')
    assert text.count("Say it anew.") == 1
    assert "not proven: 2 places that were not understood" in text


def test_the_same_assumption_is_told_once() -> None:
    """With the lines that it was made for."""
    places = [span("6 sc in a ring"), span("2 sc in each"), span("2 sc in next")]
    text = told(
        replace(REPORT, assumptions=tuple(Assumption("as is the custom", p) for p in places))
    )
    assert "line 5      assumed: as is the custom (also lines 6, 7)\n" in text
