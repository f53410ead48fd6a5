"""What a person may turn in a design, and the design with it turned."""

from __future__ import annotations

import tomllib
from difflib import ndiff
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.design.knobs import Knob, knobs, names_in_formulas, turn
from frogless.design.load import parse_design
from frogless.errors import InputError
from frogless.files import dotted
from frogless.toml_text import Steps

FOLDER = Path(__file__).parents[3] / "designs"
TEXTS = {
    path.parent.name: path.read_text(encoding="utf-8")
    for path in sorted(FOLDER.glob("*/design.toml"))
}
DESIGNS = [name for name, text in TEXTS.items() if "[[piece]]" not in text]
RING = TEXTS["ring-dance-skirt"]
WRITTEN = {
    "length": ("12 cm", "0.5 * hip_girth + 1 in", "hip_girth / 2"),
    "size": ("3 mm", "0.5 in", "4.5"),
    "number": ("2", "3", "5"),
    "truth": ("true", "false", "yes", "no"),
    "text": ("Something else", 'With "quotes" and a # sign', "ünüsual"),
    "pair": ("1 cm to 5 cm", "-2 cm to 2 in"),
    "list": ("one.edge; another.edge", "one.edge"),
}


@cache
def every(text: str) -> dict[Steps, Knob]:
    """The knobs of a design by the way to each."""
    return {knob.path: knob for group in knobs(text) for knob in group.knobs}


def turned(text: str, path: Steps, written: str) -> str | InputError:
    """The design turned, or why not."""
    try:
        return turn(text, path, written)
    except InputError as refused:
        return refused


def differences(before: str, after: str) -> list[str]:
    """The lines that went and came."""
    return [d for d in ndiff(before.splitlines(), after.splitlines()) if d[0] in "+-"]


def comments(text: str) -> list[str]:
    """The comments of a design that has no # in its texts."""
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def value_at(text: str, path: Steps) -> object:
    """What stands there; None where nothing does."""
    value: object = tomllib.loads(text)
    for step in path:
        try:
            value = value[step]  # type: ignore[index]
        except KeyError:
            return None
    return value


@pytest.mark.parametrize("name", TEXTS)
def test_every_knob_set_to_what_it_is_gives_the_same_text(name: str) -> None:
    """Byte for byte, also for those that are not written."""
    text = TEXTS[name]
    for path, knob in every(text).items():
        assert turn(text, path, knob.value) == text


@pytest.mark.parametrize("name", TEXTS)
def test_what_is_written_is_shown_and_nothing_else(name: str) -> None:
    """A knob has a value where the design has one, and none where it is left open."""
    for path, knob in every(TEXTS[name]).items():
        assert knob.written == (value_at(TEXTS[name], path) is not None), path
        assert knob.written or knob.value == ""


@pytest.mark.parametrize("name", TEXTS)
def test_every_written_key_has_a_knob_or_is_for_the_text_only(name: str) -> None:
    """Nothing in the examples is out of reach, but what is written as rows and data."""
    kept_as_text = {"format", "construction", "grades", "pattern"}

    def leaves(data: object, path: Steps = ()) -> list[Steps]:
        if isinstance(data, dict):
            return [s for key, one in data.items() for s in leaves(one, (*path, key))]
        if isinstance(data, list) and data and isinstance(data[0], dict | list):
            return [s for i, one in enumerate(data) for s in leaves(one, (*path, i))]
        return [path]

    known = every(TEXTS[name])
    for path in leaves(tomllib.loads(TEXTS[name])):
        inside_text = path[0] == "pattern" or "grades" in path or path[-1] in kept_as_text
        listed = path[0] == "notes"
        assert path in known or inside_text or listed, path


