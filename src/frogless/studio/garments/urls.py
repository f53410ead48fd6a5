"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.garments import views

app_name = "garments"
urlpatterns = [path("garments/", views.garments_list, name="list")]
