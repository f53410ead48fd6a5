"""The addresses of the studio's rooms."""

from __future__ import annotations

from django.urls import include, path

urlpatterns = [
    path("", include("frogless.studio.drafting.urls")),
    path("library/", include("frogless.studio.library.urls")),
]
handler400 = "frogless.studio.guard.bad_request"
handler404 = "frogless.studio.guard.not_found"
handler500 = "frogless.studio.guard.our_fault"
