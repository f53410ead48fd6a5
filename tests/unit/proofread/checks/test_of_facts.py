"""The checks of facts: each finds its example, and nothing once it is mended."""

from __future__ import annotations

import pytest

from frogless.proofread.checks.of_facts import OF_FACTS
from frogless.proofread.findings import Finding
from frogless.proofread.run import proofread

#: What is to be changed in the example of each check to make it right.
MENDED = {
    "gauge-width": ("106 cm", "115.5 cm"),
    "gauge-length": ("50 cm", "40 cm"),
    "measure-units": ("9 cm", "7.5 cm"),
    "yarn-amount": ("1 ball", "3 balls"),
    "hook-differs": ("3.5 mm", "5 mm"),
    "material-unused": ("Fasten off.", "Fasten off. Sew on the buttons."),
    "material-missing": ("5 mm hook", "5 mm hook\n4 buttons"),
    "multiple-claimed": ("Ch 24.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (23 sc)\n"
                         "Row 2: Ch 1, sc in each st across, turn. (23 sc)",
                         "Ch 26.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
                         "Row 2: Ch 1, sc in each st across, turn. (25 sc)"),
    "schematic": ("41.5 cm", "47.5 cm"),
    "measures-in-order": ("84 (104, 94)", "84 (94, 104)"),
}  # fmt: skip
NAMES = {check.name for check in OF_FACTS}


def found(text: str) -> tuple[Finding, ...]:
    """What the checks of facts find."""
    return tuple(each for each in proofread(text).findings if each.kind in NAMES)


@pytest.mark.parametrize("check", OF_FACTS, ids=lambda check: check.name)
def test_check_finds_its_example(check) -> None:  # noqa: ANN001  a check of the table
    """And no other check of facts finds anything in it."""
    assert {each.kind for each in found(check.example)} == {check.name}


@pytest.mark.parametrize("check", OF_FACTS, ids=lambda check: check.name)
def test_check_is_silent_once_the_example_is_mended(check) -> None:  # noqa: ANN001  the same
    """One change makes it right."""
    old, new = MENDED[check.name]
    assert old in check.example
    assert found(check.example.replace(old, new)) == ()


SKIRT = """Skirt

{front}
Gauge: 18 dc and 10 rnds = 10 cm

Ch 208, join with sl st to first ch.
Rnd 1: Ch 3 (counts as dc), dc in next ch and in each ch around, join. (208 dc)
Rnds 2-10: Ch 3, dc in each st around, join. (208 dc)
"""
SQUARE = """Cloth

{front}
Gauge: 15 sc and 17 rows = 10 cm

Ch 61.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (60 sc)
Rows 2-68: Ch 1, sc in each st across, turn. (60 sc)
{end}
"""


def _kinds(text: str) -> list[str]:
    return [each.kind for each in found(text)]


def test_width_tells_figures_and_what_would_mend_it() -> None:
    """The sentence has the count, the gauge, what is stated, and the count that would give it."""
    (only,) = found(SKIRT.format(front="Finished hip: 106 cm"))
    assert only.hint == (
        "208 stitches at 18 in 10 cm are 115.6 cm; the hip is stated as 106 cm: 191 stitches would "
        "give that."
    )
    assert (only.says, only.works_out_to) == ("hip 106 cm", "115.6 cm")


@pytest.mark.parametrize("stated", ["113 cm", "118 cm", "45 1/2 in", "112-119 cm"])
def test_width_within_the_gauge_is_right(stated: str) -> None:
    """Half a stitch in eighteen is 3 cm on a hip."""
    assert _kinds(SKIRT.format(front=f"Finished hip: {stated}")) == []


def test_width_of_the_body_is_not_of_the_work() -> None:
    """Ease is no error."""
    assert _kinds(SKIRT.format(front="To fit hip: 106 cm")) == []


def test_flat_back_goes_twice_into_a_bust() -> None:
    """Two pieces of 40 cm are 80 cm around."""
    assert _kinds(SQUARE.format(front="Finished bust: 80 cm", end="")) == []


