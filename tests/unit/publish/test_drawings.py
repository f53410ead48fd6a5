"""Drawings inside a page."""

from __future__ import annotations

import re

import pytest
from sample_pattern import SCHEMATIC

from frogless.errors import InputError
from frogless.publish.drawings import checked, inlined, slug

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">'


def inside(content: str) -> str:
    """A drawing with some content, inlined."""
    return inlined("d", f"{OPEN}{content}</svg>", "A skirt", "d-")


def test_drawing_is_one_named_image_when_inlined() -> None:
    """Role, title and the reference from one to the other; the drawing's own title is replaced."""
    svg = inlined("schematic", SCHEMATIC, "A skirt < laid flat", "s-")
    assert svg.startswith("<svg ")
    assert 'role="img"' in svg
    assert 'aria-labelledby="s-title"' in svg
    assert re.findall(r"<title.*?</title>", svg) == [
        '<title id="s-title">A skirt &lt; laid flat</title>'
    ]
    assert "xmlns" not in svg
    assert "waist 36 cm" in svg


def test_ids_are_prefixed_when_inlined() -> None:
    """Two drawings with the same ids can stand on one page, and references still lead home."""
    svg = inside(
        '<g id="a"/><use xlink:href="#a"/><use href="#a"/>'
        """<path fill="url(#a)" clip-path="url('#a')"/>"""
    )
    assert 'id="d-a"' in svg
    assert svg.count('href="#d-a"') == 2
    assert 'fill="url(#d-a)"' in svg
    assert 'clip-path="url(#d-a)"' in svg


def test_style_stays_with_its_drawing_when_inlined() -> None:
    """A rule for text in a drawing does not reach the page."""
    assert "<style>#d-drawing { text {fill: red} }</style>" in inside(
        "<style>text {fill: red}</style>"
    )


@pytest.mark.parametrize(
    "content",
    [
        "<script>alert(1)</script>",
        "<g><foreignObject><b>x</b></foreignObject></g>",
        '<path onclick="alert(1)" ONLOAD="alert(1)"/>',
    ],
)
def test_code_is_dropped_when_inlined(content: str) -> None:
    """Nothing that runs comes along."""
    svg = inside(content).lower()
    assert not re.search("script|alert|foreign|onclick|onload", svg)


@pytest.mark.parametrize(
    "content",
    [
        '<image href="x.png"/>',
        '<image xlink:href="file:///etc/hostname"/>',
        '<a href="javascript:alert(1)"/>',
        '<path fill="url(other.svg#a)"/>',
        '<path style="fill: url( other.svg#a )"/>',
        "<style>@import 'other.css';</style>",
        "<style>@font-face {src: url(font.woff)}</style>",
    ],
)
def test_drawing_is_refused_when_it_fetches_something(content: str) -> None:
    """A drawing that needs another file is told by its key."""
    with pytest.raises(InputError, match=r'^drawing "d": .*fetched from elsewhere'):
        checked("d", f"{OPEN}{content}</svg>")


def test_picture_inside_the_drawing_is_kept() -> None:
    """Data that the drawing carries itself is not fetched."""
    assert 'href="data:image/png;base64,AA=="' in inside(
        '<image href="data:image/png;base64,AA=="/>'
    )


@pytest.mark.parametrize(
    ("svg", "message"),
    [
        ("<svg", "not a drawing in SVG"),
        ("", "not a drawing in SVG"),
        ("<html/>", "found <html>"),
        ("<svg/>", "found <svg>, not <svg xmlns="),
        ('<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', "document type"),
    ],
)
def test_drawing_is_refused_when_it_is_not_one(svg: str, message: str) -> None:
    """The sentence says what was found instead."""
    with pytest.raises(InputError, match=message):
        checked("d", svg)


@pytest.mark.parametrize(
    ("text", "name"), [("Rnd 5 (RS)", "rnd-5-rs"), ("Größe ½", "grösse-½"), ("…", "part")]
)
def test_slug_is_an_id_whatever_the_text(text: str, name: str) -> None:
    """Ids have no spaces and are never empty."""
    assert slug(text) == name
