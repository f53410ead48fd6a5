"""A file that was checked and waits for a yes; forgotten when others come, or with the studio."""

from __future__ import annotations

import secrets
import threading
from collections import OrderedDict

MOST = 3
"""Files that wait at a time."""


class Pending:
    """Files by a token that only the page that shows them knows."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._waiting: OrderedDict[str, tuple[str, bytes]] = OrderedDict()

    def put(self, name: str, data: bytes) -> str:
        """Keeps a file; its token."""
        token = secrets.token_urlsafe(16)
        with self._lock:
            self._waiting[token] = (name, data)
            while len(self._waiting) > MOST:
                self._waiting.popitem(last=False)
        return token

    def take(self, token: str) -> tuple[str, bytes] | None:
        """Name and bytes of a file, which waits no more; None when it is forgotten."""
        with self._lock:
            return self._waiting.pop(token, None)


pending = Pending()
