"""Words of a dialect as terminals and keys."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from frogless.read.parse import parse_row
from frogless.read.spoken import Over, Placed, Said, Tog
from frogless.read.vocabulary import Vocabulary, normal, vocabulary
from frogless.rows.nodes import Into, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Term


@pytest.mark.parametrize("dialect", ["us", "uk"])
def test_every_stitch_is_read_by_name_and_abbreviation(dialect: Dialect) -> None:
    """The whole dictionary, not a chosen list."""
    known = vocabulary(dictionary(), dialect)
    for key, stitch in dictionary().items():
        term = stitch.terms[dialect]
        assert known.key(term.abbreviation.upper()) == key
        assert stitch.kind == "trim" or known.key(term.name) == key
        if stitch.kind == "stitch" and stitch.stands_on == 1:
            text = f"Rnd 1: {term.name} in next 2 sts, {term.abbreviation} in next st."
            said = parse_row(text, known)
            assert isinstance(said, Said)
            assert said.items == (Placed(Work(key, 2)), Placed(Work(key)))
        if stitch.kind == "group":
            said = parse_row(
                f"Rnd 1: {term.name} in next st, {term.abbreviation} in next st.", known
            )
            assert isinstance(said, Said)
            assert said.items == (Placed(Into(stitch.works)),) * 2


def test_plural_is_read_for_what_is_counted(us: Vocabulary) -> None:
    """Picots and beads."""
    assert us.key("picots") == "picot"
    assert us.key("beads") == "bead"


def test_longer_word_is_found_before_the_shorter_one_in_it(us: Vocabulary) -> None:
    """ "sc blo" is not "sc"."""
    stitch = us.terminals.split("STITCH.2: /")[1].split("/i\n")[0]
    found = re.match(stitch, "sc blo in next st", re.IGNORECASE)
    assert found
    assert found[0] == "sc blo"


def test_blanks_and_letters_are_evened_out() -> None:
    """As people type."""
    assert normal("  Sl   St ") == "sl st"


def test_stitch_over_several_places_is_told_from_stitches_together() -> None:
    """A dictionary that has "dc2tog" as a stitch of its own says over how many it goes."""
    one = dictionary()["double_crochet"]
    two = replace(
        one,
        key="double_crochet_two_together",
        stands_on=2,
        terms={"us": Term("dc two together", "dc2tog"), "uk": Term("tr two together", "tr2tog")},
    )
    known = vocabulary({**dictionary(), two.key: two}, "us")
    said = parse_row("Rnd 1: Dc2tog over next 2 sts, 3 dc2tog over next 6 sts, dc2tog.", known)
    assert said.items == (Over("Dc2tog", 1, 2), Over("dc2tog", 3, 6), Tog("dc2tog"))
