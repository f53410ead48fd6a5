"""The addresses of the draft."""

from __future__ import annotations

from django.urls import path

from frogless.studio.drafting import views

urlpatterns = [
    path("", views.draft_page, name="draft"),
    path("draft/<str:name>", views.download, name="download"),
]
