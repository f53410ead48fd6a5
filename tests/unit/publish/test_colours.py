"""What a pattern says of its colours: the key, the stripes, the yarn, the ends."""

from __future__ import annotations

import json
from dataclasses import replace

from examples import Example
from published import headings, part, published, shown, text_of

from frogless.publish.blocks import Bullets, Terms
from frogless.publish.colours import colours, ends, labelled
from frogless.publish.drafted import Drafted
from frogless.publish.plain import plain
from frogless.publish.planfile import dump, planfile
from frogless.publish.terminal import summary
from frogless.publish.webpage import webpage
from frogless.tally.model import YarnNeed

SHAWL = Example("torchlight-shawl")


def need(letter: str) -> YarnNeed:
    """The yarn of a colour of the shawl."""
    return next(one for one in shown(SHAWL).tally.yarn if one.colour == letter)


def without_names() -> Drafted:
    """The shawl, its colours known by their letters alone."""
    found = shown(SHAWL)
    design = found.basis.design.model_copy(update={"colours": None})
    return replace(found, basis=replace(found.basis, design=design))


def test_key_gives_letter_name_and_amount_after_the_materials() -> None:
    """The same length and mass as under the materials; no colour is shown without its letter."""
    document = published(SHAWL)
    order = headings(document)
    assert order.index("Colors") == order.index("Materials") + 1
    (key,) = (block for block in part(document, "Colors") if isinstance(block, Terms))
    assert [letter for letter, _ in key.items] == ["Color A", "Color B"]
    materials = text_of(part(document, "Materials"))
    for (letter, told), name in zip(key.items, ("night blue", "amber"), strict=True):
        called, length, mass = told.replace("\u00a0", " ").split(", ")
        assert called == name
        line = next(x for x in materials.splitlines() if x.startswith(f"{letter}, {name}, in "))
        assert length in line
        assert f", {mass}." in line


def test_each_colour_is_bought_in_balls_of_its_own() -> None:
    """As many as the tally says, of one dye lot."""
    told = text_of(part(published(SHAWL), "Materials"))
    for letter in "AB":
        assert f"{need(letter).balls} balls of 50 g / 120 m, of one dye lot" in told
    assert "carried yarn" in told


def test_stripes_are_told_in_the_order_worked() -> None:
    """Those of the garment, then those of the edging."""
    found = part(published(SHAWL), "Colors")
    (stripes,) = (block for block in found if isinstance(block, Bullets))
    assert [text.replace("\u00a0", " ") for text in stripes.items] == [
        "4 rows of color A, 2 rows of color B, over and over",
        "Edging: color B to the end",
    ]


def test_change_is_explained_once() -> None:
    """In the part on colours, in words that fit rows that are turned."""
    told = text_of(published(SHAWL))
    assert told.count("To change color, ") == 1
    assert told.count("lay it loosely up the edge") == 1
    assert "In a joined round" not in told


def test_ends_are_told_for_the_finishing() -> None:
    """Two of each colour: both are carried all the way."""
    told = text_of(part(published(SHAWL), "Finishing"))
    assert "4 ends to weave in" in told
    assert told.count("2 of A (night blue), 2 of B (amber)") == 1
    assert "Weave in each end" in told


def test_words_are_british_in_uk_terms() -> None:
    """Colour, and no color anywhere."""
    document = published(SHAWL, "uk", "in")
    assert "Colours" in headings(document)
    assert "color" not in text_of(document).lower()


def test_letter_stands_alone_when_the_design_has_no_name_for_it() -> None:
    """As for a colour that only a stitch pattern has."""
    found = without_names()
    assert labelled(found, "B") == "Color B"
    assert "2 of A, 2 of B" in ends(found)[0]
    key = next(block for block in colours(found) if isinstance(block, Terms))
    assert key.items[0][1].startswith("about ")


def test_page_and_plain_text_have_the_key() -> None:
    """Letter and name together."""
    document = published(SHAWL)
    for text in (plain(document), webpage(document)):
        assert "Color A" in text
        assert "night blue" in text


def test_plan_file_has_every_colour_with_its_name_and_ends() -> None:
    """And the letter that the piece is begun with."""
    (size,) = json.loads(dump(planfile(shown(SHAWL))))["sizes"]
    yarn = [(one["colour"], one["colour_name"], one["ends"]) for one in size["materials"]["yarn"]]
    assert yarn == [("A", "night blue", 2), ("B", "amber", 2)]
    assert size["pieces"][0]["colour"] == "A"
    rows = size["pieces"][0]["rows"]
    assert "".join(row["colour"] for row in rows[1:13]) == "AAAABBAAAABB"
    assert "colour" not in planfile(shown(Example()))["sizes"][0]["materials"]["yarn"][0]


def test_summary_names_each_colour() -> None:
    """A line of yarn for each."""
    told = summary(shown(SHAWL), (), (), 100)
    assert "yarn A  night blue: " in told
    assert "yarn B  amber: " in told


def test_pattern_in_one_colour_says_nothing_of_colours() -> None:
    """No part, no ends, no letter."""
    found = shown(Example())
    assert not colours(found)
    assert not ends(found)
    assert "Colors" not in headings(published(Example()))
