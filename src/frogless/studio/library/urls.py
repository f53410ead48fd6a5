"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.library import files, views

app_name = "library"
urlpatterns = [
    path("", views.show_library, name="show"),
    path("library.zip", files.export_all, name="export_all"),
    path("import/", files.import_files, name="import"),
    path("<str:ref>.toml", files.export, name="export"),
    path("<int:pk>/rename/", views.rename, name="rename"),
    path("<int:pk>/delete/", views.delete, name="delete"),
    path("<int:pk>/restore/", views.restore, name="restore"),
    path("<int:pk>/delete-for-good/", views.delete_for_good, name="delete_for_good"),
    path("empty-bin/", views.empty_bin, name="empty_bin"),
    path("garments/<int:pk>/restore/", views.restore_garment, name="restore_garment"),
    path(
        "garments/<int:pk>/delete-for-good/",
        views.delete_garment_for_good,
        name="delete_garment_for_good",
    ),
]
