"""Where the tape lies for each measurement, on the figure of `figure.py`, mm of body."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

from frogless.draw.drawing import Point
from frogless.draw.figure import View, edges, landmarks
from frogless.draw.tape import SAG

#: The sag of a loop that is seen from its own height.
FLAT = 0.06

Scene = Literal["whole", "trunk", "pair", "reach", "knees", "legs", "neck", "head", "arm", "hand"]


@dataclass(frozen=True, slots=True)
class Guide:
    """How one measurement is shown.

    Args:
        view: from which side.
        scene: how much of the figure is shown.
        loop: left and right turn of a tape round the body; empty for a length.
        sag, rise: how deep the loop seems in front and behind, in parts of its half width.
        run: points along which a length is measured, its two ends among them.
        levels: left and right end of level lines at which a length ends.
        has_string: whether the string round the waist is shown.
        is_weighed: whether the figure stands on scales.
        beside: the same from another side, next to it.
    """

    view: View
    scene: Scene
    loop: tuple[Point, ...] = ()
    sag: float = SAG
    rise: float | None = None
    run: tuple[Point, ...] = ()
    levels: tuple[tuple[Point, Point], ...] = ()
    has_string: bool = False
    is_weighed: bool = False
    beside: Guide | None = None


@cache
def guides() -> Mapping[str, Guide]:
    """Every measurement's guide, by its key."""
    return {
        **_girths(),
        **_depths(),
        **_lengths(),
        "body_mass": Guide("front", "whole", is_weighed=True),
    }


def waist(view: View) -> tuple[Point, Point]:
    """Left and right turn of the string round the waist."""
    return _profile("waist") if view == "side" else _round("trunk", "waist")


def _girths() -> dict[str, Guide]:
    at = landmarks()
    inner, outer = edges("back", "trunk", at["thigh"])
    neck = Guide("front", "neck")
    hand = Guide("hand", "hand")
    return {
        "waist_girth": _from_two_sides("waist"),
        "high_hip_girth": _from_two_sides("high_hip", has_string=True),
        "hip_girth": _from_two_sides("hip", has_string=True),
        "bust_girth": _from_two_sides("bust"),
        "shoulder_girth": Guide("front", "trunk", _round("arm", "shoulders"), sag=0.12),
        "upper_arm_girth": Guide("front", "arm", ((166, 1157), (251, 1176)), sag=0.25),
        "thigh_girth": Guide("back", "legs", ((inner, at["thigh"]), (outer, at["thigh"]))),
        "wrist_girth": replace(hand, loop=((-27, 0), (29, 0)), sag=0.22),
        "hand_girth": replace(hand, loop=((-39.5, 76), (41, 76)), sag=0.2),
        "head_girth": Guide("side", "head", _brow(), sag=0.07),
        "neck_girth": replace(neck, loop=_round("arm", "neck"), sag=0.28),
        "neck_base_girth": replace(neck, loop=_round("arm", "neck_side"), sag=0.6, rise=0.35),
    }


def _from_two_sides(landmark: str, *, has_string: bool = False) -> Guide:
    """A level girth of the trunk, from the front and in profile."""
    profile = Guide("side", "pair", _profile(landmark), sag=FLAT, has_string=has_string)
    loop = _round("trunk", landmark)
    return Guide("front", "pair", loop, has_string=has_string, beside=profile)


def _depths() -> dict[str, Guide]:
    """Lengths that begin at the string round the waist."""
    at = landmarks()
    side = Guide("side", "trunk", has_string=True)

    def down(x: float, to: str) -> tuple[Point, Point]:
        return ((x, at["waist"]), (x, at[to]))

    return {
        "waist_to_high_hip": replace(side, run=down(6, "high_hip"), levels=_level("high_hip")),
        "waist_to_hip": replace(side, run=down(6, "hip"), levels=_level("hip")),
        "waist_to_knee": Guide("front", "knees", run=down(97, "knee"), has_string=True),
        "waist_to_floor": replace(side, scene="whole", run=down(6, "floor")),
    }


def _lengths() -> dict[str, Guide]:
    at = landmarks()
    back, reach = Guide("back", "trunk"), Guide("back", "reach")
    nape, point = (0.0, at["nape"]), (182.0, at["shoulder_point"])
    along_arm = ((214, 1285), (230, 1180), (247, 1050), (261, 930), (277, 792))
    along_inner_arm = ((152, 1213), (182, 1130), (208, 1030), (224, 930), (254, 792))
    beside = ((-400.0, 0.0), (-400.0, at["stature"]))
    return {
        "back_waist_length": replace(back, run=(nape, (0, at["waist"])), has_string=True),
        "cross_back": replace(back, run=((-point[0], point[1]), point)),
        "neck_to_wrist": replace(reach, run=(nape, (95, 1366), (172, 1339), *along_arm)),
        "arm_length": Guide("front", "reach", run=along_inner_arm),
        "armhole_depth": Guide(
            "front",
            "arm",
            run=((176, at["shoulder_point"]), (176, at["armpit"])),
            levels=(((110, at["armpit"]), (230, at["armpit"])),),
        ),
        "stature": Guide(
            "front",
            "whole",
            run=beside,
            levels=(((-430, at["stature"]), (40, at["stature"])),),
        ),
    }


def _round(part: str, landmark: str) -> tuple[Point, Point]:
    """Both edges of a part that lies to the right and left, at a landmark's height."""
    height = landmarks()[landmark]
    x = edges("front", part, height)[-1]
    return (-x, height), (x, height)


def _brow() -> tuple[Point, Point]:
    """The turns of a tape across the forehead and, lower, round the back of the head."""
    front, back = landmarks()["forehead"], landmarks()["forehead"] - 16
    return (edges("side", "body", back)[0], back), (edges("side", "body", front)[-1], front)


def _profile(landmark: str) -> tuple[Point, Point]:
    """Back and front of the profile at a landmark's height."""
    height = landmarks()[landmark]
    back, front = edges("side", "body", height)
    return (back, height), (front, height)


def _level(landmark: str) -> tuple[tuple[Point, Point]]:
    """A level line through the profile at a landmark's height, a little beyond it."""
    (back, height), (front, _) = _profile(landmark)
    return (((back - 40, height), (front + 40, height)),)
