"""The library's pages: everything that is kept, and the bin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import NoReverseMatch, reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.library import renaming, shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.uses import garments_using, named_after, uses
from frogless.studio.onward import onward

TITLES = (
    ("design", "Designs"),
    ("body", "People"),
    ("swatch", "Swatches"),
    ("pattern", "Written patterns"),
)
EDITED_AT = {
    "body": "people:edit",
    "swatch": "swatches:edit",
    "design": "designs:text",
    "pattern": "proofreading:text",
}
KIND_NAMES = {"body": "Body", "swatch": "Swatch", "design": "Design", "pattern": "Pattern"}


MOST_SHOWN = 200
"""Documents of a kind on one page; a search finds the others."""

Uses = Mapping[str, tuple[Garment, ...]]


@dataclass(frozen=True, slots=True)
class Shelved:
    """A document on the shelf: where it is changed, how many versions it has, what it is part of."""

    document: Document
    address: str
    versions: int
    used: tuple[Garment, ...]


@dataclass(frozen=True, slots=True)
class Shelf:
    """The documents of a kind: those that are shown, and how many there are."""

    title: str
    shown: tuple[Shelved, ...]
    number: int

    @property
    def more(self) -> int:
        """How many are not shown."""
        return self.number - len(self.shown)


@require_safe
def show_library(request: HttpRequest) -> HttpResponse:
    """Everything that is kept, by kind, and the bin."""
    return _shelves(request)


def _shelves(
    request: HttpRequest, *, error: str = "", faulty: int = 0, status: int = 200
) -> HttpResponse:
    wanted = request.GET.get("q", "").strip()[: shelf.LONGEST_NAME]
    used = uses()
    kinds = [_of_kind(kind, title, wanted, used) for kind, title in TITLES]
    garments = Garment.objects.filter(removed=False, name__icontains=wanted)
    context = {
        "q": wanted,
        "kinds": kinds,
        "garments": garments,
        "binned": [(one, KIND_NAMES[one.kind]) for one in shelf.in_bin()],
        "binned_garments": Garment.objects.filter(removed=True),
        "empty": not Document.objects.exists() and not Garment.objects.exists(),
        "nothing": not any(one.number for one in kinds) and not garments,
        "faulty": faulty,
        "error": error,
        "written": request.POST.get("name", "") if faulty else "",
        "notices": _notices(request),
    }
    return render(request, "library/show_library.html", context, status=status)


def _of_kind(kind: str, title: str, wanted: str, used: Uses) -> Shelf:
    found = shelf.documents(kind).filter(name__icontains=wanted)
    shown = found.prefetch_related("versions")[:MOST_SHOWN]
    return Shelf(title, tuple(_shelved(one, used) for one in shown), found.count())


def _shelved(document: Document, used: Uses) -> Shelved:
    try:
        address = reverse(EDITED_AT[document.kind], args=[document.pk])
    except NoReverseMatch:
        address = reverse("library:export", args=[document.ref])
    return Shelved(document, address, len(document.versions.all()), used.get(document.ref, ()))


def _notices(request: HttpRequest) -> list[str]:
    """What was done before this page was asked for."""
    counts = {
        key: int(value)
        for key in ("new", "second", "same")
        if (value := request.GET.get(key, "")).isdecimal() and len(value) < 7
    }
    if len(counts) == 3:
        told = [f"{counts['new'] + counts['second']} came in"]
        if counts["second"]:
            told.append(f"{counts['second']} of them beside one of the same name")
        if counts["same"]:
            told.append(f"{counts['same']} were there already")
        return [", ".join(told) + "."]
    done = {
        "deleted": "It is in the bin, from where it can be brought back.",
        "restored": "It is back.",
        "renamed": "It has its new name.",
        "gone": "It is deleted for good.",
        "waiting": "It is deleted. Another program has the library open: what it was is overwritten "
        "when that is closed and something else is deleted for good, or the studio is stopped.",
        "emptied": "The bin is empty; what was in it is overwritten.",
    }
    return [sentence for word, sentence in done.items() if word in request.GET][:1]


@require_POST
def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """Another name for a document."""
    document = get_object_or_404(Document, pk=pk, removed=False)
    try:
        renaming.rename(document, request.POST.get("name", ""))
    except InputError as error:
        return _shelves(request, error=str(error), faulty=pk, status=422)
    return redirect(_next(request, "renamed"))


@require_http_methods(["GET", "HEAD", "POST"])
def delete(request: HttpRequest, pk: int) -> HttpResponse:
    """Into the bin; what garments are made of is asked about first."""
    document = get_object_or_404(Document, pk=pk, removed=False)
    used = garments_using(document.ref)
    if request.method != "POST" or (used and "sure" not in request.POST):
        context = {
            "document": document,
            "kind": KIND_NAMES[document.kind],
            "used": used,
            "next": request.POST.get("next", ""),
        }
        return render(request, "library/delete.html", context)
    shelf.remove(document)
    return redirect(_next(request, "deleted"))


@require_POST
def restore(request: HttpRequest, pk: int) -> HttpResponse:
    """Out of the bin."""
    document = get_object_or_404(Document, pk=pk, removed=True)
    shelf.bring_back(document)
    return redirect(_next(request, "restored"))


@require_POST
def restore_garment(request: HttpRequest, pk: int) -> HttpResponse:
    """A garment out of the bin."""
    garment = get_object_or_404(Garment, pk=pk, removed=True)
    garment.removed = False
    garment.save(update_fields=["removed"])
    return redirect(_next(request, "restored"))


@require_http_methods(["GET", "HEAD", "POST"])
def delete_for_good(request: HttpRequest, pk: int) -> HttpResponse:
    """Asks once, then overwrites a document with all its history and versions."""
    document = get_object_or_404(Document, pk=pk)
    if request.method != "POST":
        context = {
            "document": document,
            "name": document.name,
            "kind": KIND_NAMES[document.kind],
            "versions": document.versions.count(),
            "used": garments_using(document.ref),
            "named": named_after(document.name) if document.kind == "body" else (),
            "address": reverse("library:delete_for_good", args=[pk]),
        }
        return render(request, "library/for_good.html", context)
    overwritten = shelf.delete_for_good(document)
    return redirect(f"{reverse('library:show')}?{'gone' if overwritten else 'waiting'}")


@require_http_methods(["GET", "HEAD", "POST"])
def delete_garment_for_good(request: HttpRequest, pk: int) -> HttpResponse:
    """Asks once, then overwrites a garment of the bin."""
    garment = get_object_or_404(Garment, pk=pk, removed=True)
    if request.method != "POST":
        address = reverse("library:delete_garment_for_good", args=[pk])
        context = {"name": garment.name, "kind": "Garment", "address": address}
        return render(request, "library/for_good.html", context)
    garment.delete()
    overwritten = shelf.forget_traces()
    return redirect(f"{reverse('library:show')}?{'gone' if overwritten else 'waiting'}")


@require_http_methods(["GET", "HEAD", "POST"])
def empty_bin(request: HttpRequest) -> HttpResponse:
    """Asks once, then overwrites everything that is in the bin."""
    binned = [*shelf.in_bin(), *Garment.objects.filter(removed=True)]
    if not binned:
        raise Http404
    if request.method != "POST":
        context = {"binned": binned, "names": _names_kept(shelf.in_bin())}
        return render(request, "library/empty_bin.html", context)
    overwritten = shelf.empty_bin()
    return redirect(f"{reverse('library:show')}?{'emptied' if overwritten else 'waiting'}")


def _names_kept(binned: Iterable[Document]) -> list[tuple[str, list[Garment]]]:
    """The names of persons in the bin, each with the garments outside of it that keep the name."""
    return [
        (one.name, [garment for garment in named_after(one.name) if not garment.removed])
        for one in binned
        if one.kind == "body"
    ]


def _next(request: HttpRequest, done: str) -> str:
    """Where the page that sent this wants to go on, if that is a page of the studio."""
    return onward(request, f"{reverse('library:show')}?{done}")
