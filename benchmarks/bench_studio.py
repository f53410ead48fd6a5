"""How long does a change in the studio take, beside the drafting that it asks for? And for twenty at once?

A knob is turned by a POST to the studio, in process and without workers. The peer drafts the same
changed design in the library and makes its pattern (`draft_texts` and `pattern`), which a studio
cannot do without: the ratio is what the studio itself costs. The studio shows the numbers first and
lets the proof follow, so it is also measured with its proof.

Then a real studio with its workers is edited by one person, and by twenty at once, each with a
garment of her own and two seconds between changes, over HTTP.
"""

from __future__ import annotations

import argparse
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time
import urllib.parse
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.cookiejar import CookieJar
from pathlib import Path

from timing import RUNS, Timed, ratio

FOLDER = Path(tempfile.mkdtemp(prefix="frogless-bench-"))
os.environ.setdefault("FROGLESS_DATA", str(FOLDER))
os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frogless.studio.settings")

import django  # noqa: E402

django.setup()

from django.test import Client  # noqa: E402

from frogless.design.knobs import turn  # noqa: E402
from frogless.draft import Texts, draft_texts  # noqa: E402
from frogless.publish.pattern import pattern  # noqa: E402
from frogless.studio import entrance, serve  # noqa: E402
from frogless.studio.examples import examples  # noqa: E402
from frogless.studio.garments.create import make_garment  # noqa: E402
from frogless.studio.library.models import Document, Garment  # noqa: E402

BODY, SWATCH = "dancer-3", "light-cotton"
LARGEST = {"hop-garden-skirt": "garment/length", "fiddler-cardigan": "lengths/long"}
"""The largest examples, of one tube and of pieces, and the knob that is turned."""

LIVE = {"HX-Request": "true", "HX-Target": "result"}
EDITORS = 20
SECONDS = 20.0
THINKS = 2.0


def lengths(start: float) -> Iterator[str]:
    """Ever other lengths, each a little longer, so that nothing was drafted before."""
    return (f"{start + 0.7 * n:.1f} cm" for n in range(1, 100))


def in_process(design: str, path: str) -> None:
    """Prints the medians of the studio's change and of the library's draft, and their ratio."""
    client = Client(headers={"host": "localhost"})
    client.get(entrance.link())
    garment = make_garment("", f"example:{design}", f"example:{BODY}", [f"example:{SWATCH}"])
    text = examples("design")[design].text
    body, swatch = examples("body")[BODY].text, examples("swatch")[SWATCH].text
    steps = tuple(path.split("/"))
    numbers, proofs, library = [], [], []
    for n, (mine, other) in enumerate(zip(lengths(52.0), lengths(52.35), strict=True)):
        changed = turn(text, steps, other)
        peer = _seconds(lambda changed=changed: _pattern(changed, body, swatch))  # type: ignore[misc]
        shown = _seconds(lambda mine=mine: _turned(client, garment, path, mine))  # type: ignore[misc]
        proven = _seconds(lambda: _proven(client, garment))
        if n:  # the first of each is not measured, so that caches and imports are warm
            library.append(peer)
            numbers.append(shown)
            proofs.append(shown + proven)
        if len(numbers) == RUNS:
            break
    peer, shown, whole = (
        Timed(f"{design}: {name}", tuple(found))
        for name, found in (
            ("the library, draft and pattern", library),
            ("the studio, to the numbers", numbers),
            ("the studio, to the proof", proofs),
        )
    )
    for one in (peer, shown, whole):
        print(one.line())
    print(ratio(f"{design}: to the numbers / the library", shown, peer))
    print(ratio(f"{design}: to the proof / the library", whole, peer))


def _pattern(text: str, body: str, swatch: str) -> None:
    pattern(draft_texts(Texts(text, body, (swatch,))).drafted)


def _turned(client: Client, garment: Garment, path: str, written: str) -> None:
    own = Document.objects.order_by("-pk").first() if _is_own(garment) else None
    sent = {
        "base": str(own.revision if own else 0),
        "room": "shape",
        "path": path,
        "written": written,
    }
    answer = client.post(f"/garments/{garment.pk}/turn/", sent, headers=LIVE)
    assert answer.status_code == 200, answer.content[:500]


def _is_own(garment: Garment) -> bool:
    garment.refresh_from_db()
    return garment.design.startswith("own:")


def _proven(client: Client, garment: Garment) -> None:
    answer = client.get(f"/garments/{garment.pk}/proof/shape/", headers=LIVE)
    assert b"Drafted and proven" in answer.content


def _seconds(work: Callable[[], object]) -> float:
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


