"""Rows that say the same share a line."""

from __future__ import annotations

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
