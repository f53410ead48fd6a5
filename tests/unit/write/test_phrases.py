"""Phrases, their plurals, and languages that are nothing but a catalogue."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO
from pathlib import Path
from string import Formatter

import pytest
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from frogless.errors import InputError
from frogless.rows.nodes import End, Piece, Row, Start, Work
from frogless.stitches.load import dictionary
from frogless.write.catalogue import template
from frogless.write.messages import PHRASES, PLURALS
from frogless.write.pattern import tell
from frogless.write.phrases import Phrases, phrases
from frogless.write.words import Words

ENGLISH = phrases()


def test_number_chooses_the_form() -> None:
    """One takes the singular, any other number the plural."""
    assert ENGLISH.count("next", 1, stitch="dc", place="st") == "dc in next st"
    assert ENGLISH.count("next", 9, stitch="dc", place="sts") == "dc in next 9 sts"


@pytest.mark.parametrize(
    ("n", "expected"),
    [
        *((1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (12, "12th")),
        *((13, "13th"), (21, "21st"), (102, "102nd"), (111, "111th"), (123, "123rd")),
    ],
)
def test_ordinal_ends_as_spoken(n: int, expected: str) -> None:
    """The teens are all "th"."""
    assert ENGLISH.nth(n) == expected


def test_measurement_is_called_by_its_name_or_its_key() -> None:
    """What has no name of its own is called by its key, readable."""
    assert ENGLISH.measurement("hip_girth") == "hip"
    assert ENGLISH.measurement("calf_girth") == "calf girth"


def test_english_does_not_import_babel() -> None:
    """Babel is needed only for other languages."""
    code = "import sys; from frogless.write.phrases import phrases; phrases(); print(*sys.modules)"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "frogless.write.phrases" in run.stdout.split()
    assert "babel" not in run.stdout.split()


def test_plural_forms_have_the_same_blanks_but_for_the_number() -> None:
    """A plural that lost a blank would drop a number or a stitch from the text."""
    for one, many in PLURALS.values():
        blanks = [
            {name for _, name, _, _ in Formatter().parse(form) if name} for form in (one, many)
        ]
        assert blanks[0] | {"n"} == blanks[1] | {"n"}


def test_template_holds_every_phrase() -> None:
    """Whoever adds a language gets all there is to translate."""
    catalogue = read_po(BytesIO(template().encode()))
    ids = {m.id if isinstance(m.id, str) else m.id[0] for m in catalogue if m.id}
    assert set(PHRASES.values()) | {one for one, _ in PLURALS.values()} <= ids


def invented(folder: Path) -> Phrases:
    """An invented language: every phrase is marked, and one stitch has a name of its own."""
    catalogue: Catalog = read_po(BytesIO(template().encode()))
    for message in catalogue:
        if isinstance(message.id, tuple):
            message.string = tuple(f"~{form}" for form in message.id)
        elif message.id:
            message.string = f"~{message.id}"
    catalogue.add("double_crochet", string="Stb", context="stitch")
    file = folder / "xx" / "LC_MESSAGES" / "frogless.po"
    file.parent.mkdir(parents=True)
    with file.open("wb") as out:
        write_po(out, catalogue)
    return phrases("xx", folder)


def test_language_is_added_with_data_alone(tmp_path: Path) -> None:
    """A catalogue in a folder is all it takes: phrases, plurals and stitches follow it."""
    row = Row(0, "RS", "", (Work("double_crochet", 9),), 9, Start(2), End("first_stitch"))
    words = Words(dictionary(), "us", invented(tmp_path))
    told = tell(Piece("skirt", True, (row,)), words)[0]
    assert told.text == (
        "~ch 2 (does not count as a st), ~Stb in next 9 ~sts; ~without twisting, "
        "~join with sl st to first Stb to form a ring."
    )
    assert told.count == "~9 Stb"


def test_unknown_language_is_refused_by_name(tmp_path: Path) -> None:
    """The languages there are stand in the message."""
    invented(tmp_path)
    with pytest.raises(InputError, match=r'no language "yy"; there is en, xx'):
        phrases("yy", tmp_path)


def test_file_that_is_no_catalogue_is_refused_with_its_place(tmp_path: Path) -> None:
    """A broken catalogue is the translator's to mend."""
    file = tmp_path / "zz" / "LC_MESSAGES" / "frogless.po"
    file.parent.mkdir(parents=True)
    file.write_text('msgid "a\nnonsense')
    with pytest.raises(InputError, match=r"frogless\.po: not a message catalogue"):
        phrases("zz", tmp_path)
