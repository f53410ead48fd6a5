"""Work for the studio's processes, in a module that they can read."""

from __future__ import annotations

import time
from pathlib import Path

from frogless.errors import Impossible, InputError, Place
from frogless.studio.jobs.run import Report


def raising() -> None:
    """What a draft may raise."""
    place = Place("design.toml", 3, "hip")
    raise Impossible("it is too tight", place, short=12.0, ways_out=["a longer section"])


def slow(report: Report, out: Path, parts: int) -> None:
    """Writes something, and takes long over it."""
    for number in range(1, parts + 1):
        out.write_text(f"{number}", encoding="utf-8")
        report(number, f"part {number}")
        time.sleep(0.02)


def refusing(report: Report, out: Path) -> None:
    """Begins to write, and then cannot."""
    out.write_text("half", encoding="utf-8")
    report(1, "half")
    raise InputError("the other half is not there")
