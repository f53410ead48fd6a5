"""What the pages of a swatch are made of: one context for the whole page and for its live part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse

from frogless.errors import Fault, InputError
from frogless.studio.fields import Filled
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import preferred
from frogless.studio.library.uses import garments_using
from frogless.studio.people.edit import page_of
from frogless.studio.swatches.doubts import Doubt, doubts
from frogless.studio.swatches.form import (
    PARTS,
    ReadingForm,
    all_fields,
    head_fields,
    numbers_of,
    pattern_choices,
    reading_forms,
    stitch_choices,
    yarn_fields,
)
from frogless.studio.swatches.looking import looked
from frogless.studio.swatches.written import checked
from frogless.studio.written_text import plain, text_of
from frogless.units import Units

LARGEST_FILE = 200_000
"""Bytes; the longest swatch file that anybody keeps is a twentieth of that."""

NOTICES = {
    "saved": "Saved.",
    "opened": "The file is now a swatch of yours.",
    "copied": "This copy is yours to change.",
    "undone": "The last change is taken back.",
    "redone": "The change is made again.",
}

PICTURES = (
    ("stitches", "Count stitches"),
    ("rows", "Count rows"),
    ("repeats", "Count repeats of a stitch pattern"),
    ("mass", "Weigh it"),
    ("stretched_width", "Stretch it"),
    ("hung_height", "Hang it"),
)
"""How a swatch is read: key of a picture, and what it shows."""


@dataclass(frozen=True, slots=True)
class Wrong:
    """One fault of a form: its field, what that is called, and what is wrong."""

    field: str
    label: str
    sentence: str


@dataclass(frozen=True, slots=True)
class FaultyLine:
    """One fault of a text: its line's number and what stands there."""

    line: int | None
    stands: str
    sentence: str


def address(document: Document, done: str) -> str:
    """The page of a swatch, with a word about what was done."""
    return f"{reverse('swatches:edit', args=[document.pk])}?{done}"


def units_of(values: Mapping[str, str]) -> Units:
    """The units that a form was filled in with."""
    return "in" if values.get("units") == "in" else "cm"


def form_page(
    request: HttpRequest,
    document: Document | None,
    values: Mapping[str, str],
    errors: Mapping[str, str] | None = None,
    *,
    notice: str = "",
    status: int = 200,
    sure: str = "",
    at: str = "",
) -> HttpResponse:
    """The page of a swatch as a form.

    Args:
        sure: stands for what is asked before it is kept; "" for nothing.
        at: the field to go on at.
    """
    context = _context(values, errors or {}) | {"sure": sure, "at": at, "here": request.path}
    done = next((NOTICES[word] for word in NOTICES if word in request.GET), "")
    context |= {
        "document": document,
        "pictures": PICTURES,
        "wrong": _wrong(values, errors or {}),
        "notices": [notice or done] if notice or done else [],
    }
    if document is not None:
        context |= {
            "base": request.POST.get("base", document.revision),
            "used": garments_using(document.ref),
            "undo": shelf.can_undo(document),
            "redo": shelf.can_redo(document),
        }
    return render(request, "swatches/edit_swatch.html", context, status=status)


def live_part(request: HttpRequest, values: Mapping[str, str]) -> HttpResponse:
    """What a form tells while it is filled in: only what is written is found fault with."""
    errors = checked(values).errors
    written = {name: told for name, told in errors.items() if values.get(name)}
    context = _context(values, errors, shown=written)
    context["here"] = page_of(request, reverse("swatches:new"))
    context["fields"] = [
        (one.name, written.get(one.name, ""))
        for one in (*all_fields(values), *(r.of.field for r in context["readings"]))  # type: ignore[attr-defined]
    ]
    return render(request, "swatches/_live.html", context)


def _context(
    values: Mapping[str, str],
    errors: Mapping[str, str],
    shown: Mapping[str, str] | None = None,
) -> dict[str, object]:
    terms, units = preferred().terms, units_of(values)
    said = errors if shown is None else shown
    found = {one.field: one for one in doubts(values, units, terms)}
    every = dict(errors) if shown is not None else dict(checked(values).errors)
    return {
        "units": units,
        "head": head_fields(values, said, terms, units),
        "yarn": yarn_fields(values, said, units),
        "readings": _asked(reading_forms(values, said, terms, units), found),
        "here": reverse("swatches:new"),
        "numbers": values.get("readings", ""),
        "stitches": [(f"stitch:{key}", name) for key, name in stitch_choices(terms)],
        "patterns": pattern_choices(terms),
        "looked": looked(values, every, units, terms),
        "needed": [told for name, told in every.items() if not values.get(name)],
    }


def _asked(
    readings: tuple[ReadingForm, ...], found: Mapping[str, Doubt]
) -> tuple[ReadingForm, ...]:
    """The readings with what is asked of their counts."""

    def with_question(one: Filled) -> Filled:
        doubt = found.get(one.field.name)
        return replace(one, question=doubt.sentence, offers=doubt.offers) if doubt else one

    return tuple(
        replace(one, parts={part: with_question(f) for part, f in one.parts.items()})
        for one in readings
    )


def _wrong(values: Mapping[str, str], errors: Mapping[str, str]) -> tuple[Wrong, ...]:
    labels = {one.name: one.label for one in all_fields(values)}
    for place, number in enumerate(numbers_of(values), 1):
        for part in ("of", "state", *(one.name for one in PARTS)):
            name = f"r{number}-{part}"
            label = labels.get(name, "")
            labels[name] = f"Reading {place}, {label[:1].lower()}{label[1:]}".rstrip(", ")
    return tuple(Wrong(name, labels.get(name, name), told) for name, told in errors.items())


def text_sent(request: HttpRequest) -> str:
    """The text of a file that was chosen, else the one that was written.

    Raises:
        InputError: it is too large, or is no text in UTF-8.
    """
    file = request.FILES.get("file")
    if file is None:
        return text_of(request)
    if file.size is None or file.size > LARGEST_FILE:
        raise InputError(f"this file has more than {LARGEST_FILE // 1000} kB; a swatch file has 1")
    try:
        return plain(file.read().decode())
    except UnicodeDecodeError:
        raise InputError("this file is not text in UTF-8; choose a swatch file") from None


def text_page(
    request: HttpRequest, document: Document | None, text: str, error: InputError | None = None
) -> HttpResponse:
    """The page of a swatch as its file; with the faults of the file, each at its line."""
    lines = text.split("\n")
    context = {
        "document": document,
        "text": text,
        "base": request.POST.get("base", document.revision if document else ""),
        "faults": [_faulty(fault, lines) for fault in error.faults] if error else [],
    }
    status = 422 if error and request.method == "POST" else 200
    return render(request, "swatches/swatch_text.html", context, status=status)


def _faulty(fault: Fault, lines: list[str]) -> FaultyLine:
    line = fault.place.line
    stands = lines[line - 1].strip() if line and line <= len(lines) else ""
    where = f"{fault.place.key}: " if fault.place.key else ""
    return FaultyLine(line, stands[:120], f"{where}{fault.message}")
