"""Texts compared line by line, titles changed in them, answers kept, texts kept from parsers."""

from __future__ import annotations

import tomllib

import pytest

from frogless.studio.designs.kept import Kept, key_of
from frogless.studio.designs.title import retitled
from frogless.studio.examples import examples
from frogless.studio.lines import compared, counted, told
from frogless.toml_text import overgrown

TEN = "".join(f"line {n}\n" for n in range(1, 11))


def test_changed_line_is_one_removed_and_one_added() -> None:
    """Each with its own number, two lines around them, the rest left out."""
    found = compared(TEN, TEN.replace("line 5", "five"))
    assert [(one.sort, one.before, one.now) for one in found] == [
        ("left out", None, None),
        ("same", 3, 3),
        ("same", 4, 4),
        ("removed", 5, None),
        ("added", None, 5),
        ("same", 6, 6),
        ("same", 7, 7),
        ("left out", None, None),
    ]
    assert counted(found) == (1, 1)


def test_lines_left_out_are_counted() -> None:
    """How many are the same is said."""
    found = compared(TEN, TEN + "more\n")
    assert found[0].text == "8 lines are the same"


@pytest.mark.parametrize(
    ("before", "after", "sentence"),
    [
        (TEN, TEN.replace("line 5", "five"), "line 5 changed"),
        (TEN, TEN.replace("line 5", "five").replace("line 7", "seven"), "lines 5 to 7 changed"),
        (TEN, TEN.replace("line 1\n", ""), "line 1 changed"),
        (TEN, TEN + "more\n", "line 11 changed"),
        (TEN, TEN.rstrip("\n"), "the text changed"),
        ("", "a\nb\n", "lines 1 to 2 changed"),
    ],
)
def test_change_is_told_by_its_lines(before: str, after: str, sentence: str) -> None:
    """For whoever may want it undone."""
    assert told(before, after) == sentence


def test_long_texts_are_compared_as_blocks() -> None:
    """All lines of the one are removed, all of the other added."""
    old, new = "a\n" * 4000, "b\n" * 4000
    assert counted(compared(old, new)) == (4000, 4000)


def test_lines_that_come_again_are_compared_as_blocks() -> None:
    """Only what lies between the first and the last change."""
    found = compared("first\n" + "a\n" * 300 + "last\n", "first\n" + "a\nb\n" * 300 + "last\n")
    assert counted(found) == (599, 299)
    assert (found[0].text, found[-1].text) == ("first", "last")


@pytest.mark.parametrize("before", sorted(examples("design"))[:6])
@pytest.mark.parametrize("after", sorted(examples("design"))[6:12])
def test_comparison_makes_the_one_of_the_other(before: str, after: str) -> None:
    """What is the same or added is the later text, what is the same or removed the earlier."""
    old, new = examples("design")[before].text, examples("design")[after].text
    found = compared(old, new)
    whole = [one for one in found if one.sort != "left out"]
    left_out = sum(int(one.text.split()[0]) for one in found if one.sort == "left out")
    added, removed = counted(found)
    assert len(whole) + left_out - removed == len(new.splitlines())
    assert len(whole) + left_out - added == len(old.splitlines())
    assert all(old.splitlines()[one.before - 1] == one.text for one in whole if one.before)
    assert all(new.splitlines()[one.now - 1] == one.text for one in whole if one.now)


@pytest.mark.parametrize("key", sorted(examples("design")))
def test_title_is_changed_and_nothing_else(key: str) -> None:
    """In every example, with quotes and backslashes in the new one."""
    text, title = examples("design")[key].text, 'A "new" \\ title – ½'
    changed = retitled(text, title)
    assert changed is not None
    before, after = tomllib.loads(text), tomllib.loads(changed)
    assert after == {**before, "title": title}
    assert sum(a != b for a, b in zip(text.split("\n"), changed.split("\n"), strict=True)) == 1


@pytest.mark.parametrize("text", ["", "[garment]\ntitle = 'x'\n", "subtitle = 'x'", "title = 5"])
def test_text_without_title_stays(text: str) -> None:
    """A title stands above the first table, as text."""
    assert retitled(text, "New") is None


def test_answers_are_kept_so_many() -> None:
    """What was asked for last stays."""
    kept: Kept[int] = Kept(2)
    kept.keep("a", 1)
    kept.keep("b", 2)
    assert kept.get("a") == 1
    kept.keep("c", 3)
    assert (kept.get("a"), kept.get("b"), kept.get("c")) == (1, None, 3)


def test_answer_is_made_once() -> None:
    """And not kept when making it fails."""
    kept: Kept[int] = Kept(2)
    assert kept.made("a", lambda: 1) == kept.made("a", lambda: 2) == 1
    with pytest.raises(ZeroDivisionError):
        kept.made("b", lambda: 1 // 0)
    assert kept.get("b") is None


def test_keys_tell_texts_apart_wherever_they_are_cut() -> None:
    """ "ab" and "c" is not "a" and "bc"."""
    assert key_of("ab", "c") != key_of("a", "bc")


@pytest.mark.parametrize(
    ("text", "line"),
    [("a = 1\n" + "b." * 501 + "c = 1", 2), ("\n\na = " + "1" * 1000, 3)],
)
def test_what_no_parser_should_be_asked_is_told_with_its_line(text: str, line: int) -> None:
    """Before it is."""
    found = overgrown(text)
    assert found is not None
    assert found[0] == line


def test_what_people_write_passes() -> None:
    """Every example, and a long note."""
    for kind in ("design", "body", "swatch"):
        assert all(overgrown(one.text) is None for one in examples(kind).values())
    assert overgrown('notes = ["' + "One sentence. " * 300 + '"]') is None
