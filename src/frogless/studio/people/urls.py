"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.people import views

app_name = "people"
urlpatterns = [
    path("", views.people_list, name="list"),
    path("new/", views.people_list, name="new"),
    path("<int:pk>/", views.of_own, name="edit"),
    path("sizes/", views.people_list, name="sizes"),
    path("sizes/<str:table>/<str:size>/", views.of_size, name="size"),
    path("measuring/<str:key>.svg", views.picture, name="picture"),
]
