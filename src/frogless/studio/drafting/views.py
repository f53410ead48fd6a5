"""The draft: one form, and beside it what it comes to."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Any

from django.db import DatabaseError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods
from django_htmx.http import reswap, retarget

from frogless.errors import FroglessError, InputError
from frogless.publish.webpage import POLICY as PATTERN_POLICY
from frogless.studio.drafting import documents
from frogless.studio.drafting.fields import UNITS, Group, Values, respelled, units_of
from frogless.studio.drafting.outcome import (
    Sheet,
    design_text,
    outcome,
    text_of,
    understood,
)
from frogless.studio.drafting.shown import OUTPUTS, shown
from frogless.studio.examples import FIRST_DESIGN, examples
from frogless.studio.library import shelf

KINDS = ("design", "body", "swatch")
LARGEST_FILE = 200_000
"""Bytes; a design of a hundred sections is a tenth of that."""

PLACES = ("design", "design_text", "body", "body_text", "swatch", "swatch_text")
"""Where a fault is told that belongs to no field of its own."""

PREFIXES = ("body-", "swatch-")
NAMES = ("design", "design_text", "body_text", "swatch_text", "units", "terms")
START = {
    "body-name": "Me",
    "swatch-name": "My swatch",
    "swatch-state": "washed",
    "units": "cm",
    "terms": "us",
}


@dataclass(slots=True)
class Visit:
    """One sending of the form: what it holds by now, and what there is to say of it."""

    request: HttpRequest
    values: dict[str, str]
    notices: list[str] = field(default_factory=list)
    alerts: list[str] = field(default_factory=list)
    redrawn: bool = False


@require_http_methods(["GET", "HEAD", "POST"])
def draft_page(request: HttpRequest) -> HttpResponse:
    """The form as it was left, or as it was just sent."""
    if request.method != "POST":
        return _page(Visit(request, {**first_values(), **(shelf.kept() or {})}))
    visit = _sent(request)
    do = request.POST.get("do", "")
    _do(visit, do)
    _keep(visit, forget=do == "clear")
    return _answer(visit, asked=do == "draft")


@require_http_methods(["GET", "HEAD", "POST"])
def download(request: HttpRequest, name: str) -> HttpResponse:
    """One file of the pattern, or one of the three that it is made from."""
    kind = name.removesuffix(".toml")
    if name not in OUTPUTS and kind not in KINDS:
        raise Http404
    if request.method != "POST":
        return redirect("draft")
    visit = _sent(request)
    _keep(visit)
    sheet = understood(visit.values)
    if kind in KINDS:
        return _file(name, "application/toml", sheet.files[kind].text.encode())
    result = outcome(sheet)
    if result.made is None:
        return _answer(visit, asked=True, status=422)
    content_type, make = OUTPUTS[name]
    try:
        return _file(name, content_type, make(result.made.drafted))
    except FroglessError as error:
        visit.alerts.append(str(error))
        return _answer(visit, asked=True, status=500)


def first_values() -> dict[str, str]:
    """The form of somebody who has never been here."""
    return {"design": f"example:{FIRST_DESIGN}", **START}


def _sent(request: HttpRequest) -> Visit:
    """The form that was sent, with the files that came along in the place of what it held."""
    held = {
        name: str(text).replace("\r\n", "\n").replace("\0", "")
        for name, text in request.POST.items()
        if name in NAMES or name.startswith(PREFIXES)
    }
    visit = Visit(request, {**first_values(), **held})
    were = units_of({"units": request.POST.get("units_were", "")})
    if were != units_of(held):
        for groups in understood(visit.values).groups.values():
            visit.values = respelled(visit.values, groups, were, units_of(held))
    for kind in KINDS:
        if upload := request.FILES.get(f"{kind}_file"):
            _told(visit, partial(_put_file, visit, kind, upload))
    return visit


def _told(visit: Visit, act: Callable[[], object]) -> None:
    try:
        act()
    except FroglessError as error:
        visit.alerts.append(str(error))


def _put_file(visit: Visit, kind: str, upload: Any) -> None:  # noqa: ANN401 - one of several classes
    if upload.size > LARGEST_FILE:
        raise InputError(
            f"the file {upload.name} has {upload.size // 1000} kB; "
            f"a {kind} file has {LARGEST_FILE // 1000} kB at most"
        )
    try:
        text = upload.read().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputError(
            f"the file {upload.name} is not text in UTF-8; a {kind} file is TOML, saved as UTF-8"
        ) from None
    _put(visit, kind, text)


def _put(visit: Visit, kind: str, text: str) -> None:
    """A document into the form: into its fields where they can hold all of it."""
    visit.redrawn = True
    if kind == "design":
        visit.values |= {"design": "text", "design_text": text}
        return
    read = documents.body_values if kind == "body" else documents.swatch_values
    try:
        values = read(text, units_of(visit.values))
    except InputError:
        values = None
    if values is None:
        visit.notices.append(
            f"This {kind} holds more than the fields show, or has faults; it is kept as text."
        )
        visit.values[f"{kind}_text"] = text
        return
    kept = {n: v for n, v in visit.values.items() if not n.startswith((f"{kind}-", f"{kind}_text"))}
    visit.values = {**kept, **values}


def _do(visit: Visit, do: str) -> None:
    """What a button asks for besides a draft."""
    verb, _, kind = do.partition("-")
    if verb in ACTIONS and (kind in KINDS or verb == "clear"):
        visit.redrawn = True
        _told(visit, partial(ACTIONS[verb], visit, kind))


def _load(visit: Visit, kind: str) -> None:
    pick = visit.request.POST.get(f"{kind}_pick", "")
    if not pick:
        raise InputError(f"choose a {kind} to fill in")
    _put(visit, kind, text_of(kind, pick))


def _edit(visit: Visit, kind: str) -> None:
    _put(visit, "design", design_text(visit.values))


def _back_to_fields(visit: Visit, kind: str) -> None:
    visit.values[f"{kind}_text"] = ""


def _save(visit: Visit, kind: str) -> None:
    text = understood(visit.values).files[kind].text
    document, replaced = shelf.save(kind, documents.name_in(text), text)
    older = "; the older one of that name can be brought back there" if replaced else ""
    visit.notices.append(f'"{document.name}" is in the library{older}.')
    if kind == "design":
        visit.values["design"] = f"library:{document.pk}"


def _clear(visit: Visit, kind: str) -> None:
    visit.values = first_values()


ACTIONS: Mapping[str, Callable[[Visit, str], None]] = {
    "load": _load, "edit": _edit, "fields": _back_to_fields, "save": _save, "clear": _clear,
}  # fmt: skip


def _keep(visit: Visit, *, forget: bool = False) -> None:
    try:
        shelf.forget() if forget else shelf.keep(visit.values)
    except DatabaseError as error:
        visit.alerts.append(f"the form could not be kept for the next time ({error})")


def _answer(visit: Visit, *, asked: bool, status: int = 200) -> HttpResponse:
    """The whole page, or for htmx what has changed of it."""
    if not getattr(visit.request, "htmx", False):
        return _page(visit, asked=asked, status=status)
    context = _context(visit, asked=False)
    if visit.redrawn or context["sheet"].shape != visit.request.POST.get("shape"):
        response = render(visit.request, "drafting/_draft.html", context | {"live": True})
        return reswap(retarget(response, "#draft"), "outerHTML")
    return render(visit.request, "drafting/_live.html", context | {"live": True})


def _page(visit: Visit, *, asked: bool = False, status: int = 200) -> HttpResponse:
    context = _context(visit, asked=asked)
    return render(visit.request, "drafting/draft.html", context, status=status)


def _context(visit: Visit, *, asked: bool) -> dict[str, Any]:
    sheet = understood(visit.values)
    result = outcome(sheet)
    told = (*result.faults, *(result.needed if asked else ()))
    beside: dict[str, str] = {}
    for one in told:
        before = f"{beside[one.field]}; " if one.field in beside else ""
        beside[one.field] = before + one.sentence
    units = units_of(visit.values)
    return {
        "sheet": sheet,
        "values": visit.values,
        "units": units,
        "result": shown(result.made) if result.made else None,
        "needed": () if asked else result.needed,
        "faults": told,
        "ways_out": result.ways_out,
        "asked": asked,
        "main_stitch": visit.values.get("swatch-main", ""),
        "beside": beside,
        "slots": [(name, beside.get(name, "")) for name in (*PLACES, *_names(sheet))],
        "places": {name: beside.get(name, "") for name in PLACES},
        "body": _groups(sheet.groups["body"], visit.values, beside),
        "swatch": _groups(sheet.groups["swatch"], visit.values, beside),
        "lists": {kind: _choices(kind) for kind in KINDS},
        "notices": visit.notices,
        "alerts": visit.alerts,
    }


def _names(sheet: Sheet) -> list[str]:
    return [one.name for groups in sheet.groups.values() for g in groups for one in g.fields]


def _groups(
    groups: tuple[Group, ...], values: Values, beside: Mapping[str, str]
) -> list[dict[str, Any]]:
    """Groups for the template, each field with its value, unit and fault."""
    units = units_of(values)
    return [
        {
            "title": group.title,
            "folded": group.folded,
            "open": any(f.name in beside for f in group.fields),
            "filled": sum(bool(values.get(f.name)) for f in group.fields),
            "rows": [
                {
                    "field": one,
                    "value": values.get(one.name, ""),
                    "unit": UNITS[one.kind][units] if one.kind else "",
                    "error": beside.get(one.name, ""),
                }
                for one in group.fields
            ],
        }
        for group in groups
    ]


def _choices(kind: str) -> list[tuple[str, list[tuple[str, str]]]]:
    """Examples and what the library has, for a list."""
    saved = [(f"library:{document.pk}", document.name) for document in shelf.documents(kind)]
    shipped = [(f"example:{key}", one.title) for key, one in examples(kind).items()]
    return [part for part in (("Library", saved), ("Examples", shipped)) if part[1]]


def _file(name: str, content_type: str, content: bytes) -> HttpResponse:
    response = HttpResponse(content, content_type=content_type)
    if name == "pattern.html":
        response.headers["Content-Security-Policy"] = PATTERN_POLICY
    else:
        response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return response
