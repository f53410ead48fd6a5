"""Long work: progress, cancelling, results, and what is refused."""

from __future__ import annotations

import io
import time
import zipfile
from pathlib import Path

import pytest
from django.test import Client
from long_work import refusing, slow

from frogless.errors import InputError
from frogless.studio.jobs.run import Job, Jobs
from frogless.studio.library.models import Garment


def over(job: Job) -> Job:
    """The job once it is no longer under way."""
    until = time.monotonic() + 60
    while job.state == "running":
        assert time.monotonic() < until, "it takes for ever"
        time.sleep(0.02)
    return job


def test_work_tells_how_far_it_is_and_leaves_its_result(tmp_path: Path) -> None:
    """All parts are counted."""
    job = over(Jobs(tmp_path).begin("Ten", "ten.txt", 10, slow, 10))
    assert (job.state, job.done) == ("done", 10)
    assert job.out.read_text("utf-8") == "10"


def test_cancelled_work_leaves_nothing(tmp_path: Path) -> None:
    """It ends at once, and what it had written is gone."""
    jobs = Jobs(tmp_path)
    job = jobs.begin("Very many", "many.txt", 100_000, slow, 100_000)
    until = time.monotonic() + 60
    while not job.done:
        assert time.monotonic() < until, "it does not begin"
        time.sleep(0.02)
    jobs.cancel(job)
    assert job.state == "cancelled"
    assert not job.process.is_alive()
    assert list(tmp_path.iterdir()) == []
    jobs.cancel(job)
    assert job.state == "cancelled"


def test_failed_work_says_why(tmp_path: Path) -> None:
    """In the sentence that was raised; nothing half-written stays."""
    job = over(Jobs(tmp_path).begin("Two", "two.txt", 2, refusing))
    assert (job.state, job.said) == ("failed", "the other half is not there")
    assert list(tmp_path.iterdir()) == []


def test_third_at_once_is_refused(tmp_path: Path) -> None:
    """The machine has other things to do."""
    jobs = Jobs(tmp_path)
    for _ in range(2):
        jobs.begin("Very many", "many.txt", 100_000, slow, 100_000)
    with pytest.raises(InputError, match="under way"):
        jobs.begin("Third", "third.txt", 1, slow, 1)
    jobs.end()


@pytest.fixture
def garment(client: Client) -> Garment:
    """A skirt of the examples."""
    return Garment.objects.create(
        name="Skirt",
        design="example:rehearsal-skirt",
        body="example:dancer-3",
        swatches=["example:light-cotton"],
    )


def test_patterns_for_many_bodies_come_as_one_zip(client: Client, garment: Garment) -> None:
    """Who it cannot be made for is listed with the reason."""
    bodies = ["size:women:M", "example:dancer-3", "size:children:8"]
    answer = client.post(f"/jobs/bundle/{garment.pk}/", {"body": bodies})
    page = client.get(answer.headers["Location"]).content
    until = time.monotonic() + 120
    while b"of 3 done" in page:
        assert time.monotonic() < until
        time.sleep(0.2)
        page = client.get(answer.headers["Location"], headers={"hx-request": "true"}).content
    result = client.get(f"{answer.headers['Location']}result/")
    assert result.headers["Content-Disposition"] == 'attachment; filename="patterns.zip"'
    archive = zipfile.ZipFile(io.BytesIO(b"".join(result.streaming_content)))  # type: ignore[attr-defined]
    pdfs = [name for name in archive.namelist() if name.endswith(".pdf")]
    assert [archive.read(name)[:4] for name in pdfs] == [b"%PDF"] * 2
    told = archive.read("contents.txt").decode()
    assert "2 of 3 patterns" in told
    assert "Child of 8: body.toml measurements.waist_to_hip" in told


@pytest.mark.parametrize("bodies", [[], ["own:999"], ["size:women:M"] * 61])
def test_choice_that_is_none_is_refused(
    client: Client, garment: Garment, bodies: list[str]
) -> None:
    """With a sentence, and the form as it was."""
    answer = client.post(f"/jobs/bundle/{garment.pk}/", {"body": bodies})
    assert answer.status_code == 422
    assert b"Not done" in answer.content


def test_unknown_work_is_not_there(client: Client) -> None:
    """Nor its result."""
    for path in ("/jobs/nix/", "/jobs/nix/result/", "/jobs/bundle/999/"):
        assert client.get(path).status_code == 404
    assert client.post("/jobs/nix/cancel/").status_code == 404
