"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.designs import editor, gallery, new, shown, versions

app_name = "designs"
urlpatterns = [
    path("", gallery.designs_list, name="list"),
    path("new/", new.new, name="new"),
    path("keys/", editor.reference, name="keys"),
    path("about/<str:ref>/", shown.about, name="show"),
    path("about/<str:ref>/suits/", shown.tried, name="suits"),
    path("pictures/<str:ref>.svg", shown.draw, name="picture"),
    path("pictures/<str:ref>/drawn/", shown.drawn_part, name="drawn"),
    path("copy/<str:ref>/", shown.copy, name="copy"),
    path("<int:pk>/text/", editor.text, name="text"),
    path("<int:pk>/check/", editor.check, name="check"),
    path("<int:pk>/undo/", editor.walk, {"way": "undo"}, name="undo"),
    path("<int:pk>/redo/", editor.walk, {"way": "redo"}, name="redo"),
    path("<int:pk>/rename/", editor.rename, name="rename"),
    path("<int:pk>/versions/", versions.versions, name="versions"),
    path("<int:pk>/versions/keep/", versions.keep, name="keep_version"),
    path("<int:pk>/versions/<int:key>/", versions.read, name="version"),
    path("<int:pk>/versions/<int:key>/back/", versions.bring_back, name="bring_back"),
    path("<int:pk>/versions/<int:key>/delete/", versions.delete, name="delete_version"),
]
