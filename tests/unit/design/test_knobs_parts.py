"""Tables of a design that are added and taken away."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from frogless.design.knobs import Part, add, knobs, parts, take_away
from frogless.design.load import parse_design
from frogless.draft import Texts, draft_texts
from frogless.errors import InputError
from frogless.toml_text import Steps

FOLDER = Path(__file__).parents[3] / "designs"
TEXTS = {
    path.parent.name: path.read_text(encoding="utf-8")
    for path in sorted(FOLDER.glob("*/design.toml"))
}
DESIGNS = [name for name, text in TEXTS.items() if "[[piece]]" not in text]
RING = TEXTS["ring-dance-skirt"]
ADDED = [(name, part) for name, text in TEXTS.items() for part in parts(text)]
SEVERAL = [name for name in DESIGNS if TEXTS[name].count("[[section]]") > 1]
GONE = [(name, group.path) for name, text in TEXTS.items() for group in knobs(text) if group.may_go]


@pytest.mark.parametrize(("name", "part"), ADDED, ids=str)
def test_what_was_added_and_taken_away_leaves_the_text_as_it_was(name: str, part: Part) -> None:
    """What can be added is added, loads, and can go again."""
    text = TEXTS[name]
    longer = add(text, part.what, part.at)
    before = {group.path for group in knobs(text)}
    places = [group.path for group in knobs(longer) if group.path not in before]
    if part.what == "section":
        place = next(
            i for i, s in enumerate(_sections(longer, part.at)) if s["name"] == "new section"
        )
        path: Steps = (*part.at, "section", place)
    else:
        (path,) = places
    assert take_away(longer, path) == text or "{" in text


@pytest.mark.parametrize(
    "name", ["bellflower-skirt", "drum-bag", "hayfield-pullover", "millrace-skirt", "whirl-skirt"]
)
def test_what_is_added_as_is_usual_can_be_worked(name: str) -> None:
    """Each part that is offered comes out, for a body and a yarn that know nothing of it."""
    body = (FOLDER / "bodies" / "dancer-3.toml").read_text(encoding="utf-8")
    swatch = (FOLDER / "swatches" / "light-cotton.toml").read_text(encoding="utf-8")
    for part in parts(TEXTS[name]):
        longer = add(TEXTS[name], part.what, part.at)
        assert draft_texts(Texts(longer, body, (swatch,))).drafted.findings, part


def test_what_would_stand_in_the_way_is_not_offered() -> None:
    """A waist on the edge of a yoke, an edging that the next tier would have to be worked onto."""
    pullover = {(part.what, part.at) for part in parts(TEXTS["hayfield-pullover"])}
    assert ("section", ("piece", 1)) in pullover
    assert ("waist", ("piece", 1)) not in pullover
    tiers = {part.at for part in parts(TEXTS["millrace-skirt"]) if part.what == "edging"}
    assert ("piece", 0) not in tiers


def _sections(text: str, at: Steps) -> list[dict[str, object]]:
    data = tomllib.loads(text)
    for step in at:
        data = data[step]  # type: ignore[index]
    return data["section"]  # type: ignore[no-any-return]


@pytest.mark.parametrize(("name", "path"), GONE, ids=str)
def test_what_may_go_is_gone_and_nothing_else(name: str, path: Steps) -> None:
    """The rest is as it was, with its comments."""
    text = TEXTS[name]
    try:
        shorter = take_away(text, path)
    except InputError as refused:  # what others stand on
        pytest.fail(str(refused))
    assert len(knobs(shorter)) < len(knobs(text))
    there = text.splitlines()
    assert all(line in there for line in shorter.splitlines() if "#" in line)


@pytest.mark.parametrize("name", SEVERAL)
def test_when_the_last_section_goes_the_one_before_reaches_the_hem(name: str) -> None:
    """A shaped one keeps the girth that it was shaped to."""
    sections = _sections(TEXTS[name], ())
    shorter = take_away(TEXTS[name], ("section", len(sections) - 1))
    last = _sections(shorter, ())[-1]
    assert last["to"] == "hem"
    assert "length" not in last
    assert last.get("shape") != "shaped" or last.keys() & {"girth", "flare", "pattern"}


def test_a_comment_above_the_next_table_stays() -> None:
    """One above the table itself goes with it; that at the top of the file never does."""
    text = RING.replace("[waist]", "# what holds it\n[waist]").replace(
        "[[strand]]", "# a strand\n[[strand]]"
    )
    shorter = take_away(text, ("waist",))
    assert "# a strand\n[[strand]]" in shorter
    assert "# what holds it" not in shorter
    assert shorter.startswith(RING.splitlines()[0])


def test_a_new_section_is_a_plain_one_before_the_last() -> None:
    """In the stitch of the last one, in the unit of the page, under a name of its own."""
    text = add(add(RING, "section"), "section", units="in")
    names = [str(section["name"]) for section in _sections(text, ())]
    assert names == ["band", "waist to hip", "new section", "new section 2", "hip to hem"]
    assert _sections(text, ())[3] == {
        "name": "new section 2", "shape": "straight", "length": "2 in",
    }  # fmt: skip


def test_a_design_in_tables_on_one_line_can_be_changed_too() -> None:
    """Where there are no lines of its own, the table is changed where it stands."""
    text = (
        'format = "frogless-design/1"\ntitle = "x"\nwork = { stitch = "treble", turning_chain = 3 }\n'
        'garment = { kind = "skirt", length = "60 cm" }\nstart = { with = "chain" }\n'
        'section = [{ name = "all", to = "hem" }]\n'
    )
    for what in ("section", "edging", "waist", "strand"):
        text = add(text, what)
        parse_design(text)
    for path in (("strand", 0), ("waist",), ("edging",), ("section", 0)):
        text = take_away(text, path)
    assert [s["name"] for s in _sections(text, ())] == ["all"]


def test_what_cannot_be_added_or_go_is_told_with_what_can() -> None:
    """A second edging, a design's only section, a table that is needed."""
    with pytest.raises(InputError, match="no edging can be added here"):
        add(RING, "edging")
    with pytest.raises(InputError, match="no sleeve can be added here; what can be is section"):
        add(RING, "sleeve")
    with pytest.raises(InputError, match="this cannot be taken away; what can be is Section: band"):
        take_away(RING, ("work",))
    one = take_away(take_away(RING, ("section", 0)), ("section", 0))
    with pytest.raises(InputError, match="cannot be taken away"):
        take_away(one, ("section", 0))
