"""Long work in a process of its own: it tells how far it is, and can be ended at any time.

What is under way is known to this run of the studio alone; a result is a file in the data folder
until the studio is stopped.
"""

from __future__ import annotations

import multiprocessing
import os
import secrets
import shutil
import signal
import tempfile
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, Literal

from frogless.errors import FroglessError, InputError

State = Literal["running", "done", "cancelled", "failed"]

MOST_AT_ONCE = 2
DAY = 86_400.0
KEPT = 50
"""Jobs that are remembered; the result of an older one is deleted."""

Report = Callable[[int, str], None]
"""Told after each part: how many are done, and what was done last."""

Work = Callable[..., None]
"""`work(report, out, *args)` writes its result to the path `out`."""


@dataclass(slots=True)
class Job:
    """One piece of long work."""

    key: str
    title: str
    total: int
    out: Path
    name: str
    state: State = "running"
    done: int = 0
    said: str = ""
    began: float = field(default_factory=time.monotonic)
    process: Any = None

    @property
    def seconds_left(self) -> int | None:
        """About how long it will take yet; None when nothing is done yet."""
        if not self.done:
            return None
        each = (time.monotonic() - self.began) / self.done
        return round(each * (self.total - self.done))


class Jobs:
    """What is under way and what was done, by key."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._lock = threading.Lock()
        self._jobs: dict[str, Job] = {}

    def begin(self, title: str, name: str, total: int, work: Work, *args: object) -> Job:
        """Starts a piece of work.

        Args:
            name: what its result is called when it is saved.
            total: of how many parts it consists.

        Raises:
            InputError: as much as the studio does at once is under way, or no file can be written.
        """
        key = secrets.token_urlsafe(9)
        with self._lock:
            running = [job for job in self._jobs.values() if job.state == "running"]
            if len(running) >= MOST_AT_ONCE:
                raise InputError(
                    f'"{running[0].title}" and another are under way; wait for one, or cancel it'
                )
            self._make_room()
            job = Job(key, title, total, self._folder / f"{key}.part", name)
            self._jobs[key] = job
        context = multiprocessing.get_context("spawn")
        line, other = context.Pipe(duplex=False)
        job.process = context.Process(target=_run, args=(other, work, job.out, args), daemon=True)
        job.process.start()
        other.close()
        threading.Thread(target=self._listen, args=(job, line), daemon=True).start()
        return job

    def find(self, key: str) -> Job | None:
        """The job of a key; None when this run of the studio knows none."""
        return self._jobs.get(key)

    def all(self) -> tuple[Job, ...]:
        """The one begun last comes first."""
        return tuple(reversed(self._jobs.values()))

    def cancel(self, job: Job) -> None:
        """Ends it; what it had written is deleted. A job that is over stays as it is."""
        with self._lock:
            if job.state != "running":
                return
            job.state = "cancelled"
        job.process.kill()
        job.process.join()
        job.out.unlink(missing_ok=True)

    def end(self) -> None:
        """Ends everything that is under way, and keeps no result."""
        for job in self.all():
            self.cancel(job)
        shutil.rmtree(self._folder, ignore_errors=True)

    def forget_results(self) -> None:
        """Keeps no result: somebody whose measurements are in one may be deleted for good."""
        for job in self.all():
            if job.state == "done":
                job.out.unlink(missing_ok=True)

    def _make_room(self) -> None:
        over = [job for job in self._jobs.values() if job.state != "running"]
        for job in over[: max(0, len(self._jobs) - KEPT + 1)]:
            job.out.unlink(missing_ok=True)
            del self._jobs[job.key]

    def _listen(self, job: Job, line: Connection) -> None:
        state: State = "failed"
        said = "it was ended from outside"
        while True:
            try:
                kind, *told = line.recv()
            except (EOFError, OSError):
                break
            if kind == "part":
                job.done, job.said = told
            else:
                state, said = kind, told[0]
        job.process.join()
        with self._lock:
            if job.state == "running":
                job.state, job.said = state, said
        if job.state != "done":
            job.out.unlink(missing_ok=True)


def _run(line: Connection, work: Work, out: Path, args: tuple[object, ...]) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(5)  # whoever edits meanwhile comes first
    try:
        work(lambda done, said: line.send(("part", done, said)), out, *args)
    except FroglessError as error:
        line.send(("failed", str(error)))
    except OSError as error:
        line.send(
            (
                "failed",
                f"the result cannot be written ({(error.strerror or 'unknown reason').lower()})",
            )
        )
    else:
        line.send(("done", ""))


def own_folder(folder: Path) -> Path:
    """A new folder in it for this run, for its owner's eyes alone.

    What an earlier run left there is deleted once it is a day old: until then it may be another
    studio's that runs.
    """
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    for old in folder.iterdir():
        with suppress(OSError):
            if time.time() - old.stat().st_mtime > DAY:
                shutil.rmtree(old, ignore_errors=True)
    return Path(tempfile.mkdtemp(dir=folder))


_jobs: Jobs | None = None


def jobs() -> Jobs:
    """The studio's long work."""
    global _jobs
    if _jobs is None:
        from frogless.studio.settings import DATA

        _jobs = Jobs(own_folder(DATA / "results"))
    return _jobs
