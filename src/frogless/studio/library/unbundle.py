"""A zip of a library, looked at before anything of it is believed. Knows no Django."""

from __future__ import annotations

import io
import json
import re
import struct
import zipfile
import zlib
from collections.abc import Mapping
from datetime import UTC, datetime
from hashlib import sha256
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from frogless.errors import InputError
from frogless.studio.library.bundle import (
    FOLDERS,
    FORMAT,
    GARMENTS,
    LARGEST_LIST,
    LONGEST_PATTERN,
    LONGEST_TEXT,
    MANIFEST,
    MOST_BYTES,
    MOST_ENTRIES,
    MOST_SWATCHES,
    OWN_FILE,
    VERSIONS,
    Bundle,
    KeptDocument,
    KeptGarment,
    KeptVersion,
    longest,
)
from frogless.toml_text import overgrown

LARGEST_TEXT, LARGEST_PATTERN = 4 * LONGEST_TEXT, 4 * LONGEST_PATTERN
"""Bytes of one document, and of a written pattern: no letter takes more than four."""

WRITTEN = (f"{FOLDERS['pattern']}/", f"{VERSIONS}/{FOLDERS['pattern']}/")
"""Where written patterns and their versions lie."""

YEARS = (1970, 9998)
"""Of the times that are believed: the last year has a day that is in no year elsewhere."""

MOST_SAID = 20
"""Things that are said of one entry, of one garment, or of the whole; they have eight at most."""

_PATH = re.compile(r"[A-Za-z0-9._ ()-]+(/[A-Za-z0-9._ ()-]+)*")

DAMAGED = (
    zipfile.BadZipFile,
    zlib.error,
    struct.error,
    EOFError,
    OSError,
    ValueError,
    LookupError,
    ArithmeticError,
    RuntimeError,
)
"""What reading a zip raises that is none, or none any more; unknown ways of packing among them."""

Short = Annotated[str, Field(max_length=400)]
Named = Annotated[str, Field(min_length=1, max_length=200)]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class _Entry(_Strict):
    path: Short
    kind: Literal["body", "swatch", "design", "pattern", "version", "garments"]
    name: Named
    sha256: Annotated[str, Field(pattern="^[0-9a-f]{64}$")]
    bytes: Annotated[int, Field(ge=0)]
    of: Short = ""
    made: Short = ""


class _Manifest(_Strict):
    format: str
    version: Short
    made: Short
    entries: tuple[_Entry, ...]


class _Garment(_Strict):
    name: Named
    design: Annotated[str, Field(max_length=220)]
    body: Annotated[str, Field(max_length=220)]
    swatches: Annotated[
        tuple[Annotated[str, Field(max_length=220)], ...], Field(max_length=MOST_SWATCHES)
    ]
    terms: Literal["us", "uk"] = "us"
    units: Literal["cm", "in"] = "cm"
    hand: Literal["right", "left"] = "right"


class _Garments(_Strict):
    garments: Annotated[tuple[_Garment, ...], Field(max_length=MOST_ENTRIES)]


def is_zip(data: bytes) -> bool:
    """Whether this begins as a zip does."""
    return data.startswith((b"PK\x03\x04", b"PK\x05\x06"))


def unpack(data: bytes) -> Bundle:
    """The library of a zip; documents are named by their paths: `file:bodies/ada.toml`.

    Raises:
        InputError: it is no zip, no library of ours, damaged, or holds more than it may.
    """
    files = _files(data)
    manifest = _manifest(files)
    listed = {one.path: one for one in manifest.entries}
    if len(listed) != len(manifest.entries):
        raise InputError("the manifest of this zip names one file twice")
    if missing := sorted(set(listed) - set(files)):
        raise InputError(f'"{missing[0]}" is in the manifest of this zip, and not in the zip')
    if strange := sorted(set(files) - set(listed) - {MANIFEST}):
        raise InputError(f'"{strange[0]}" is in this zip, and not in its manifest')
    for path, entry in listed.items():
        _same(entry, files[path])
    texts = {
        path: _text(path, files[path], _kind(one, listed))
        for path, one in listed.items()
        if one.kind != "garments"
    }
    documents = tuple(_documents(listed, texts))
    return Bundle(documents, _garments(files, listed, {one.key for one in documents}))


