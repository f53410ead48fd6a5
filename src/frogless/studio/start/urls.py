"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.start import views

urlpatterns = [
    path("", views.home, name="home"),
    path("start/", views.start, name="start"),
    path("start/<str:ref>/", views.start_with, name="start_with"),
    path("start/<str:ref>/said/", views.said, name="start_said"),
    path("preferences/", views.preferences, name="preferences"),
]
