"""Every key of any document has a line, and it is the line on which the key stands."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator

import tomlkit
from hypothesis import given
from hypothesis import strategies as st

from frogless.toml_text import Steps, key_lines

KEYS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=6)
LEAVES = st.one_of(st.integers(0, 99), st.booleans(), st.text("ab\"'#[]{}=,\n\\", max_size=8))
VALUES = st.recursive(
    LEAVES,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=3),
    max_leaves=12,
)


def ways(data: object, steps: Steps = ()) -> Iterator[Steps]:
    """The steps to everything in a document."""
    if steps:
        yield steps
    if isinstance(data, dict):
        for key, inner in data.items():
            yield from ways(inner, (*steps, key))
    if isinstance(data, list):
        for place, inner in enumerate(data):
            yield from ways(inner, (*steps, place))


@given(st.dictionaries(KEYS, VALUES, max_size=4))
def test_every_key_is_found_in_any_document(data: dict[str, object]) -> None:
    """The scan finds what the parser finds, no more and no less."""
    text = tomlkit.dumps(data)
    assert set(key_lines(text)) == set(ways(tomllib.loads(text)))


@given(st.lists(st.tuples(st.integers(0, 3), LEAVES), max_size=8))
def test_line_is_that_of_the_key(blocks: list[tuple[int, object]]) -> None:
    """Keys k0, k1, … with any number of blank lines and comments before them."""
    text = ""
    for number, (blank, value) in enumerate(blocks):
        text += "# no = 1\n" * blank + tomlkit.dumps({f"k{number}": value})
    for (key, *_), line in key_lines(text).items():
        assert text.splitlines()[line - 1].startswith(f"{key} =")