class Editor:
    """A browser of the owner's with a garment of its own, that turns its length again and again."""

    def __init__(self, address: str, jar: CookieJar, design: str, path: str) -> None:
        self.address, self.path = address, path
        self.open = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(jar)).open
        page = self._read("/swatches/new/")
        token = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', page)
        assert token
        self.token, self.base = token[1], 0
        made = self._post(
            "/garments/create/",
            {
                "design": f"example:{design}",
                "body": f"example:{BODY}",
                "swatch": f"example:{SWATCH}",
            },
        )
        found = re.search(r'action="(/garments/\d+)/turn/"', made)
        assert found
        self.garment = found[1]

    def _read(self, path: str) -> str:
        with self.open(self.address + path) as answer:
            text: str = answer.read().decode()
            return text

    def _post(self, path: str, sent: dict[str, str], **headers: str) -> str:
        data = urllib.parse.urlencode({"csrfmiddlewaretoken": self.token, **sent}).encode()
        asked = urllib.request.Request(self.address + path, data, headers)  # noqa: S310 - loopback
        with self.open(asked) as answer:
            told = re.search(r'"base": (\d+)', answer.headers.get("HX-Trigger", ""))
            self.base = int(told[1]) if told else 0
            text: str = answer.read().decode()
            return text

    def turn(self, written: str) -> float:
        """Seconds to the numbers; the page then asks for the proof."""
        sent = {"base": str(self.base), "room": "shape", "path": self.path, "written": written}
        return _seconds(lambda: self._post(f"{self.garment}/turn/", sent, **LIVE))

    def prove(self) -> None:
        """What the page does by itself after a change."""
        self._read(f"{self.garment}/proof/shape/")


@contextmanager
def running() -> Iterator[tuple[str, CookieJar]]:
    """A studio process with its workers, and the owner's cookies."""
    data = tempfile.mkdtemp(prefix="frogless-bench-")
    process = subprocess.Popen(
        [sys.executable, "-m", "frogless", "studio", "--no-browser", "--port", "0"],
        env={**os.environ, "FROGLESS_DATA": data},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        assert process.stdout
        link = process.stdout.readline().split()[-1]
        jar = CookieJar()
        urllib.request.build_opener(urllib.request.HTTPCookieProcessor(jar)).open(link).read()
        yield link.partition("/enter/")[0], jar
    finally:
        process.kill()
        process.wait()
        shutil.rmtree(data, ignore_errors=True)


def edited(
    editor: Editor,
    start: float,
    seconds: float,
    taken: list[float],
    together: threading.Barrier | None = None,
    after: float = 0.0,
) -> None:
    """Turns a length, waits as a person does, and turns it again, until the time is over.

    Args:
        together: where all wait once each has made her first change, which is not measured.
        after: seconds until she begins: people do not press their keys in step.
    """
    written = lengths(start)
    editor.turn(next(written))
    editor.prove()
    if together:
        together.wait()
    time.sleep(after)
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        time.sleep(THINKS)
        taken.append(editor.turn(next(written)))
        editor.prove()


def many(editors: int, seconds: float) -> None:
    """Prints the median of one editor, the 95th percentile of so many, and their ratio."""
    with running() as (address, jar):
        kinds = tuple(LARGEST.items())
        found = [Editor(address, jar, *kinds[n % len(kinds)]) for n in range(editors)]
        alone: list[float] = []
        for editor in found[: len(kinds)]:
            edited(editor, 52.0, seconds / 2, alone)
        together: list[list[float]] = [[] for _ in found]
        barrier = threading.Barrier(editors)
        threads = [
            threading.Thread(target=edited, args=(editor, 80.0 + n * 0.03, seconds, taken, barrier))
            for n, (editor, taken) in enumerate(zip(found, together, strict=True))
        ]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    every = sorted(one for taken in together for one in taken)
    one = Timed("one editor alone, a change over HTTP", tuple(alone))
    print(one.line())
    print(Timed(f"{editors} editors at once, {len(every)} changes", tuple(every)).line())
    high = statistics.quantiles(every, n=20)[-1]
    print(f"  95 of 100 changes took at most {1000 * high:.0f} ms, on {os.cpu_count()} cores")
    print(
        f"  {'95th percentile of ' + str(editors) + ' / median of one':<58}{high / one.median:9.2f}"
    )


def main() -> None:
    """Prints medians, the percentile and the ratios."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--editors", type=int, default=EDITORS)
    asked.add_argument("--seconds", type=float, default=SECONDS)
    asked.add_argument("--alone", action="store_true", help="only the change in process")
    given = asked.parse_args()
    serve.prepared()
    try:
        print(f"a change in the studio; medians of {RUNS} different changes (fastest to slowest)")
        for design, path in LARGEST.items():
            in_process(design, path)
        if not given.alone:
            many(given.editors, given.seconds)
    finally:
        shutil.rmtree(FOLDER, ignore_errors=True)


if __name__ == "__main__":
    main()
