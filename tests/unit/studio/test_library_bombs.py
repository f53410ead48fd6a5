"""Zips that are small to send and would be much to read: refused before they are."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Callable, Mapping
from hashlib import sha256

import pytest

from frogless.errors import InputError
from frogless.studio.library.bundle import (
    FORMAT,
    LARGEST_LIST,
    MOST_ENTRIES,
    Bundle,
    KeptDocument,
    KeptGarment,
    KeptVersion,
    pack,
)
from frogless.studio.library.renaming import renamed
from frogless.studio.library.single import single
from frogless.studio.library.unbundle import unpack

DAY = "2026-07-01T12:00:00+00:00"


def library(files: Mapping[str, bytes], **more: object) -> bytes:
    """A zip with a manifest that names its files as they are; `more` stands in the manifest too."""
    kinds = {"bodies": "body", "versions": "version", "garments.json": "garments"}
    entries = [
        {
            "path": path,
            "kind": kinds[path.partition("/")[0]],
            "name": "One",
            "sha256": sha256(data).hexdigest(),
            "bytes": len(data),
        }
        for path, data in files.items()
    ]
    manifest = {"format": FORMAT, "version": "1", "made": DAY, "entries": entries} | more
    return zipped({"manifest.json": json.dumps(manifest).encode(), **files})


def zipped(files: Mapping[str, bytes]) -> bytes:
    """A zip of just these files."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for path, data in files.items():
            archive.writestr(path, data)
    return out.getvalue()


@pytest.mark.parametrize(
    "entries", [[{}] * (MOST_ENTRIES + 1), {"a": 1}, [dict.fromkeys(map(str, range(50_000)), 0)]]
)
def test_manifest_of_far_too_much_is_not_looked_into(entries: object) -> None:
    """Entries without end, none at all, and one that says thousands of things."""
    with pytest.raises(InputError, match=r"entries.*manifest\.json"):
        unpack(library({}, entries=entries))


def test_manifest_that_says_far_too_much_of_itself_is_refused() -> None:
    """Thousands of words beside its entries."""
    with pytest.raises(InputError, match="manifest of this zip cannot be read"):
        unpack(library({}, **{f"word{n}": 1 for n in range(50_000)}))


@pytest.mark.parametrize("garments", [[{}] * (MOST_ENTRIES + 1), "all", [[]]])
def test_garments_of_far_too_much_are_not_looked_into(garments: object) -> None:
    """As the manifest."""
    with pytest.raises(InputError, match=r"garments.*garments\.json"):
        unpack(library({"garments.json": json.dumps({"garments": garments}).encode()}))


@pytest.mark.parametrize("name", ["manifest.json", "garments.json"])
def test_lists_that_are_far_too_long_are_not_read(name: str) -> None:
    """Longer than a library of thousands of documents has them."""
    with pytest.raises(InputError, match=f'"{name}" has more than 2,000 kB'):
        unpack(zipped({name: b" " * (LARGEST_LIST + 1)}))


def _garments(number: int) -> tuple[KeptGarment, ...]:
    ref = "example:light-cotton"
    return (KeptGarment("Skirt", "example:ring-dance-skirt", "own:1", (ref,) * 30),) * number


@pytest.mark.parametrize("bundle", [Bundle((), _garments(3000)), Bundle((), _garments(5001))])
def test_nothing_goes_out_that_could_not_come_in(bundle: Bundle) -> None:
    """Too long a list, too many garments: said while the documents can still be saved singly."""
    with pytest.raises(InputError, match="save it document by document"):
        pack(bundle, "1.2", DAY)


POISONED: Mapping[str, Callable[[], str]] = {
    "key of many parts": lambda: "a" + ".a" * 11_000 + " = 1\n",
    "long number": lambda: "a = " + "1" * 4_000 + "\n",
}


@pytest.mark.parametrize("kind", POISONED)
def test_text_that_no_parser_should_be_asked_about_is_refused(kind: str) -> None:
    """With the name of its file; nothing of the zip comes in."""
    with pytest.raises(InputError, match=r'"bodies/one\.toml"'):
        unpack(library({"bodies/one.toml": POISONED[kind]().encode()}))


def test_ordinary_library_still_comes_in() -> None:
    """With a version and a garment."""
    document = KeptDocument("own:1", "body", "One", 'format = "frogless-body/1"\nname = "One"\n')
    bundle = Bundle((document,), _garments(3))
    found = unpack(pack(bundle, "1.2", DAY))
    assert [one.text for one in found.documents] == [document.text]
    assert len(found.garments) == 3


@pytest.mark.parametrize(
    "made", ["9999-12-31T23:59:59-23:59", "0001-01-01T00:00:00+23:59", "yesterday", "2026-13-01"]
)
def test_time_that_is_none_elsewhere_is_refused(made: str) -> None:
    """Kept, it could be shown in no other zone."""
    version = KeptVersion("first", "a = 1\n", made)
    bundle = Bundle((KeptDocument("own:1", "body", "One", "a = 2\n", (version,)),))
    with pytest.raises(InputError, match=r"accepted is a time such as"):
        unpack(pack(bundle, "1.2", DAY))


def test_time_of_any_zone_is_taken() -> None:
    """And none at all, which is now."""
    versions = tuple(
        KeptVersion("one", "a = 1\n", made) for made in ("1999-12-31T23:59:59-11:00", DAY, "")
    )
    bundle = Bundle((KeptDocument("own:1", "body", "One", "a = 2\n", versions),))
    assert unpack(pack(bundle, "1.2", DAY)).documents[0].versions == versions


@pytest.mark.parametrize("kind", POISONED)
def test_poisoned_file_is_refused_alone_too(kind: str) -> None:
    """At its line, before it is asked what it is."""
    with pytest.raises(InputError) as refused:
        single(("\n" + POISONED[kind]()).encode(), "one.toml")
    assert refused.value.faults[0].place.line == 2


def test_poisoned_text_keeps_what_it_calls_itself() -> None:
    """A document that was kept before such texts were refused can still have another name."""
    text = 'name = "One"\n' + POISONED["key of many parts"]()
    assert renamed(text, "Two") == text
