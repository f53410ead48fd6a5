"""What no garment asks for is refused before it is worked at, with what is accepted."""

from __future__ import annotations

from pathlib import Path

import pytest

from frogless.design.document import TubeDesign, named_formulas
from frogless.design.load import parse_design
from frogless.errors import InputError
from frogless.toml_text import LONGEST, MOST_NAMES

RING = (Path(__file__).parents[3] / "designs" / "ring-dance-skirt" / "design.toml").read_text(
    encoding="utf-8"
)
CARDIGAN = (Path(__file__).parents[3] / "designs" / "hayfield-pullover" / "design.toml").read_text(
    encoding="utf-8"
)


def lengths(*told: str) -> str:
    """The skirt with more lengths of its own."""
    return RING.replace("[lengths]", "\n".join(("[lengths]", *told)))


@pytest.mark.parametrize(
    ("found", "written", "told"),
    [
        ('points = "auto"', 'points = "auto"\nevery = 1000000000000', "must be 400 or less"),
        ('points = "auto"', "least_gap = 1000000000000", "must be 400 or less"),
        ('points = "auto"', "points = [" + "4, 8, " * 30 + "4]", "takes 48 at most, has 61"),
        ("plies = 2", "plies = 1000000000000", "must be 64 or less"),
        ("plies = 2", "sample_repeats = 1000000000000", "must be 1000 or less"),
        ("notes = [", "notes = [" + '"a", ' * 60, "takes 60 at most, has 62"),
    ],
)
def test_number_that_no_garment_has_is_refused(found: str, written: str, told: str) -> None:
    """By its key, before anything is planned."""
    with pytest.raises(InputError) as refused:
        parse_design(RING.replace(found, written, 1))
    assert told in str(refused.value)
    assert refused.value.faults[0].place.line


def test_rate_along_row_ends_is_of_whole_rows() -> None:
    """No rows at all are no rate."""
    with pytest.raises(InputError, match="must be 1 or more, not 0"):
        parse_design(CARDIGAN.replace('height = "1.5 cm"', "per_rows = [3, 0]"))


def test_more_sections_than_a_garment_has_are_refused() -> None:
    """Also when there is room for them in the file."""
    more = "".join(f'[[section]]\nname = "s{n}"\nlength = "1 cm"\n' for n in range(60))
    with pytest.raises(InputError, match="takes 60 at most, has 63"):
        parse_design(RING.replace("[[section]]", more + "[[section]]", 1))


def test_lengths_that_double_each_other_are_refused() -> None:
    """Twenty-four of them would take sixteen million steps."""
    told = [f'a{n} = "a{n + 1} + a{n + 1}"' for n in range(24)]
    with pytest.raises(InputError, match="uses other lengths more than 1000 times"):
        parse_design(lengths(*told, 'a24 = "1 cm"'))
    with pytest.raises(InputError, match="more than 50 deep"):
        parse_design(lengths(*(f'a{n} = "a{n + 1} + 1 cm"' for n in range(60)), 'a60 = "1 cm"'))
    with pytest.raises(InputError, match="takes 200 at most, has 203"):
        parse_design(lengths(*(f'a{n} = "1 cm"' for n in range(200))))


def test_lengths_that_stand_on_each_other_are_not() -> None:
    """A chain of ten, the last used by many; nor is a circle, which is told where it is used."""
    chain = [f'a{n} = "a{n + 1} + 1 cm"' for n in range(10)]
    many = [f'b{n} = "a0 + 1 cm"' for n in range(30)]
    design = parse_design(lengths(*chain, *many, 'a10 = "1 cm"')).checked
    assert isinstance(design, TubeDesign)
    assert len([key for key, _ in named_formulas(design) if key.startswith("lengths.")]) == 44
    assert parse_design(lengths('one = "two"', 'two = "one"')).checked.lengths["one"] == "two"


def test_key_of_many_names_is_refused_with_its_line() -> None:
    """In a header, before a value, with blanks and in quotes."""
    for dot, name in ((".", "a"), (" . ", "a"), (".", '"a b"')):
        key = dot.join([name] * (MOST_NAMES + 1))
        for line in (f"{key} = 1", f"[{key}]", f"x = {{ {key} = 1 }}"):
            with pytest.raises(InputError, match="names stand in one key") as refused:
                parse_design(f"{RING}\n{line}\n")
            assert refused.value.faults[0].place.line == RING.count("\n") + 2


def test_prose_is_no_key() -> None:
    """Dots and long words in a text are what they are."""
    for prose in ("and so on ... . . . . " * 100, "a" * 20_000, "One thing. Then another. " * 100):
        assert parse_design(RING.replace("[work]", f"# {prose}\n[work]")).checked.title


def test_text_that_is_nested_absurdly_is_refused() -> None:
    """In brackets as in names."""
    with pytest.raises(InputError, match="nested too deeply"):
        parse_design(RING.replace("notes = [", "notes = [" + "[" * 20_000))
    with pytest.raises(InputError, match=f"at most {LONGEST:,} are read"):
        parse_design(RING + "#" * LONGEST)
