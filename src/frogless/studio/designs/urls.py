"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.designs import views

app_name = "designs"
urlpatterns = [
    path("", views.designs_list, name="list"),
    path("new/", views.designs_list, name="new"),
    path("about/<str:ref>/", views.about, name="show"),
    path("pictures/<str:ref>.svg", views.about, name="picture"),
    path("copy/<str:ref>/", views.about, name="copy"),
    path("<int:pk>/text/", views.of_own, name="text"),
    path("<int:pk>/undo/", views.of_own, name="undo"),
    path("<int:pk>/redo/", views.of_own, name="redo"),
    path("<int:pk>/versions/", views.of_own, name="versions"),
]
