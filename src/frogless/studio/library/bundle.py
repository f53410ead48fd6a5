"""A whole library as one zip with a manifest: `frogless-library/1`. Knows no Django.

Every document lies in it as its own file, so that any of them can be taken out by hand.
"""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from hashlib import sha256
from typing import Any

from frogless.errors import InputError
from frogless.studio.library.file_names import stem
from frogless.toml_text import LONGEST

FORMAT = "frogless-library/1"
MANIFEST, GARMENTS = "manifest.json", "garments.json"
FOLDERS: Mapping[str, str] = {
    "body": "bodies",
    "swatch": "swatches",
    "design": "designs",
    "pattern": "patterns",
}
"""The folder of each kind of document."""

ENDINGS: Mapping[str, str] = {"pattern": "txt"}
"""What the names of files of a kind end in where it is not toml."""

VERSIONS = "versions"
OWN_FILE = "file:"
"""How a garment of the zip names a document of the zip: `file:designs/ring-skirt.toml`."""

GONE = "gone"
"""What a garment names instead of a document that is in the library no more."""

MOST_SWATCHES = 30
"""That one garment is made of; most are made of one."""

MOST_ENTRIES = 5_000
MOST_BYTES = 50_000_000
LARGEST_LIST = 2_000_000
"""Bytes of the manifest and of the list of garments; thousands of documents have half of it."""

LONGEST_TEXT = LONGEST
"""Letters of one document."""

LONGEST_PATTERN = 150_000
"""Letters of a written pattern, which may be a booklet with all its sizes."""

_ANY_DAY = (1980, 1, 1, 0, 0, 0)
"""The first day that a zip can have: the same library gives the same file."""


@dataclass(frozen=True, slots=True)
class KeptVersion:
    """A text that its author gave a name; `made` is a time in ISO 8601."""

    name: str
    text: str
    made: str


@dataclass(frozen=True, slots=True)
class KeptDocument:
    """A document with its named versions, oldest first.

    `key` is what garments call it: `own:12`, or in a zip `file:bodies/ada.toml`.
    """

    key: str
    kind: str
    name: str
    text: str
    versions: tuple[KeptVersion, ...] = ()


@dataclass(frozen=True, slots=True)
class KeptGarment:
    """A garment; what it is made of is named by the keys of documents, or by refs of examples."""

    name: str
    design: str
    body: str
    swatches: tuple[str, ...]
    terms: str = "us"
    units: str = "cm"
    hand: str = "right"


@dataclass(frozen=True, slots=True)
class Bundle:
    """A library as it goes out or comes in."""

    documents: tuple[KeptDocument, ...]
    garments: tuple[KeptGarment, ...] = ()


def longest(kind: str) -> int:
    """Letters that a document of a kind has at most."""
    return LONGEST_PATTERN if kind == "pattern" else LONGEST_TEXT


def ending(kind: str) -> str:
    """What the name of a file of a kind ends in."""
    return ENDINGS.get(kind, "toml")


def pack(bundle: Bundle, version: str, made: str) -> bytes:
    """The library as a zip: the same for the same library, version and time.

    Args:
        version: of the program. made: when, in ISO 8601.

    Raises:
        InputError: there is more than a zip may hold.
    """
    files: list[tuple[dict[str, Any], bytes]] = []
    paths = _paths(bundle.documents)
    for document in bundle.documents:
        path = paths[document.key]
        about = {"path": path, "kind": document.kind, "name": document.name}
        files.append((about, document.text.encode()))
        files += _versions(document, path)
    garments = [_named_by_path(one, paths) for one in bundle.garments]
    about = {"path": GARMENTS, "kind": "garments", "name": "Garments"}
    files.append((about, _json({"garments": garments})))
    entries = [
        about | {"sha256": sha256(data).hexdigest(), "bytes": len(data)} for about, data in files
    ]
    manifest = _json({"format": FORMAT, "version": version, "made": made, "entries": entries})
    lists, sizes = (manifest, files[-1][1]), [len(manifest), *(len(data) for _, data in files)]
    # What could not come in again must not go out.
    if (
        max(len(files) + 1, len(garments)) > MOST_ENTRIES
        or max(len(one) for one in lists) > LARGEST_LIST
        or sum(sizes) > MOST_BYTES
    ):
        raise InputError(
            f"this library has more than {MOST_ENTRIES:,} documents and versions, or garments, or "
            f"more than {MOST_BYTES // 1_000_000} MB; save it document by document"
        )
    return _zipped([(MANIFEST, manifest), *((a["path"], data) for a, data in files)])


def _paths(documents: Iterable[KeptDocument]) -> dict[str, str]:
    taken: dict[str, set[str]] = {kind: set() for kind in FOLDERS}
    return {
        one.key: f"{FOLDERS[one.kind]}/{stem(one.name, taken[one.kind], one.kind)}.{ending(one.kind)}"
        for one in documents
    }


def _versions(document: KeptDocument, path: str) -> list[tuple[dict[str, Any], bytes]]:
    end = f".{ending(document.kind)}"
    folder = f"{VERSIONS}/{path.removesuffix(end)}"
    return [
        (
            {
                "path": f"{folder}/{number:03}-{stem(one.name, instead='version')}{end}",
                "kind": "version",
                "name": one.name,
                "of": path,
                "made": one.made,
            },
            one.text.encode(),
        )
        for number, one in enumerate(document.versions, 1)
    ]


def _named_by_path(garment: KeptGarment, paths: Mapping[str, str]) -> dict[str, Any]:
    def named(ref: str) -> str:
        if ref in paths:
            return OWN_FILE + paths[ref]
        return GONE if ref.startswith(("own:", OWN_FILE)) else ref

    return {
        "name": garment.name,
        "design": named(garment.design),
        "body": named(garment.body),
        "swatches": [named(ref) for ref in garment.swatches],
        "terms": garment.terms,
        "units": garment.units,
        "hand": garment.hand,
    }


def _json(data: object) -> bytes:
    return (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode()


def _zipped(files: Iterable[tuple[str, bytes]]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for path, data in files:
            info = zipfile.ZipInfo(path, _ANY_DAY)
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = 0o644 << 16
            # Where it is written must not show, or two systems would make two files of one library.
            info.create_system = 3
            archive.writestr(info, data)
    return out.getvalue()
