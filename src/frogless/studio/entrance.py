"""The way in: a link that lets its first user in, and a cookie that keeps her in.

Any program on this computer can reach the studio's address, another person's browser among them;
only who was handed the link, by the terminal or by a browser that is in, gets further.
"""

from __future__ import annotations

import hmac
import secrets
import threading
import time
from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from frogless.studio.guard import refusal, stranger

GOOD_FOR = 600.0
"""Seconds until a link that nobody used is worth nothing."""

OPEN_TO_ALL = ("/static/", "/enter/")

Answer = Callable[[HttpRequest], HttpResponseBase]


class Keys:
    """The key of the owner, new at each start, and the links that were handed out."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._owner = secrets.token_urlsafe(32)
        self._links: dict[str, float] = {}

    def hand_out(self) -> str:
        """A new link's token, good for one visit."""
        token = secrets.token_urlsafe(24)
        with self._lock:
            self._links[token] = time.monotonic()
        return token

    def use(self, token: str) -> str | None:
        """The owner's key for a token that is good; it is good no more."""
        with self._lock:
            made = self._links.pop(token, None)
        fresh = made is not None and time.monotonic() - made < GOOD_FOR
        return self._owner if fresh else None

    def fit(self, key: str) -> bool:
        """Whether this is the owner's key."""
        return hmac.compare_digest(key.encode(), self._owner.encode())


keys = Keys()


def cookie_name(request: HttpRequest) -> str:
    """Cookies are shared by all ports of a computer; two studios must not put each other out."""
    return f"frogless_owner_{request.get_port()}"


def is_owner(request: HttpRequest) -> bool:
    """Whether the browser that asks was let in."""
    return keys.fit(request.COOKIES.get(cookie_name(request), ""))


def link() -> str:
    """The path of a link that lets in once."""
    return reverse("enter", args=[keys.hand_out()])


def let_in(answer: Answer) -> Answer:
    """Middleware: only the owner passes."""

    def respond(request: HttpRequest) -> HttpResponseBase:
        if is_owner(request) or request.path.startswith(OPEN_TO_ALL):
            return answer(request)
        return stranger(request)

    return respond


@require_safe
def enter(request: HttpRequest, token: str) -> HttpResponse:
    """The link was opened: a cookie, and on to the first page."""
    key = keys.use(token)
    if key is None:
        return redirect("home") if is_owner(request) else refusal(request, 401)
    response = redirect("home")
    response.set_cookie(cookie_name(request), key, httponly=True, samesite="Strict", path="/")
    return response


@require_POST
def another_browser(request: HttpRequest) -> HttpResponse:
    """A link to open in another browser of this computer."""
    return render(request, "studio/link.html", {"address": request.build_absolute_uri(link())})
