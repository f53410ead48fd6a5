"""What every page knows."""

from __future__ import annotations

from django.http import HttpRequest

from frogless.studio.library.preferences import Preferred, preferred


def shown(request: HttpRequest) -> dict[str, Preferred]:
    """The person's preferences; a page of refusal has none."""
    return {"preferred": preferred() if request.resolver_match else Preferred()}
