"""The pictures of how a body is measured."""

from __future__ import annotations

import re

import pytest
from lxml import etree

from frogless.body.measurements import known_measurements
from frogless.draw.drawing import Circle, Drawing, Path, Point
from frogless.draw.figure import edges, landmarks
from frogless.draw.guides import guides
from frogless.draw.layout import Box, extent
from frogless.draw.measuring import HEIGHT, WIDTH, measuring, stand_of
from frogless.draw.overview import DISC, all_measurements
from frogless.draw.svg import svg
from frogless.errors import InputError

KEYS = tuple(known_measurements())
LEVEL = {
    "waist_girth": "waist",
    "high_hip_girth": "high_hip",
    "hip_girth": "hip",
    "bust_girth": "bust",
    "shoulder_girth": "shoulders",
    "thigh_girth": "thigh",
    "neck_girth": "neck",
}
STRAIGHT = {
    "waist_to_high_hip": ("waist", "high_hip"),
    "waist_to_hip": ("waist", "hip"),
    "waist_to_knee": ("waist", "knee"),
    "waist_to_floor": ("waist", "floor"),
    "back_waist_length": ("nape", "waist"),
    "armhole_depth": ("shoulder_point", "armpit"),
    "stature": ("stature", "floor"),
}


def tips(drawing: Drawing) -> list[Point]:
    """Where the heads of the arrows stand."""
    return [s.start for s in drawing.shapes if isinstance(s, Path) and s.style == "tape end"]


def loops(drawing: Drawing) -> list[Path]:
    """The front halves of the tapes that run round."""
    return [s for s in drawing.shapes if isinstance(s, Path) and s.style == "tape"]


@pytest.mark.parametrize("key", KEYS)
def test_measurement_has_a_picture_that_tells_how_it_is_taken(key: str) -> None:
    """Named after the measurement, in the words of its table, inside the sheet."""
    drawing, known = measuring(key), known_measurements()[key]
    assert drawing.title == (known.iso_term or key.replace("_", " "))
    assert known.how_taken[1:] in drawing.description
    box = extent(drawing.shapes)
    assert Box(0, 0, WIDTH, HEIGHT).holds(box)


def test_guides_are_those_of_the_known_measurements() -> None:
    """None is missing and none is left over."""
    assert set(guides()) == set(KEYS)


@pytest.mark.parametrize("key", KEYS)
def test_picture_is_well_formed_and_paints_with_attributes(key: str) -> None:
    """A page with a strict policy shows it; two runs agree."""
    text = svg(measuring(key))
    root = etree.fromstring(text.encode())
    assert "style" not in {name for element in root.iter() for name in element.attrib}
    assert svg(measuring(key)) == text


@pytest.mark.parametrize(("key", "landmark"), sorted(LEVEL.items()))
def test_level_girth_turns_at_its_landmark(key: str, landmark: str) -> None:
    """Both turns of the tape lie at the height that the table of landmarks gives."""
    height = stand_of(guides()[key].scene).at((0, landmarks()[landmark]))[1]
    found = loops(measuring(key))
    assert found
    for tape in found:
        assert (tape.start[1], tape.points[-1][1]) == pytest.approx((height, height), abs=0.01)


@pytest.mark.parametrize("key", ["waist_girth", "hip_girth", "bust_girth"])
def test_level_girth_turns_at_the_edges_of_the_body(key: str) -> None:
    """The tape lies on the trunk, and neither in the air nor within."""
    left, right = guides()[key].loop
    half = edges("front", "trunk", left[1])[-1]
    assert (left[0], right[0]) == pytest.approx((-half, half))


@pytest.mark.parametrize(("key", "ends"), sorted(STRAIGHT.items()))
def test_length_ends_at_its_landmarks(key: str, ends: tuple[str, str]) -> None:
    """The heads of the arrow stand at both heights."""
    stand = stand_of(guides()[key].scene)
    heights = sorted(stand.at((0, landmarks()[end]))[1] for end in ends)
    assert sorted(y for _, y in tips(measuring(key))) == pytest.approx(heights, abs=0.01)


@pytest.mark.parametrize("key", ["waist_to_hip", "waist_to_knee", "back_waist_length"])
def test_string_is_shown_when_a_length_ends_at_the_waist(key: str) -> None:
    """It lies where the length begins."""
    drawing = measuring(key)
    y = stand_of(guides()[key].scene).at((0, landmarks()["waist"]))[1]
    strings = [s for s in drawing.shapes if isinstance(s, Path) and s.style == "string"]
    assert strings[0].start[1] == pytest.approx(y)


def test_sleeve_runs_from_the_nape_over_the_shoulder_to_the_wrist() -> None:
    """In this order, and past the shoulder point."""
    run, at = guides()["neck_to_wrist"].run, landmarks()
    assert run[0] == (0.0, at["nape"])
    assert min(abs(y - at["shoulder_point"]) for _, y in run) < 10
    assert run[-1][1] == min(y for _, y in run)


def test_unit_of_the_page_is_told() -> None:
    """Quarter inches where the page is in inches."""
    assert "quarter inch" in measuring("waist_girth", "in").description
    assert "half centimeter" in measuring("waist_girth", "cm").description


def test_unknown_key_is_refused_with_near_names() -> None:
    """One sentence that helps."""
    with pytest.raises(InputError, match="did you mean waist_girth"):
        measuring("waist_girt")
    with pytest.raises(InputError, match="no measurement"):
        all_measurements(["waist_girth", "tail"])


@pytest.mark.parametrize("keys", [KEYS, KEYS[:5], ("stature",), KEYS[::-1], ("cross_back",), ()])
def test_numbers_follow_the_order_of_the_keys_and_stand_clear(keys: tuple[str, ...]) -> None:
    """Each number once, no two discs touching, all on the sheet."""
    drawing = all_measurements(keys)
    discs = [s for s in drawing.shapes if isinstance(s, Circle) and s.style == "number disc"]
    numbers = [t.text for t in drawing.texts if t.text.isdigit()]
    assert sorted(map(int, numbers)) == list(range(1, len(keys) + 1))
    for i, one in enumerate(discs):
        for two in discs[i + 1 :]:
            apart = max(abs(a - b) for a, b in zip(one.centre, two.centre, strict=True))
            assert apart >= 2 * DISC
    assert Box(0, 0, drawing.width, drawing.height).holds(extent(drawing.shapes))
    told = re.findall(r"(\d+) ", drawing.description)
    assert told == [str(i) for i in range(1, len(keys) + 1)]
