"""Rows that say the same share a line."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.rows.nodes import Row, Side
from frogless.write.fold import Line, Told, fold
from frogless.write.phrases import phrases


def told(
    number: int,
    side: Side = "RS",
    text: str = "Dc.",
    section: str = "",
    marks: tuple[int, ...] = (),
    count: str = "9 dc",
) -> Told:
    """A row that says `text`."""
    return Told(Row(number, side, section, (), 9, marks=marks), text, count)


def labels(*rows: Told, closed: bool = True) -> list[str]:
    """The labels of the folded lines."""
    return [line.label for line in fold(rows, closed, phrases())]


@pytest.mark.parametrize(
    ("sides", "expected"),
    [
        ("RS", ["Rnd 1 (RS)"]),
        ("RS WS", ["Rnds 1–2 (RS, WS)"]),
        ("RS WS RS WS", ["Rnds 1–4 (RS, WS in turn)"]),
        ("RS RS RS", ["Rnds 1–3 (RS)"]),
        ("RS WS WS", ["Rnds 1–2 (RS, WS)", "Rnd 3 (WS)"]),
        ("WS WS RS RS", ["Rnds 1–2 (WS)", "Rnds 3–4 (RS)"]),
    ],
)
def test_rows_fold_while_their_sides_are_steady(sides: str, expected: list[str]) -> None:
    """All the same, or in turn."""
    rows = [told(i, "WS" if s == "WS" else "RS") for i, s in enumerate(sides.split(), start=1)]
    assert labels(*rows) == expected


@pytest.mark.parametrize(
    "other",
    [
        told(2, text="Sc."),
        told(2, section="hem"),
        told(2, marks=(0,)),
        told(2, count="8 dc"),
        told(3),
    ],
)
def test_rows_that_differ_stay_apart(other: Told) -> None:
    """In text, section or count; shaping rows always; and rows with a gap between them."""
    assert len(labels(told(1), other)) == 2


def test_foundation_never_folds_and_is_called_so() -> None:
    """Even when the next row would say the same."""
    assert labels(told(0), told(1), told(2)) == ["Foundation (RS)", "Rnds 1–2 (RS)"]


def test_flat_pieces_have_rows() -> None:
    """Rounds are for closed ones."""
    assert labels(told(1), told(2), told(3, text="Sc."), closed=False) == [
        "Rows 1–2 (RS)",
        "Row 3 (RS)",
    ]


def test_line_keeps_numbers_text_and_count() -> None:
    """What a page needs to set it."""
    assert fold([told(4), told(5)], True, phrases()) == (
        Line(4, 5, "Rnds 4–5 (RS)", "Dc.", "9 dc"),
    )


def turned(*texts: str, **given: str) -> list[Told]:
    """Rows from 1 on, their sides in turn."""
    return [
        told(i, "RS" if i % 2 else "WS", text, **given)  # type: ignore[arg-type]
        for i, text in enumerate(texts, start=1)
    ]


def lines(*rows: Told) -> list[tuple[str, str]]:
    """Labels and texts of the lines."""
    return [(line.label, line.text) for line in fold(rows, False, phrases())]


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        ("abababab", [("Row 1 (RS)", "a"), ("Row 2 (WS)", "b"),
                      ("Rows 3–8 (RS, WS in turn)", "Rep rows 1 and 2 another 3 times.")]),
        ("abab", [("Row 1 (RS)", "a"), ("Row 2 (WS)", "b"), ("Row 3 (RS)", "a"),
                  ("Row 4 (WS)", "b")]),
        ("abcdabcdabcdx", [("Row 1 (RS)", "a"), ("Row 2 (WS)", "b"), ("Row 3 (RS)", "c"),
                           ("Row 4 (WS)", "d"),
                           ("Rows 5–12 (RS, WS in turn)", "Rep rows 1–4 another 2 times."),
                           ("Row 13 (RS)", "x")]),
        ("abcabcabc", [(f"Row {i} ({'RS' if i % 2 else 'WS'})", "abc"[(i - 1) % 3])
                       for i in range(1, 10)]),
        ("aaaaaa", [("Rows 1–6 (RS, WS in turn)", "a")]),
        ("aabaaabaaaba", [("Rows 1–2 (RS, WS)", "a"), ("Row 3 (RS)", "b"),
                          ("Row 4 (WS)", "a"),
                          ("Rows 5–12 (RS, WS in turn)", "Rep rows 1–4 another 2 times.")]),
        ("aabbaabbaabba", [("Rows 1–2 (RS, WS)", "a"), ("Rows 3–4 (RS, WS)", "b"),
                           ("Rows 5–12 (RS, WS in turn)", "Rep rows 1–4 another 2 times."),
                           ("Row 13 (RS)", "a")]),
    ],
)  # fmt: skip
def test_rows_that_come_in_turn_are_worked_again(
    texts: str, expected: list[tuple[str, str]]
) -> None:
    """Three times in all or more, each on its own side."""
    assert lines(*turned(*texts)) == expected


@pytest.mark.parametrize(
    "given", [{"marks": (0,)}, {"section": "hem"}, {"hook": 3.5}, {"number": 99}]
)
def test_rows_do_not_come_again_when_one_of_them_differs(given: dict[str, object]) -> None:
    """In its markers, section or hook; nor when a number is left out."""
    rows = turned(*"abababab")
    rows[5] = replace(rows[5], row=replace(rows[5].row, **given))  # type: ignore[arg-type]
    assert not any("Rep" in text for _, text in lines(*rows))


def test_rows_come_again_though_the_first_of_them_says_more() -> None:
    """That a turning chain counts is said once; the work is the same."""
    rows = [
        replace(row, text=f"{row.text} in full" if i < 2 else row.text, full=row.text)
        for i, row in enumerate(turned(*"abababab"))
    ]
    assert lines(*rows)[2][1] == "Rep rows 1 and 2 another 3 times."


def test_rounds_that_come_again_are_called_rounds() -> None:
    """And the line ends with the count of the last."""
    rows = [replace(each, count=each.text) for each in turned(*"ababab")]
    last = fold(rows, True, phrases())[-1]
    assert last == Line(3, 6, "Rnds 3–6 (RS, WS in turn)", "Rep rnds 1 and 2 another 2 times.", "b")


def test_rows_of_another_color_stay_apart() -> None:
    """They say the same, but are not worked the same."""
    a, b = told(1), replace(told(2, "WS"), colour="B")
    assert labels(a, b) == ["Rnd 1 (RS)", "Rnd 2 (WS)"]
    assert labels(replace(a, colour="B"), b) == ["Rnds 1–2 (RS, WS)"]
    assert a.work != replace(a, colour="B").work
