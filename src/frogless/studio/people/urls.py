"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.people import views

app_name = "people"
urlpatterns = [path("", views.people_list, name="list")]
