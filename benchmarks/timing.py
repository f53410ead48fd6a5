"""Medians of several runs and their ratios: times differ between machines, ratios hardly do."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass

RUNS = 7
MEDIANS = f"medians of {RUNS} runs (fastest to slowest)"


@dataclass(frozen=True, slots=True)
class Timed:
    """Seconds of several runs of one thing."""

    name: str
    seconds: tuple[float, ...]

    @property
    def median(self) -> float:
        """The run in the middle: one slow run does not move it."""
        return statistics.median(self.seconds)

    def line(self) -> str:
        """The median with the fastest and the slowest run, in ms."""
        low, high = min(self.seconds), max(self.seconds)
        return (
            f"  {self.name:<58}{1000 * self.median:9.1f} ms ({1000 * low:.1f} to {1000 * high:.1f})"
        )


def timed(
    name: str, work: Callable[[], object], before: Callable[[], object] = lambda: None
) -> Timed:
    """Runs it once unmeasured, so that imports are warm, then `RUNS` times.

    Args:
        before: what is done before each run and is not measured.
    """
    work()
    return Timed(name, tuple(once(work, before) for _ in range(RUNS)))


def once(work: Callable[[], object], before: Callable[[], object] = lambda: None) -> float:
    """Seconds of one run."""
    before()
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def ratio(name: str, ours: Timed, peer: Timed) -> str:
    """How many times the peer's time ours takes."""
    return f"  {name:<58}{ours.median / peer.median:9.2f}"
