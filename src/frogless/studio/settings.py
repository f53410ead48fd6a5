"""Django's settings: one person, one computer, nothing to configure."""

from __future__ import annotations

import os
import secrets
import sys
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from typing import Any

from frogless.studio.places import data_folder

DATA = data_folder(os.environ, sys.platform, Path.home())
LIBRARY = "library.sqlite3"
LARGEST_REQUEST = 1_000_000
"""Bytes; a page with three long documents in it is a tenth of that."""

LARGEST_LIBRARY = 20_000_000
"""Bytes of a library that is brought in; some hundred documents with their versions are one or two."""

DEBUG = False
# Nothing that is signed outlives the process, so a new key at each start is enough.
SECRET_KEY = secrets.token_urlsafe(50)
ALLOWED_HOSTS = ["127.0.0.1", "localhost"]
ROOT_URLCONF = "frogless.studio.urls"
INSTALLED_APPS = [
    "django.contrib.staticfiles",
    "django_htmx",
    "frogless.studio",
    "frogless.studio.library",
    "frogless.studio.people",
    "frogless.studio.swatches",
    "frogless.studio.designs",
    "frogless.studio.garments",
    "frogless.studio.proofreading",
    "frogless.studio.start",
    "frogless.studio.jobs",
]
MIDDLEWARE = [
    "frogless.studio.guard.guarded",
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "frogless.studio.entrance.let_in",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
]
TEMPLATES: list[dict[str, Any]] = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "frogless.studio.library.context.shown",
            ],
        },
    }
]
DATABASES: dict[str, dict[str, Any]] = {
    "default": {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": DATA / LIBRARY,
        "OPTIONS": {
            # What is deleted is overwritten: it may be somebody's measurements. Pages are read while
            # another is saved; what was saved is on the disk before the page says so.
            "init_command": "PRAGMA secure_delete=ON; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL",
            # Whoever means to write waits for the one who does.
            "transaction_mode": "IMMEDIATE",
            "timeout": 5,
        },
    }
}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
# Read before Django sets the process to TIME_ZONE: the clock that the person looks at.
LOCAL_ZONE: tzinfo = datetime.now(UTC).astimezone().tzinfo or UTC
TIME_ZONE = "UTC"
USE_TZ = True
USE_I18N = False

STATIC_URL = "/static/"
WHITENOISE_USE_FINDERS = True

CSRF_COOKIE_NAME = "frogless_csrf"
CSRF_COOKIE_SAMESITE = "Strict"
CSRF_COOKIE_HTTPONLY = True
CSRF_FAILURE_VIEW = "frogless.studio.guard.from_elsewhere"
DATA_UPLOAD_MAX_MEMORY_SIZE = LARGEST_REQUEST

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler", "level": "ERROR"}},
    "loggers": {
        "django": {"handlers": ["console"], "level": "ERROR"},
        # A stranger's request that was refused is no fault of the program.
        "django.security": {"handlers": [], "level": "CRITICAL", "propagate": False},
    },
}
