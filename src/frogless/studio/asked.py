"""What a page asks of a request: the document that its address names, the revision a form was made from."""

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
View = Callable[Concatenate[HttpRequest, Document, P], HttpResponse]


def of_own(kind: str) -> Callable[[View[P]], Callable[..., HttpResponse]]:
    """Makes a view of an own document, by its key; 404 when there is none of that kind (any more)."""

    def made(view: View[P]) -> Callable[..., HttpResponse]:
        @wraps(view)
        def found(request: HttpRequest, pk: int, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
            return view(request, document_or_404(kind, pk), *args, **kwargs)

        return found

    return made


def document_or_404(kind: str, key: int) -> Document:
    """A document on the shelf; 404 when there is none of that kind and key."""
    try:
        return shelf.found(kind, min(key, LARGEST_KEY))
    except InputError:
        raise Http404 from None


def base_of(request: HttpRequest) -> int:
    """The revision that a form was made from; 0, which no document has, when it does not say."""
    given = request.POST.get("base", "")
    return int(given) if is_number(given) else 0


def is_number(given: str, digits: int = 9) -> bool:
    """Whether it is a whole number in plain digits, of at most so many.

    >>> is_number("12"), is_number("-1"), is_number("²")
    (True, False, False)
    """
    return given.isascii() and given.isdecimal() and len(given) <= digits
