"""The figure of the measuring guide stands in true proportion."""

from __future__ import annotations

import csv
from pathlib import Path as File

import pytest

from frogless.draw import figure as figures
from frogless.draw.drawing import Path, Shape
from frogless.draw.figure import Stand, View, edges, figure, landmarks
from frogless.draw.layout import Box, extent

SURVEY = File(__file__).parents[2] / "reference" / "body" / "survey_summary.csv"
DATA = File(figures.__file__).parent / "data"
#: The whole figure, a mm of body for a mm of sheet.
LARGE = Stand(1.0, 0.0, 2000.0, Box(-2000, -2000, 4000, 4000))


def table(path: File) -> list[dict[str, str]]:
    """The rows of a table."""
    with path.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def lines(shapes: tuple[Shape, ...]) -> list[Path]:
    """The outlines."""
    return [s for s in shapes if isinstance(s, Path) and s.style == "figure line"]


def test_every_landmark_says_where_it_comes_from() -> None:
    """A height without a source is refused."""
    rows = table(DATA / "landmarks.csv")
    assert [r["key"] for r in rows if not r["source"] or not r["what"]] == []
    assert {row["basis"] for row in rows} <= {"published", "derived", "common-practice", "memory"}


@pytest.mark.parametrize(
    ("landmark", "dimension"),
    [("stature", "stature"), ("hip", "hip_height"), ("knee", "kneeheightmidpatella")],
)
def test_published_height_is_that_of_the_survey(landmark: str, dimension: str) -> None:
    """ANSUR II women, means (NATICK/TR-15/007, 2014)."""
    (row,) = (r for r in table(SURVEY) if (r["sex"], r["dimension"]) == ("women", dimension))
    assert landmarks()[landmark] == float(row["mean"])


def test_waist_lies_between_the_navel_and_the_lowest_rib() -> None:
    """As far above the hip as estimates put it: 192 mm; above the hip bones at 995.7 (ANSUR II)."""
    at = landmarks()
    assert at["waist"] - at["hip"] == pytest.approx(192.0)
    assert at["bust"] > at["waist"] > 995.7 > at["high_hip"] > at["hip"]


def test_landmarks_follow_each_other_from_head_to_floor() -> None:
    """In the order of the table."""
    heights = list(landmarks().values())
    assert heights == sorted(heights, reverse=True)
    assert heights[-1] == 0


@pytest.mark.parametrize("view", ["front", "back", "side"])
def test_figure_is_as_tall_as_it_says_and_stands_on_the_floor(view: View) -> None:
    """Within a millimeter of body at either end."""
    box = extent(lines(figure(view, LARGE)))
    assert LARGE.floor - box.top == pytest.approx(landmarks()["stature"], abs=1.0)
    assert box.bottom == pytest.approx(LARGE.floor, abs=1.0)


@pytest.mark.parametrize("view", ["front", "back"])
def test_figure_is_symmetric(view: View) -> None:
    """Its left is its right, mirrored."""
    box = extent(figure(view, LARGE))
    assert box.left == pytest.approx(-box.right)


def test_seat_is_widest_in_profile_where_the_hip_is_measured() -> None:
    """No level 4 cm higher or lower reaches further back."""
    hip = landmarks()["hip"]
    back = {step: edges("side", "body", hip + step)[0] for step in (-40, 0, 40)}
    assert back[0] == min(back.values())


def test_bust_is_fullest_in_profile_where_it_is_measured() -> None:
    """Within 2 mm of the fullest level."""
    bust = landmarks()["bust"]
    front = {step: edges("side", "body", bust + step)[-1] for step in range(-60, 61, 10)}
    assert front[0] == pytest.approx(max(front.values()), abs=2.0)


def test_waist_is_the_narrowest_of_the_trunk_in_front() -> None:
    """Between armpit and hip."""
    at = landmarks()
    levels = range(int(at["hip"]), int(at["armpit"]), 10)
    narrowest = min(levels, key=lambda height: edges("front", "trunk", height)[-1])
    assert narrowest == pytest.approx(at["waist"], abs=45)


def test_window_cuts_the_figure() -> None:
    """Nothing is drawn outside of it."""
    window = Box(-300, 400, 300, 900)
    assert window.holds(extent(figure("front", Stand(1.0, 0.0, 2000.0, window))))
