"""What every page knows."""

from __future__ import annotations

from django.db import DatabaseError
from django.http import HttpRequest

from frogless.studio.library.preferences import Preferred, preferred


def shown(request: HttpRequest) -> dict[str, Preferred]:
    """The person's preferences; a page of refusal has none."""
    if not request.resolver_match:
        return {"preferred": Preferred()}
    try:
        return {"preferred": preferred()}
    except DatabaseError:  # the page that says so is shown all the same
        return {"preferred": Preferred()}
