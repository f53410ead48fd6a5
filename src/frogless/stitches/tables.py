"""Data files of one table for each entry, read with all faults told together."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Collection, Mapping
from importlib.resources import files
from types import MappingProxyType
from typing import Any, TypeVar

from frogless.errors import Fault, InputError, Place, near_names

T = TypeVar("T")
Entry = Mapping[str, Any]


def read_tables(text: str, file: str, read: Callable[[str, Entry], T]) -> Mapping[str, T]:
    """What `read` makes of each table of a file, by its key.

    Raises:
        InputError: all faults told together, each with its key.
    """
    faults: list[Fault] = []
    found: dict[str, T] = {}
    for key, entry in tomllib.loads(text).items():
        try:
            found[key] = read(key, entry)
        except InputError as error:
            faults.extend(error.at(Place(file, key=key)).faults)
    if faults:
        raise InputError.of(faults)
    return MappingProxyType(found)


def read_folder(texts: Mapping[str, str], read: Callable[[str, Entry], T]) -> Mapping[str, T]:
    """The same of several files, by the name of each.

    Raises:
        InputError: a file is refused, or a key is in another file already.
    """
    found: dict[str, T] = {}
    stands_in: dict[str, str] = {}
    for file, text in texts.items():
        for key, made in read_tables(text, file, read).items():
            if other := stands_in.get(key):
                raise InputError(f"{other} has an entry of that key already", Place(file, key=key))
            stands_in[key] = file
            found[key] = made
    return MappingProxyType(found)


def texts_of(folder: str) -> Mapping[str, str]:
    """The texts of the files in a folder of this part's data, by name."""
    inside = files("frogless.stitches").joinpath("data", folder).iterdir()
    told = sorted((file for file in inside if file.name.endswith(".toml")), key=lambda f: f.name)
    return {file.name: file.read_text(encoding="utf-8") for file in told}


def check_keys(entry: Entry, needed: Collection[str], known: Collection[str]) -> None:
    """Whether an entry has all that it needs and nothing that is not known.

    Raises:
        InputError: something is missing, or not known, with near names.
    """
    if missing := sorted(set(needed) - entry.keys()):
        raise InputError(f"{', '.join(missing)} missing")
    if unknown := sorted(entry.keys() - set(known)):
        raise InputError(f'unknown key "{unknown[0]}"{near_names(unknown[0], known)}')
