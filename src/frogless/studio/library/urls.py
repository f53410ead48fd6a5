"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.library import views

app_name = "library"
urlpatterns = [path("", views.show_library, name="show")]
