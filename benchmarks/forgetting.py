"""What the program remembers from one draft to the next, forgotten: to time what is worked out anew."""

from __future__ import annotations

import functools
import gc
from collections.abc import Sequence

Remembering = functools._lru_cache_wrapper
KEPT = ("frogless.read.grammar",)
"""The tables of the reader's grammar are made once in a process, whatever is drafted."""


@functools.cache
def remembering() -> Sequence[Remembering[object]]:
    """Everything imported so far that remembers a bounded number of answers."""
    # `isinstance` would ask things that stand in for others, such as settings not made yet.
    found = [one for one in gc.get_objects() if type(one) is Remembering]
    return [one for one in found if _is_ours(one) and one.cache_parameters()["maxsize"]]


def forget() -> None:
    """As if nothing had been drafted yet."""
    for one in remembering():
        one.cache_clear()


def _is_ours(one: Remembering[object]) -> bool:
    module = getattr(one, "__module__", "")
    return module.startswith("frogless.") and module not in KEPT
