"""Any plausible body, gauge and simple design is planned and proven, or refused in a sentence."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, note, settings
from hypothesis import strategies as st
from sample_designs import Design, basis, body, section, swatch, table

from frogless.draft import develop
from frogless.errors import Impossible, InputError
from frogless.plan.make import plan
from frogless.plan.model import CordPlan, Plan

STITCHES = {
    "sc": "single_crochet",
    "hdc": "half_double_crochet",
    "dc": "double_crochet",
    "tr": "treble",
}
STARTS = ("chain", "foundation_single_crochet", "foundation_double_crochet")
OPENINGS = (
    "waist_girth",
    "max(waist_girth, hip_girth / 1.2)",
    "max(waist_girth, hip_girth) + 2 cm",
)
HEMS = ("hip_girth * 1.3", "hip_girth - 6 cm", "hip_girth + 50 cm", "hip_girth", "waist_girth")
POINTS = ("auto", 1, 2, 3, 4, 5, 6, 8, 12, (4, 8), (2, 6))


def cm(least: int, most: int) -> st.SearchStrategy[str]:
    """A length to the millimetre."""
    return st.integers(least * 10, most * 10).map(lambda mm: f"{mm / 10:g} cm")


@st.composite
def bodies(draw: st.DrawFn) -> str:
    """A waist, a hip that is wider, as wide or narrower, and perhaps a high hip."""
    waist = draw(st.integers(560, 1300))
    hip = max(waist + draw(st.sampled_from([*range(-80, 420, 20)])), 620)
    down = draw(st.integers(150, 260))
    known = {"waist_girth": waist, "hip_girth": hip, "waist_to_hip": down}
    if draw(st.booleans()):
        share = draw(st.integers(2, 11)) / 10
        known["high_hip_girth"] = max(round(waist + (hip - waist) * share), 600)
        known["waist_to_high_hip"] = round(down * draw(st.integers(3, 8)) / 10)
    return body(**{key: f"{mm} mm" for key, mm in known.items()})


@st.composite
def swatches(draw: st.DrawFn, stitch: str) -> str:
    """From thread to thick wool, stretched, hung or neither."""
    width, ratio = draw(st.integers(25, 110)) / 10, draw(st.integers(8, 22)) / 10
    stitches = round(160 / width)
    rows = max(round(160 / (width * ratio)), 4)
    across, down = stitches * width, rows * width * ratio
    stretched = draw(st.sampled_from([None, 1.1, 1.25, 1.45]))
    grown = draw(st.sampled_from([None, 1.0, 1.04, 1.1]))
    hung = f'state = "hung"\nrows = {rows}\nheight = "{down * (grown or 1):.1f} mm"'
    return swatch(
        stitches,
        rows,
        stitch=stitch,
        width=f"{across:.1f} mm",
        height=f"{down:.1f} mm",
        more=f'stretched_width = "{across * stretched:.1f} mm"' if stretched else "",
        readings=(hung,) if grown else (),
    )


@st.composite
def shaping(draw: st.DrawFn) -> dict[str, object]:
    """How a section is shaped."""
    keys: dict[str, object] = {"shape": "shaped", "points": draw(st.sampled_from(POINTS))}
    keys["add"] = draw(st.sampled_from([1, 1, 2]))
    keys["every"] = draw(st.sampled_from(["auto", "auto", 1, 2, 3]))
    if draw(st.booleans()):
        keys["indifference"] = draw(st.sampled_from(["0 cm", "1 cm", "5 cm"]))
    return keys


@st.composite
def sections(draw: st.DrawFn) -> tuple[str, ...]:
    """A band, a way to the hip, one to the knee, one to the hem, each or not."""
    found = []
    if draw(st.booleans()):
        found.append(section("band", length=draw(cm(1, 5))))
    if draw(st.integers(0, 4)):
        ease = draw(st.integers(-4, 9))
        keys: dict[str, object] = {"ease": f"{ease} cm", **draw(shaping())}
        if draw(st.booleans()):
            keys["ease_allowed"] = (f"{ease - 2} cm", f"{ease + 3} cm")
        found.append(section("to the hip", to="hip", **keys))
    if not draw(st.integers(0, 3)):
        girth = draw(st.sampled_from(HEMS))
        found.append(section("to the knee", length="9 cm", girth=girth, **draw(shaping())))
    if draw(st.integers(0, 2)):
        girth = draw(st.sampled_from(HEMS))
        found.append(section("to the hem", to="hem", girth=girth, **draw(shaping())))
    else:
        found.append(section("to the hem", to="hem"))
    return tuple(found)


@st.composite
def trims(draw: st.DrawFn) -> tuple[str, ...]:
    """An edging and a waist, each or none."""
    edgings = (
        {},
        {"pattern": "picot_group", "parameters": {"singles": draw(st.integers(1, 9))}},
        {"pattern": "shell", "repeat_width": "3.2 cm"},
        {"pattern": "crab"},
    )
    waists = (
        {},
        {"kind": "covered elastic", "width": "6 mm"},
        {"kind": "drawcord", "eyelet_round": 2, "eyelets_about_every": draw(st.integers(3, 9))},
    )
    edging, waist = draw(st.sampled_from(edgings)), draw(st.sampled_from(waists))
    never = draw(st.sampled_from(["when needed", "when needed", "never"]))
    found = []
    if edging:
        found.append(table("edging", hook="2.25 mm", correction_round=never, **edging))
    if waist:
        found.append(table("waist", **waist))
    return tuple(found)


@st.composite
def designs(draw: st.DrawFn, stitch: str) -> str:
    """A simple skirt."""
    chain = draw(st.integers(1, 4))
    work = (
        f'rounds = "{draw(st.sampled_from(["joined and turned", "joined", "spiral"]))}"\n'
        f"turning_chain = {chain}\n"
        f"turning_chain_counts = {draw(st.sampled_from(['true', 'false']))}\n"
        f'join_at = "{draw(st.sampled_from(["centre back", "left side"]))}"'
    )
    start = (
        f'with = "{draw(st.sampled_from(STARTS))}"\n'
        f'girth = "{draw(st.sampled_from(OPENINGS))}"\n'
        f'above_waist = "{draw(st.sampled_from(["0 cm", "0 cm", "3 cm"]))}"'
    )
    return Design(
        draw(sections()),
        length=draw(cm(22, 70)),
        start=start,
        stitch=STITCHES[stitch],
        work=work,
        tables=draw(trims()),
    ).text


@st.composite
def projects(draw: st.DrawFn) -> tuple[str, str, str]:
    """A design, a body and a swatch of its stitch."""
    stitch = draw(st.sampled_from(list(STITCHES)))
    return draw(designs(stitch)), draw(bodies()), draw(swatches(stitch))


def promises(planned: Plan) -> None:
    """What a plan promises of itself."""
    counts = [row.count for row in planned.program.pieces[0].rows]
    for mark in planned.landmarks:
        assert mark.low - 0.05 <= mark.garment.value <= mark.high + 0.05
        assert counts[mark.rounds] == mark.count
    for one in planned.sections:
        assert counts[one.first_round - 1] == one.count_before
        assert counts[one.last_round] == one.count_after
        for option in one.others:
            assert one.chosen is not None
            assert abs(option.stray) < abs(one.chosen.stray)
    if isinstance(planned.main.waist, CordPlan):
        assert len(planned.main.waist.gaps) % 2 == 0


@settings(max_examples=60, deadline=None)
@given(projects())
def test_any_project_is_proven_or_refused(project: tuple[str, str, str]) -> None:
    """Never a traceback, never a pattern that fails its own proof."""
    for text in project:
        note(text)
    with tempfile.TemporaryDirectory() as folder:
        try:
            known = basis(Path(folder), *project)
            promises(plan(known))
            develop(known)
        except (InputError, Impossible) as refused:
            told = refused
        else:
            return
    # A refusal says where, and an impossible design what would help.
    assert str(told.faults[0].place)
    assert not isinstance(told, Impossible) or told.ways_out
