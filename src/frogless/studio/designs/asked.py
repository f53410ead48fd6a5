"""What the pages of an own design ask of a request: the document and its base."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec

from django.http import Http404, HttpRequest, HttpResponse

from frogless.errors import InputError
from frogless.studio.gone import LARGEST_KEY
from frogless.studio.library import shelf
from frogless.studio.library.models import Document

P = ParamSpec("P")


def of_own(
    view: Callable[Concatenate[HttpRequest, Document, P], HttpResponse],
) -> Callable[..., HttpResponse]:
    """A view of an own design by its key; 404 when there is none (any more)."""

    @wraps(view)
    def found(request: HttpRequest, pk: int, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
        try:
            document = shelf.found("design", min(pk, LARGEST_KEY))
        except InputError:
            raise Http404 from None
        return view(request, document, *args, **kwargs)

    return found


def base_of(request: HttpRequest) -> int:
    """The revision that a form was made from; 0, which no document has, when it does not say."""
    given = request.POST.get("base", "")
    return int(given) if given.isascii() and given.isdecimal() and len(given) < 10 else 0
