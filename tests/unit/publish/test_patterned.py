"""What is said of sections in stitch patterns."""

from __future__ import annotations

from pathlib import Path

from sample_designs import Design, basis, body, section, swatch

from frogless import draft
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import pattern
from frogless.publish.patterned import gauges, sentences
from frogless.publish.plain import plain

BODY = body(waist_girth="64 cm", hip_girth="71 cm", waist_to_hip="20 cm")
START = 'with = "foundation_double_crochet"\ngirth = "80 cm"'
READINGS = tuple(
    f'pattern = "{pattern}"\nstate = "washed"\nrepeats = 10\nwidth = "{width} cm"\n'
    'rows = 10\nheight = "8 cm"\n'
    for pattern, width in (("v_stitch", 15), ("beans", 10))
)


def drafted(folder: Path, key: str) -> Drafted:
    """A skirt of a few plain rounds and a section in a pattern, its plain rounds turned."""
    sections = (section("top", length="21 cm"), section("lace", pattern=key, to="hem"))
    text = Design(sections, start=START).text
    return draft.develop(basis(folder, text, BODY, swatch(20, 10, readings=READINGS)))


def told(made: Drafted) -> str:
    """What is said of the section in the pattern."""
    planned = made.plan.sections[1]
    assert planned.pattern is not None
    return " ".join(sentences(made, planned, planned.pattern, closed=True))


def test_rounds_that_are_not_turned_are_said_to_be_so_after_turned_ones(tmp_path: Path) -> None:
    """Vs are worked round and round; beans go to and fro, which their rounds say themselves."""
    assert "Do not turn after its rounds." in told(drafted(tmp_path, "v_stitch"))
    assert "Do not turn" not in told(drafted(tmp_path, "beans"))


def test_gauge_of_a_pattern_of_one_round_is_told_in_the_singular(tmp_path: Path) -> None:
    """Not as 1 rounds."""
    (one,) = gauges(drafted(tmp_path, "v_stitch"))
    assert "and a round of it is 0.8 cm high" in one


def test_chain_of_a_pattern_may_count_where_that_of_plain_rounds_does_not(tmp_path: Path) -> None:
    """Said once, beside what the plain rounds do; not where there is no pattern."""
    made = drafted(tmp_path, "v_stitch")
    before = "A round of a stitch pattern may say otherwise of its own chain"
    assert before in " ".join(plain(pattern(made)).split())
    plainly = Design((section("top", length="21 cm"), section("hem", to="hem")), start=START).text
    other = draft.develop(basis(tmp_path, plainly, BODY, swatch(20, 10)))
    assert before not in " ".join(plain(pattern(other)).split())