def test_sleeve_goes_around_no_bust() -> None:
    """A girth of the body is not held against a piece that does not lie around it."""
    text = SQUARE.format(front="Finished bust: 130 cm", end="")
    assert _kinds(text) == ["gauge-width"]
    assert _kinds(text.replace("Ch 61", "SLEEVE\nCh 61")) == []


def test_border_may_make_a_blanket_larger() -> None:
    """What an edging adds is not known from the gauge of the middle."""
    end = "\nBorder\nRnd 1: Join yarn in any corner, sc evenly around."
    front = "Finished size: 46 cm x 46 cm"
    assert _kinds(SQUARE.format(front=front, end=end)) == []


@pytest.mark.parametrize(
    ("front", "kinds"),
    [
        ("Finished size: 40 cm x 40 cm", []),
        ("Finished size: 40 cm x 55 cm", ["gauge-length"]),
        ("Finished size: 52 cm x 40 cm", ["gauge-width"]),
    ],
)
def test_width_and_length_of_a_cloth(front: str, kinds: list[str]) -> None:
    """Each is held against its own gauge."""
    assert _kinds(SQUARE.format(front=front, end="")) == kinds


@pytest.mark.parametrize(
    ("words", "kinds"), [("10 cm (17 rows)", []), ("10 cm (24 rows)", ["gauge-length"])]
)
def test_rows_beside_a_length(words: str, kinds: list[str]) -> None:
    """Where the instructions give both, they must be the same."""
    end = f"Next row: Ch 1, sc in each st across, turn. (60 sc)\nThe last part measures {words}."
    assert _kinds(SQUARE.format(front="", end=end)) == kinds


def test_piece_worked_until_a_length_has_no_known_rows() -> None:
    """Nothing is said of a length that the tape decides."""
    end = "Rep Row 2 until piece measures 60 cm."
    assert _kinds(SQUARE.format(front="Finished length: 60 cm", end=end)) == []


@pytest.mark.parametrize(
    ("pair", "right"),
    [
        ("84 cm / 33 in", True),
        ("30 cm (12 in)", True),
        ("60 cm (24 in)", True),
        ("86.5 cm (34 in)", True),
        ("9 cm (3 in)", False),
        ("52.5 cm (23 3/4 in)", False),
        ("10 cm / 6 in", False),
    ],
)
def test_two_units(pair: str, right: bool) -> None:
    """Rounding is no error; another number is."""
    assert (_kinds(f"Rug\n\nNotes\nLay it flat: the loop is {pair}.\n") == []) == right


def test_only_the_wrong_size_is_named() -> None:
    """One of three pairs is wrong."""
    text = "Top\n\nSizes: S (M, L)\nFinished bust: 84 (94, 104) cm / 33 (39, 41) in\n\nCh 20 (24, 28).\n"
    (only,) = found(text)
    assert (only.kind, only.sizes) == ("measure-units", ("M",))


@pytest.mark.parametrize(
    ("yarn", "kinds"),
    [
        ("Cotton, 50 g = 85 m, 3 balls", []),
        ("Cotton, 50 g = 85 m, 1 ball", ["yarn-amount"]),
        ("Cotton, 50 g = 85 m, 14 balls", ["yarn-amount"]),
        ("About 240 m of cotton", []),
        ("About 90 m of cotton", ["yarn-amount"]),
        ("5 balls of cotton, 50 g / 100 m each, 700 m in all", ["yarn-amount"]),
        ("Cotton or wool, 50 g = 85 m, 1 ball", []),
    ],
)
def test_yarn(yarn: str, kinds: list[str]) -> None:
    """Too little, far too much, and balls that do not hold what is stated."""
    assert _kinds(SQUARE.format(front=f"Materials\n{yarn}\n5 mm hook", end="")) == kinds


def test_letter_of_a_hook_is_of_another_size() -> None:
    """H is 5 mm."""
    assert _kinds(SQUARE.format(front="Materials\nDK yarn\nUS H-8 (3.5 mm) hook", end="")) == [
        "hook-differs"
    ]


def test_second_hook_that_is_listed_is_right() -> None:
    """An edging may have its own."""
    end = "Border: With 4 mm hook, sc evenly around."
    front = "Materials\nDK yarn\n5 mm hook\n4 mm hook for the border"
    assert _kinds(SQUARE.format(front=front, end=end)) == []