@given(name=st.sampled_from(sorted(TEXTS)), data=st.data())
def test_a_knob_set_to_another_value_has_it_and_keeps_the_comments(
    name: str, data: st.DataObject
) -> None:
    """The design loads, what was typed is read back, and only that changes."""
    text = TEXTS[name]
    path, knob = data.draw(st.sampled_from(sorted(every(text).items(), key=str)))
    offered = WRITTEN.get(knob.kind, ()) if not knob.choices else [key for key, _ in knob.choices]
    if knob.kind == "list" and knob.items != "text":
        offered = ("3 cm; 5 cm", "3 cm")
    if knob.items == "number":
        offered = ("3 to 2",)
    written = data.draw(st.sampled_from(offered))
    changed = turned(text, path, written)
    if isinstance(changed, InputError):
        assert changed.faults[0].place.key == dotted(path)
        return
    parse_design(changed)
    there = every(changed)[path]
    same = {"yes": "true", "no": "false", "4.5": "4.5 mm" if knob.unit == "mm" else "4.5 cm"}
    if knob.unit == "m" and written == "4.5":
        same["4.5"] = "4.5 m"
    assert there.written
    assert there.value == same.get(written, written) if written != knob.value else knob.value
    assert comments(changed) == comments(text) or '"' in written or path[-1] in ("kind", "pattern")
    if path[-1] not in ("kind", "pattern"):
        came = [d for d in differences(text, changed) if d[0] == "+"]
        assert len(came) <= 1


@given(name=st.sampled_from(sorted(TEXTS)), data=st.data())
def test_a_knob_put_back_is_as_if_never_written(name: str, data: st.DataObject) -> None:
    """What may be left open is taken out; what is needed is missed by name."""
    text = TEXTS[name]
    written = [knob for knob in every(text).values() if knob.written]
    knob = data.draw(st.sampled_from(written))
    changed = turned(text, knob.path, "")
    if isinstance(changed, InputError):
        assert changed.faults[0].message == "is missing"
        assert knob.default == ""
        return
    if isinstance(knob.path[-1], str):
        assert value_at(changed, knob.path) is None
    came = [d for d in differences(text, changed) if d[0] == "+"]
    assert len(came) <= 1
    assert all("{" in line or "[" in line for line in came)


CHANGES: dict[str, tuple[Steps, str, list[str]]] = {
    "a number without a unit": (
        ("section", 1, "ease"), "5",
        ['+ ease = "5 cm"'],
    ),
    "a hook without a unit is in mm": (("edging", "hook"), "3", ['+ hook = "3 mm"']),
    "a number of points": (("section", 1, "points"), "8", ["+ points = 8"]),
    "points to choose from": (("section", 1, "points"), "4, 8", ["+ points = [4, 8]"]),
    "points back to auto": (("section", 1, "points"), "", []),
    "two ends": (
        ("section", 1, "ease_allowed"), "2 to 8",
        ['+ ease_allowed = ["2 cm", "8 cm"]'],
    ),
    "a number of the edging": (
        ("edging", "parameters", "singles"), "6",
        ["+ parameters = { singles = 6, picots = 3 }"],
    ),
    "a truth in words": (("work", "turning_chain_counts"), "yes", ["+ turning_chain_counts = true"]),
    "a choice by its name": (
        ("work", "stitch"), "half double crochet",
        ['+ stitch = "half_double_crochet"'],
    ),
    "a length of the design's own": (("lengths", "hem_girth"), "150", ['+ hem_girth = "150 cm"']),
}  # fmt: skip


@pytest.mark.parametrize("name", CHANGES)
def test_what_was_typed_is_written_as_the_document_has_it(name: str) -> None:
    """A number as a number, a length with its unit, and one line changes."""
    path, written, lines = CHANGES[name]
    changed = differences(RING, turn(RING, path, written))
    assert [d.partition("   #")[0].rstrip() for d in changed if d[0] == "+"] == lines
    assert len([d for d in changed if d[0] == "-"]) == 1


def test_a_length_without_a_unit_is_in_the_unit_of_the_page() -> None:
    """Fractions may be typed as one sign."""
    for typed, kept in (("27½", "27 1/2 in"), ("27 1/2", "27 1/2 in"), ("-3", "-3 in")):
        changed = turn(RING, ("section", 1, "ease"), typed, "in")
        assert value_at(changed, ("section", 1, "ease")) == kept
    assert (
        value_at(turn(RING, ("section", 1, "ease"), "2 cm", "in"), ("section", 1, "ease")) == "2 cm"
    )


