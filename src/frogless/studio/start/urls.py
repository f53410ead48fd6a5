"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.start import views

urlpatterns = [path("", views.home, name="home")]
