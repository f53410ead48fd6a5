"""How many planted slips are found, and how often a right pattern is blamed.

    python benchmarks/proofread_mutants.py [HOW_MANY]

Right patterns are those of tests/reference/proofread and the drafts of all designs in designs/.
Each slip changes one thing in one row (tests/planting.py). It counts as found when a finding stands
at its row or at the next one, where it is felt. The same slip in a text that is left unchanged by
it, in letters, is none.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests"))

from mutants_found import found_at_row, right_patterns  # noqa: E402
from planting import planted  # noqa: E402

from frogless.proofread.run import proofread  # noqa: E402


def main(how_many: int = 2000) -> None:
    """Prints the rates for each kind of slip, the slips that were missed, and false alarms."""
    texts = right_patterns()
    blamed = [name for name, text in texts if proofread(text).findings]
    tried, found, missed = Counter[str](), Counter[str](), []
    each = -(-how_many // len(texts))
    for number, (name, text) in enumerate(texts):
        for slip in planted(text, seed=number, most=each):
            tried[slip.how] += 1
            if found_at_row(slip):
                found[slip.how] += 1
            else:
                missed.append(f"{name}:{slip.line} {slip.how}: {slip.old!r} -> {slip.new!r}")
    for how in tried:
        print(f"  {how:<20}{found[how]:5} of {tried[how]:5}  {found[how] / tried[how]:7.2%}")
    total = sum(tried.values())
    print(f"  {'all':<20}{total - len(missed):5} of {total:5}  {1 - len(missed) / total:7.2%}")
    print(f"  false alarms on unchanged patterns: {len(blamed)} of {len(texts)}", *blamed)
    print("\n".join(missed))


if __name__ == "__main__":
    main(*map(int, sys.argv[1:2]))
