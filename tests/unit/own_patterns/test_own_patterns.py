"""Patterns of a design's own: as rows or as data, and refused where they do not come out."""

from __future__ import annotations

import pytest

from frogless.design.load import parse_design
from frogless.errors import InputError
from frogless.files import Document
from frogless.own_patterns import library_of
from frogless.plan.patterns import Library

HEAD = (
    'format = "frogless-design/1"\ntitle = "Sample"\n[garment]\nkind = "skirt"\nlength = "50 cm"\n'
    '[work]\nstitch = "double_crochet"\nturning_chain = 3\n[start]\nwith = "chain"\n'
    '[[section]]\nname = "all"\nto = "hem"\n'
)
FIRST_LINE = HEAD.count("\n") + 1
CHAIN = "Ch 1 (does not count as a st)"
BARN = f'''[pattern.barn]
name = "barn lattice"
rounds = """
Rnd 1: {CHAIN}, *sc in next st, ch 3, skip next 3 sts; rep from * around.
Rnd 2: Ch 1, *sc in next st, 3 sc in next ch-3 sp; rep from * around.
"""
'''
DATA = """[pattern.barn]
name = "barn lattice"
[[pattern.barn.round]]
turning_chain = 1
repeat = [{ work = "single_crochet" }, { chain = 3 }, { skip = 3 }]
[[pattern.barn.round]]
turning_chain = 1
repeat = [{ work = "single_crochet" }, { into = [{ work = "single_crochet", times = 3 }] }]
"""


def library(tables: str) -> Library:
    """What a design with these patterns may use."""
    document: Document = parse_design(HEAD + tables, "barn.toml")  # type: ignore[type-arg]

    def where(key: str) -> object:
        steps = tuple(int(p) - 1 if p.isdigit() else p for p in key.split("."))
        return document.place(steps)

    return library_of(document.checked, where)  # type: ignore[arg-type]


def refusal(tables: str) -> str:
    """What is said of patterns that will not do."""
    with pytest.raises(InputError) as refused:
        library(tables)
    return str(refused.value)


def test_multiple_of_a_written_pattern_is_found() -> None:
    """Four stitches to a repeat."""
    found = library(BARN).find("barn", True, {})
    assert (found.way.multiple, found.way.offset, found.way.period) == (4, 0, 2)
    assert found.name == "barn lattice"


def test_same_rows_as_data_are_the_same_pattern() -> None:
    """Written or as nodes."""
    assert library(DATA).find("barn", True, {}).way == library(BARN).find("barn", True, {}).way


def test_multiple_that_is_said_is_taken() -> None:
    """Also as a sum over the pattern's own numbers, which a section may choose."""
    tables = BARN.replace(
        'name = "barn lattice"\n',
        'name = "barn lattice"\nmultiple = "arch + 1"\n'
        "parameters.arch = { default = 3, low = 2, high = 5 }\n",
    )
    tables = tables.replace("ch 3, skip next 3", "ch {arch}, skip next {arch}")
    tables = tables.replace("3 sc in next ch-3", "{arch} sc in next ch-{arch}")
    known = library(tables)
    assert known.find("barn", True, {}).way.multiple == 4
    wide = known.find("barn", True, {"arch": 5})
    assert (wide.way.multiple, wide.parameters, wide.usual) == (6, {"arch": 5}, {"arch": 3})
    with pytest.raises(InputError, match=r'"9" is not accepted for arch of "barn".*from 2 to 5'):
        known.find("barn", True, {"arch": 9})


def test_uk_terms_are_understood() -> None:
    """In the design's own terms."""
    uk = (
        BARN.replace("sc", "dc")
        .replace("skip", "miss")
        .replace('name = "', 'terms = "uk"\nname = "')
    )
    assert library(uk).find("barn", True, {}).way == library(BARN).find("barn", True, {}).way


def test_patterns_of_the_library_are_there_too() -> None:
    """With the nearest names where one is misspelt."""
    known = library(BARN)
    assert known.find("fan_arches", True, {"half": 5}).way.multiple == 12
    assert known.keys[0] == "barn"
    with pytest.raises(InputError, match='unknown stitch pattern "barm"; did you mean "barn"'):
        known.find("barm", True, {})
    with pytest.raises(InputError, match="worked in rounds; it has no rows"):
        known.find("barn", False, {})


def test_row_that_uses_too_few_is_refused_with_line_row_and_place() -> None:
    """Round 2 leaves a space in each repeat."""
    wrong = BARN.replace("*sc in next st, 3 sc", "*sc in next st, sc in next st, 3 sc")
    told = refusal(wrong.replace("rounds", "multiple = 4\nrounds"))
    assert told.startswith(f"barn.toml:{FIRST_LINE + 5} pattern.barn.rounds: Rnd 2: place 2 ")
    told = refusal(wrong)
    assert told.startswith(f"barn.toml:{FIRST_LINE + 4} pattern.barn.rounds: over no number of sts")


def test_rows_that_do_not_come_again_are_refused() -> None:
    """Three stitches of four are left after round 2."""
    told = refusal(BARN.replace("3 sc in", "2 sc in").replace("rounds", "multiple = 4\nrounds"))
    assert f"barn.toml:{FIRST_LINE + 4} pattern.barn.rounds" in told
    assert "when Rnd 1 comes again" in told
    assert "it meets 3" in told


