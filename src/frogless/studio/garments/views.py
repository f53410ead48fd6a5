"""Garments: the list of them, and each in its rooms."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace

from django.db import DatabaseError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_safe

from frogless.errors import FroglessError, InputError
from frogless.publish.reasons import Reason
from frogless.studio import refs
from frogless.studio.garments import shown
from frogless.studio.garments.asking import posted, room_of
from frogless.studio.garments.done import done
from frogless.studio.garments.page import (
    TITLES,
    TURNED_IN,
    asked,
    context,
    panel_context,
    with_shown,
)
from frogless.studio.garments.panel import refused
from frogless.studio.garments.sheet import Way
from frogless.studio.garments.subject import (
    SHOWN,
    Made,
    Subject,
    garment_of,
    made_of,
    of_example,
    of_garment,
    shown_as,
)
from frogless.studio.garments.turned import beside
from frogless.studio.library.models import Garment
from frogless.studio.library.preferences import preferred
from frogless.studio.work.pool import pool


@require_safe
def room(request: HttpRequest, pk: int, room: str) -> HttpResponse:
    """One room of a garment."""
    if room not in TITLES:
        raise Http404
    garment = garment_of(pk)
    with suppress(DatabaseError):  # reading needs no writing
        Garment.objects.filter(pk=pk).update(opened=timezone.now())
    subject = of_garment(garment)
    return page(request, subject, room, **done(subject, request.GET.get("done", "")))


@require_safe
def look(request: HttpRequest, key: str, room: str) -> HttpResponse:
    """One room of an example, which stays as it is."""
    if room not in TITLES:
        raise Http404
    return page(request, _example(request, key), room)


def _example(request: HttpRequest, key: str) -> Subject:
    try:
        return of_example(key, request.GET, preferred())
    except InputError as error:
        raise Http404 from error


def page(
    request: HttpRequest, subject: Subject, room: str, status: int = 200, **more: object
) -> HttpResponse:
    """A room as a whole page, or its inside alone when that is what the page asks for."""
    made = made_of(subject)
    found = context(subject, room, made)
    found |= panel_context(subject, made) if room in TURNED_IN else {}
    whole = request.headers.get("HX-Target") != "garment"
    # A page that stands already shows the numbers first; rows are never shown before their proof.
    prove = whole or room == "pattern" or subject.garment is None
    seen = asked(subject, made, room, prove=prove)
    if "panel" in found:
        wrong = beside(seen)
        found["panel"] = refused(found["panel"], {}, wrong, wrong.keys())
    found = with_shown({**found, **more}, seen)
    template = "garments/garment.html" if whole else "garments/_garment.html"
    return render(request, template, {**found, "live": not whole}, status=status)


@require_safe
def proof(request: HttpRequest, pk: int, room: str) -> HttpResponse:
    """The proof of what stands on the page already."""
    if room not in TITLES:
        raise Http404
    subject = of_garment(garment_of(pk))
    made = made_of(subject)
    order = made.order(subject)
    if order is None:
        return redirect(subject.address(room))
    found = context(subject, room, made)
    try:
        seen = pool().ask(subject.affinity, shown.proof, order)
    except FroglessError as error:
        seen = shown.refused(error)
    found = with_shown(found, seen)
    failed = seen.state == "refused"
    return render(request, "garments/_proof.html", {**found, "failed": failed})


@require_safe
def ways(request: HttpRequest, pk: int) -> HttpResponse:
    """Other ways to shape the sections, each to be taken by a button."""
    subject = of_garment(garment_of(pk))
    made = made_of(subject)
    found = {**context(subject, "shape", made), "ways": _ways(subject, made)}
    part = bool(getattr(request, "htmx", False))
    if part:
        return render(request, "garments/_ways.html", found)
    return page(request, subject, "shape", ways=found["ways"])


def _ways(subject: Subject, made: Made) -> tuple[Way, ...]:
    """They are planned one by one, in a worker that does not keep the next change waiting."""
    order = made.order(subject)
    try:
        return pool().ask(f"{subject.affinity}-ways", shown.ways, order) if order else ()
    except FroglessError:
        return ()


@require_safe
def why(request: HttpRequest, pk: int, key: str) -> HttpResponse:
    """Why a number is what it is."""
    return _why(request, of_garment(garment_of(pk)), key)


@require_safe
def look_why(request: HttpRequest, key: str, number: str) -> HttpResponse:
    """As `why`, of an example."""
    return _why(request, _example(request, key), number)


def _why(request: HttpRequest, subject: Subject, key: str) -> HttpResponse:
    made = made_of(subject)
    order = made.order(subject)
    back = request.GET.get("back", "")
    back = back if back in TITLES else "shape"
    reason: Reason | None = None
    sentence = "What this number stood on is not there any more."
    if order is not None:
        try:
            reason = pool().ask(subject.affinity, shown.why, order, key)
        except FroglessError as error:
            sentence = str(error)
    found = {
        "reason": reason,
        "sentence": sentence,
        "back": subject.address(back),
        "subject": subject,
        "range": _range(reason, request.GET.get("from", "")),
    }
    part = bool(getattr(request, "htmx", False))
    status = 200 if reason or part else 404
    template = "garments/_because.html" if part else "garments/because.html"
    return render(request, template, found, status=status)


def _range(reason: Reason | None, first: str) -> str:
    """ "rounds 6 to 8": the rows that a line stands for whose last one was asked; "" for one row."""
    if reason is None or not (first.isdecimal() and len(first) < 6):
        return ""
    unit, _, last = reason.title.partition(" ")
    if not last.isdecimal() or int(first) >= int(last):
        return ""
    return f"{unit}s {int(first)} to {last}"


@require_safe
def file(request: HttpRequest, pk: int, name: str) -> HttpResponse:
    """A file of the pattern, or one of the documents that it is made from."""
    garment = garment_of(pk)
    subject = of_garment(garment)
    made = made_of(subject)
    texts = _texts(made)
    if name in texts:
        return _file(texts[name].encode(), "application/toml; charset=utf-8", name, garment)
    if name not in shown.OUTPUTS:
        raise Http404
    order = made.order(subject)
    if order is None:
        return page(request, subject, "shape", status=422)
    try:
        data = pool().ask(subject.affinity, shown.output, order, name)
    except FroglessError as error:
        return page(request, subject, "shape", status=422, alerts=[error.faults[0].message])
    return _file(data, shown.OUTPUTS[name][0], name, garment)


def _texts(made: Made) -> dict[str, str]:
    found = {
        "design.toml": made.design,
        "body.toml": made.body,
        **{
            "swatch.toml" if n == 0 else f"swatch-{n + 1}.toml": one
            for n, one in enumerate(made.swatches)
        },
    }
    return {name: one.text for name, one in found.items() if one is not None}


def _file(data: bytes, kind: str, name: str, garment: Garment) -> HttpResponse:
    from frogless.publish.drawings import slug

    response = HttpResponse(data, content_type=kind)
    way = "inline" if name in ("pattern.html", "schematic.svg") else "attachment"
    stem, _, ending = name.partition(".")
    response["Content-Disposition"] = (
        f'{way}; filename="{_ascii(slug(garment.name))}-{stem}.{ending}"'
    )
    if name == "pattern.html":
        # The page carries its style in itself, and its own policy forbids everything else.
        response["Content-Security-Policy"] = (
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'"
        )
    return response


def _ascii(text: str) -> str:
    return text.encode("ascii", "ignore").decode().strip("-") or "garment"


@posted
def choose(request: HttpRequest, pk: int) -> HttpResponse:
    """Another body, swatch, terms, units or hand; the page stays in its room."""
    garment = garment_of(pk)
    given = request.POST
    room = room_of(request)
    subject = shown_as(of_garment(garment), given)
    try:
        design = refs.resolve("design", given["design"]).ref if given.get("design") else ""
        body = refs.resolve("body", given["body"]).ref if given.get("body") else subject.body
        wanted = [ref for ref in given.getlist("swatch") if ref]
        swatches = tuple(found.ref for found in refs.swatches(wanted)) or subject.swatches
    except InputError as error:
        return page(request, of_garment(garment), room, status=422, alerts=[str(error)])
    if design:
        subject = replace(subject, design=design)
        Garment.objects.filter(pk=pk).update(design=design)
    subject = replace(subject, body=body, swatches=swatches)
    _keep(garment, subject)
    if request.headers.get("HX-Target") == "garment":
        return page(request, subject, room)
    return redirect(subject.address(room))


def _keep(garment: Garment, subject: Subject) -> None:
    """Keeps the choice, and leaves the design alone, which another page may be changing."""
    for name in SHOWN:
        setattr(garment, name, getattr(subject, name))
    garment.body, garment.swatches = subject.body, list(subject.swatches)
    garment.save(update_fields=[*SHOWN, "body", "swatches", "opened"])