def test_a_plain_number_of_the_designs_own_stays_a_number() -> None:
    """A factor is no length."""
    text = RING.replace("[lengths]", '[lengths]\nfullness = "1.35"').replace(
        '"1.35 * hip_girth"', '"fullness * hip_girth"'
    )
    assert value_at(turn(text, ("lengths", "fullness"), "1.5"), ("lengths", "fullness")) == "1.5"


@pytest.mark.parametrize(
    ("path", "written", "told"),
    [
        (("section", 1, "ease"), "4 hips", "is not a formula"),
        (("section", 1, "ease"), "hip_girht + 4 cm", 'did you mean "hip_girth"'),
        (("section", 1, "ease"), "hip_girth + 4", "give the number a unit"),
        (("section", 1, "ease_allowed"), "4 cm", "write the least and the most"),
        (("lengths", "hem_girth"), "hem_girth + 1 cm", "defined by each other"),
        (("section", 1, "clauses"), "9", "write a number from 1 to 6"),
        (("section", 1, "every"), "often", 'write a number or "auto"'),
        (("section", 1, "every"), "2.5", "must be"),
        (("garment", "length"), "", "is missing"),
        (("edging", "pattern"), "shel", 'did you mean "shell"?'),
        (("edging", "parameters", "singles"), "40", "write a number from 1 to 24"),
        (("edging", "hook"), "big", "is not the size of a hook"),
        (("work", "turning_chain_counts"), "maybe", "write yes or no"),
        (("work", "stitch"), "knit", "accepted are"),
        (("title",), "", "is missing"),
    ],
)
def test_what_is_not_accepted_is_told_with_its_key_and_line(
    path: Steps, written: str, told: str
) -> None:
    """In one sentence."""
    with pytest.raises(InputError) as refused:
        turn(RING, path, written)
    (fault,) = refused.value.faults
    assert told in fault.message
    assert fault.place.key == dotted(path)
    assert path == ("title",) or fault.place.line


def test_there_is_nothing_to_turn_elsewhere() -> None:
    """A way that is no knob's is refused, with near ones."""
    with pytest.raises(InputError, match=r'did you mean "section\[\d\].points"'):
        turn(RING, ("section", 1, "pionts"), "8")
    with pytest.raises(InputError, match="nothing to turn"):
        turn(RING, ("format",), "frogless-design/2")


def test_another_edging_loses_the_numbers_that_it_has_not() -> None:
    """And keeps those that both have, as far as they go."""
    shell = turn(RING, ("edging", "pattern"), "shell")
    assert value_at(shell, ("edging", "parameters")) is None
    spaced = turn(RING, ("edging", "pattern"), "picot_single")
    assert value_at(spaced, ("edging", "parameters")) == {"singles": 4}
    wide = turn(
        turn(RING, ("edging", "parameters", "singles"), "20"), ("edging", "pattern"), "bobble"
    )
    assert value_at(wide, ("edging", "parameters")) is None


def test_another_kind_of_waist_gets_what_it_needs() -> None:
    """What the other kind has not goes, a band gets its height."""
    cord = turn(RING, ("waist", "kind"), "drawcord")
    assert value_at(cord, ("waist",)) == {"kind": "drawcord"}
    band = turn(RING, ("waist", "kind"), "ribbed band")
    assert value_at(band, ("waist",)) == {"kind": "ribbed band", "height": "4 cm"}
    assert value_at(turn(band, ("waist", "kind"), "covered elastic"), ("waist", "width")) == "6 mm"


