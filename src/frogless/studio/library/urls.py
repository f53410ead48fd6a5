"""The addresses of the library."""

from __future__ import annotations

from django.urls import path

from frogless.studio.library import views

urlpatterns = [
    path("", views.show, name="library"),
    path("<int:key>/rename", views.rename_document, name="rename_document"),
    path("<int:key>/delete", views.delete_document, name="delete_document"),
    path("<int:key>/restore", views.restore_document, name="restore_document"),
]
