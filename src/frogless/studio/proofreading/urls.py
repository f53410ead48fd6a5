"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.proofreading import editor, texts, versions

app_name = "proofreading"
urlpatterns = [
    path("", texts.texts, name="list"),
    path("new/", texts.new, name="new"),
    path("<int:pk>/", editor.text, name="text"),
    path("<int:pk>/check/", editor.check, name="check"),
    path("<int:pk>/undo/", editor.walk, {"way": "undo"}, name="undo"),
    path("<int:pk>/redo/", editor.walk, {"way": "redo"}, name="redo"),
    path("<int:pk>/rename/", editor.rename, name="rename"),
    path("<int:pk>/text.txt", texts.download, name="download"),
    path("<int:pk>/versions/", versions.versions, name="versions"),
    path("<int:pk>/versions/keep/", versions.keep, name="keep_version"),
    path("<int:pk>/versions/<int:key>/back/", versions.bring_back, name="bring_back"),
    path("<int:pk>/versions/<int:key>/delete/", versions.delete, name="delete_version"),
]
