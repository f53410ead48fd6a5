"""What a design needs: no less than what it can be drafted from, and no more than it uses."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
import tomlkit

from frogless.draft import Texts, draft_texts
from frogless.errors import InputError
from frogless.studio.examples import examples
from frogless.studio.needs import Needs, need_words, needs
from frogless.swatch_file import stitch_key

DESIGNS = examples("design")
USUAL = {"half": 4}
"""The number of the fan arches that the example swatch need not write."""


def least_body(need: Needs) -> str:
    """The example body with nothing but what is needed."""
    data = tomllib.loads(examples("body")["dancer-3"].text)
    sizes = {key: data["measurements"][key] for key in need.measurements}
    return tomlkit.dumps({"format": data["format"], "name": "Least", "measurements": sizes})


def least_swatch(need: Needs) -> str:
    """The example swatch with nothing but what is needed."""
    data = tomllib.loads(examples("swatch")["light-cotton"].text)
    kept = [one for one in map(plain, data["reading"]) if is_needed(one, need)]
    head = {key: data[key] for key in ("format", "name", "hook")}
    return tomlkit.dumps({**head, "stitch": need.needed_stitches[0], "reading": kept})


def plain(reading: dict[str, Any]) -> dict[str, Any]:
    """A reading with its stitch named, and nothing weighed or stretched."""
    kept = {k: v for k, v in reading.items() if k not in ("mass", "stretched_width")}
    return kept if "pattern" in reading else {**kept, "stitch": reading.get("stitch", "dc")}


def is_needed(reading: dict[str, Any], need: Needs) -> bool:
    """Whether the design needs this reading."""
    if reading["state"] != "washed":
        return False
    if "pattern" not in reading:
        return stitch_key(reading["stitch"]) in need.needed_stitches
    numbers = reading.get("parameters", USUAL if reading["pattern"] == "fan_arches" else {})
    return any(
        (one.key, dict(one.parameters)) == (reading["pattern"], numbers) for one in need.patterns
    )


@pytest.mark.parametrize("key", DESIGNS)
def test_every_example_is_drafted_from_what_it_needs(key: str) -> None:
    """Nothing that cannot be done without is left out."""
    text = DESIGNS[key].text
    need = needs(text)
    assert need.error == ""
    made = draft_texts(Texts(text, least_body(need), (least_swatch(need),)))
    assert made.drafted.tally.yarn[0].mass.value > 0


@pytest.mark.parametrize("key", ["ring-dance-skirt", "whirl-skirt", "hayfield-pullover"])
def test_nothing_is_asked_that_can_be_left_out(key: str) -> None:
    """Without any one of what is needed there is no draft."""
    text = DESIGNS[key].text
    need = needs(text)
    for lacking in need.measurements:
        body = tomlkit.parse(least_body(need))
        del body["measurements"][lacking]
        with pytest.raises(InputError, match=lacking):
            draft_texts(Texts(text, tomlkit.dumps(body), (least_swatch(need),)))


def test_ring_dance_skirt_needs_two_girths_and_one_stitch() -> None:
    """The other lengths are worth measuring and can be estimated."""
    need = needs(DESIGNS["ring-dance-skirt"].text)
    assert (need.title, need.kind) == ("Ring dance skirt", "skirt")
    assert need.measurements == ("waist_girth", "hip_girth")
    assert need.estimated == ("waist_to_hip", "waist_to_knee")
    assert [one.key for one in need.worth][:2] == ["waist_to_hip", "waist_to_knee"]
    assert need.needed_stitches == ("double_crochet",)


def test_patterns_are_needed_with_their_numbers() -> None:
    """A pattern that grows is read at each of its widths."""
    found = needs(DESIGNS["bellflower-skirt"].text).patterns
    assert [one.parameters for one in found] == [(("half", n),) for n in (4, 5, 6)]


def test_finish_at_the_waist_needs_the_waist() -> None:
    """Also where no formula names it."""
    assert "waist_girth" in needs(DESIGNS["millrace-skirt"].text).measurements


@pytest.mark.parametrize("text", ["", "x = [", 'format = "frogless-design/1"\ntitle = "A"\n'])
def test_design_that_cannot_be_read_says_why(text: str) -> None:
    """And needs nothing that could be known."""
    need = needs(text)
    assert need.error
    assert not need.measurements


@pytest.mark.parametrize(
    ("key", "line"),
    [
        (
            "ring-dance-skirt",
            "waist and hip; a swatch in double crochet. "
            "Estimated when not measured: waist to hip, waist to knee.",
        ),
        ("sunwheel-skirt", "waist and hip; a swatch in "),
        ("lantern-cap", "head, or estimated; a swatch in "),
        ("drum-bag", "no measurements; a swatch in "),
    ],
)
def test_need_is_said_in_one_line(key: str, line: str) -> None:
    """What must be measured, the swatch, what is estimated; in the terms of the person."""
    need = needs(examples("design")[key].text)
    assert need_words(need, "us").startswith(line)
    assert need_words(need, "uk") == need_words(need, "us").replace(
        "double crochet", "treble crochet"
    )
