"""The panel of knobs by itself: what stands first, what is refused, what has to be set anew."""

from __future__ import annotations

import pytest
from django.test import Client
from garments_made import garment, read

from frogless.studio.examples import examples
from frogless.studio.garments.faults import knob_name, path_named, path_of
from frogless.studio.garments.panel import ADDS, TAKES, differing, panel, refused, turned
from frogless.studio.garments.subject import colours, of_colour
from frogless.swatch import parse_swatch

RING = examples("design")["ring-dance-skirt"].text
EVERY = tuple(examples("design"))


@pytest.mark.parametrize("key", EVERY)
def test_every_example_has_a_panel(key: str) -> None:
    """Each knob once, most used first and open, each group and field under an id of its own."""
    found = panel(examples("design")[key].text, "us")
    fields = [f for g in found.groups for f in (*g.fields, *g.more)]
    assert found.error == ""
    assert found.groups[0].open
    assert not any(group.open for group in found.groups[1:])
    assert len({f.name for f in fields}) == len(fields) == len({f.id for f in fields})
    assert len({g.id for g in found.groups}) == len(found.groups)


def test_most_used_are_length_ease_points_and_edging() -> None:
    """In the order in which a skirt is thought of; a straight section has no ease to turn."""
    found = panel(RING, "us").groups[0].fields
    names = [f.name for f in found]
    assert names[0] == "garment/length"
    assert "section/1/ease" in names
    assert "section/1/points" in names
    assert "section/0/ease" not in names
    assert names[-1] == "edging/pattern"


def test_section_of_a_knob_is_named() -> None:
    """Outside of its group a knob says whose it is."""
    labels = {f.name: f.label for f in panel(RING, "us").groups[0].fields}
    assert labels["garment/length"] == "Length"
    assert labels["section/1/ease"] == "Waist to hip: ease"


def test_choices_that_are_offers_can_be_written_over() -> None:
    """ "auto" or a number of rounds; shaping points in any number; but no edging that is none."""
    found = panel(RING, "us").fields()
    assert found["section/1/every"].free
    assert found["section/1/points"].free
    assert not found["edging/pattern"].free
    done = turned(RING, (("section/1/points", "8, 12"), ("section/1/every", "2")), "cm", "us")
    assert done.errors == ()
    assert "every = 2" in done.text


def test_faulty_design_has_no_knobs() -> None:
    """It says why."""
    found = panel(RING + "\nnonsense = 1\n", "us")
    assert found.groups == ()
    assert "nonsense" in found.error


@pytest.mark.parametrize("key", EVERY)
def test_what_a_form_sends_back_unchanged_changes_nothing(key: str) -> None:
    """Whole groups are sent where scripts are off."""
    text = examples("design")[key].text
    sent = tuple((f.name, f.typed) for f in panel(text, "us").fields().values())
    done = turned(text, sent, "cm", "us")
    assert done.text == text
    assert done.errors == ()
    assert done.told == ""


def test_good_ones_are_turned_beside_a_refused_one() -> None:
    """Each is judged alone."""
    sent = (("garment/length", "70"), ("section/1/ease", "much"))
    done = turned(RING, sent, "cm", "us")
    assert 'length = "70 cm"' in done.text
    assert [name for name, _ in done.errors] == ["section/1/ease"]
    assert done.told == "Length skirt_length → 70 cm"


def test_bare_number_is_in_the_units_of_the_page() -> None:
    """As in every form of the studio."""
    assert 'length = "28 in"' in turned(RING, (("garment/length", "28"),), "in", "us").text


def test_refused_field_keeps_what_was_typed() -> None:
    """And its group stands open."""
    found = refused(panel(RING, "us"), {"work/rounds": "up"}, {"work/rounds": "no such way"})
    field = found.fields()["work/rounds"]
    group = next(g for g in found.groups if field in (*g.fields, *g.more))
    assert (field.typed, field.error) == ("up", "no such way")
    assert group.open


def test_value_alone_sets_no_group_anew() -> None:
    """What is typed elsewhere in the panel stays."""
    after = turned(RING, (("garment/length", "70"),), "cm", "us").text
    assert differing(panel(RING, "us"), panel(after, "us")) == ()


def test_another_edging_sets_its_group_anew() -> None:
    """It leaves other numbers open."""
    after = turned(RING, (("edging/pattern", "crab"),), "cm", "us").text
    groups = differing(panel(RING, "us"), panel(after, "us"))
    assert groups is not None
    assert [group.id for group in groups] == ["knobs-edging"]


@pytest.mark.parametrize("change", [f"{TAKES}edging", f"{ADDS}section", f"{ADDS}strand"])
def test_new_tables_set_the_whole_panel_anew(change: str) -> None:
    """There are other groups then."""
    after = turned(RING, ((change, ""),), "cm", "us")
    assert after.errors == ()
    assert differing(panel(RING, "us"), panel(after.text, "us")) is None


@pytest.mark.parametrize(
    "path", [("section", 1, "ease"), ("lengths", "a/b"), ("lengths", "50%"), ()]
)
def test_name_of_a_knob_leads_back_to_it(path: tuple[str | int, ...]) -> None:
    """Whatever stands in a key."""
    assert path_named(knob_name(path)) == path


def test_places_are_told_from_one_on() -> None:
    """And kept from nought on."""
    assert path_of("section[2].ease") == ("section", 1, "ease")


def test_swatch_of_a_colour() -> None:
    """The second swatch of a garment in two colors is that of the second color, unless it says so."""
    light = examples("swatch")["light-cotton"].text
    assert colours(examples("design")["torchlight-shawl"].text) == ("A", "B")
    assert colours(RING) == ()
    assert parse_swatch(of_colour(light, "B"), "swatch.toml").colour == "B"
    assert of_colour(of_colour(light, "C"), "B") == of_colour(light, "C")
    assert of_colour(light, "") == light
    assert of_colour("no = toml = text", "B") == "no = toml = text"


READ = ("why/landmark.hem/", "proof/shape/", "ways/", "files/pattern.txt", "shape/")


@pytest.mark.parametrize("path", READ)
def test_parts_are_for_the_owner_of_a_garment_that_is_there(
    client: Client, stranger: Client, path: str
) -> None:
    """Each address alone."""
    pk = garment().pk
    read(client, f"/garments/999999/{path}", 404)
    client.cookies.clear()
    read(stranger, f"/garments/{pk}/{path}", 401)


def test_garment_without_room_leads_to_its_first(client: Client) -> None:
    """An address that was cut off still finds it."""
    pk = garment().pk
    assert client.get(f"/garments/{pk}/")["Location"] == f"/garments/{pk}/shape/"