def test_data_that_does_not_come_out_is_refused_with_its_round() -> None:
    """Round 1 meets three where it wants four."""
    told = refusal(
        DATA.replace("times = 3", "times = 2").replace('lattice"\n', 'lattice"\nmultiple = 4\n')
    )
    assert f"barn.toml:{FIRST_LINE + 3} pattern.barn.round[1]: rnd 1 takes" in told
    told = refusal(DATA.replace("times = 3", "times = 2"))
    assert "so that they do not come again" in told


def test_what_is_not_understood_is_refused_at_its_line() -> None:
    """With the nearest word."""
    told = refusal(BARN.replace("ch 3, skip", "chh 3, skip"))
    assert told.startswith(f"barn.toml:{FIRST_LINE + 3} pattern.barn.rounds: column ")
    assert 'did you mean "ch"' in told
    told = refusal(DATA.replace('"single_crochet" }, { chain', '"single_crotchet" }, { chain'))
    assert f"barn.toml:{FIRST_LINE + 2}" in told or f"barn.toml:{FIRST_LINE + 3}" in told
    assert 'did you mean "single_crochet"' in told


def test_pattern_without_rows_is_refused() -> None:
    """And two faults are told together."""
    told = refusal('[pattern.one]\nname = "one"\n[pattern.two]\nname = "two"\n')
    assert told.count('has neither "rows" nor "rounds"') == 2


def test_setup_of_all_rows_is_refused() -> None:
    """One row at least comes again."""
    assert "one at least repeats" in refusal(DATA.replace('lattice"\n', 'lattice"\nsetup = 2\n'))


@pytest.mark.parametrize("tables", [BARN, DATA])
def test_multiple_of_nothing_is_refused(tables: str) -> None:
    """Left out it is found; 0 is no multiple."""
    told = refusal(tables.replace('lattice"\n', 'lattice"\nmultiple = 0\n', 1))
    assert "a multiple of 0" in told


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("pattern.barn", "pattern.shells", "barn.toml:14 pattern.shells: is the key of a pattern"),
        (
            'name = "barn lattice"\n',
            'name = "barn lattice"\nround = [{ repeat = [{ chain = 1 }] }]\n',
            'barn.toml:16 pattern.barn.round: stands as text in "rounds" and as data in "round"',
        ),
        (
            'name = "barn lattice"\n',
            'name = "barn lattice"\nparameters.arch = { default = 3, low = 5, high = 2 }\n',
            "barn.toml:16 pattern.barn.parameters.arch: goes from 5 to 2, and its default is 3",
        ),
    ],
)
def test_tables_that_contradict_themselves_are_refused(old: str, new: str, told: str) -> None:
    """Before any row is read: nothing that a designer wrote is passed over in silence."""
    assert told in refusal(BARN.replace(old, new))


def test_row_without_its_colon_is_told_so() -> None:
    """Not as a word that is not understood."""
    assert "barn.toml:18" in refusal(BARN.replace("Rnd 2:", "Rnd 2"))
    assert 'begins with its number and a colon, such as "Row 2:"' in refusal(
        BARN.replace("Rnd 2:", "")
    )


def test_join_that_cannot_be_is_told_over_a_count_that_comes_so_far() -> None:
    """Over one stitch nothing is left to work into, which says nothing of what is wrong."""
    tables = (
        '[pattern.barn]\nname = "barn"\nrounds = "Rnd 1: Ch 3 (counts as first dc), '
        'dc in each remaining st around; join with sl st to first sc."\n'
    )
    assert 'joined to the first "sc", but began with "dc"' in refusal(tables)


def test_round_of_data_is_joined_to_the_top_of_a_chain_that_counts() -> None:
    """As nobody joins it elsewhere, unless it is said."""
    tables = DATA.replace(
        "turning_chain = 1\n", "turning_chain = 3\nturning_chain_counts = true\n", 1
    )
    tables = tables.replace(
        'repeat = [{ work = "single',
        'before = [{ chain = 3 }, { skip = 3 }]\nrepeat = [{ work = "single',
        1,
    )
    first, second = library(tables).find("barn", True, {}).way.rows
    assert (first.end.join, second.end.join) == ("chain_top", "first_stitch")
    told = tables.replace("turning_chain = 3\n", 'turning_chain = 3\njoin = "first stitch"\n')
    assert library(told).find("barn", True, {}).way.rows[0].end.join == "first_stitch"


def test_change_of_colour_is_refused_where_nobody_says_what_is_changed_from() -> None:
    """Else all would be worked in the one color that is named."""
    tables = BARN.replace("around.\nRnd 2", "around, change to color B.\nRnd 2")
    assert "change to color B, and it is not said in which they begin" in refusal(tables)
    begun = tables.replace('rounds = """\n', 'rounds = """\nBegin with color A.\n').replace(
        'around.\n"""', 'around, change to color A.\n"""'
    )
    assert library(begun).find("barn", True, {}).way.colour == "A"
