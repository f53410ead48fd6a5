"""How many planted slips are found, and how often a right pattern is blamed.

    python benchmarks/proofread_mutants.py [HOW_MANY] [--seed N] [--also FOLDER]

Right patterns are those of tests/reference/proofread, and those in FOLDER of which nothing is blamed.
Each slip changes one thing in one row (tests/planting.py). It counts as found when a finding stands
at its row or at the next one, where it is felt. The slips of tests/reference/proofread/just_as_right.csv
leave a pattern that is just as right; they are told apart, and the second rate leaves them out.
Another seed plants other slips of the same kinds.
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests"))

from mutants_found import found_at_row, is_just_as_right, right_patterns  # noqa: E402
from planting import planted  # noqa: E402

from frogless.proofread.run import proofread  # noqa: E402


def main(how_many: int, seed: int, also: Path | None) -> None:
    """Prints the rates for each kind of slip, the slips that were missed, and false alarms."""
    texts = [*right_patterns(), *(_clean(also) if also else ())]
    blamed = [name for name, text in texts if proofread(text).findings]
    tried, found, right = Counter[str](), Counter[str](), Counter[str]()
    missed: list[str] = []
    each = -(-how_many // len(texts))
    for number, (name, text) in enumerate(texts):
        for slip in planted(text, seed=seed * 1000 + number, most=each):
            tried[slip.how] += 1
            if found_at_row(slip):
                found[slip.how] += 1
            elif is_just_as_right(name, text, slip):
                right[slip.how] += 1
            else:
                missed.append(f"{name}:{slip.line} {slip.how}: {slip.old!r} -> {slip.new!r}")
    print(f"  {'':<20}{'found':>6}{'tried':>7}{'right':>7}{'of all':>9}{'of slips':>9}")
    for how in tried:
        _row(how, found[how], tried[how], right[how])
    _row("all", found.total(), tried.total(), right.total())
    print(f"  false alarms on unchanged patterns: {len(blamed)} of {len(texts)}", *blamed)
    print("\n".join(missed))


def _row(name: str, found: int, tried: int, right: int) -> None:
    slips = max(tried - right, 1)
    print(f"  {name:<20}{found:6}{tried:7}{right:7}{found / tried:9.2%}{found / slips:9.2%}")


def _clean(folder: Path) -> list[tuple[str, str]]:
    """The patterns of a folder that nothing is found in; the others may not be right."""
    texts = [
        (path.name, path.read_text(encoding="utf-8"))
        for path in sorted(folder.rglob("*"))
        if path.suffix in (".txt", ".md")
    ]
    return [(name, text) for name, text in texts if not proofread(text).findings]


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("how_many", nargs="?", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--also", type=Path)
    asked = parser.parse_args()
    main(asked.how_many, asked.seed, asked.also)
