"""A library goes out as a zip and comes in again; a zip that is anything else is refused whole."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Callable
from hashlib import sha256

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from library_bundles import DAY, bundles, words

from frogless.errors import InputError
from frogless.studio.library.bundle import Bundle, KeptDocument, KeptGarment, pack
from frogless.studio.library.file_names import RESERVED, stem
from frogless.studio.library.single import kind_of, single
from frogless.studio.library.unbundle import unpack

BODY = 'format = "frogless-body/1"\nname = "Ada"\n[measurements]\nwaist_girth = "70 cm"\n'


@given(bundles())
@settings(max_examples=60, deadline=None)
def test_what_goes_out_comes_in(bundle: Bundle) -> None:
    """Packed, unpacked and packed again, it is the same file to the last byte."""
    data = pack(bundle, "1.2", DAY)
    again = unpack(data)
    assert pack(again, "1.2", DAY) == data
    assert [(d.kind, d.name, d.text, d.versions) for d in again.documents] == [
        (d.kind, d.name, d.text, d.versions) for d in bundle.documents
    ]


@given(words)
def test_names_of_files_are_safe(name: str) -> None:
    """Letters, digits and hyphens, not too many, and none that a system keeps for itself."""
    found = stem(name)
    assert set(found) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert 0 < len(found) <= 70
    assert found not in RESERVED


def test_names_that_are_alike_get_numbers() -> None:
    """Files differ in more than case, or half the systems have one of them."""
    taken: set[str] = set()
    assert [stem(name, taken) for name in ("Blue", "blue!", "BLUE")] == ["blue", "blue-2", "blue-3"]


def files_of(data: bytes) -> dict[str, bytes]:
    """The files of a zip."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def zipped(files: dict[str, bytes]) -> bytes:
    """A zip of files."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in files.items():
            archive.writestr(name, data)
    return out.getvalue()


def good() -> bytes:
    """A library of one body and one garment."""
    document = KeptDocument("own:1", "body", "Ada", BODY)
    garment = KeptGarment("Skirt", "example:ring-dance-skirt", "own:1", ("example:light-cotton",))
    return pack(Bundle((document,), (garment,)), "1.2", DAY)


def test_manifest_tells_everything() -> None:
    """Format, version, time, and of each file its path, kind, name, hash and size."""
    files = files_of(good())
    manifest = json.loads(files["manifest.json"])
    assert (manifest["format"], manifest["version"], manifest["made"]) == (
        "frogless-library/1",
        "1.2",
        DAY,
    )
    assert manifest["entries"][0] == {
        "path": "bodies/ada.toml",
        "kind": "body",
        "name": "Ada",
        "sha256": sha256(BODY.encode()).hexdigest(),
        "bytes": len(BODY.encode()),
    }
    assert json.loads(files["garments.json"])["garments"][0]["body"] == "file:bodies/ada.toml"


def changed(change: Callable[[dict[str, bytes]], None]) -> bytes:
    """The good zip with something done to it."""
    files = files_of(good())
    change(files)
    return zipped(files)


def manifested(**about: object) -> bytes:
    """The good zip with something else said of its first file."""

    def change(files: dict[str, bytes]) -> None:
        manifest = json.loads(files["manifest.json"])
        manifest["entries"][0] |= about
        files["manifest.json"] = json.dumps(manifest).encode()

    return changed(change)


def encrypted() -> bytes:
    """The good zip, said to be encrypted in each of its directory's entries."""
    data = bytearray(good())
    at = data.find(b"PK\x01\x02")
    while at >= 0:
        data[at + 8] |= 1
        at = data.find(b"PK\x01\x02", at + 4)
    return bytes(data)


