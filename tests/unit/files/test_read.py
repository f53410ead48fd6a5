"""Documents are read whole, and every fault is told with its line and key."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field

from frogless.errors import InputError, Place
from frogless.files import dotted, load_document, read_document, read_text
from frogless.toml_text import key_lines
from frogless.units import Length


class Strict(BaseModel):
    """As the documents of the program are."""

    model_config = ConfigDict(extra="forbid")


class Cord(Strict):
    """One of two trims."""

    kind: Literal["cord"]
    length: Length


class Button(Strict):
    """The other of two trims."""

    kind: Literal["button"]
    holes: Annotated[int, Field(ge=2)]


class Stripe(Strict):
    """An item of a list of tables."""

    colour: str = Field(alias="in")
    rows: int | Literal["auto"] | list[int] = "auto"


class Thing(Strict):
    """A document with one field of every sort."""

    format: Literal["thing/1"]
    title: Annotated[str, Field(min_length=1)]
    shape: Literal["round", "flat"] = "round"
    numbers: dict[str, float] = {}
    stripe: tuple[Stripe, ...] = ()
    trim: Annotated[Cord | Button, Field(discriminator="kind")] | None = None


HEAD = 'format = "thing/1"\ntitle = "x"\n'


def faults_of(folder: Path, text: str) -> list[str]:
    """What is said about a document."""
    path = folder / "thing.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as refused:
        load_document(path, Thing, what="thing")
    return [str(fault) for fault in refused.value.faults]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (HEAD + "shap = 1", 'thing.toml:3 shap: unknown key "shap"; did you mean "shape"?'),
        (
            HEAD + "qqq = 1",
            'thing.toml:3 qqq: unknown key "qqq"; known are format, numbers, shape, stripe, title, '
            "trim",
        ),
        (
            HEAD + 'shape = "oval"',
            'thing.toml:3 shape: must be "round" or "flat", not "oval"',
        ),
        (
            HEAD + '[numbers]\na.b = "x"',
            "thing.toml:4 numbers.a: must be a number, not a table of keys",
        ),
        (HEAD + 'numbers = { a = "x" }', 'thing.toml:3 numbers.a: must be a number, not "x"'),
        (
            HEAD + '[[stripe]]\nin = "red"\n\n[[stripe]]\nin = "blue"\nrow = 3',
            'thing.toml:8 stripe[2].row: unknown key "row"; did you mean "rows"?',
        ),
        (
            HEAD + '[[stripe]]\nin = "red"\nrows = "all"',
            'thing.toml:5 stripe[1].rows: must be a whole number or "auto" or a list in square '
            'brackets, not "all"',
        ),
        (
            HEAD + '[[stripe]]\nin = "red"\nrows = [\n 1,\n "x",\n]',
            'thing.toml:7 stripe[1].rows[2]: must be a whole number, not "x"',
        ),
        (
            HEAD + '[trim]\nkind = "cord"\nlenght = "3 cm"\nlength = "3 cm"',
            'thing.toml:5 trim.lenght: unknown key "lenght"; did you mean "length"?',
        ),
        (
            HEAD + '[trim]\nkind = "rope"',
            'thing.toml:4 trim.kind: must be "cord" or "button", not "rope"',
        ),
        (HEAD + '[trim]\nlength = "3 cm"', "thing.toml:3 trim.kind: is missing"),
        (HEAD + '[trim]\nkind = "cord"', "thing.toml:3 trim.length: is missing"),
        (
            HEAD + '[trim]\nkind = "cord"\nlength = "3 cn"',
            'thing.toml:5 trim.length: "3 cn": "cn" is no unit for a length; accepted are cm, mm, '
            "m, in or yd",
        ),
        (
            HEAD + '[trim]\nkind = "cord"\nlength = 3',
            "thing.toml:5 trim.length: 3 has no unit; write it in quotes with a unit: cm, mm, m, "
            "in or yd",
        ),
        (
            HEAD + '[trim]\nkind = "button"\nholes = 1',
            "thing.toml:5 trim.holes: must be 2 or more, not 1",
        ),
        ('format = "thing/1"', "thing.toml title: is missing"),
        ('format = "thing/1"\ntitle = ""', "thing.toml:2 title: must not be empty"),
        (
            'format = "thing/1"\ntitle = true',
            "thing.toml:2 title: must be text in quotes, not true",
        ),
        (
            'title = "x"',
            'thing.toml format: is missing; a thing begins with format = "thing/1"',
        ),
        (
            '\nformat = "thing/2"\ntitel = 3',
            'thing.toml:2 format: "thing/2" is not the format of a thing; accepted is "thing/1"',
        ),
        ("title = ", "thing.toml:1: this is not valid TOML: invalid value"),
        (
            "x = 1\nx = 2\n",
            "thing.toml:2: this is not valid TOML: this key stands twice in its table",
        ),
        (
            "[trim]\n[trim]",
            "thing.toml:2: this is not valid TOML: [trim] stands twice; a table that may stand "
            "again is written [[trim]] each time",
        ),
        ("x = \u201cred\u201d", "thing.toml:1: this is not valid TOML: these quotes are curly"),
        ('x = "red\ny = 1', "thing.toml:1: this is not valid TOML: a text is not closed"),
        ("x = 72.5 cm", "thing.toml:1: this is not valid TOML: a size stands in quotes"),
        ("x = 1\ry = 2\r", "thing.toml:1: this is not valid TOML: its lines end as on old Macs"),
        ("\0\0", "thing.toml:1: this is not valid TOML: it is not a text file"),
        (HEAD + "rows = 3", 'thing.toml:3 rows: unknown key "rows"; it belongs in [[stripe]]'),
        (
            HEAD + '[trim]\nkind = "cord"\nlength = "3 cm"\nshape = "flat"',
            'thing.toml:6 trim.shape: unknown key "shape"; it belongs at the top of the file, '
            "before the first table",
        ),
        (
            HEAD + "[stripe]\nin = 'red'",
            "thing.toml:3 stripe: is a table that may stand again: write [[stripe]], in two",
        ),
        ("x = 1\n\nnot toml", "thing.toml:3: this is not valid TOML: "),
        ("x = " + "[" * 5000, "thing.toml: this is nested too deeply"),
    ],
)
def test_document_is_refused_in_one_sentence_with_line_and_key(
    tmp_path: Path, text: str, says: str
) -> None:
    """One mistake makes one fault, whatever the checker behind it makes of it."""
    (told,) = faults_of(tmp_path, text)
    assert told.startswith(says)


def test_faults_are_told_together_in_the_order_of_the_file(tmp_path: Path) -> None:
    """A person mends them all in one go."""
    told = faults_of(tmp_path, HEAD + 'shape = "oval"\ntrim = 3\ncolor = 1')
    assert [line.split(":")[1].split()[0] for line in told] == ["3", "4", "5"]


def test_document_is_loaded_when_it_is_good(tmp_path: Path) -> None:
    """With a byte order mark, as some editors write it."""
    path = tmp_path / "thing.toml"
    path.write_bytes(b"\xef\xbb\xbf" + HEAD.encode())
    assert load_document(path, Thing).title == "x"


def test_places_are_given_for_faults_found_later(tmp_path: Path) -> None:
    """A key that is not there has the line of what should hold it."""
    path = tmp_path / "thing.toml"
    path.write_text(HEAD + '[[stripe]]\nin = "red"\n', encoding="utf-8")
    document = read_document(path, Thing)
    assert document.place(("stripe", 0, "in")) == Place("thing.toml", 4, "stripe[1].in")
    assert document.place(("stripe", 0, "rows")) == Place("thing.toml", 3, "stripe[1].rows")
    assert document.data["stripe"] == [{"in": "red"}]


def test_file_is_refused_when_it_is_not_there(tmp_path: Path) -> None:
    """The sentence says which file and what should be in it."""
    with pytest.raises(InputError, match=r"no\.toml: there is no such file; a body file is needed"):
        load_document(tmp_path / "no.toml", Thing, what="body file")


def test_file_is_refused_when_it_is_a_folder(tmp_path: Path) -> None:
    """A folder can be named where its file was meant."""
    with pytest.raises(InputError, match="this is a folder"):
        read_text(tmp_path)


def test_file_is_refused_when_a_file_stands_for_its_folder(tmp_path: Path) -> None:
    """The reason is the system's own."""
    (tmp_path / "a").write_text("x")
    with pytest.raises(InputError, match="it cannot be read"):
        read_text(tmp_path / "a" / "b.toml")


