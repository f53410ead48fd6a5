"""Knobs are turned: the answer is what has changed, or the page again where scripts are off."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django_htmx.http import reswap

from frogless.errors import FroglessError, InputError
from frogless.studio.asked import base_of
from frogless.studio.conflict import conflict_page
from frogless.studio.garments import panel as panels
from frogless.studio.garments.asking import posted, room_of
from frogless.studio.garments.page import (
    asked,
    context,
    of_its_own,
    panel_context,
    with_shown,
)
from frogless.studio.garments.panel import Changes
from frogless.studio.garments.subject import Made, Subject, garment_of, made_of, of_garment
from frogless.studio.garments.turned import Change, change
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.work.pool import pool

KNOB = "k:"
"""What the names of fields begin with that are knobs."""


@posted
def turn(request: HttpRequest, pk: int) -> HttpResponse:
    """Turns the knobs whose fields differ from what the design has."""
    garment = garment_of(pk)
    subject = of_garment(garment)
    room = room_of(request)
    made = made_of(subject)
    order = made.order(subject)
    if order is None or made.design is None:
        return _page(request, subject, room, made, ["something that it is made of is gone"], {})
    changes = _changes(request)
    live = bool(getattr(request, "htmx", False))
    try:
        done = pool().ask(subject.affinity, change, order, changes, room, prove=not live)
    except FroglessError as error:
        return _not_turned(request, subject, room, made, changes, error.faults[0].message)
    notices: list[str] = []
    if done.text != made.design.text:
        try:
            document, notices = _kept(garment, made, base_of(request), done)
        except shelf.Conflict as conflict:
            said = panels.apart(done.text, conflict.document.text, subject.terms)
            again = subject.address(room)
            return conflict_page(request, conflict, done.text, again, said)
        except InputError as error:
            return _not_turned(request, subject, room, made, changes, str(error))
        subject = replace(subject, design=document.ref)
        made = made_of(subject)
    found = {**context(subject, room, made), "panel": done.panel, "notices": notices}
    return _answer(request, found, done) if live else _answer_plain(request, found, done)


def _changes(request: HttpRequest) -> Changes:
    """What the form sends: fields of knobs; or one path and what is written there; or a table."""
    given = request.POST
    found = [(key.removeprefix(KNOB), given[key]) for key in given if key.startswith(KNOB)]
    if path := given.get("path"):
        found.append((path, given.get("written", "")))
    for way in (panels.ADDS, panels.TAKES):
        if key := given.get(way.removesuffix(":")):
            found = [(way + key, "")]
    return tuple(found)


@transaction.atomic
def _kept(garment: Garment, made: Made, base: int, done: Change) -> tuple[Document, list[str]]:
    """The design with its change; of an example a copy, which the garment is made of from now on.

    Raises:
        Conflict: it was changed from another page.
        InputError: it cannot be kept.
    """
    assert made.design is not None  # noqa: S101 - there was something to turn
    document = made.design.document
    if document is not None:
        return shelf.change(document.pk, base, done.text, done.told), []
    copy = shelf.create("design", made.design.text, made.design.name)
    garment.design = copy.ref
    garment.save(update_fields=["design"])
    copy = shelf.change(copy.pk, copy.revision, done.text, done.told)
    return copy, [of_its_own(copy)]


def _answer(request: HttpRequest, found: dict[str, Any], done: Change) -> HttpResponse:
    """The parts of the page that have changed."""
    status = 422 if done.errors else 200
    found = {**found, "change": done, "live": True}
    if done.shown is not None:
        found = with_shown(found, done.shown)
    response = render(request, "garments/_turned.html", found, status=status)
    response["HX-Trigger"] = json.dumps({"turned": {"base": found["base"]}})
    return response if done.shown is not None else reswap(response, "none")


def _answer_plain(request: HttpRequest, found: dict[str, Any], done: Change) -> HttpResponse:
    """The whole page, with what was refused; else the page is asked for again."""
    subject: Subject = found["subject"]
    room: str = found["room"]
    if not done.errors:
        done_here = "own" if found["notices"] else "turned" if done.told else ""
        query = f"?done={done_here}" if done_here else ""
        return redirect(f"{subject.address(room)}{query}#turned")
    seen = done.shown or asked(subject, found["made"], room)
    return render(request, "garments/garment.html", with_shown(found, seen), status=422)


def _not_turned(
    request: HttpRequest, subject: Subject, room: str, made: Made, changes: Changes, sentence: str
) -> HttpResponse:
    """Nothing was changed: the sentence stands beside what was typed, and at the top of the page."""
    typed = dict(changes)
    errors = dict.fromkeys(typed, sentence)
    return _page(request, subject, room, made, [sentence], typed, errors)


def _page(
    request: HttpRequest,
    subject: Subject,
    room: str,
    made: Made,
    alerts: list[str],
    typed: dict[str, str],
    errors: dict[str, str] | None = None,
) -> HttpResponse:
    found = {**context(subject, room, made), **panel_context(subject, made), "alerts": alerts}
    if "panel" in found:
        found["panel"] = panels.refused(found["panel"], typed, errors or {})
    if getattr(request, "htmx", False):
        fields = tuple(f for f in found["panel"].fields().values() if f.name in (errors or {}))
        nothing = Change(
            "", "", "", None, tuple((errors or {}).items()), fields, (), found["panel"]
        )
        return reswap(
            render(
                request,
                "garments/_turned.html",
                {**found, "change": nothing, "live": True},
                status=422,
            ),
            "none",
        )
    seen = asked(subject, made, room)
    return render(request, "garments/garment.html", with_shown(found, seen), status=422)


@posted
def keep(request: HttpRequest, pk: int) -> HttpResponse:
    """Keeps the design as it is under a name."""
    subject = of_garment(garment_of(pk))
    made = made_of(subject)
    document = made.design.document if made.design else None
    if document is None:
        raise Http404
    room = room_of(request)
    found = context(subject, room, made)
    live = bool(getattr(request, "htmx", False))
    name = request.POST.get("name", "")
    try:
        version = shelf.name_version(document, name)
    except InputError as error:
        found |= {"keep_error": str(error), "keep_name": name}
        if live:
            return render(request, "garments/_history.html", found, status=422)
        found |= panel_context(subject, made)
        seen = asked(subject, made, room)
        return render(request, "garments/garment.html", with_shown(found, seen), status=422)
    if live:
        return render(request, "garments/_history.html", {**found, "kept": version.name})
    return redirect(f"{subject.address(room)}#panel")
