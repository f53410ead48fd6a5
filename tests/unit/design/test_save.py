"""A design is changed, and what its author wrote around the change stays."""

from __future__ import annotations

import tomllib
from difflib import ndiff
from pathlib import Path

import pytest

from frogless.design.save import Written, set_values
from frogless.errors import InputError
from frogless.files import Steps

DESIGNS = sorted((Path(__file__).parents[3] / "designs").glob("*/design.toml"))
RING = (Path(__file__).parents[3] / "designs" / "ring-dance-skirt" / "design.toml").read_text(
    encoding="utf-8"
)


def differences(before: str, after: str) -> list[str]:
    """The lines that went and came."""
    lines = ndiff(before.splitlines(), after.splitlines())
    return [line for line in lines if line[0] in "+-"]


def values(data: object, steps: Steps = ()) -> dict[Steps, Written]:
    """Every value of a document by the way to it."""
    if isinstance(data, dict):
        return {k: v for key, one in data.items() for k, v in values(one, (*steps, key)).items()}
    if isinstance(data, list):
        return {k: v for i, one in enumerate(data) for k, v in values(one, (*steps, i)).items()}
    assert isinstance(data, str | int | float | bool)
    return {steps: data}


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.parent.name)
def test_unchanged_design_comes_back_byte_for_byte(path: Path) -> None:
    """With no change, and with every value set to what it is."""
    text = path.read_bytes().decode("utf-8")
    assert set_values(text, {}) == text
    assert set_values(text, values(tomllib.loads(text))) == text


def test_line_ends_of_another_system_are_kept() -> None:
    """Only the changed line changes."""
    text = RING.replace("\n", "\r\n")
    assert set_values(text, {}) == text
    changed = set_values(text, {("garment", "length"): "60 cm"})
    assert changed.count("\r\n") == text.count("\r\n")
    assert changed.count("\n") == text.count("\n")


def test_comment_beside_a_value_stays_when_the_value_changes() -> None:
    """One line goes, one comes, the comment is on both."""
    went, came = differences(RING, set_values(RING, {("garment", "length"): "60 cm"}))
    assert went.startswith('- length = "skirt_length"')
    assert came.startswith('+ length = "60 cm"')
    assert went.partition("#")[2] == came.partition("#")[2] != ""


CHANGES: dict[str, tuple[Steps, Written, str]] = {
    "in a list": (("section", 1, "ease_allowed", 1), "8 cm", '+ ease_allowed = ["1.5 cm", "8 cm"]'),
    "in a table on one line": (
        ("edging", "parameters", "singles"),
        6,
        "+ parameters = { singles = 6, picots = 3 }",
    ),
    "of another kind": (("section", 1, "points"), 8, "+ points = 8"),
    "a truth": (("work", "turning_chain_counts"), True, "+ turning_chain_counts = true"),
    "a number with a part": (("gauge", "rows_in_10cm"), 9.25, "+ rows_in_10cm = 9.25"),
    "a new key": (("section", 1, "every"), 2, "+ every = 2"),
    "a new key before a blank line": (("section", 0, "stitch"), "treble", '+ stitch = "treble"'),
    "a new key above the tables": (("summary",), "Short.", '+ summary = "Short."'),
    "a new length of the design's own": (("lengths", "drop"), "2 cm", '+ drop = "2 cm"'),
}


@pytest.mark.parametrize("name", CHANGES)
def test_change_touches_its_own_line_only(name: str) -> None:
    """At most one line goes, one comes, and the new value is read back."""
    steps, value, line = CHANGES[name]
    changed = set_values(RING, {steps: value})
    came = [d for d in differences(RING, changed) if d[0] == "+"]
    went = [d for d in differences(RING, changed) if d[0] == "-"]
    assert [d.partition("   #")[0].rstrip() for d in came] == [line]
    assert len(went) <= 1
    assert values(tomllib.loads(changed))[steps] == value


def test_table_that_was_not_there_is_written() -> None:
    """With its keys, and nothing else changes."""
    bare = RING[: RING.index("[[strand]]")]
    without = bare.replace("[gauge]                          # what", "[gauge]\n# what")
    changed = set_values(without, {("section", 2, "stitch"): "treble"})
    assert 'stitch = "treble"' in changed
    minimal = (
        'format = "frogless-design/1"\ntitle = "x"\n[garment]\nkind = "skirt"\nlength = "60 cm"\n'
        '[work]\nstitch = "double_crochet"\nturning_chain = 3\n[start]\nwith = "chain"\n'
        '[[section]]\nname = "all"\nto = "hem"\n'
    )
    edged = set_values(minimal, {("edging", "pattern"): "crab", ("edging", "hook"): "2 mm"})
    assert edged.startswith(minimal.rstrip("\n"))
    assert tomllib.loads(edged)["edging"] == {"pattern": "crab", "hook": "2 mm"}


def test_true_is_not_taken_for_one() -> None:
    """A value of another kind is a change, and is refused where it is not accepted."""
    with pytest.raises(InputError, match="must be a whole number"):
        set_values(RING, {("waist", "stitches_in_each"): "two"})
    assert "turning_chain_counts = true" in set_values(
        RING, {("work", "turning_chain_counts"): True}
    )


@pytest.mark.parametrize(
    ("steps", "value", "told"),
    [
        (("section", 1, "pionts"), 8, 'unknown key "pionts"; did you mean "points"'),
        (("sections", "name"), "x", 'unknown key "sections"; did you mean "section"'),
        (("work", "rounds"), "round and round", 'must be "joined and turned"'),
        (("garment",), "skirt", "must be a table of keys"),
        (("section", 9, "points"), 8, "there is no such place in the design"),
        (("section", "first", "points"), 8, "there is no such place"),
        (("notes", 7), "x", "there is no such place"),
        (("title", "x"), "y", "there is no such place"),
    ],
)
def test_change_that_makes_no_design_is_refused(steps: Steps, value: Written, told: str) -> None:
    """By its key, with what is accepted; the text that was given is not touched."""
    with pytest.raises(InputError) as refused:
        set_values(RING, {steps: value})
    assert told in str(refused.value)
    assert refused.value.faults[0].place.key


def test_text_that_is_far_too_long_is_refused_unread() -> None:
    """By its length, with what is accepted."""
    with pytest.raises(InputError, match="at most 50,000 are read"):
        set_values(RING + "#" * 50_000, {})


def test_text_that_is_no_design_is_refused() -> None:
    """Before anything is changed in it."""
    with pytest.raises(InputError, match="not valid TOML"):
        set_values("title = ", {})
    with pytest.raises(InputError, match="a design file begins with format"):
        set_values('title = "x"\n', {})
