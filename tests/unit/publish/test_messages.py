"""The words round the rows: all there, all used, spelled as the dialect spells."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from string import Formatter

import pytest
from examples import Example
from published import shown

from frogless.publish import messages
from frogless.publish.messages import MESSAGES, say, spelled

SOURCES = [
    p for p in Path(messages.__file__).parent.glob("*.py") if not p.name.startswith("messages")
]


def names_in(source: str) -> Iterator[str]:
    """Every text of a module as a pattern; blanks of an f-string stand for anything."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield re.escape(node.value)
        if isinstance(node, ast.JoinedStr):
            yield "".join(
                re.escape(str(part.value)) if isinstance(part, ast.Constant) else ".+"
                for part in node.values
            )


def said_by_name(source: str) -> Iterator[str]:
    """Names that a module says outright: `say(drafted, "gauge")`."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "say":
            for given in node.args[1:2]:
                choices = [given.body, given.orelse] if isinstance(given, ast.IfExp) else [given]
                yield from (str(c.value) for c in choices if isinstance(c, ast.Constant))


def test_no_message_is_left_over() -> None:
    """Each can be said by some module, by its name or by what its name is made of."""
    patterns = {p for source in SOURCES for p in names_in(source.read_text("utf-8"))}
    usable = [re.compile(p) for p in patterns if p not in (".+", "")]
    endings = ("_top", "_one")
    for name in MESSAGES:
        tried = {name, *(name.removesuffix(end) for end in endings)}
        assert any(p.fullmatch(one) for p in usable for one in tried), name


def test_every_message_that_is_said_is_there() -> None:
    """A name that is missing would fail only when it is met."""
    said = {n for source in SOURCES for n in said_by_name(source.read_text("utf-8"))}
    assert len(said) > 60
    assert said <= MESSAGES.keys()


@pytest.mark.parametrize("name", sorted(MESSAGES))
def test_blanks_of_a_message_have_names(name: str) -> None:
    """A translator may put them in another order."""
    blanks = [field for _, field, _, _ in Formatter().parse(MESSAGES[name]) if field is not None]
    assert all(field.isidentifier() for field in blanks)


def test_spelling_is_american_in_us_terms_and_british_in_uk_terms() -> None:
    """Our own words only, and English only."""
    us, uk = shown(Example(), "us"), shown(Example(), "uk")
    assert say(us, "join_centre back") == "center back"
    assert say(uk, "join_centre back") == "centre back"
    assert spelled(us, "Centre front, centred") == "Center front, centred"
    assert spelled(replace(us, language="pt"), "centre") == "centre"
