"""Yarn, hooks, notions and colors of a list of materials."""

from __future__ import annotations

import pytest

from frogless.proofread.facts.hooks import hooks_in, size_of
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import YarnAmount
from frogless.proofread.facts.notions import colours_in, notions_in
from frogless.proofread.facts.yarns import yarn_in, yarns_in


def _yarn(text: str) -> YarnAmount:
    found = yarn_in(Line(text, 0, "materials"))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("text", "balls", "mass", "length"),
    [
        ("DK cotton, 50 g / 120 m (131 yds) per ball, 5 (5, 6, 7) balls", (5, 5, 6, 7), 50, 120),
        ("MC: 3 balls of 100 g/210 m", (3,), 100, 210),
        ("Cotton, 50 g = 85 m, 1 ball", (1,), 50, 85),
        ("Medium weight cotton, 4 balls of 50 g (95 m each)", (4,), 50, 95),
        ("5 x 50 g balls of DK", (5,), 50, 0),
        ("5 balls (50 g) of wool", (5,), 50, 0),
        ("4 (5, 5, 6) balls, 50 g / 125 m each", (4, 5, 5, 6), 50, 125),
    ],
)
def test_balls(text: str, balls: tuple[int, ...], mass: float, length: float) -> None:
    """How many for each size, and what is in one."""
    found = _yarn(text)
    assert (found.balls, found.ball_mass, found.ball_length / 1000) == (balls, mass, length)


@pytest.mark.parametrize(
    ("text", "length"),
    [
        ("approx 525 m (574 yds) of category 3 yarn", 525_000),
        ("1,200 m DK", 1_200_000),
        ("About 130 m of cotton yarn, a 5 mm hook, a stitch marker", 130_000),
        ("574 yards of worsted", pytest.approx(524_865.6)),
    ],
)
def test_length_in_all(text: str, length: float) -> None:
    """A length that is of no ball is what is needed."""
    assert _yarn(text).lengths[0] == length


def test_yarns_of_one_line_are_told_apart_by_their_colors() -> None:
    """Each has its own amount; what is in a ball is said once."""
    line = Line("Yarn: DK, MC white 5 balls (50 g = 120 m), CC plum 2 balls", 0, "materials")
    assert [(y.colour, y.balls, y.ball_length) for y in yarns_in(line)] == [
        ("MC", (5,), 120_000), ("CC", (2,), 120_000),
    ]  # fmt: skip


def test_our_own_yarn_line() -> None:
    """The need, the range that it may be, the balls and their label stand in one sentence."""
    found = _yarn(
        "light cotton (category 3, cotton): about 540 m (480 m to 600 m), 225 g. With 11 % to spare "
        "5 balls of 50 g / 120 m, of one dye lot"
    )
    assert (found.lengths, found.masses, found.balls) == ((540_000,), (225,), (5,))
    assert (found.ball_mass, found.ball_length, found.category) == (50, 120_000, 3)


@pytest.mark.parametrize(
    "text",
    ["1 m of elastic", "1 yd of 3/4 in. elastic", "Yarn needle", "5 buttons, 15 mm", "Scissors"],
)
def test_what_is_no_yarn(text: str) -> None:
    """Elastic is sold by the meter too."""
    assert yarn_in(Line(text, 0, "materials")) is None


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("4 mm (US G/6) crochet hook", [4.0]),
        ("Size H/8 (5 mm) hook", [5.0]),
        ("Hook 3.75 mm (US F-5): skirt", [3.75]),
        ("4 mm and 5 mm hooks", [4.0, 5.0]),
        ("US H-8 hook", [5.0]),
        ("Hook: US H-8 / 5.00 mm", [5.0]),
        ("5 buttons, 15 mm", []),
        ("5 mm", []),
    ],
)
def test_hooks(text: str, sizes: list[float]) -> None:
    """Hooks by millimeters, or by their letter alone."""
    assert [each.mm for each in hooks_in(text, 0, "materials")] == sizes


def test_letter_beside_millimeters() -> None:
    """Both are kept, so that they can be compared."""
    (found,) = hooks_in("4 mm (US G/6) crochet hook", 0, "materials")
    assert (found.label, size_of("G-6"), size_of("Z")) == ("G-6", 4.0, 0.0)


def test_notion_with_its_number() -> None:
    """ "5 buttons" are five."""
    (found,) = notions_in(Line("5 small wooden buttons, 15 mm", 0))
    assert (found.name, found.count, found.optional) == ("button", 5, False)


def test_optional_notion() -> None:
    """What the maker may leave out is known as such."""
    (found,) = notions_in(Line("stitch markers (optional)", 0))
    assert found.optional


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("Color A: 2 balls; Color B: 1 ball", ["A", "B"]),
        ("MC: 3 balls", ["MC"]),
        ("red (A), blue (B)", ["A", "B"]),
        ("A soft cotton", []),
    ],
)
def test_colours(text: str, names: list[str]) -> None:
    """Letters of colors; an article is none."""
    assert [each.name for each in colours_in(Line(text, 0))] == names
