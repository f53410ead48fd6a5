"""A page of the studio as a browser without scripts reads it."""

from __future__ import annotations

from collections.abc import Callable
from html.parser import HTMLParser

from django.http.response import HttpResponseBase


class Page(HTMLParser):
    """A page as a browser without scripts knows it: what its form would send, and what it says."""

    def __init__(self, response: HttpResponseBase) -> None:
        super().__init__()
        self.fields: dict[str, str] = {}
        self.attributes: dict[str, dict[str, str]] = {}
        self.texts: dict[str, str] = {}
        self.links: list[str] = []
        self.buttons: list[tuple[str, str]] = []
        self._open: list[str] = []
        self._select = self._area = ""
        self.html = response.content.decode()  # type: ignore[attr-defined]
        self.feed(self.html)
        self.text = " ".join("".join(self._said).split())

    _said: list[str]

    def reset(self) -> None:
        """A parser's beginning."""
        super().reset()
        self._said = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Notes fields with their values, ids and links."""
        a = {key: value or "" for key, value in attrs}
        name = a.get("name", "")
        if id_ := a.get("id"):
            self.attributes[id_] = a
        if tag == "button" and name:
            self.buttons.append((name, a.get("value", "")))
        if tag == "a":
            self.links.append(a["href"])
        if name == "csrfmiddlewaretoken":
            # It is another one on every page.
            return
        if tag == "input" and name and a.get("type") not in ("file", "radio"):
            self.fields[name] = a.get("value", "")
        if tag == "input" and a.get("type") == "radio" and "checked" in a:
            self.fields[name] = a["value"]
        if tag == "select":
            self._select = name
        if tag == "option" and ("selected" in a or self._select not in self.fields):
            self.fields[self._select] = a["value"]
        if tag == "textarea":
            self._area = name
            self.fields[name] = ""
        if tag == "p":
            self._open.append(a.get("id", ""))

    def handle_endtag(self, tag: str) -> None:
        """Leaves what was entered."""
        if tag == "textarea":
            # A browser drops the line break that the page has there.
            self.fields[self._area] = self.fields[self._area].removeprefix("\n")
            self._area = ""
        if tag == "p" and self._open:
            self._open.pop()

    def handle_data(self, data: str) -> None:
        """Notes text, by the id of its paragraph."""
        if self._area:
            self.fields[self._area] += data
        self._said.append(data)
        if self._open and self._open[-1]:
            self.texts[self._open[-1]] = self.texts.get(self._open[-1], "") + data.strip()

    def error(self, field: str) -> str:
        """What stands beside a field."""
        return self.texts.get(f"{field}-error", "")


Press = Callable[..., Page]
"""Presses a button of a page: `press(page, "draft", units="in")`."""
