"""What can stand in a design, made from the models that check it."""

from __future__ import annotations

import tomllib

import pytest
from designs_made import LIVE, read
from django.test import Client

from frogless.body.measurements import known_measurements
from frogless.studio.designs.keys import names, search, tables
from frogless.studio.examples import examples

EXAMPLES = sorted(examples("design"))


def written(data: object) -> set[str]:
    """Every key of a document, wherever it stands; those of lists of names are the author's own."""
    if isinstance(data, list):
        return set().union(*map(written, data))
    if not isinstance(data, dict):
        return set()
    own = ("lengths", "parameters", "names", "pattern", "grades")
    inner = (written(value) for key, value in data.items() if key not in own)
    return set(data).union(*inner)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_key_of_the_examples_is_told(example: str) -> None:
    """Nothing that the examples use is missing."""
    known = {key.name for table in tables() for key in table.keys}
    known |= {head.strip("[]").partition("]")[0] for table in tables() for head in table.heads}
    data = tomllib.loads(examples("design")[example].text)
    assert written(data) - known - {"lengths", "pattern", "piece", "join"} == set()


def test_accepted_values_limits_and_defaults_are_told() -> None:
    """In words, from the models."""
    section = next(table for table in tables() if "[[section]]" in table.heads)
    keys = {key.name: key for key in section.keys}
    assert keys["shape"].accepted == '"straight" or "shaped"'
    assert (keys["shape"].default, keys["shape"].needed) == ("straight", False)
    assert keys["name"].needed
    assert keys["gores"].accepted == "a whole number, 2 to 24"
    assert keys["ease"].accepted == "a length or a formula"
    assert keys["hook"].accepted == "the size of a hook, such as 3.75 mm"


def test_every_table_is_told_once() -> None:
    """One that may stand in several places has all its heads."""
    heads = [table.heads for table in tables()]
    assert ("[edging]", "[piece.edging]") in heads
    assert len(heads) == len(set(heads)) + sum(heads.count(h) - 1 for h in set(heads))
    assert any('construction = "raglan yoke"' in head for found in heads for head in found)


def test_all_words_have_to_occur() -> None:
    """In the table's head, the key or what is accepted."""
    found = search("edging bead")
    assert {key.name for table in found for key in table.keys} >= {"bead_hole", "bead_diameter"}
    assert search("xylophone") == ()
    assert search("") == tables()


def test_measurements_that_formulas_may_name_are_told() -> None:
    """All lengths and girths of a body."""
    lengths = {key for key, one in known_measurements().items() if one.kind != "mass"}
    assert {name for name, _ in names("")} == lengths
    assert [name for name, _ in names("kneecap")] == ["waist_to_knee"]


def test_page_and_part_show_the_same(client: Client) -> None:
    """Without scripts the page finds as well."""
    page, part = (
        read(client, "/designs/keys/?find=sag"),
        read(client, "/designs/keys/?find=sag", **LIVE),
    )
    assert part in page
    assert "<code>sag</code>" in part
    assert "No key is called that." in read(client, "/designs/keys/?find=xylophone")