@pytest.mark.parametrize(
    ("end", "kinds"),
    [
        ("With B, sc evenly around.", []),
        ("Work the last row with A.", ["material-unused"]),
        ("With B, sc evenly around. Change to color C.", ["material-missing"]),
    ],
)
def test_colors(end: str, kinds: list[str]) -> None:
    """Letters that are listed are used, and letters that are used are listed."""
    front = "Materials\nColor A: red cotton\nColor B: blue cotton\n5 mm hook"
    assert _kinds(SQUARE.format(front=front, end=f"With A, work on. {end}")) == kinds


def test_eyes_between_rounds_are_safety_eyes() -> None:
    """Whatever they are called where they are put in."""
    front = "Materials\nDK yarn\n5 mm hook"
    end = "Put the eyes between rnds 9 and 10, 7 sts apart."
    assert _kinds(SQUARE.format(front=front, end=end)) == ["material-missing"]


def test_what_is_left_to_the_maker_is_not_missed() -> None:
    """Elastic "if you like" need not be listed."""
    front = "Materials\nDK yarn\n5 mm hook\nYarn needle"
    for end, kinds in (("", ["material-missing"]), (" if you like a firmer fit", [])):
        words = f"Fasten off. Thread elastic through the edge{end}."
        assert _kinds(SQUARE.format(front=front, end=words)) == kinds


def test_one_of_two_and_a_marker_in_a_spiral_are_used() -> None:
    """Of a choice one is enough; rounds that are not joined are marked whatever is said."""
    front = "Materials\nDK yarn\n5 mm hook\nA button or a ribbon\nStitch marker"
    rounds = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nSew on the button."
    assert _kinds(f"Ball\n\n{front}\n\nInstructions\n{rounds}\n") == []


def test_needle_and_scissors_are_never_missed() -> None:
    """They belong to every work."""
    front = "Materials\nDK yarn\n5 mm hook\nYarn needle\nScissors\nTape measure"
    assert _kinds(SQUARE.format(front=front, end="Fasten off.")) == []


def test_multiple_may_have_its_chain_besides() -> None:
    """8 + 1 and one for the chain: 26 chains."""
    front = "Notes\nMultiple of 8 + 1, plus 1 for the foundation chain."
    rows = "Ch 26.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
    assert _kinds(f"Scarf\n\n{front}\n\nInstructions\n{rows}") == []


def test_repeat_tells_a_multiple_apart() -> None:
    """41 is 10 x 4 + 1 too, but the fans stand on eight."""
    text = (
        "Panel\n\nNotes\nMultiple of 10 + 1.\n\nInstructions\nCh 42.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (41 sc)\n"
        "Row 2: Ch 1, sc in first st, *skip 3 sts, 9 dc in next st, skip 3 sts, sc in next st; rep "
        "from * across, turn. (45 dc, 6 sc)\n"
    )
    (only,) = found(text)
    assert "over 8 stitches" in only.hint


def test_diameter_that_is_the_width_laid_flat() -> None:
    """A ring of 68 in has a diameter of 21.6 in."""
    text = "Cowl\n\nFinished measurements\nCircumference: 68 in\nDiameter: 34 in\n\nCh 20.\n"
    (only,) = found(text)
    assert (only.kind, only.works_out_to) == ("schematic", "21.6 in")


def test_one_girth_stated_as_two_numbers() -> None:
    """The hip here, and another hip there."""
    front = "Finished hip: 115.5 cm\n\nSchematic\nHip: 108 cm"
    assert "schematic" in _kinds(SKIRT.format(front=front))


def test_girth_of_two_sizes_is_the_same() -> None:
    """A size that is no larger is one too many; a length may stay."""
    front = "Sizes: S (M, L)\nFinished bust: 84 (94, 94) cm\nFinished length: 50 (50, 51) cm"
    (only,) = found(f"Top\n\n{front}\n\nCh 84 (94, 104).\n")
    assert (only.kind, only.sizes) == ("measures-in-order", ("L",))
