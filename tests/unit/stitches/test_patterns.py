"""Data files of stitch patterns: what is refused when they are read."""

from __future__ import annotations

import re

import pytest

from frogless.errors import InputError
from frogless.stitches.patterns import pattern_entry, patterns
from frogless.stitches.tables import read_folder, read_tables

ENTRY = """
[plain]
us = "plain"
uk = "plain"
family = "plain"
drape = "soft"
stretch = "little"
bias = "none"
source = "every stitch alike"
basis = "common-practice"

[plain.rows]
multiple = 1
text = "Row 1 (RS): Ch 1 (does not count as a st), sc in each st across; turn."
"""


def test_patterns_of_all_files_are_found_by_key() -> None:
    """One from each."""
    other = ENTRY.replace("plain]", "solid]").replace("plain.", "solid.")
    assert list(read_folder({"a.toml": ENTRY, "b.toml": other}, pattern_entry)) == [
        "plain",
        "solid",
    ]


def test_key_in_two_files_is_refused() -> None:
    """Neither may hide the other."""
    with pytest.raises(
        InputError, match=r"b\.toml plain: a\.toml has an entry of that key already"
    ):
        read_folder({"a.toml": ENTRY, "b.toml": ENTRY}, pattern_entry)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('drape = "soft"\n', "drape missing"),
        ("multiple = 1\n", "multiple missing"),
    ],
)
def test_entry_without_what_it_needs_is_refused(line: str, told: str) -> None:
    """The entry and what is missing are named."""
    with pytest.raises(InputError, match=told):
        read_tables(ENTRY.replace(line, ""), "a.toml", pattern_entry)


def test_unknown_key_is_refused_with_the_nearest_one() -> None:
    """A slip of the pen is no setting."""
    wrong = ENTRY.replace("multiple = 1", "multiple = 1\nofset = 1")
    with pytest.raises(InputError, match='unknown key "ofset"; did you mean "offset"'):
        read_tables(wrong, "a.toml", pattern_entry)


def test_entry_in_neither_rows_nor_rounds_is_refused() -> None:
    """There would be nothing to work."""
    with pytest.raises(InputError, match="neither rows nor rounds"):
        read_tables(ENTRY.split("[plain.rows]", maxsplit=1)[0], "a.toml", pattern_entry)


#: Stitches whose names mean another stitch across the Atlantic.
OF_ONE_DIALECT = re.compile(r"\b(singles?|doubles?|trebles?|sc|hdc|dc|tr)\b")


@pytest.mark.parametrize("key", tuple(patterns()))
def test_what_is_told_beside_the_rows_suits_both_dialects(key: str) -> None:
    """What is shown as it is names no stitch that has two meanings."""
    entry = patterns()[key]
    for told in (entry.drape, entry.stretch, entry.bias, entry.note, *entry.also):
        assert not OF_ONE_DIALECT.search(told), told


def test_other_names_are_no_pattern_of_their_own() -> None:
    """Whoever asks for a granite stitch finds one pattern, and not one that is named so as well."""
    others = [name for entry in patterns().values() for name in entry.also]
    names = {name for entry in patterns().values() for name in entry.names.values()}
    assert "granite stitch" in patterns()["moss"].also
    assert len(set(others)) == len(others)
    assert not names & set(others)
