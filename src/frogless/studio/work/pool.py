"""Processes that draft, so that no design can hold up the studio: what takes too long is ended.

Each question goes to the worker that its `affinity` names, which remembers what it answered before.
"""

from __future__ import annotations

import multiprocessing
import signal
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from typing import Any, ParamSpec, TypeVar
from zlib import crc32

from frogless.errors import FroglessError, InputError

P = ParamSpec("P")
R = TypeVar("R")

SECONDS = 20.0
"""An example takes less than one; a design that takes this long asks for what nobody crochets."""

PATIENCE = 8.0
"""Seconds that a question waits for those before it, so that slow ones do not take all threads."""

MOST_MEMORY = 4_000_000_000
"""Bytes that a worker may take, where the system lets it be limited."""


class TooMuchWork(InputError):
    """A question was not answered in time."""

    def __init__(self, seconds: float) -> None:
        super().__init__(
            f"this took longer than {seconds:.0f} seconds and was ended; ask for fewer rounds, "
            "sections or repeats"
        )


class Busy(InputError):
    """A question waited too long for those before it."""

    def __init__(self) -> None:
        super().__init__("the studio is still busy with what was asked before; try again")


@dataclass(slots=True)
class Worker:
    """One process, and the line to it; it is started when it is first asked."""

    lock: threading.Lock = field(default_factory=threading.Lock)
    process: Any = None
    line: Connection | None = None

    def start(self) -> None:
        """Makes sure that the process runs."""
        if self.process is not None and self.process.is_alive():
            return
        context = multiprocessing.get_context("spawn")
        self.line, other = context.Pipe()
        self.process = context.Process(target=_serve, args=(other,), daemon=True)
        self.process.start()
        other.close()

    def end(self) -> None:
        """Ends the process, whatever it does; who waits for its answer is told."""
        if self.process is not None:
            self.process.kill()
        with self.lock:
            self._clear()

    def _clear(self) -> None:
        if self.process is not None:
            self.process.kill()
            self.process.join()
            self.process = None
        if self.line is not None:
            self.line.close()
            self.line = None

    def ask(self, seconds: float, question: tuple[Any, ...]) -> tuple[bool, Any]:
        """The answer, or what was raised.

        Raises:
            TooMuchWork: it took longer.
            Busy: it is at work for others.
            InputError: the process ended.
        """
        if not self.lock.acquire(timeout=PATIENCE):
            raise Busy
        try:
            self.start()
            assert self.line is not None  # noqa: S101 - start made it
            try:
                self.line.send(question)
                if self.line.poll(seconds):
                    done: tuple[bool, Any] = self.line.recv()
                    return done
            except (EOFError, OSError):
                self._clear()
                raise InputError(
                    "this could not be worked out: the process that did it came to its end; "
                    "ask for fewer rounds or sections, or try again"
                ) from None
            self._clear()
            raise TooMuchWork(seconds)
        finally:
            self.lock.release()


class Pool:
    """So many workers; with none, questions are answered in the process that asks."""

    def __init__(self, size: int) -> None:
        self._workers = tuple(Worker() for _ in range(size))

    def start(self) -> None:
        """Starts all workers, so that the first question is as quick as the others."""
        for worker in self._workers:
            with worker.lock:
                worker.start()
            threading.Thread(target=worker.ask, args=(60.0, (_ready, (), {})), daemon=True).start()

    def end(self) -> None:
        """Ends all workers; one that is asked again starts anew, and remembers nothing."""
        for worker in self._workers:
            worker.end()

    def ask(
        self,
        affinity: str,
        work: Callable[P, R],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> R:
        """What `work` gives for these arguments, worked out in one of the processes.

        Args:
            work: a function of a module that can be read without Django.

        Raises:
            FroglessError: what `work` raised.
            TooMuchWork: it took longer than `SECONDS`.
        """
        if not self._workers:
            return work(*args, **kwargs)
        worker = self._workers[crc32(affinity.encode()) % len(self._workers)]
        good, found = worker.ask(SECONDS, (work, args, kwargs))
        if good:
            answer: R = found
            return answer
        raise found


def _ready() -> bool:
    """Reads what every draft needs, and drafts nothing."""
    from frogless import draft

    draft.get_ready()
    return True


def _serve(line: Connection) -> None:
    """What a worker does until the studio is gone."""
    # Ctrl-C is the studio's to answer; its end closes the line.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _limit_memory()
    with suppress(EOFError, OSError):
        while True:
            work, args, kwargs = line.recv()
            line.send(_answer(work, args, kwargs))


def _answer(work: Callable[..., Any], args: Any, kwargs: Any) -> tuple[bool, Any]:  # noqa: ANN401 - any question
    try:
        return True, work(*args, **kwargs)
    except FroglessError as error:
        return False, error
    except (MemoryError, RecursionError):
        return False, InputError(
            "this is too large to be drafted; ask for fewer rounds or sections"
        )
    except Exception as error:
        import traceback

        traceback.print_exc()
        return False, RuntimeError(f"{type(error).__name__}: {error}")


def _limit_memory() -> None:
    if sys.platform == "linux":
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))


_pool = Pool(0)


def pool() -> Pool:
    """The studio's workers."""
    return _pool


def open_pool(size: int) -> Pool:
    """Sets the number of workers, and starts them."""
    global _pool
    _pool.end()
    _pool = Pool(size)
    _pool.start()
    return _pool
