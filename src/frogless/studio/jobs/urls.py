"""Addresses of long work."""

from __future__ import annotations

from django.urls import path

from frogless.studio.jobs import views

app_name = "jobs"
urlpatterns = [
    path("", views.jobs_list, name="list"),
    path("bundle/<int:pk>/", views.bundle_pdfs, name="bundle"),
    path("<str:key>/", views.show_job, name="show"),
    path("<str:key>/cancel/", views.cancel_job, name="cancel"),
    path("<str:key>/result/", views.save_result, name="result"),
]