def test_file_is_refused_when_not_utf8_and_the_line_is_told(tmp_path: Path) -> None:
    """An old editor wrote one letter of line 2 in Latin-1."""
    path = tmp_path / "old.toml"
    path.write_bytes(b'a = "x"\nb = "\xe9"\n')
    with pytest.raises(InputError) as refused:
        read_text(path, what="design file")
    assert str(refused.value) == "old.toml:2: this design file is not UTF-8 text; save it as UTF-8"


def test_file_in_utf16_is_told_to_be_saved_anew(tmp_path: Path) -> None:
    """Some editors call it Unicode."""
    path = tmp_path / "wide.toml"
    path.write_bytes(HEAD.encode("utf-16"))
    with pytest.raises(InputError, match="it is UTF-16; save it as UTF-8"):
        read_text(path)


class Holder(Strict):
    """A document whose sizes stand in a table that has to be there."""

    format: Literal["thing/1"]
    trim: Stripe


def test_keys_without_their_header_are_one_fault(tmp_path: Path) -> None:
    """The line with [trim] was forgotten: not one fault for each key that stands below it."""
    path = tmp_path / "thing.toml"
    path.write_text('format = "thing/1"\nin = "red"\nrows = 2\n')
    with pytest.raises(InputError) as refused:
        load_document(path, Holder, what="thing")
    assert [str(fault) for fault in refused.value.faults] == [
        "thing.toml trim: is missing; write [trim] on a line of its own above in"
    ]


