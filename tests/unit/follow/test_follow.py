"""Where the work stands, on a card for the work bag."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from examples import Example, drafted, write_files

from frogless import draft
from frogless.errors import InputError
from frogless.follow import Point, Standing, card, standing
from frogless.publish.drafted import Drafted
from frogless.rows.nodes import Work
from frogless.rows.walk import unrolled
from frogless.write.pattern import write_rows

RING, WHIRL = Example("ring-dance-skirt"), Example("whirl-skirt")


def stand(found: Drafted, round_: int, done: int = 0) -> Standing:
    """Where the main piece of a draft stands."""
    return standing(found.plan, found.fabric, round_, done)


def told(found: Drafted, round_: int, done: int = 0, units: str = "cm") -> list[str]:
    """The lines of the card."""
    piece = found.plan.program.pieces[0]
    text = card(stand(found, round_, done), piece, found.stitches, "us", units)  # type: ignore[arg-type]
    return text.splitlines()


def test_card_tells_what_an_interrupted_round_needs() -> None:
    """Round, side and section; counts and points done; what is next; hook; the last girth."""
    found = drafted(RING)
    point = Point(marker=5, placed=True, makes=2, takes=1)
    stands = replace(stand(found, 21, 4), of=60, before=208, after=216, plain=25, next=point)
    piece = found.plan.program.pieces[0]
    assert card(stands, piece, found.stitches).splitlines()[:6] == [
        "Round 21 of 60 (RS), hip to hem",
        "208 to 216 stitches; 4 of 8 shaping points done",
        "Next: dc in next 25 to marker 5, then 2 dc in the marked st",
        "Hook: 3.75 mm",
        "Round 20 measures 106.5 cm around (washed)",
        "Last landmark: hip, round 18, 106.5 cm",
    ]


def test_card_names_the_colour_on_the_hook_when_there_are_several() -> None:
    """Four rows of A and two of B: row 4 ends in B, so row 5 is begun in it."""
    found = drafted(Example("torchlight-shawl"))
    assert "Begun in: color A" in told(found, 4)
    assert "Begun in: color B" in told(found, 5)
    assert not [line for line in told(drafted(RING), 5) if line.startswith("Begun in")]


def test_markers_of_a_right_side_round_are_met_from_the_first_on() -> None:
    """The fifth point is marker 5."""
    stands = stand(drafted(RING), 21, 4)
    assert stands.row.side == "RS"
    assert stands.next == Point(5, placed=True, makes=2, takes=1)


def test_markers_of_a_wrong_side_round_are_met_from_the_last_one_down() -> None:
    """They are numbered with the right side facing, so the first point is marker 8."""
    found = drafted(RING)
    assert stand(found, 14).row.side == "WS"
    numbers = [stand(found, 14, done).next for done in range(8)]
    assert [point.marker for point in numbers if point] == [8, 7, 6, 5, 4, 3, 2, 1]


def test_same_marker_is_met_at_the_same_place_from_either_side() -> None:
    """Marker 8 is as far from the end of a right-side round as from the start of the next."""
    found = drafted(RING)
    right, wrong = stand(found, 11, 8), stand(found, 14, 0)
    assert abs(right.plain - wrong.plain) <= 1


@pytest.mark.parametrize(("example", "round_"), [(RING, 18), (RING, 51), (WHIRL, 41), (WHIRL, 17)])
def test_steps_of_a_shaping_round_add_up_to_its_count(example: Example, round_: int) -> None:
    """Stretches and increases one after the other make the round, a counted chain first."""
    found = drafted(example)
    rows = found.fabric.pieces["skirt"]
    round_ = next(r.row.number for r in rows[round_:] if r.row.marks)
    first = stand(found, round_)
    steps = [stand(found, round_, done) for done in range(first.points + 1)]
    made = sum(s.plain for s in steps) + sum(s.next.makes for s in steps if s.next)
    assert made + int(first.row.start.counts) == first.after == rows[round_].places


@pytest.mark.parametrize("round_", [5, 8, 17])
def test_stretches_are_those_of_the_text(round_: int) -> None:
    """ "dc in next 9 sts, [2 dc in next st, dc in next 18 sts] 7 times, …"."""
    found = drafted(RING)
    row = found.plan.program.piece("skirt").rows[round_]
    runs = [node.times for node in unrolled(row.body) if isinstance(node, Work)]
    assert [stand(found, round_, done).plain for done in range(9)] == runs


def test_first_shaping_round_says_where_markers_are_placed() -> None:
    """There is no marker yet to work to."""
    assert told(drafted(RING), 5)[2] == (
        "Next: ch 2, dc in next 9, then 2 dc in next st, and place marker 1"
    )


def test_turning_chain_is_told_only_before_the_first_point() -> None:
    """Whoever has done a point has made it."""
    found = drafted(RING)
    nexts = [told(found, 5, done)[2] for done in (0, 1)]
    assert [line.startswith("Next: ch 2, ") for line in nexts] == [True, False]


def test_round_is_finished_when_all_points_are_done() -> None:
    """To its end."""
    lines = told(drafted(RING), 17, 8)
    assert lines[1] == "184 to 192 stitches; 8 of 8 shaping points done"
    assert lines[2] == "Next: dc in next 11 to the end of the round"


def test_foundation_is_told_in_the_words_of_the_text() -> None:
    """Nothing lies below it that could be measured."""
    assert told(drafted(RING), 0) == [
        "Foundation (RS), band; 51 rounds follow",
        "152 stitches to begin with",
        "Next: Use 3.75 mm hook. Work 152 fdc; without twisting, join with sl st to first fdc to "
        "form a ring.",
        "Hook: 3.75 mm",
    ]


def test_first_round_has_the_foundation_to_measure() -> None:
    """And the waist as its last landmark."""
    assert told(drafted(RING), 1)[4:] == [
        "The foundation measures 84.5 cm around (washed)",
        "Last landmark: waist, round 0, 84.5 cm",
    ]


def test_plain_round_is_told_in_the_words_of_the_text() -> None:
    """No point is counted in it."""
    assert told(drafted(RING), 7)[1:3] == [
        "160 stitches; no shaping points in this round",
        "Next: Ch 2, dc in each st around; join with sl st to top of ch-2, turn.",
    ]


def test_edging_round_has_its_own_hook_and_text() -> None:
    """It is the last one of the piece."""
    lines = told(drafted(RING), 52)
    assert lines[0] == "Round 52 of 52 (RS), edging"
    assert lines[1] == (
        "248 stitches become 372 sc, 186 picots, 62 ch-1 sps; no shaping points in this round"
    )
    assert lines[2].startswith("Next: Change to 2.25 mm hook. Ch 1 (does not count as a st), [sc")
    assert lines[3] == "Hook: 2.25 mm"


@pytest.mark.parametrize("design", ["procession-skirt", "rehearsal-skirt", "whirl-skirt"])
def test_rounds_of_every_example_have_a_card(design: str) -> None:
    """One in seven, from the foundation on, and the last one of the edging."""
    found = drafted(Example(design))
    rows = found.fabric.pieces["skirt"]
    lines = write_rows(found.plan.program.pieces[0], found.stitches, "us")
    pairs = list(zip(rows, lines, strict=True))
    for row, line in (*pairs[::7], pairs[-1]):
        shown = "\n".join(told(found, row.row.number))
        assert line.text in shown
        assert f"({row.row.side}), {row.row.section}" in shown


def test_card_speaks_uk_terms_and_inches() -> None:
    """Hooks stay in mm, as they are sold."""
    found = drafted(RING)
    piece = found.plan.program.pieces[0]
    lines = card(stand(found, 17, 3), piece, found.stitches, "uk", "in").splitlines()
    assert lines[2] == "Next: tr in next 22 to marker 4, then 2 tr in the marked st"
    assert lines[3] == "Hook: 3.75 mm"
    assert lines[4] == "Round 16 measures 40 1/4 in around (washed)"


def test_narrowing_round_works_stitches_together_at_its_marker(tmp_path: Path) -> None:
    """A skirt that narrows to the hem."""
    texts = RING.texts()
    texts["design.toml"] = texts["design.toml"].replace("1.35 * hip_girth", "0.95 * hip_girth")
    arguments = write_files(tmp_path, texts)
    paths = [Path(a) for a in arguments if a.endswith(".toml")]
    found = draft.draft(draft.Request(paths[0], paths[1], (paths[2],))).drafted
    rows = found.fabric.pieces["skirt"]
    narrow = next(r for r in rows[1:] if r.row.marks and r.places < r.used.size)
    assert re.fullmatch(
        r"Next: dc in next \d+ to marker \d+, then dc2tog at the marked st",
        told(found, narrow.row.number, 1)[2],
    )


def test_stretches_of_one_stitch_and_of_none_read_well() -> None:
    """ "dc in next st to marker 1", "go on to marker 1"."""
    found = drafted(RING)
    piece = found.plan.program.pieces[0]
    at = stand(found, 21, 4)
    shown = {n: card(replace(at, plain=n), piece, found.stitches).splitlines()[2] for n in (0, 1)}
    assert shown[1] == "Next: dc in next st to marker 5, then 2 dc in the marked st"
    assert shown[0] == "Next: go on to marker 5, then 2 dc in the marked st"
    last = card(replace(at, plain=0, next=None), piece, found.stitches).splitlines()[2]
    assert last == "Next: end the round"
    bare = Point(5, placed=False, makes=2, takes=1)
    fresh = card(replace(at, plain=0, next=bare), piece, found.stitches).splitlines()[2]
    assert fresh == "Next: 2 dc in next st, and place marker 5"


@pytest.mark.parametrize(
    ("round_", "done", "says"),
    [
        (53, 0, "there is no round 53; there are 1 to 52, and 0 for the foundation"),
        (-1, 0, "there is no round -1; there are 1 to 52"),
        (17, 9, "round 17 has 8 shaping points; done can be 0 to 8, not 9"),
        (17, -1, "round 17 has 8 shaping points; done can be 0 to 8, not -1"),
        (18, 1, "round 18 has no shaping points, so none can be done"),
        (0, 1, "round 0 has no shaping points, so none can be done"),
    ],
)
def test_round_or_point_that_is_not_there_is_refused(round_: int, done: int, says: str) -> None:
    """With what there is."""
    with pytest.raises(InputError, match=says):
        stand(drafted(RING), round_, done)
