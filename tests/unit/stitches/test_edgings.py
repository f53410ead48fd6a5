"""Edging patterns as fragments of rows."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Chain, Into, Repeat, Skip, Work
from frogless.stitches.edgings import build, edging, edgings, patterns, read_patterns
from frogless.stitches.load import dictionary, leaves, stands_on

NEW = """
[pairs]
us = ["paired edging", "paired edging"]
uk = ["paired edging", "paired edging"]
multiple = "gap + 1"
parameters.gap = { default = 1, low = 1, high = 3 }
source = "a test"
basis = "memory"

[[pairs.round]]
nodes = [{ together = "double_crochet", places = "gap + 1" }, { chain = "gap" }]

[[pairs.round]]
nodes = [{ repeat = [{ work = "single_crochet" }], times = 2 }]
"""


def refusal(text: str) -> str:
    """What is said of a file of edgings that is refused."""
    with pytest.raises(InputError) as caught:
        read_patterns(text, "mine.toml")
    return str(caught.value)


def test_the_usual_edgings_are_there_when_listed() -> None:
    """Eighteen at least, the usual four among them, each buildable with its defaults."""
    assert {"plain", "crab", "picot_group", "shell", "scallop", "lace_arches"} <= set(edgings())
    assert len(edgings()) >= 18
    assert [edging(key).key for key in edgings()] == list(edgings())


def test_picots_stand_with_a_single_before_each_when_between() -> None:
    """Three singles, then single and picot three times in one stitch, chain 1."""
    single, picot = Work("single_crochet"), Work("picot")
    assert edging("picot_group").rounds == (
        (Work("single_crochet", 3), Into((Repeat((single, picot), 3),)), Chain(1)),
    )


def test_picots_stand_side_by_side_when_not_between() -> None:
    """One single with its picots in one stitch."""
    body = edging("picot_group", {"picots": 2, "between": 0}).rounds[0]
    assert body[1] == Into((Work("single_crochet"), Work("picot", 2)))


def test_nothing_is_worked_0_times_when_a_number_comes_out_as_0() -> None:
    """One single in a repeat leaves none before the group, and a repeat of 1 is no repeat."""
    body = edging("picot_group", {"singles": 1, "picots": 1}).rounds[0]
    assert body == (Into((Work("single_crochet"), Work("picot"))), Chain(1))


def test_a_shell_fans_out_of_one_stitch_when_built() -> None:
    """A single, two stitches passed over, the shell, two passed over."""
    shell = edging("shell", {"stitches_in_shell": 7})
    fan = Into((Work("double_crochet", 7),))
    assert shell.rounds == ((Work("single_crochet"), Skip(2), fan, Skip(2)),)
    assert (shell.multiple, shell.offset) == (6, 0)


def test_rounds_repeat_when_a_plain_edging_has_several() -> None:
    """Three rounds of singles, each lifted by one chain."""
    plain = edging("plain", {"rounds": 3})
    assert plain.rounds == ((Work("single_crochet"),),) * 3
    assert plain.turning_chains == (1, 1, 1)


def test_the_second_round_goes_backwards_when_crab_stitch() -> None:
    """A plain round, then a reverse round worked back along it."""
    crab = edging("crab")
    assert crab.backwards == (False, True)
    assert crab.stitches == ("single_crochet", "reverse_single_crochet")


@pytest.mark.parametrize("key", edgings())
def test_each_round_uses_what_the_round_below_leaves_when_counted(key: str) -> None:
    """The first round uses the multiple, each later one what is left to it."""
    found = edging(key)
    there = found.multiple
    for body in found.rounds:
        assert consumed(body, stands_on(dictionary())) == there
        there = left(body, leaves(dictionary()))


@pytest.mark.parametrize(
    ("key", "given", "said"),
    [
        (
            "picot_grop",
            {},
            'unknown edging "picot_grop"; did you mean "picot_group"',
        ),
        ("zzz", {}, 'unknown edging "zzz"; accepted: plain, crab, crab_half_double, picot_group'),
        ("shell", {"stiches": 5}, "accepted: stitches_in_shell"),
        ("crab", {"rounds": 2}, '"crab" has no parameter "rounds"; accepted: none'),
        ("picot_group", {"picots": 4}, "write a whole number from 1 to 3"),
        ("plain", {"rounds": True}, '"True" is not accepted for rounds'),
        ("plain", {"rounds": 2.0}, "write a whole number from 1 to 40"),
    ],
)
def test_an_edging_is_refused_with_what_is_accepted_when_wrong(
    key: str, given: dict[str, int], said: str
) -> None:
    """Unknown patterns, unknown parameters and values out of range each get a sentence."""
    with pytest.raises(InputError) as caught:
        edging(key, given)
    assert said in str(caught.value)


def test_a_new_edging_is_data_only_when_read() -> None:
    """A pattern with together, chains and a second round is read from a file."""
    pairs = build(read_patterns(NEW, "mine.toml")["pairs"], {"gap": 2})
    assert (pairs.multiple, pairs.turning_chains) == (3, (0, 0))
    assert pairs.rounds[1] == (Repeat((Work("single_crochet"),), 2),)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('multiple = "gap + 1"', "multiple = 2", "round 1 uses 4 places in a repeat"),
        ("times = 2", "times = 3", "round 2 uses 3 places in a repeat, but there are 2"),
        ('basis = "memory"\n', "", "basis missing"),
        ("{ chain =", "{ chian =", "is not a node; write one of work, into"),
        ('"single_crochet"', '"singel_crochet"', 'did you mean "single_crochet"'),
        ('{ chain = "gap" }', '{ chain = "gab" }', 'unknown parameter "gab"'),
        ("basis =", "bases = 1\nbasis =", 'unknown key "bases"'),
        ("nodes = [{ together", "node = 1\nnodes = [{ together", 'unknown key "node"'),
        ("nodes = [{ together", "rows = {}\nnodes = [{ together", "round 2 has no rows"),
    ],
)
def test_a_file_of_edgings_is_refused_when_a_pattern_does_not_hold(
    old: str, new: str, said: str
) -> None:
    """The pattern is named with what is wrong, at any value its parameters may take."""
    message = refusal(NEW.replace(old, new))
    assert message.startswith("mine.toml pairs: ")
    assert said in message


def test_patterns_keep_their_parameters_when_listed() -> None:
    """A form can ask for the parameters with their ends."""
    picots = patterns()["picot_group"].parameters["picots"]
    assert (picots.default, picots.low, picots.high) == (3, 1, 3)


BRACED = """
[braced]
us = ["braced edging", "braced edging"]
uk = ["braced edging", "braced edging"]
multiple = 2
source = "a test"
basis = "memory"

