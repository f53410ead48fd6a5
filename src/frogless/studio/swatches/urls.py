"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.swatches import views

app_name = "swatches"
urlpatterns = [path("", views.swatches_list, name="list")]
