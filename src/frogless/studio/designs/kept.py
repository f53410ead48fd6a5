"""Answers kept in memory, so many of them: what is asked for again is there at once."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from hashlib import sha256
from typing import Generic, TypeVar

Answer = TypeVar("Answer")


class Kept(Generic[Answer]):
    """The last answers by key; the one that was not asked for longest makes room."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._lock = threading.Lock()
        self._answers: OrderedDict[str, Answer] = OrderedDict()

    def get(self, key: str) -> Answer | None:
        """The answer, if it is still there."""
        with self._lock:
            if key in self._answers:
                self._answers.move_to_end(key)
            return self._answers.get(key)

    def keep(self, key: str, answer: Answer) -> Answer:
        """The same answer, kept."""
        with self._lock:
            self._answers[key] = answer
            self._answers.move_to_end(key)
            while len(self._answers) > self._most:
                self._answers.popitem(last=False)
        return answer

    def made(self, key: str, make: Callable[[], Answer]) -> Answer:
        """The answer that is kept, or the one that is made now; what is raised is not kept."""
        known = self.get(key)
        return self.keep(key, make()) if known is None else known


def key_of(*parts: object) -> str:
    """One short key for texts and whatever else an answer depends on."""
    return sha256("\0".join(map(repr, parts)).encode()).hexdigest()
