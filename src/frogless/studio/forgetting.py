"""What is deleted for good is forgotten by everything that runs."""

from __future__ import annotations

from django.db.models.signals import post_delete

from frogless.studio.jobs.run import jobs
from frogless.studio.library.models import Document
from frogless.studio.work.pool import pool


def connect() -> None:
    """From now on no result of long work and no memory of a worker outlives a document."""
    post_delete.connect(_forget, sender=Document)


def _forget(**_: object) -> None:
    jobs().forget_results()
    pool().end()
