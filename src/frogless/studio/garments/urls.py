"""Addresses of this room."""

from __future__ import annotations

from django.urls import path
from django.views.generic import RedirectView

from frogless.studio.garments import own, shelf_views, turning, views

app_name = "garments"
urlpatterns = [
    path("garments/", shelf_views.garments_list, name="list"),
    path("garments/create/", shelf_views.create, name="create"),
    path("garments/<int:pk>/turn/", turning.turn, name="turn"),
    path("garments/<int:pk>/own/", own.own, name="own"),
    path("garments/<int:pk>/keep/", turning.keep, name="keep"),
    path("garments/<int:pk>/choose/", views.choose, name="choose"),
    path("garments/<int:pk>/rename/", shelf_views.rename, name="rename"),
    path("garments/<int:pk>/duplicate/", shelf_views.duplicate, name="duplicate"),
    path("garments/<int:pk>/delete/", shelf_views.delete, name="delete"),
    path("garments/<int:pk>/why/<str:key>/", views.why, name="why"),
    path("garments/<int:pk>/ways/", views.ways, name="ways"),
    path("garments/<int:pk>/proof/<str:room>/", views.proof, name="proof"),
    path("garments/<int:pk>/files/<str:name>", views.file, name="file"),
    path(
        "garments/<int:pk>/", RedirectView.as_view(pattern_name="garments:room"), {"room": "shape"}
    ),
    path("garments/<int:pk>/<str:room>/", views.room, name="room"),
    path("look/<str:key>/why/<str:number>/", views.look_why, name="look_why"),
    path("look/<str:key>/<str:room>/", views.look, name="look"),
]
