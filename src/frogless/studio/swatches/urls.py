"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.swatches import pictures, views

app_name = "swatches"
urlpatterns = [
    path("", views.swatches_list, name="list"),
    path("new/", views.new_swatch, name="new"),
    path("open/", views.open_swatch, name="open"),
    path("look/", views.look, name="look"),
    path("ruler/", pictures.ruler_page, name="ruler"),
    path("copy/<str:ref>/", views.copy_swatch, name="copy"),
    path("<int:pk>/", views.edit_swatch, name="edit"),
    path("<int:pk>/text/", views.swatch_text, name="text"),
    path("<int:pk>/undo/", views.undo_swatch, name="undo"),
    path("<int:pk>/redo/", views.redo_swatch, name="redo"),
    path("<str:key>.svg", pictures.picture, name="picture"),
    path("<str:ref>/face.svg", pictures.face_of, name="face"),
]
