"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.designs import views

app_name = "designs"
urlpatterns = [path("", views.designs_list, name="list")]
