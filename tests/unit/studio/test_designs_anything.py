"""Whatever a browser sends to the room of designs gets an answer, and never one of ours that failed."""

from __future__ import annotations

import random

import pytest
from designs_made import LEAST, LIVE, RING, own
from django.test import Client

VALUES = (
    "", "x" * 5000, "own:1", "own:" + "9" * 20, "example:dancer-3", "example:light-cotton",
    "example:light-cotton,example:fine-wool", "size:women:M", ",,,,", "\x00", "1", "-1", "9" * 30,
    "0", "now", "//elsewhere.example", "/designs/", "text", "garment", "save", "check", "[", LEAST,
    RING, "%s{}", "<script>", "½",
)  # fmt: skip
NAMES = (
    "base", "text", "do", "body", "swatch", "next", "to", "title", "name", "before", "after", "q",
    "kind", "worked", "details", "stitch", "find", "from", "design", "file", "then", "done", "of",
    "v", "tried",
)  # fmt: skip
OF_ONE = ("text/", "check/", "undo/", "redo/", "rename/", "versions/", "versions/keep/")


@pytest.mark.parametrize("seed", range(3))
def test_anything_gets_an_answer(client: Client, seed: int) -> None:
    """Whole pages and parts, asked for and sent, with fields that do not belong there."""
    chance, document = random.Random(seed), own()  # noqa: S311 - the same cases in every run
    client.post(f"/designs/{document.pk}/versions/keep/", {"name": "v"})
    version = f"/designs/{document.pk}/versions/{document.versions.get().pk}/"
    addresses = [f"/designs/{document.pk}/{rest}" for rest in OF_ONE]
    addresses += ["/designs/", "/designs/new/", "/designs/keys/", version, f"{version}back/"]
    addresses += [f"/designs/about/{document.ref}/", f"/designs/pictures/{document.ref}.svg"]
    addresses += [f"/designs/pictures/{document.ref}/drawn/", f"/designs/copy/{document.ref}/"]
    for _ in range(120):
        address = chance.choice(addresses)
        names = chance.sample(NAMES, chance.randint(0, 7))
        sent = {name: chance.choice(VALUES) for name in names}
        send = client.get if chance.random() < 0.4 else client.post
        answer = send(address, sent, headers=LIVE if chance.random() < 0.4 else {})
        assert answer.status_code in (200, 302, 304, 404, 405, 409, 422), (address, sent)
