"""A swatch file becomes a swatch."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from frogless.errors import InputError
from frogless.swatch import Reading, Yarn, load_swatch, stitch_key
from frogless.swatch_file import read_swatch_file

WHOLE = """state = "washed"
stitches = 20
width = "11.4 cm"
rows = 10
height = "10.8 cm"
mass = "9.6 g"
stretched_width = "13.7 cm\""""

File = Callable[..., Path]


def test_swatch_is_read_with_its_yarn_and_readings(swatch_file: File) -> None:
    """mm and g; a reading has the file's stitch and hook unless it says otherwise."""
    swatch = load_swatch(swatch_file(WHOLE))
    assert (swatch.name, swatch.stitch, swatch.hook) == ("main yarn", "double_crochet", 3.5)
    assert swatch.yarn == Yarn("", 3, "cotton", 50.0, 120_000.0)
    assert swatch.readings == (
        Reading("double_crochet", "washed", 3.5, 20, 114.0, 10, 108.0, 9.6, None, 137.0),
    )
    assert swatch.file == "swatch.toml"


def test_one_file_holds_readings_of_several_stitches(swatch_file: File) -> None:
    """With a hook of their own, as an edging has."""
    edging = WHOLE + '\nstitch = "sc_blo"\nhook = "2.25 mm"'
    swatch = load_swatch(swatch_file(WHOLE, edging))
    assert [r.stitch for r in swatch.readings] == ["double_crochet", "single_crochet_back_loop"]
    assert [r.hook for r in swatch.readings] == [3.5, 2.25]


@pytest.mark.parametrize(
    "reading",
    [
        'state = "washed"\nstitches = 20.5\nwidth = "11.4 cm"',
        'state = "hung"\nrows = 10\nheight = "11.4 cm"\nload = "45 g"',
    ],
)
def test_reading_may_be_of_one_direction(swatch_file: File, reading: str) -> None:
    """Only stitches, or only rows; halves may be counted."""
    assert len(load_swatch(swatch_file(reading)).readings) == 1


def test_yarn_may_be_unknown(swatch_file: File) -> None:
    """A ball without its label."""
    head = 'format = "frogless-swatch/1"\nname = "x"\nstitch = "sc"\nhook = "4 mm"\n'
    assert load_swatch(swatch_file(WHOLE, head=head)).yarn == Yarn("", None, "", None, None)


@pytest.mark.parametrize(
    ("name", "key"),
    [
        ("dc", "double_crochet"),
        ("DC", "double_crochet"),
        ("double crochet", "double_crochet"),
        ("half_double_crochet", "half_double_crochet"),
        ("sl st", "slip_stitch"),
        ("sc_blo", "single_crochet_back_loop"),
    ],
)
def test_stitch_is_known_by_name_and_abbreviation(name: str, key: str) -> None:
    """US terms, as everywhere inside."""
    assert stitch_key(name) == key


def test_tex_is_g_per_km() -> None:
    """50 g in 120 m are 417 tex; without a label there is none."""
    assert Yarn("", 3, "cotton", 50.0, 120_000.0).tex == pytest.approx(416.7, abs=0.1)
    assert Yarn("", 3, "cotton", 50.0, None).tex is None


@pytest.mark.parametrize(
    ("reading", "told"),
    [
        ('repeats = 4\nwidth = "10 cm"', 'repeats: belongs to a reading with a "pattern"'),
        ('pattern = "fans"\nstitch = "dc"\nrows = 9\nheight = "9 cm"', "stitch: is left out"),
        ('pattern = "fans"\nrepeats = 4\nwidth = "9 cm"\nmass = "9 g"', "mass: belongs to"),
        ('pattern = "fans"\nstitches = 9\nwidth = "9 cm"', "stitches: is left out in a pattern"),
        ('pattern = "fans"\nrepeats = 4', "width: is missing"),
        ('pattern = "fans"', "has neither repeats over a width nor rows over a height"),
        ('pattern = "fans"\nrepeats = 2\nwidth = "4 cm"', "half a repeat is 25 %"),
        (
            'pattern = "fans"\nrepeats = 1000000000\nwidth = "17 cm"',
            "1000000000 repeats over 17 cm make a repeat 0.00000017 mm",
        ),
        ('pattern = "fans"\nrepeats = 1\nwidth = "90 cm"', "make a repeat 900 mm"),
    ],
)
def test_reading_in_a_pattern_that_tells_nothing_is_refused(
    tmp_path: Path, reading: str, told: str
) -> None:
    """With its key."""
    file = tmp_path / "swatch.toml"
    file.write_text(
        'format = "frogless-swatch/1"\nname = "fans"\nstitch = "dc"\nhook = "3.5 mm"\n'
        f'[[reading]]\nstate = "washed"\n{reading}\n',
        encoding="utf-8",
    )
    with pytest.raises(InputError) as refused:
        read_swatch_file(file)
    assert told in str(refused.value)