[[braced.round]]
times = 2
nodes = [{ work = "single_crochet", times = 2 }]
rows.before = [{ work = "single_crochet", times = 2 }]
rows.after = [{ work = "single_crochet" }]
sides.after = [{ work = "single_crochet" }]
sides.corner = [
  { work = "single_crochet", times = "n" },
  { into = [{ work = "single_crochet", times = 3 }] },
  { work = "single_crochet", times = "n" },
]
"""


def test_what_frames_the_repeats_is_counted_when_an_edging_has_rows_and_sides() -> None:
    """Three stitches more in rows, one on a side; the corner grows by two in each round."""
    braced = build(read_patterns(BRACED, "mine.toml")["braced"])
    single = Work("single_crochet")
    assert (braced.row_offset, braced.side_offset) == (3, 1)
    assert [row.before for row in braced.rows] == [(Work("single_crochet", 2),)] * 2
    assert braced.sides[0].corner == (Into((Work("single_crochet", 3),)),)
    assert braced.sides[1].corner == (single, Into((Work("single_crochet", 3),)), single)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            'rows.after = [{ work = "single_crochet" }]',
            'rows.after = [{ into = [{ work = "single_crochet", times = 2 }] }]',
            "row 2 uses 3 places before and after its repeats, but there are 4",
        ),
        ("times = 3", "times = 2", "round 2 uses 3 places in a corner, but there are 2"),
        ("sides.corner", "sides.nodes = []\nsides.corner", "side, 1 uses 0 places in a repeat"),
    ],
)
def test_an_edging_is_refused_when_its_ends_or_corners_do_not_fill(
    old: str, new: str, said: str
) -> None:
    """What stands before, after and in the corners has to use what is there, as the repeats do."""
    assert old in BRACED
    message = refusal(BRACED.replace(old, new))
    assert message.startswith("mine.toml braced: ")
    assert said in message


@pytest.mark.parametrize("key", ["picot_bead", "loops", "fringe"])
def test_what_a_child_may_swallow_or_catch_in_is_cautioned_against(key: str) -> None:
    """In plain words, and leaving the last one to the rules of the place."""
    assert "small child" in edging(key).note
    assert "Local rules and the edition in force come first." in edging(key).note