def test_a_section_that_leaves_its_stitch_pattern_loses_its_numbers() -> None:
    """They mean nothing without it."""
    text = TEXTS["bellflower-skirt"]
    path = next(path for path, knob in every(text).items() if path[-1] == "pattern" and knob.value)
    assert any(other[-2:-1] == ("parameters",) for other in every(text))
    plain = turn(text, path, "")
    assert not any(other[-2:-1] == ("parameters",) for other in every(plain))


def test_groups_follow_the_garment() -> None:
    """From the length on down, then how it is worked."""
    assert [group.title for group in knobs(RING)] == [
        "About", "Length and fit", "Start", "Section: band", "Section: waist to hip",
        "Section: hip to hem", "Edging", "Waist", "Strand: front strand", "Work", "Your own gauge",
    ]  # fmt: skip
    titles = [group.title for group in knobs(TEXTS["hayfield-pullover"])]
    assert "Piece: yoke" in titles
    assert "Piece: body, section: body" in titles


def test_choices_have_names_in_the_makers_terms() -> None:
    """Stitches and edgings are named as she knows them."""
    for terms, name in (("us", "double crochet"), ("uk", "treble crochet")):
        groups = knobs(RING, terms)  # type: ignore[arg-type]
        stitch = next(k for g in groups for k in g.knobs if k.path == ("work", "stitch"))
        assert dict(stitch.choices)["double_crochet"] == name
    edging = every(RING)["edging", "pattern"]
    assert dict(edging.choices)["picot_group"] == "picot edging"


def test_formulas_say_which_names_they_may_use() -> None:
    """The design's own lengths first, then what is measured."""
    names = [name for name, _ in names_in_formulas(RING)]
    assert names[:4] == ["skirt_length", "opening", "hem_girth", "waist_girth"]
    assert "body_mass" not in names
    for name, _ in names_in_formulas(RING):
        factor = "10 cm * " if name == "stretch" else ""
        turn(RING, ("start", "girth"), f"{factor}{name} + 1 cm")


@pytest.mark.parametrize("name", DESIGNS)
def test_line_ends_of_another_system_are_kept(name: str) -> None:
    """Only the changed line changes."""
    text = TEXTS[name].replace("\n", "\r\n")
    changed = turn(text, ("garment", "length"), "55 cm")
    assert changed.count("\r\n") == text.count("\r\n")
    assert changed.count("\n") == text.count("\n")


ODD = """
"format" = 'frogless-design/1' # the format
title = '''An odd one'''
garment = { kind = "skirt", "length" = "60 cm" } # how long
work.stitch = "treble"
work.turning_chain = 3
start = { with = "chain", seat = { extra = "3 cm" } }
section = [
  { name = "all", to = "hem", shape = "shaped", girth = "150 cm", points = [
    4, # few
    8,
  ], plain = [{ from = "1 cm", to = "2 cm" }] },
]
[edging]
pattern = "picot_group" # small
hook = "2 mm"
parameters.singles = 5
[colours]
names.A = "cream"
names."B" = "rust"
stripes = [{ repeat = [{ colour = "A", rows = 2 }, { colour = "B" }] }]
"""


def test_tables_on_one_line_and_dotted_keys_are_turned_too() -> None:
    """However the design is written: what is set is read back, what is beside it stays."""
    for path, knob in every(ODD).items():
        assert turn(ODD, path, knob.value) == ODD
        written = knob.choices[-1][0] if knob.choices else WRITTEN[knob.kind][0]
        if knob.kind == "number" or knob.items == "number":
            written = "2"
        changed = turned(ODD, path, "3 cm; 4 cm" if knob.items == "size" else written)
        if isinstance(changed, str):
            assert every(changed)[path].written
            assert set(comments(ODD)) - {" few", " small"} <= set(comments(changed))
        back = turned(ODD, path, "")
        assert isinstance(back, str) or knob.default == ""


def test_too_much_for_one_value_is_refused_unread() -> None:
    """Notes as well as lists of points."""
    for path, written in ((("title",), "a" * 3000), (("section", 1, "points"), "4," * 3000)):
        with pytest.raises(InputError, match="at most 2,000 are accepted"):
            turn(RING, path, written)
