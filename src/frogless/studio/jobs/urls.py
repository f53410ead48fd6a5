"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.jobs import views

app_name = "jobs"
urlpatterns = [path("", views.jobs_list, name="list")]
