"""Where a form goes on to when it was sent: to a page of this studio, whatever it asks for."""

from __future__ import annotations

from django.http import HttpRequest
from django.utils.http import url_has_allowed_host_and_scheme


def onward(request: HttpRequest, otherwise: str) -> str:
    """The path that the field `next` of a form asks for; `otherwise` where that is none of ours.

    Only a path from the root is taken: a bare word would be looked up as the name of a page.
    """
    asked = request.POST.get("next", "")
    ours = asked.startswith("/") and url_has_allowed_host_and_scheme(asked, allowed_hosts=None)
    return asked if ours else otherwise


def saying(address: str, done: str) -> str:
    """An address with a word about what was done.

    >>> saying("/designs/3/?body=own:1", "done=renamed")
    '/designs/3/?body=own:1&done=renamed'
    """
    return f"{address}{'&' if '?' in address else '?'}{done}"
