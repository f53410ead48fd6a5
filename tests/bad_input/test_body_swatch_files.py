"""Every fault of a body or swatch file is one clear sentence with file, line and key."""

from __future__ import annotations

from pathlib import Path

import pytest

from frogless.body.load import load_body
from frogless.errors import InputError
from frogless.swatch import load_swatch

BODY = """format = "frogless-body/1"
name = "Dancer 3"
[measurements]
"""

SWATCH = """format = "frogless-swatch/1"
name = "main yarn"
stitch = "dc"
hook = "3.5 mm"
[yarn]
category = 3
[[reading]]
state = "washed"
"""

WHOLE = 'stitches = 20\nwidth = "11.4 cm"\nrows = 10\nheight = "10.8 cm"\n'

BODIES = [
    ("bare number", BODY + "waist_girth = 72", "b.toml:4 measurements.waist_girth: 72 has no unit"),
    ("no unit", BODY + 'waist_girth = "72"', 'b.toml:4 measurements.waist_girth: "72" has no unit'),
    ("wrong unit", BODY + 'hip_girth = "101 kg"', '"kg" is no unit for a length; accepted are cm'),
    ("negative", BODY + 'hip_girth = "-101 cm"', '"-101 cm" must be more than zero'),
    ("zero", BODY + 'hip_girth = "0 cm"', 'measurements.hip_girth: "0 cm" must be more than zero'),
    ("inches as cm", BODY + 'waist_girth = "33 cm"', "did you mean 33 in (83.8 cm)?"),
    ("cm as inches", BODY + 'hip_girth = "101 in"', "did you mean 101 cm?"),
    ("cm as mm", BODY + 'hip_girth = "101 mm"', "did you mean 101 cm?"),
    ("impossible pair", BODY + 'waist_girth = "120 cm"\nhip_girth = "56 cm"', "b.toml:5 measurem"),
    ("unknown key", BODY + 'waist_grith = "72 cm"', 'did you mean "waist_girth"'),
    ("unknown table", BODY + '[measurement]\nx = "1 cm"', 'did you mean "measurements"?'),
    (
        "no measurements",
        'format = "frogless-body/1"\nname = "x"',
        "b.toml measurements: is missing",
    ),
    ("no name", 'format = "frogless-body/1"\n[measurements]', "b.toml name: is missing"),
    (
        "age as text",
        BODY.replace("[", 'age = "old"\n['),
        'b.toml:3 age: must be a number, not "old"',
    ),
    ("age below zero", BODY.replace("[", "age = -1\n["), "b.toml:3 age: must be 0 or more, not -1"),
    ("swatch as body", SWATCH + WHOLE, '"frogless-swatch/1" is not the format of a body file'),
    ("not TOML", BODY + "waist_girth: 72 cm", "b.toml:4: this is not valid TOML: "),
    ("key twice", BODY + 'age = "1 cm"\nage = "2 cm"', "b.toml:5: this is not valid TOML: "),
    ("empty", "", 'b.toml format: is missing; a body file begins with format = "frogless-body/1"'),
]

