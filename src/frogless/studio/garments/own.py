"""A garment gets a design for itself, where it shared one with other garments."""

from __future__ import annotations

from django.db import transaction
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect

from frogless.studio.asked import base_of
from frogless.studio.garments.asking import posted, room_of
from frogless.studio.garments.subject import garment_of, made_of, of_garment
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment


@posted
def own(request: HttpRequest, pk: int) -> HttpResponse:
    """A copy of the design for this garment only.

    With `back`, the copy keeps the last change and the design that was shared goes back to before
    it; where another page has changed that one meanwhile, it stays as it is.
    """
    garment = garment_of(pk)
    subject = of_garment(garment)
    design = made_of(subject).design
    address = subject.address(room_of(request))
    if design is None or design.document is None:
        return redirect(address)
    back = "back" in request.POST and design.document.revision == base_of(request)
    _copied(garment, design.document, back=back)
    return redirect(f"{address}?done={'apart' if back else 'copied'}#panel")


@transaction.atomic
def _copied(garment: Garment, shared: Document, *, back: bool) -> None:
    before = shared.steps.filter(number=shared.step - 1).first() if back else None
    if before is None:
        copy = shelf.create("design", shared.text, shared.name)
    else:
        copy = shelf.create("design", before.text, shared.name)
        told = shared.steps.get(number=shared.step).told
        copy = shelf.change(copy.pk, copy.revision, shared.text, told)
        shelf.undo(shared.pk, shared.revision)
    garment.design = copy.ref
    garment.save(update_fields=["design"])
