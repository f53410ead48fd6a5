"""What is deleted for good is forgotten by what runs as well."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.db.models.signals import post_delete
from long_work import slow

from frogless.studio import forgetting
from frogless.studio.jobs import run
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.work import pool


@pytest.fixture
def connected(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[run.Jobs]:
    """Workers and long work of this test's own, told of what is deleted."""
    jobs = run.Jobs(tmp_path)
    monkeypatch.setattr(run, "_jobs", jobs)
    # A busy machine may need longer to make a worker ready than a person would wait.
    monkeypatch.setattr(pool, "PATIENCE", 60.0)
    pool.open_pool(1)
    forgetting.connect()
    yield jobs
    post_delete.disconnect(forgetting._forget, sender=Document)
    pool.open_pool(0)
    jobs.end()


def test_no_result_and_no_memory_outlives_a_document(connected: run.Jobs) -> None:
    """The file of a result is gone, and the worker is another one."""
    job = connected.begin("Two", "two.txt", 2, slow, 2)
    until = time.monotonic() + 60
    while job.state == "running":
        assert time.monotonic() < until
        time.sleep(0.02)
    assert job.out.exists()
    before = pool.pool().ask("a", os.getpid)
    document = shelf.create("body", 'name = "Ada"\n')
    shelf.remove(document)
    assert job.out.exists()
    shelf.delete_for_good(document)
    assert not job.out.exists()
    assert pool.pool().ask("a", os.getpid) != before