def _files(data: bytes) -> dict[str, bytes]:
    """What the zip holds, by path, none of it larger than it may be."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return _read_all(archive)
    except DAMAGED:
        raise InputError("this zip is damaged, or packed in a way that is not read here") from None


def _read_all(archive: zipfile.ZipFile) -> dict[str, bytes]:
    infos = archive.infolist()
    if len(infos) > MOST_ENTRIES:
        raise InputError(f"this zip holds {len(infos):,} files; {MOST_ENTRIES:,} are accepted")
    seen: set[str] = set()
    for info in infos:
        _check_path(info)
        if info.filename.casefold() in seen:
            raise InputError(f'this zip holds "{info.filename}" twice')
        seen.add(info.filename.casefold())
        if info.flag_bits & 1:
            raise InputError("this zip is encrypted; make one without a password")
        if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            raise InputError("this zip is packed in a way that is not read here; use plain zip")
    files, left = {}, MOST_BYTES
    for info in infos:
        files[info.filename] = _read(archive, info, left)
        left -= len(files[info.filename])
    return files


def _check_path(info: zipfile.ZipInfo) -> None:
    path = info.filename
    # What a path means is not left to the system that reads it: only the plainest is taken.
    plain = _PATH.fullmatch(path) and ".." not in path.split("/") and "." not in path.split("/")
    if not plain or len(path) > 300 or info.orig_filename != path:
        raise InputError(f"this zip holds a file with a name that is not accepted: {path[:80]!r}")


def _read(archive: zipfile.ZipFile, info: zipfile.ZipInfo, left: int) -> bytes:
    """One file, read no further than it may go, whatever the zip says of its size."""
    most = LARGEST_LIST if info.filename in (MANIFEST, GARMENTS) else LARGEST_TEXT
    if info.filename.startswith(WRITTEN):
        most = LARGEST_PATTERN
    with archive.open(info) as opened:
        data = opened.read(min(most, left) + 1)
    if len(data) > most:
        raise InputError(f'"{info.filename}" has more than {most // 1000:,} kB')
    if len(data) > left:
        raise InputError(f"this zip holds more than {MOST_BYTES // 1_000_000} MB")
    return data


def _manifest(files: Mapping[str, bytes]) -> _Manifest:
    if MANIFEST not in files:
        raise InputError(
            f"this zip has no {MANIFEST}, so it is no library of Frogless; "
            "choose a zip that a library was saved as"
        )
    try:
        data = json.loads(files[MANIFEST])
        found = data.get("format") if isinstance(data, dict) else None
        if found != FORMAT:
            raise InputError(f'the manifest of this zip is not of the format "{FORMAT}"')
        _check_list(data, "entries", MANIFEST)
        return _Manifest.model_validate(data)
    except (ValidationError, ValueError, RecursionError):
        raise InputError("the manifest of this zip cannot be read") from None


def _check_list(data: object, key: str, path: str) -> None:
    """Counts before anything is looked into: a thousand faults take as much as a thousand files."""
    if not isinstance(data, dict) or len(data) > MOST_SAID:
        raise ValueError(path)
    rows = data.get(key)
    if (
        not isinstance(rows, list)
        or len(rows) > MOST_ENTRIES
        or any(not isinstance(one, dict) or len(one) > MOST_SAID for one in rows)
    ):
        raise InputError(
            f'the "{key}" of {path} in this zip must be a list of {MOST_ENTRIES:,} at most, '
            f"each with {MOST_SAID} things said of it at most"
        )


def _same(entry: _Entry, data: bytes) -> None:
    if len(data) != entry.bytes or sha256(data).hexdigest() != entry.sha256:
        raise InputError(
            f'"{entry.path}" is not what the manifest of this zip says; it was changed or damaged'
        )


def _kind(entry: _Entry, listed: Mapping[str, _Entry]) -> str:
    """The kind of a document; of a version that of its document."""
    return listed[entry.of].kind if entry.kind == "version" and entry.of in listed else entry.kind


def _text(path: str, data: bytes, kind: str) -> str:
    try:
        text = data.decode()
    except UnicodeDecodeError:
        raise InputError(f'"{path}" is not text in UTF-8') from None
    if len(text) > longest(kind):
        raise InputError(f'"{path}" has {len(text):,} letters; {longest(kind):,} are accepted')
    if "\0" in text:
        raise InputError(f'"{path}" is not a text')
    # No parser of ours that could choke on it is asked for a written pattern.
    if kind != "pattern" and (found := overgrown(text)) is not None:
        line, told = found
        raise InputError(f'"{path}"{f", line {line}" if line else ""}: {told}')
    return text


def _documents(listed: Mapping[str, _Entry], texts: Mapping[str, str]) -> list[KeptDocument]:
    versions: dict[str, list[KeptVersion]] = {}
    for path, one in listed.items():
        if one.kind != "version":
            continue
        if not path.startswith(f"{VERSIONS}/") or listed.get(one.of) is None:
            raise InputError(f'"{path}" is a version of nothing in this zip')
        _check_time(path, one.made)
        versions.setdefault(one.of, []).append(KeptVersion(one.name, texts[path], one.made))
    found = []
    for path, one in listed.items():
        if one.kind in FOLDERS:
            if not path.startswith(f"{FOLDERS[one.kind]}/"):
                raise InputError(f'"{path}" is a {one.kind} in the wrong folder')
            known = tuple(versions.pop(path, ()))
            found.append(KeptDocument(OWN_FILE + path, one.kind, one.name, texts[path], known))
    if versions:
        raise InputError(f'"{next(iter(versions))}" has versions, and is no document')
    return found


def _check_time(path: str, made: str) -> None:
    """Only what is a time in every zone of the world can be kept and shown; none at all is now."""
    if not made:
        return
    try:
        year = datetime.fromisoformat(made).astimezone(UTC).year
    except (ValueError, OverflowError):
        year = 0
    if not YEARS[0] <= year <= YEARS[1]:
        raise InputError(
            f'"{path}" was made at "{made[:40]}" as this zip has it; accepted is a time such as '
            f'"2026-07-01T12:00:00+00:00", from {YEARS[0]} to {YEARS[1]}'
        )


def _garments(
    files: Mapping[str, bytes], listed: Mapping[str, _Entry], known: set[str]
) -> tuple[KeptGarment, ...]:
    if GARMENTS not in files:
        return ()
    if listed[GARMENTS].kind != "garments":
        raise InputError(f"{GARMENTS} is listed as something else")
    try:
        data = json.loads(files[GARMENTS])
        _check_list(data, "garments", GARMENTS)
        found = _Garments.model_validate(data).garments
    except (ValidationError, ValueError, RecursionError):
        raise InputError(f"the list of garments in this zip ({GARMENTS}) cannot be read") from None
    for garment in found:
        for ref in (garment.design, garment.body, *garment.swatches):
            if ref.startswith("own:"):
                raise InputError(f'the garment "{garment.name}" names something outside this zip')
            if ref.startswith(OWN_FILE) and ref not in known:
                raise InputError(
                    f'the garment "{garment.name}" is made of "{ref.removeprefix(OWN_FILE)}", '
                    "which is not in this zip"
                )
    return tuple(KeptGarment(**one.model_dump()) for one in found)