TRICKY = '''# a comment = 1
[a]
b."c d".'e' = 1
text = """
[not.a.table]
key = "no key" \\""" still
"""
raw = \'\'\'
x = 1\'\'\'
list = [ # comment ]
  "one, ]",
  { k = 2, "l" = [3, 4] },
]

[[a.t]]
n = 1979-05-27T07:32:00Z
[a.t.u]
v = 'it # is'
[[a.t]]
[a.t.u]
w = 1.5 # end'''


@pytest.mark.parametrize(
    ("steps", "line"),
    [
        (("a",), 2),
        (("a", "b", "c d", "e"), 3),
        (("a", "text"), 4),
        (("a", "raw"), 8),
        (("a", "list"), 10),
        (("a", "list", 0), 11),
        (("a", "list", 1, "k"), 12),
        (("a", "list", 1, "l", 1), 12),
        (("a", "t", 0, "n"), 16),
        (("a", "t", 0, "u", "v"), 18),
        (("a", "t", 1), 19),
        (("a", "t", 1, "u", "w"), 21),
    ],
)
def test_key_has_its_line_however_it_is_written(steps: tuple[str | int, ...], line: int) -> None:
    """Dotted and quoted keys, long strings, lists, inline tables and lists of tables."""
    assert tomllib.loads(TRICKY)
    assert key_lines(TRICKY)[steps] == line


def test_nothing_in_a_string_is_taken_for_a_key() -> None:
    """Text that looks like TOML is text."""
    assert not {("not",), ("a", "key"), ("a", "x")} & set(key_lines(TRICKY))


def test_steps_are_told_with_places_counted_from_one() -> None:
    """As people count."""
    assert dotted(("section", 1, "points", 0)) == "section[2].points[1]"
