"""Elements of a web page, built so that text can never become markup by accident."""

from __future__ import annotations

from html import escape

EMPTY = {"input", "link", "meta"}


class Markup(str):
    """Text that is markup already; only functions of this module and checked drawings make it."""

    __slots__ = ()


def element(name: str, /, *children: str, **attributes: str | bool | None) -> Markup:
    """An element; children that are not `Markup` are escaped, and so is every attribute.

    An underscore at the end of an attribute's name is dropped, one inside it is a hyphen.
    True gives the bare name; None and False leave the attribute out.

    >>> element("td", "a < b", class_="figures")
    '<td class="figures">a &lt; b</td>'
    """
    written = "".join(_attribute(key, value) for key, value in attributes.items())
    if name in EMPTY:
        return Markup(f"<{name}{written}>")
    return Markup(f"<{name}{written}>{joined(*children)}</{name}>")


def joined(*children: str, between: str = "") -> Markup:
    """Pieces one after the other, escaped where they are plain text."""
    return Markup(
        between.join(c if isinstance(c, Markup) else escape(c, quote=False) for c in children)
    )


def _attribute(key: str, value: str | bool | None) -> str:
    name = key.rstrip("_").replace("_", "-")
    if value is None or value is False:
        return ""
    return f" {name}" if value is True else f' {name}="{escape(value)}"'
