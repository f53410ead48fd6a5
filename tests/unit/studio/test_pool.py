"""The workers: they answer, they refuse with a sentence, and what hangs is ended."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator

import pytest
from long_work import raising

from frogless.errors import Impossible, InputError
from frogless.studio.work import pool
from frogless.studio.work.pool import Pool, TooMuchWork


@pytest.fixture(scope="module")
def workers() -> Iterator[Pool]:
    """Two of them."""
    opened = Pool(2)
    yield opened
    opened.end()


def test_answer_is_what_the_work_gives(workers: Pool) -> None:
    """Worked out in another process, which goes on."""
    first, second = (workers.ask("a", os.getpid) for _ in range(2))
    assert first == second != os.getpid()
    assert workers.ask("a", divmod, 17, 5) == (3, 2)


def test_what_the_work_raises_is_raised(workers: Pool) -> None:
    """With all that it says."""
    with pytest.raises(Impossible) as raised:
        workers.ask("a", raising)
    assert raised.value.ways_out == ("a longer section",)
    assert raised.value.short == 12.0
    assert str(raised.value).startswith("design.toml:3 hip: it is too tight")


def test_work_that_hangs_is_ended_and_the_next_is_answered(
    workers: Pool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A design cannot hold up the studio."""
    workers.ask("a", os.getpid)
    monkeypatch.setattr(pool, "SECONDS", 0.3)
    with pytest.raises(TooMuchWork, match="fewer rounds"):
        workers.ask("a", time.sleep, 60)
    monkeypatch.setattr(pool, "SECONDS", 20.0)
    assert workers.ask("a", divmod, 17, 5) == (3, 2)


def test_work_that_kills_its_process_is_told(workers: Pool) -> None:
    """Nothing else falls with it."""
    with pytest.raises(InputError, match="came to its end"):
        workers.ask("a", os._exit, 1)
    assert workers.ask("a", divmod, 17, 5) == (3, 2)


def test_work_that_takes_all_memory_is_told(workers: Pool) -> None:
    """With a sentence that says what to do."""
    with pytest.raises(InputError, match="too large"):
        workers.ask("a", bytearray, 40_000_000_000)
    assert workers.ask("a", divmod, 17, 5) == (3, 2)


def test_without_workers_the_asker_works() -> None:
    """For tests and small machines."""
    assert Pool(0).ask("a", os.getpid) == os.getpid()
