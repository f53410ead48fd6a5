"""The addresses of the studio's rooms."""

from __future__ import annotations

from django.urls import include, path

from frogless.studio import conflict, entrance

urlpatterns = [
    path("enter/<str:token>", entrance.enter, name="enter"),
    path("another-browser/", entrance.another_browser, name="another_browser"),
    path("settle/", conflict.settle, name="settle"),
    path("", include("frogless.studio.start.urls")),
    path("", include("frogless.studio.garments.urls")),
    path("designs/", include("frogless.studio.designs.urls")),
    path("people/", include("frogless.studio.people.urls")),
    path("swatches/", include("frogless.studio.swatches.urls")),
    path("proofread/", include("frogless.studio.proofreading.urls")),
    path("library/", include("frogless.studio.library.urls")),
    path("jobs/", include("frogless.studio.jobs.urls")),
]
handler400 = "frogless.studio.guard.bad_request"
handler404 = "frogless.studio.guard.not_found"
handler500 = "frogless.studio.guard.our_fault"
