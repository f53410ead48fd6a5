"""Every fault of the three files is one clear sentence with file, line and key; nothing is written."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest
from examples import Example, write_files

from frogless import cli

DESIGN, BODY, SWATCH = "design.toml", "body.toml", "swatch.toml"
HEM = (DESIGN, "1.35 * hip_girth")
LENGTH = (DESIGN, "waist_to_knee - 2 cm")
WAIST = (BODY, '"72 cm"')
COUNTED = (SWATCH, 'stitches = 27\nwidth = "15.0 cm"\nrows = 15\nheight = "15.8 cm"')
PICOTS = (DESIGN, "parameters = { singles = 4, picots = 3 }")
HEM_AND_EDGING = """girth = "hem_girth"
points = "auto"

[edging]
pattern = "picot_group"
hook = "2.25 mm"
parameters = { singles = 4, picots = 3 }"""
TITLE = (DESIGN, 'title = "Ring dance skirt"')
LAST_NAME = (DESIGN, 'name = "hip to hem"')


@dataclass(frozen=True, slots=True)
class Bad:
    """What is written instead of something in one of the files, and what is said of it.

    Args:
        where: file, line and key.
        ways: whether ways out are offered.
    """

    spot: tuple[str, str]
    instead: str
    where: str
    says: str
    ways: bool = False
    design: str = "ring-dance-skirt"


def counted(stitches: str, rows: str) -> str:
    """The first reading of the swatch with other counts over the same lengths."""
    return f'stitches = {stitches}\nwidth = "15.0 cm"\nrows = {rows}\nheight = "15.8 cm"'


CASES = {
    # Units and numbers
    "length in kg": Bad(
        WAIST, '"72 kg"', "body.toml:4 measurements.waist_girth", '"kg" is no unit for a length'
    ),
    "negative": Bad(
        WAIST, '"-72 cm"', "body.toml:4 measurements.waist_girth", "must be more than zero"
    ),
    "zero": Bad(WAIST, '"0 cm"', "body.toml:4 measurements.waist_girth", "must be more than zero"),
    "inches typed as centimetres": Bad(
        WAIST, '"28 cm"', "body.toml:4 measurements.waist_girth", "did you mean 28 in (71.1 cm)?"
    ),
    "waist of 100 m": Bad(
        WAIST, '"100 m"', "body.toml:4 measurements.waist_girth", "50 cm to 250 cm is accepted"
    ),
    "waist of a planet": Bad(
        WAIST,
        '"1000000000 cm"',
        "body.toml:4 measurements.waist_girth",
        "is no waist girth that a body has",
    ),
    "no hip": Bad(
        (BODY, 'hip_girth = "101 cm"'),
        "",
        "body.toml measurements.hip_girth",
        "is needed and cannot be estimated; measure it level",
    ),
    "a measurement that only a formula needs": Bad(
        HEM,
        "stature / 2 + hip_girth",
        "body.toml measurements.stature",
        "is needed and cannot be estimated",
    ),
    "no key": Bad(
        (DESIGN, "turning_chain = 2\n"), "", "design.toml:28 work.turning_chain", "is missing"
    ),
    "unknown key": Bad(
        (DESIGN, "join_at ="), "joined_at =", "design.toml:31 work.joined_at", '"join_at"'
    ),
    # Swatch
    "counted over 2 cm": Bad(
        COUNTED,
        'stitches = 4\nwidth = "2 cm"\nrows = 15\nheight = "15.8 cm"',
        "swatch.toml:15 reading[1].width",
        "4 stitches over 2 cm: half a stitch is 12 %",
    ),
    "gauge of 0.1 mm": Bad(
        COUNTED,
        counted("1500", "15"),
        "swatch.toml:15 reading[1].width",
        "make a stitch 0.1 mm; 0.5 mm to 200 mm is accepted",
    ),
    "rows of 0.1 mm": Bad(
        COUNTED, counted("27", "1580"), "swatch.toml:17 reading[1].height", "make a row 0.1 mm"
    ),
    "infinitely many stitches": Bad(
        COUNTED, counted("inf", "15"), "swatch.toml:14 reading[1].stitches", "a number, not inf"
    ),
    "not a number": Bad(
        COUNTED, counted("27", "nan"), "swatch.toml:16 reading[1].rows", "a number, not nan"
    ),
    "hook of a lamp post": Bad(
        (SWATCH, '"3.75 mm"'), '"3.75 m"', "swatch.toml:4 hook", "a hook of 0.3 mm to 60 mm"
    ),
    "no reading of the stitch": Bad(
        (DESIGN, 'stitch = "double_crochet"\nrounds'),
        'stitch = "treble"\nrounds',
        "swatch.toml",
        "the swatch has no gauge of treble; it has double crochet",
    ),
    # Formulas
    "unknown name": Bad(
        HEM,
        "1.35 * hip_grith",
        "design.toml:26 lengths.hem_girth",
        'unknown name "hip_grith" in a formula; did you mean "hip_girth"',
    ),
    "cycle": Bad(
        HEM,
        "hem_girth + 1 cm",
        "design.toml:26 lengths.hem_girth",
        "these lengths are defined by each other: hem_girth -> hem_girth",
    ),
    "units that do not mix": Bad(
        HEM,
        "hip_girth + 35",
        "design.toml:26 lengths.hem_girth",
        'a length and a plain number do not go together in "+"; give the number a unit',
    ),
    "unknown unit": Bad(
        (DESIGN, 'ease = "4 cm"'), 'ease = "4 cn"', "design.toml:49 section[2].ease", "character 3"
    ),
    "an area": Bad(
        HEM, "hip_girth * hip_girth", "design.toml:57 section[3].girth", "gives an area or the like"
    ),
    "division by zero": Bad(
        HEM, "hip_girth / 0", "design.toml:26 lengths.hem_girth", "a formula divides by zero"
    ),
    "brackets without end": Bad(
        HEM, "(" * 6000, "design.toml:26 lengths.hem_girth", "is too long for a formula"
    ),
    "nested too deeply": Bad(
        HEM, "-" * 480 + "hip_girth", "design.toml:26 lengths.hem_girth", "nested too deeply"
    ),
    "beyond all numbers": Bad(
        HEM,
        "1" + "0" * 310 + " * hip_girth",
        "design.toml:26 lengths.hem_girth",
        "no number at all",
    ),
    # Lengths that no skirt has
    "section longer than the skirt": Bad(
        (DESIGN, 'length = "3 cm"'),
        'length = "80 cm"',
        "design.toml:48 section[2].to",
        'section "waist to hip" would end 21 cm below the top edge, but it only begins at 80.5 cm',
    ),
    "hem above the hip": Bad(
        LENGTH,
        "10 cm",
        "design.toml:14 garment.length",
        "the skirt is 10 cm long, and its last section",
    ),
    "hem on the moon": Bad(
        HEM, "1000000000 cm", "design.toml:26 lengths.hem_girth", "3000 stitches of this swatch"
    ),
    "train of a kilometre": Bad(
        LENGTH, "1000 m", "design.toml:24 lengths.skirt_length", "no more than 1666.5 cm is planned"
    ),
    "train of ten metres": Bad(
        LENGTH, "10 m", "design.toml:53 section[3]", "would take 901 rounds; at most "
    ),
    "negative opening": Bad(
        (DESIGN, "max(waist_girth + 2 cm, hip_girth / 1.2)"),
        "-10 cm",
        "design.toml:38 start.girth",
        "has to be above zero",
    ),
    "elastic longer than the waist": Bad(
        (DESIGN, "1 1/4 in"), "-3 in", "design.toml:67 waist.reduce", "has to be zero or more"
    ),
    "elastic of no length": Bad(
        (DESIGN, "1 1/4 in"),
        "80 cm",
        "design.toml:67 waist.reduce",
        "the elastic would be a ring of -8 cm",
    ),
    "strand beyond the back": Bad(
        (DESIGN, 'to = "9 cm"'),
        'to = "90 cm"',
        "design.toml:76 strand[1].to",
        "centre back is 36 cm from centre front",
    ),
    "strand to the moon": Bad(
        (DESIGN, 'sag = "6 cm"'), 'sag = "9000 km"', "design.toml:77 strand[1].sag", "a formula"
    ),
    "negative indifference": Bad(
        (DESIGN, 'girth = "hem_girth"'),
        'girth = "hem_girth"\nindifference = "-4 cm"',
        "design.toml:58 section[3].indifference",
        "has to be zero or more",
    ),
    "a billion beads": Bad(
        (DESIGN, "plies = 2"),
        "plies = 2\nspare_beads = 1000000000",
        "design.toml:83 strand[1].spare_beads",
        "must be 100 or less",
    ),
    # Names
    "unknown stitch": Bad(
        (DESIGN, 'stitch = "double_crochet"\nrounds'),
        'stitch = "duble_crochet"\nrounds',
        "design.toml:29 work.stitch",
        'unknown stitch "duble_crochet"; did you mean "double_crochet"',
    ),
    "picot for a fabric": Bad(
        (DESIGN, 'stitch = "double_crochet"\nrounds'),
        'stitch = "picot"\nrounds',
        "design.toml:29 work.stitch",
        '"picot" is nothing to make a fabric of; accepted are slip_stitch',
    ),
    "begun with a stitch": Bad(
        (DESIGN, "foundation_double_crochet"),
        "double_crochet",
        "design.toml:37 start.with",
        '"double_crochet" is nothing to begin with; accepted are chain',
    ),
    "unknown edging": Bad(
        (DESIGN, "picot_group"),
        "picot_groop",
        "design.toml:61 edging.pattern",
        'unknown edging "picot_groop"; did you mean "picot_group"',
    ),
    "unknown parameter": Bad(
        PICOTS,
        "parameters = { singels = 4 }",
        "design.toml:63 edging.parameters",
        '"picot_group" has no parameter "singels"; accepted: singles, picots, between; did you',
    ),
    "too many singles": Bad(
        PICOTS,
        "parameters = { singles = 1000000 }",
        "design.toml:63 edging.parameters",
        "write a whole number from 1 to 24",
    ),
    "unknown kind of waist": Bad(
        (DESIGN, '"covered elastic"'),
        '"covered elastics"',
        "design.toml:66 waist.kind",
        'must be "covered elastic", "drawcord" or "ribbed band", not "covered elastics"',
    ),
    "unknown shape": Bad(
        (DESIGN, 'shape = "straight"'),
        'shape = "strait"',
        "design.toml:42 section[1].shape",
        'must be "straight" or "shaped", not "strait"',
    ),
    "two sections of one name": Bad(
        LAST_NAME, 'name = "band"', "design.toml:54 section[3].name", "the name of section 1 too"
    ),
    "section with the edging's name": Bad(
        LAST_NAME, 'name = "edging"', "design.toml:54 section[3].name", "choose another name"
    ),
    "strand with the skirt's name": Bad(
        (DESIGN, '"front strand"'), '"skirt"', "design.toml:74 strand[1].name", "choose another"
    ),
    "section without a name": Bad(
        LAST_NAME, 'name = " "', "design.toml:54 section[3].name", "must not be empty"
    ),
    "no title": Bad(TITLE, 'title = ""', "design.toml:3 title", "must not be empty"),
    "title of two lines": Bad(
        TITLE, 'title = "One\\nTwo"', "design.toml:3 title", "must be on one line"
    ),
    "title that rings": Bad(
        TITLE, 'title = "Ding\\u0007"', "design.toml:3 title", "without control characters"
    ),
    "title without a character": Bad(
        TITLE, 'title = "\\uFFFF"', "design.toml:3 title", "without control characters"
    ),
    "note with a null": Bad(
        (DESIGN, "Try the skirt"), "\\u0000Try the skirt", "design.toml:8 notes[1]", "must be text"
    ),
    # What cannot be had
    "multiple that cannot be met": Bad(
        (DESIGN, HEM_AND_EDGING),
        'girth = "hem_girth"\nease_allowed = ["0 cm", "1 cm"]\n\n[edging]\n'
        'pattern = "picot_group"\nhook = "2.25 mm"\ncorrection_round = "never"\n'
        "parameters = { singles = 24 }",
        "design.toml:63 edging.correction_round",
        "a multiple of 24, and no such count that the shaping can reach lies between",
        ways=True,
    ),
    "two points every other round": Bad(
        (DESIGN, 'points = "auto"'),
        "points = 2\nevery = 2",
        "design.toml:51 section[2].points",
        "20 stitches, 11 cm short",
        ways=True,
    ),
    "points of no number": Bad(
        (DESIGN, 'points = "auto"'),
        "points = []",
        "design.toml:51 section[2].points",
        "needs 1 or more, has 0",
    ),
    "ease upside down": Bad(
        (DESIGN, '["1.5 cm", "7 cm"]'),
        '["7 cm", "1.5 cm"]',
        "design.toml:50 section[2].ease_allowed",
        "write the smaller one first",
    ),
    "format of the future": Bad(
        (DESIGN, "frogless-design/1"),
        "frogless-design/9",
        "design.toml:2 format",
        'accepted is "frogless-design/1"',
    ),
    "not TOML": Bad(TITLE, "title: Ring dance skirt", "design.toml:3", "this is not valid TOML"),
    "key twice": Bad(TITLE, 'title = "a"\ntitle = "b"', "design.toml:4", "this is not valid TOML"),
    "brackets in brackets": Bad(
        (DESIGN, 'points = "auto"'), "points = " + "[" * 3000, "design.toml", "nested too deeply"
    ),
}


def refused(
    arguments: Sequence[str], folder: Path, capsys: pytest.CaptureFixture[str]
) -> list[str]:
    """What is said, line by line; the program ends with 2 and has written nothing."""
    before = sorted(folder.rglob("*"))
    assert cli.main([*arguments, "-o", str(folder / "out")]) == 2
    said = capsys.readouterr()
    assert not said.out
    assert sorted(folder.rglob("*")) == before
    assert said.err.startswith("frogless: ")
    assert "Traceback" not in said.err
    return said.err.removeprefix("frogless: ").splitlines()


@pytest.mark.parametrize("name", CASES)
def test_bad_input_is_refused_in_one_sentence(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Where it stands, what was found, what is accepted."""
    case = CASES[name]
    texts = Example(case.design).texts()
    file, old = case.spot
    assert old in texts[file]
    texts[file] = texts[file].replace(old, case.instead, 1)
    line, *others = refused(write_files(tmp_path, texts), tmp_path, capsys)
    assert line.startswith(f"{case.where}: ")
    assert case.says in line
    assert bool(others) is case.ways
    assert all(way.startswith("  - ") for way in others[1:])
    assert len(line) < 400


def test_several_faults_are_told_together(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One line each, in the order of the file."""
    texts = Example().texts()
    texts[DESIGN] = texts[DESIGN].replace("turning_chain = 2", "turning_chain = 99")
    texts[DESIGN] = texts[DESIGN].replace('with = "', 'wiht = "')
    lines = refused(write_files(tmp_path, texts), tmp_path, capsys)
    assert [line.partition(": ")[0] for line in lines] == [
        "design.toml:32 work.turning_chain",
        "design.toml:36 start.with",
        "design.toml:37 start.wiht",
    ]
