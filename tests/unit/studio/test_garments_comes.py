"""What knobs come to for a body, which of them are turned most, and rhythms in a line."""

from __future__ import annotations

import pytest
from django.test import Client
from garments_made import garment, own_design, read, turn

from frogless.draft import Texts
from frogless.studio.examples import examples
from frogless.studio.garments.comes import panel_of
from frogless.studio.garments.drafts import Order
from frogless.studio.garments.panel import Field
from frogless.studio.garments.turned import change, in_a_line
from frogless.units import Units

BODY = examples("body")["dancer-3"].text
SWATCH = examples("swatch")["light-cotton"].text


def order(design: str, units: Units = "cm") -> Order:
    """An example for a dancer with a waist of 72 cm and hips of 101 cm."""
    return Order(Texts(examples("design")[design].text, BODY, (SWATCH,)), units=units)


def most_used(asked: Order) -> dict[str, Field]:
    """The fields of the group that stands open, by name."""
    return {field.name: field for field in panel_of(asked).groups[0].fields}


def test_formula_says_what_it_comes_to() -> None:
    """The larger of 72 + 2 and 101 / 1.2 is 84.17, shown to the half centimetre."""
    field = most_used(order("ring-dance-skirt"))["lengths/opening"]
    assert field.comes == "84 cm"
    assert field.reads == "the larger of waist + 2 cm and hip ÷ 1.2"
    assert field.typed == "max(waist_girth + 2 cm, hip_girth / 1.2)"


def test_formula_comes_to_the_units_of_the_page() -> None:
    """84.17 cm are 33.1 in, shown to the quarter inch."""
    field = most_used(order("ring-dance-skirt", "in"))["lengths/opening"]
    assert field.comes.startswith("33")
    assert field.comes.endswith("in")


def test_length_that_is_a_name_reads_as_what_the_name_stands_for() -> None:
    """Nobody has to look the name up."""
    field = most_used(order("ring-dance-skirt"))["garment/length"]
    assert field.typed == "skirt_length"
    assert field.reads == "waist to knee − 2 cm"


def test_plain_length_says_it_itself() -> None:
    """4 cm are 4 cm."""
    assert most_used(order("ring-dance-skirt"))["section/1/ease"].comes == ""


@pytest.mark.parametrize(
    ("design", "names"),
    [
        ("hayfield-pullover", {"piece/0/depth", "piece/1/length", "piece/2/length"}),
        ("harvest-top", {"piece/0/length", "piece/1/length", "piece/2/length"}),
        ("fiddler-cardigan", {"lengths/long", "lengths/deep", "piece/3/length"}),
    ],
)
def test_tops_have_their_lengths_first(design: str, names: set[str]) -> None:
    """Body, sleeves, yoke; where pieces share a length, the shared one."""
    assert names <= most_used(order(design)).keys()


def test_own_length_that_nothing_uses_is_not_among_the_most_used() -> None:
    """Once the length is said itself, the name that it was said by does nothing."""
    done = change(order("midsummer-dress"), (("piece/1/length", "80 cm"),), "shape", prove=False)
    group = done.panel.groups[0]
    assert "lengths/skirt_length" not in {field.name for field in group.fields}
    assert "lengths/skirt_length" in done.panel.fields()


def test_fields_that_come_to_something_else_are_set_anew() -> None:
    """A length that others are made of changes those."""
    done = change(
        order("midsummer-dress"), (("lengths/skirt_length", "50 cm"),), "shape", prove=False
    )
    assert "piece/1/length" in {field.name for field in done.fields}


def test_body_that_cannot_be_read_leaves_the_formulas() -> None:
    """The panel goes on working."""
    asked = order("ring-dance-skirt")
    found = panel_of(Order(Texts(asked.texts.design, "nonsense", (SWATCH,))))
    assert found.fields()["lengths/opening"].comes == ""


def test_page_shows_the_length_before_the_formula(client: Client) -> None:
    """In the label; the words stand under it, the formula in the field."""
    page = read(client, f"/garments/{garment().pk}/shape/")
    label = page.partition('for="knob-lengths-opening"')[2].partition("</label>")[0]
    assert "84 cm" in label
    assert "the larger of waist" in page.lower()


def test_new_rhythm_is_told() -> None:
    """On which rounds now and before; nothing else need be different."""
    was = "8 points, on round 5, then every 3rd round once more (rounds 5, 8)"
    now = "8 points, on round 4, then every 4th round once more (rounds 4, 8)"
    line = in_a_line((f"shaping of waist to hip: {was} → {now}",))
    assert line == (
        "waist to hip is shaped now: rounds 4, 8, before 5, 8; the counts between sections stay"
    )
    line = in_a_line(
        (f"shaping of yoke: {was} → {now.replace('8 p', '6 p')}", "hem: 8 → 9 stitches")
    )
    assert line == "hem: 8 → 9 stitches; yoke is shaped now: 6 points, rounds 4, 8, before 5, 8"


def test_long_rhythm_is_told_in_words() -> None:
    """A list of thirty rounds is no line."""
    many = ", ".join(map(str, range(1, 40)))
    line = in_a_line((f"shaping of a: 8 points, x (rounds {many}) → 8 points, y (rounds {many})",))
    assert line.startswith("a is shaped now: 8 points, y (rounds")


def test_taken_way_says_its_rhythm(client: Client) -> None:
    """The answer to "Take it" names rounds."""
    made = garment()
    sent = {"k:section/1/points": "8", "k:section/1/indifference": "0 cm"}
    part = turn(client, made, **sent).content.decode()
    assert "waist to hip is shaped now: rounds " in part
    assert own_design(made)


def test_because_of_a_folded_line_says_its_range(client: Client) -> None:
    """Rounds 3 and 4 are told in one line, so both are named; an odd range is left out."""
    address = f"/garments/{garment().pk}/why/row.skirt.4/"
    assert "Rounds 3 to 4, each: 152" in read(client, f"{address}?from=3")
    for odd in ("", "?from=4", "?from=99999999", "?from=%3Cb%3E", "?from=-1"):
        assert "Round 4: 152" in read(client, address + odd)


def test_line_of_several_rows_asks_with_its_first(client: Client) -> None:
    """The link says where the line begins."""
    page = read(client, f"/garments/{garment().pk}/pattern/")
    assert "row.skirt.4/?from=3" in page
    assert "row.skirt.5/?from" not in page


def test_warning_stands_with_its_first_sentence(client: Client) -> None:
    """Folded on the screen in every room, in full for paper."""
    made = garment()
    for room in ("shape", "pattern", "materials", "fit"):
        page = read(client, f"/garments/{made.pk}/{room}/")
        folded = page.partition('id="look-at"')[2].partition("</summary>")[0]
        assert "stretches 24 % with comfort." in folded
        assert "The elastic has to stretch" not in folded
        assert "The elastic has to stretch" in page.partition("note care only-printed")[2]