SWATCHES = [
    (
        "over 2 cm",
        SWATCH + 'stitches = 5\nwidth = "2.5 cm"\n',
        "s.toml:10 reading[1].width: 5 stitches over 2.5 cm: half a stitch is 10 %, ± 11.6 cm on a "
        "hip of 116 cm; count over 5 cm at least, and for ± 2 cm at least 29 stitches",
    ),
    (
        "few rows",
        SWATCH + 'rows = 3\nheight = "3 cm"\n',
        "s.toml:10 reading[1].height: 3 rows over 3 cm: half a row is 17 %; count over 5 cm",
    ),
    ("no width", SWATCH + "stitches = 20\n", "s.toml:7 reading[1].width: is missing: stitches is"),
    ("no count", SWATCH + 'height = "10 cm"\n', "s.toml:7 reading[1].rows: is missing: height is"),
    ("neither", SWATCH, "s.toml:8 reading[1].state: has neither stitches over a width nor rows"),
    ("no readings", SWATCH.split("[[")[0], "s.toml reading: is missing"),
    (
        "state",
        SWATCH.replace("washed", "wet") + WHOLE,
        's.toml:8 reading[1].state: must be "as wor',
    ),
    (
        "no state",
        SWATCH.replace('state = "washed"', "") + WHOLE,
        "s.toml:7 reading[1].state: is mis",
    ),
    (
        "stitch",
        SWATCH.replace('"dc"', '"dcc"') + WHOLE,
        's.toml:3 stitch: unknown stitch "dcc"; did',
    ),
    (
        "own stitch",
        SWATCH + WHOLE + 'stitch = "knit"',
        "s.toml:13 reading[1].stitch: unknown stitch",
    ),
    ("no hook", SWATCH.replace('hook = "3.5 mm"', "") + WHOLE, "s.toml hook: is missing"),
    (
        "hook without unit",
        SWATCH.replace('"3.5 mm"', "3.5") + WHOLE,
        "s.toml:4 hook: 3.5 has no unit",
    ),
    ("category", SWATCH.replace("= 3", "= 8") + WHOLE, "s.toml:6 yarn.category: must be 7 or less"),
    ("fibre key", SWATCH.replace("category", "fiber") + WHOLE, 'did you mean "fibre"'),
    ("no stitches", SWATCH + WHOLE.replace("20", "0"), "reading[1].stitches: must be more than 0"),
    ("odd count", SWATCH + WHOLE.replace("20", "20.1"), "must be a multiple of 0.25, not 20.1"),
    ("not a number", SWATCH + WHOLE.replace("20", "nan"), "reading[1].stitches: must be"),
    ("mass of a part", SWATCH + 'rows = 9\nheight = "9 cm"\nmass = "9 g"', "mass: needs stitches"),
    ("mass in cm", SWATCH + WHOLE + 'mass = "9 cm"', "accepted are g, kg, oz or lb"),
    (
        "load flat",
        SWATCH + WHOLE + 'load = "9 g"',
        'a load belongs to a reading with state = "hung"',
    ),
    (
        "shrinks",
        SWATCH + WHOLE + 'stretched_width = "10 cm"',
        "stretched_width: must be the width of 11.4 cm or more, not 10 cm",
    ),
]


@pytest.mark.parametrize(("text", "says"), [c[1:] for c in BODIES], ids=[c[0] for c in BODIES])
def test_body_file_is_refused_in_one_sentence(tmp_path: Path, text: str, says: str) -> None:
    """One fault, one line; the words of the program, never of its parts."""
    path = tmp_path / "b.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as refused:
        load_body(path)
    assert says in str(refused.value)
    assert str(refused.value).startswith("b.toml")
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(("text", "says"), [c[1:] for c in SWATCHES], ids=[c[0] for c in SWATCHES])
def test_swatch_file_is_refused_in_one_sentence(tmp_path: Path, text: str, says: str) -> None:
    """One fault, one line."""
    path = tmp_path / "s.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as refused:
        load_swatch(path)
    assert says in str(refused.value)
    assert str(refused.value).startswith("s.toml")
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize("load", [load_body, load_swatch])
def test_missing_file_is_named(load: object, tmp_path: Path) -> None:
    """With what it should have been."""
    with pytest.raises(
        InputError, match=r"gone\.toml: there is no such file; a (body|swatch) file"
    ):
        load(tmp_path / "gone.toml")  # type: ignore[operator]


def test_faults_of_a_body_are_told_together(tmp_path: Path) -> None:
    """One line each, in the order of the file."""
    path = tmp_path / "b.toml"
    path.write_text(BODY + 'waist_girth = 72\nhip_grith = "1 m"\nstature = "165"', encoding="utf-8")
    with pytest.raises(InputError) as refused:
        load_body(path)
    assert [fault.place.line for fault in refused.value.faults] == [4, 5, 6]
