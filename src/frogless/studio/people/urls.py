"""Addresses of this room."""

from __future__ import annotations

from django.urls import path

from frogless.studio.people import edit, files, views

app_name = "people"
urlpatterns = [
    path("", views.people_list, name="list"),
    path("new/", edit.new, name="new"),
    path("open/", files.open_file, name="open"),
    path("copy/<str:ref>/", files.copy, name="copy"),
    path("said/", edit.said, name="said"),
    path("<int:pk>/", edit.edit, name="edit"),
    path("<int:pk>/text/", files.text, name="text"),
    path("<int:pk>/undo/", edit.undo, name="undo"),
    path("<int:pk>/redo/", edit.redo, name="redo"),
    path("sheet/", views.blank_sheet, name="sheet"),
    path("<int:pk>/sheet/", views.filled_sheet, name="filled_sheet"),
    path("sizes/", views.sizes_page, name="sizes"),
    path("sizes/<str:table>/<str:size>/", views.size, name="size"),
    path("examples/<str:key>/", views.example, name="example"),
    path("measuring/whole.svg", views.whole, name="whole"),
    path("measuring/<str:key>.svg", views.picture, name="picture"),
]
