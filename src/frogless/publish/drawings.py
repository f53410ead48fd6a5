"""Drawings made fit to stand inside a page: no code, nothing fetched, names that do not clash."""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree import ElementTree

from frogless.errors import InputError, Place

SVG = "http://www.w3.org/2000/svg"
XLINK = "http://www.w3.org/1999/xlink"
UNWANTED = {"script", "foreignObject", "metadata", "iframe"}
"""Elements that run or that no drawing needs; they go with all they hold."""

DROPPED = {"aria-labelledby", "aria-describedby", "role"}
LINKS = {"href", f"{{{XLINK}}}href"}
REFERENCE = re.compile(r"url\(\s*['\"]?#([^)'\"]+)['\"]?\s*\)")
FETCHES = re.compile(r"@import|url\((?!\s*['\"]?#)", re.IGNORECASE)


def checked(key: str, svg: str) -> ElementTree.Element:
    """The drawing as a tree.

    Raises:
        InputError: not an SVG document, or one that fetches something or declares entities.
    """
    if "<!DOCTYPE" in svg or "<!ENTITY" in svg:
        raise InputError("it declares a document type; leave that out", _place(key))
    try:
        # Without a document type there are no entities, and so nothing that a parser could expand.
        root = ElementTree.fromstring(svg)  # noqa: S314
    except ElementTree.ParseError as fault:
        raise InputError(f"not a drawing in SVG ({fault})", _place(key)) from fault
    if root.tag != f"{{{SVG}}}svg":
        raise InputError(f'found <{_bare(root.tag)}>, not <svg xmlns="{SVG}">', _place(key))
    for fetched in _fetched(root):
        raise InputError(
            f'"{fetched}" is fetched from elsewhere; a drawing carries all it shows', _place(key)
        )
    return root


def _fetched(root: ElementTree.Element) -> Iterator[str]:
    """What a browser or the typesetter would go and get: links, and addresses in styles."""
    for element in root.iter():
        for name, value in element.attrib.items():
            if (name in LINKS and not value.startswith(("#", "data:"))) or FETCHES.search(value):
                yield value
        if _bare(element.tag) == "style" and FETCHES.search(element.text or ""):
            yield element.text or ""


def inlined(key: str, svg: str, alt: str, prefix: str) -> str:
    """An SVG document as an element of a page: one image, named `alt`, every id under `prefix`.

    Raises:
        InputError: as `checked`.
    """
    root = checked(key, svg)
    for parent in root.iter():
        for child in [c for c in parent if _bare(c.tag) in UNWANTED]:
            parent.remove(child)
    for element in root.iter():
        _settle(element, prefix)
    _name(root, prefix, alt)
    return ElementTree.tostring(root, encoding="unicode")


def slug(text: str) -> str:
    """Letters, digits and hyphens of a text, for an id.

    >>> slug("From waist to hip")
    'from-waist-to-hip'
    """
    return re.sub(r"\W+", "-", text.casefold()).strip("-") or "part"


def _name(root: ElementTree.Element, prefix: str, alt: str) -> None:
    for child in [child for child in root if child.tag == "title"]:
        root.remove(child)
    title = ElementTree.Element("title", {"id": f"{prefix}title"})
    title.text = alt
    root.insert(0, title)
    root.attrib |= {
        "id": f"{prefix}drawing",
        "role": "img",
        "aria-labelledby": f"{prefix}title",
    }


def _settle(element: ElementTree.Element, prefix: str) -> None:
    """Take one element out of its own document: HTML knows SVG's names without a namespace."""
    element.tag = _bare(element.tag)
    attributes = [
        (_bare(name), _settled(name, value, prefix))
        for name, value in element.attrib.items()
        if name not in DROPPED and not name.lower().startswith("on")
    ]
    element.attrib.clear()
    element.attrib.update(attributes)
    if element.tag == "style":
        # A style sheet inside a page would reach the whole page; nested, it stays with its drawing.
        style = _settled("style", element.text or "", prefix)
        element.text = f"#{prefix}drawing {{ {style} }}"


def _settled(name: str, value: str, prefix: str) -> str:
    """The value of an attribute with the ids in it under a prefix."""
    if name == "id":
        return prefix + value
    if name in LINKS and value.startswith("#"):
        return f"#{prefix}{value[1:]}"
    return REFERENCE.sub(rf"url(#{prefix}\1)", value)


def _bare(name: str) -> str:
    return name.rpartition("}")[2]


def _place(key: str) -> Place:
    return Place(key=f'drawing "{key}"')
