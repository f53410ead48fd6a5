"""Writes examples.csv anew and shows what changed: python tests/golden/draft/regenerate.py"""

from __future__ import annotations

import csv
import difflib
import io
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from examples import Example, drafted, every_example

from frogless.errors import FroglessError

TABLE = Path(__file__).with_name("examples.csv")
COLUMNS = ("design", "body", "swatch", "result", "rounds", "counts", "says")


def row(example: Example) -> dict[str, str]:
    """What becomes of an example: counts and rounds at landmarks, or the refusal and its key."""
    told = {"design": example.design, "body": example.body, "swatch": example.swatch}
    try:
        plan = drafted(example).plan
    except FroglessError as error:
        return told | {
            "result": type(error).__name__,
            "rounds": "",
            "counts": error.faults[0].place.key or error.faults[0].place.file,
            "says": error.faults[0].message.partition(";")[0],
        }
    marks = (f"{mark.key.removesuffix('_girth')} {mark.count}" for mark in plan.main.landmarks)
    rounds = (f"{mark.rounds}" for mark in plan.main.landmarks)
    return told | {
        "result": "drafted",
        "rounds": " ".join(rounds),
        "counts": "; ".join(marks),
        "says": "",
    }


def table(design: str = "") -> str:
    """All examples, or those of one design, as CSV."""
    text = io.StringIO()
    writer = csv.DictWriter(text, COLUMNS, lineterminator="\n")
    writer.writeheader()
    writer.writerows(row(each) for each in every_example() if design in ("", each.design))
    return text.getvalue()


def difference(old: str, new: str) -> str:
    """The lines that differ."""
    lines = difflib.unified_diff(
        old.splitlines(), new.splitlines(), "examples.csv", "as drafted now", lineterm="", n=0
    )
    return "\n".join(lines)


if __name__ == "__main__":
    before = TABLE.read_text(encoding="utf-8") if TABLE.exists() else ""
    after = table()
    TABLE.write_text(after, encoding="utf-8")
    print(difference(before, after) or "nothing has changed")
