"""Another name for a document: in the library, and in its own text, so that both say the same."""

from __future__ import annotations

import tomllib

import tomlkit
from tomlkit.exceptions import TOMLKitError

from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.toml_text import overgrown


def rename(document: Document, name: str) -> None:
    """Gives a document another name; a text that cannot be read keeps what it calls itself.

    Raises:
        InputError: the name is empty, too long or taken.
    """
    shelf.rename(document, name)
    text = renamed(document.text, document.name)
    if text != document.text:
        shelf.change(document.pk, document.revision, text, "renamed")


def renamed(text: str, name: str) -> str:
    """The text with another title or name, its comments kept."""
    if overgrown(text) is not None:
        return text
    try:
        found = tomllib.loads(text)
        key = "title" if "title" in found else "name"
        if not isinstance(found.get(key), str) or found[key] == name:
            return text
        document = tomlkit.parse(text)
        document[key] = name
        changed = tomlkit.dumps(document)
        return changed if tomllib.loads(changed) == found | {key: name} else text
    except (ValueError, RecursionError, TOMLKitError):
        return text
