"""What the form comes to: what is still needed, what has to be mended, or a proven draft."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from frogless.body.load import load_body
from frogless.design.document import Design
from frogless.design.load import read_design
from frogless.draft import Draft, Request, draft
from frogless.errors import Fault, FroglessError, Impossible, InputError
from frogless.stitches.model import Dialect
from frogless.studio.drafting.documents import Written, as_file, body_document, swatch_document
from frogless.studio.drafting.fields import (
    Field,
    Group,
    Values,
    body_groups,
    in_words,
    swatch_groups,
    units_of,
)
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.swatch import load_swatch


@dataclass(frozen=True, slots=True)
class Told:
    """One sentence, the field or part of the form that it is about, and what that is called."""

    sentence: str
    field: str
    label: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """The form, understood: the design (None when it is faulty), its fields, the three files."""

    values: Values
    design: Design | None
    groups: dict[str, tuple[Group, ...]]
    files: dict[str, Written]
    faults: tuple[Told, ...]

    @property
    def shape(self) -> str:
        """Which fields are shown; when it changes, the form itself has to be shown anew."""
        shown = [f.name for groups in self.groups.values() for g in groups for f in g.fields]
        modes = [key for key in ("body_text", "swatch_text") if self.values.get(key)]
        return " ".join([self.values["design"], units_of(self.values), *modes, *shown])


@dataclass(frozen=True, slots=True)
class Outcome:
    """Fields still empty, faults, ways out of what is impossible; or else the draft."""

    needed: tuple[Told, ...]
    faults: tuple[Told, ...]
    ways_out: tuple[str, ...] = ()
    made: Draft | None = None


def dialect_of(values: Values) -> Dialect:
    """The terms chosen for the page."""
    return "uk" if values.get("terms") == "uk" else "us"


def text_of(kind: str, key: str) -> str:
    """The text of an example or of a document of the library, by its key in the lists.

    Raises:
        InputError: there is none.
    """
    shelf_name, _, name = key.partition(":")
    if shelf_name == "example" and name in examples(kind):
        return examples(kind)[name].text
    document = shelf.found(name) if shelf_name == "library" else None
    if document is None or document.kind != kind:
        raise InputError(f"this {kind} is not there any more; choose another")
    return document.text


def understood(values: Values) -> Sheet:
    """The form with its fields and files."""
    design: Design | None = None
    text, faults = "", tuple[Fault, ...]()
    try:
        text = design_text(values)
        with as_file(text, "design.toml") as path:
            design = read_design(path).checked
    except InputError as error:
        faults = error.faults
    groups = {
        "body": body_groups(design, values),
        "swatch": swatch_groups(design, values, dialect_of(values)),
    }
    files = {
        "design": Written(text, {}),
        "body": body_document(values, groups["body"]),
        "swatch": swatch_document(values, groups["swatch"]),
    }
    sheet = Sheet(values, design, groups, files, ())
    return replace(sheet, faults=tuple(_told(sheet, "design", fault) for fault in faults))


def design_text(values: Values) -> str:
    """The text of the chosen design.

    Raises:
        InputError: there is no such example, or it is not in the library any more.
    """
    own = values["design"] == "text"
    return values.get("design_text", "") if own else text_of("design", values["design"])


def outcome(sheet: Sheet) -> Outcome:
    """Faults of all three files together; a draft when there are none and nothing is missing."""
    needed = tuple(_still_needed(sheet))
    with tempfile.TemporaryDirectory(prefix="frogless-") as folder:
        paths = {kind: Path(folder) / f"{kind}.toml" for kind in sheet.files}
        for kind, path in paths.items():
            path.write_text(sheet.files[kind].text, encoding="utf-8", newline="")
        faults = (
            *sheet.faults,
            *_faults(sheet, "body", lambda: load_body(paths["body"])),
            *_faults(sheet, "swatch", lambda: load_swatch(paths["swatch"])),
        )
        if needed or faults:
            return Outcome(needed, faults)
        return _drafted(sheet, paths)


def _drafted(sheet: Sheet, paths: dict[str, Path]) -> Outcome:
    request = Request(
        paths["design"],
        paths["body"],
        (paths["swatch"],),
        dialect_of(sheet.values),
        units_of(sheet.values),
    )
    try:
        return Outcome((), (), made=draft(request))
    except FroglessError as error:
        kinds = {f"{kind}.toml": kind for kind in paths}
        told = (_told(sheet, kinds.get(f.place.file, "design"), f) for f in error.faults)
        ways_out = error.ways_out if isinstance(error, Impossible) else ()
        return Outcome((), tuple(told), tuple(map(in_words, ways_out)))


def _still_needed(sheet: Sheet) -> Iterator[Told]:
    for kind, group, field in _fields(sheet):
        empty = not sheet.values.get(field.name, "").strip()
        if field.needed and empty and not sheet.values.get(f"{kind}_text"):
            yield Told("is needed", field.name, _label(kind, group, field))


def _faults(sheet: Sheet, kind: str, load: Callable[[], object]) -> list[Told]:
    try:
        load()
    except InputError as error:
        told = [_told(sheet, kind, fault) for fault in error.faults]
        # What is left empty is asked for by the form itself.
        return [one for one in told if sheet.values.get(one.field, "").strip()]
    return []


def _told(sheet: Sheet, kind: str, fault: Fault) -> Told:
    """A fault beside its field, or beside the text or the part of the form that it lies in."""
    name = sheet.files[kind].fields.get(fault.place.key, "")
    for part, group, field in _fields(sheet):
        if field.name == name:
            return Told(fault.message, name, _label(part, group, field))
    own = sheet.values.get(f"{kind}_text") and (
        kind != "design" or sheet.values["design"] == "text"
    )
    line = f"line {fault.place.line}" if fault.place.line and (own or kind == "design") else ""
    where = " ".join(filter(None, (line, fault.place.key)))
    sentence = f"{where}: {fault.message}" if where else fault.message
    return Told(sentence, f"{kind}_text" if own else kind, kind.capitalize())


def _fields(sheet: Sheet) -> Iterator[tuple[str, Group, Field]]:
    for kind, groups in sheet.groups.items():
        yield from ((kind, group, field) for group in groups for field in group.fields)


def _label(kind: str, group: Group, field: Field) -> str:
    """ "Double crochet, rows": a swatch has such fields once for each stitch."""
    if kind == "swatch" and "-" in field.name.removeprefix("swatch-"):
        return f"{group.title.partition(',')[0].partition(':')[0]}, {field.label.lower()}"
    return field.label