def twice() -> bytes:
    """A zip with one name twice."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("manifest.json", b"{}")
        archive.writestr("Manifest.json", b"{}")
    return out.getvalue()


REFUSED = {
    "no zip": (b"PK\x03\x04 and then nothing", "damaged"),
    "cut off": (good()[:-40], "damaged"),
    "no manifest": (zipped({"a.toml": b""}), "has no manifest.json"),
    "other format": (zipped({"manifest.json": b'{"format": "other/1"}'}), "not of the format"),
    "manifest no JSON": (zipped({"manifest.json": b"[[["}), "cannot be read"),
    "manifest a list": (zipped({"manifest.json": b"[]"}), "not of the format"),
    "file changed": (
        changed(lambda files: files.update({"bodies/ada.toml": b"x"})),
        "changed or damaged",
    ),
    "file missing": (changed(lambda files: files.pop("bodies/ada.toml")), "and not in the zip"),
    "file too many": (changed(lambda files: files.update({"more.toml": b""})), "not in its manif"),
    "absolute": (changed(lambda files: files.update({"/etc/x": b""})), "name that is not accepted"),
    "upward": (
        changed(lambda files: files.update({"a/../../x": b""})),
        "name that is not accepted",
    ),
    "backslash": (changed(lambda files: files.update({"a\\b": b""})), "name that is not accepted"),
    "drive": (changed(lambda files: files.update({"C:x": b""})), "name that is not accepted"),
    "twice": (twice(), "twice"),
    "encrypted": (encrypted(), "encrypted"),
    "wrong folder": (manifested(kind="design"), "in the wrong folder"),
    "unknown kind": (manifested(kind="song"), "cannot be read"),
    "no name": (manifested(name=""), "cannot be read"),
    "broken letters in a name": (manifested(name="\ud800"), "cannot be read"),
    "garments no list": (
        changed(lambda files: files.update({"garments.json": b"{}"})),
        "changed or damaged",
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_refused_with_a_sentence(name: str) -> None:
    """Whatever is wrong with a zip is said, and is never a fault of ours."""
    data, told = REFUSED[name]
    with pytest.raises(InputError, match=told):
        unpack(data)


def test_bomb_is_not_unpacked() -> None:
    """A file of 60 MB in 60 kB is read no further than a document may go."""
    bomb = zipped({"manifest.json": b"{}", "bodies/a.toml": bytes(60_000_000)})
    assert len(bomb) < 400_000
    with pytest.raises(InputError, match="has more than 200 kB"):
        unpack(bomb)


def test_many_files_are_not_looked_at() -> None:
    """More entries than a library has are refused before any is read."""
    with pytest.raises(InputError, match="5,001 files"):
        unpack(zipped({f"a{n}": b"" for n in range(5_001)}))


def test_many_good_files_together_are_too_much() -> None:
    """Each is small enough; together they are not."""
    with pytest.raises(InputError, match="more than 50 MB"):
        unpack(zipped({f"a{n}": bytes(195_000) for n in range(270)}))


def test_garment_of_something_outside_is_refused() -> None:
    """A key of another library means nothing here."""

    def change(files: dict[str, bytes]) -> None:
        text = files["garments.json"].replace(b"file:bodies/ada.toml", b"own:7")
        manifest = json.loads(files["manifest.json"])
        manifest["entries"][-1] |= {"sha256": sha256(text).hexdigest(), "bytes": len(text)}
        files["garments.json"] = text
        files["manifest.json"] = json.dumps(manifest).encode()

    with pytest.raises(InputError, match="names something outside this zip"):
        unpack(changed(change))


@given(st.binary(max_size=300))
def test_noise_is_refused(noise: bytes) -> None:
    """Bytes that begin like a zip and go on as they like."""
    with pytest.raises(InputError):
        unpack(b"PK\x03\x04" + noise)


@given(st.integers(0, len(good()) - 1), st.integers(1, 255))
@settings(max_examples=150, deadline=None)
def test_one_wrong_byte_is_noticed_or_harmless(place: int, by: int) -> None:
    """A damaged zip is refused, or means what it meant."""
    data = bytearray(good())
    data[place] = (data[place] + by) % 256
    try:
        found = unpack(bytes(data))
    except InputError:
        return
    assert found == unpack(good())


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "does not say what it is"),
        ("a = ", "not valid TOML"),
        ('format = "frogless-hat/1"', 'is "frogless-hat/1"; accepted is'),
        ('format = "frogless-body/1"\nname = "A"\n', "measurements"),
        ('format = "frogless-swatch/1"\nname = "A"\n', "stitch"),
        ('format = "frogless-design/1"\n', "title"),
    ],
)
def test_single_file_is_told_what_it_lacks(text: str, told: str) -> None:
    """A file is recognised by its format, and checked as what it is."""
    with pytest.raises(InputError) as refused:
        single(text.encode(), "a.toml")
    assert told in str(refused.value)


def test_single_file_is_recognised() -> None:
    """The name inside counts, not that of the file."""
    (document,) = single(BODY.encode(), "somebody.toml").documents
    assert (document.kind, document.name, document.text) == ("body", "Ada", BODY)
    assert kind_of('format = "frogless-design/1"') == "design"


@pytest.mark.parametrize("data", [b"\xff\xfe\x00a", b"a = 1\0", b"a" * 200_001])
def test_single_file_that_is_no_text(data: bytes) -> None:
    """Pictures and the like are refused."""
    with pytest.raises(InputError):
        single(data, "a.toml")
