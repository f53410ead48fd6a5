"""Formulas as a maker reads them."""

from __future__ import annotations

import pytest

from frogless.units import Units
from frogless.write.formula import readable
from frogless.write.phrases import phrases


@pytest.mark.parametrize(
    ("note", "units", "expected"),
    [
        ("waist_girth", "cm", "waist"),
        ("hem_girth: 1.35 * hip_girth", "cm", "hem girth: 1.35 × hip"),
        ("waist_to_knee + 15 cm", "in", "waist to knee + 5.91 in"),
        ("waist_to_knee - 1 1/4 in", "cm", "waist to knee − 3.17 cm"),
        ("(hip_girth + 4 cm) / 1.2", "cm", "(hip + 4 cm) ÷ 1.2"),
        ("hip_girth - (waist_girth - 2 cm)", "cm", "hip − (waist − 2 cm)"),
        ("hip_girth / (2 * 3)", "cm", "hip ÷ (2 × 3)"),
        ("-(sag + 1 cm)", "cm", "−(sag + 1 cm)"),
        ("-9 cm", "cm", "−9 cm"),
        (
            "opening: max(waist_girth + 2 cm, hip_girth / 1.2)",
            "cm",
            "opening: the larger of waist + 2 cm and hip ÷ 1.2",
        ),
        ("min(1 cm, 2 cm, 3 cm)", "cm", "the smaller of 1 cm, 2 cm and 3 cm"),
    ],
)
def test_formula_is_told_in_words_signs_and_units(note: str, units: Units, expected: str) -> None:
    """Names as measurements are called, signs of arithmetic, brackets only where needed."""
    assert readable(note, units, phrases()) == expected


def test_note_stays_as_it_is_when_it_is_no_formula() -> None:
    """Whoever wrote it meant something by it."""
    assert readable("as at the hip, or so", "cm", phrases()) == "as at the hip, or so"
