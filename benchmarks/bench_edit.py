"""How fast does a pattern follow an edit? Against the first draft of the same design.

Whoever tries what fits changes one thing after the other and waits for the pattern each time. The
program remembers what an edit leaves as it was, rows, lines, pieces and rhythms, and works out the
rest. Here each edit is timed in a process that has drafted the design before, from the texts of the
files to the document that every page is made of, proof included; and the first draft of the edited
design likewise in a process that remembers nothing. The ratio is how much of the work an edit still
costs.

Every run of an edit changes the length by another amount, so that none is the draft before.
"""

from __future__ import annotations

import re
import statistics
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from forgetting import forget
from skirt import BODY, DESIGNS, SWATCH
from timing import MEDIANS, RUNS, Timed, once

from frogless.draft import Texts, draft_texts
from frogless.publish.pattern import pattern
from frogless.stitches.model import Dialect
from frogless.units import Units

EXAMPLES = (
    "fiddler-cardigan",  # the largest: 231 rows in six pieces
    "hop-garden-skirt",  # rounds of a stitch pattern, each of its own
    "midsummer-dress",  # a yoke, sleeves and a skirt in one
    "ring-dance-skirt",  # the one that every page shows
    "drum-bag",  # the smallest
)
FORMULA = re.compile(r'^(?P<key>length|ease|width|radius) = "(?P<formula>[^"\n]+)"', re.MULTILINE)
STEP = 5  # mm


@dataclass(frozen=True, slots=True)
class Shown:
    """Texts of a draft, and how it is shown."""

    texts: Texts
    terms: Dialect = "us"
    units: Units = "cm"


Edit = Callable[[Shown, int], Shown]


def longer(key: str, before: Shown, run: int) -> Shown:
    """The first formula of that key a little more: wherever it stands, as pieces that match have it."""
    design = before.texts.design
    found = next(one for one in FORMULA.finditer(design) if one["key"] == key)
    more = f'{key} = "{found["formula"]} + {STEP + run} mm"'
    return replace(before, texts=replace(before.texts, design=design.replace(found[0], more)))


def in_uk_terms(before: Shown, _: int) -> Shown:
    """The same in other terms."""
    return replace(before, terms="uk")


def in_inches(before: Shown, _: int) -> Shown:
    """The same in other units."""
    return replace(before, units="in")


def edits(shown: Shown) -> dict[str, Edit]:
    """What is tried on a design: a length, what makes it wider, terms, units."""
    keys = [one["key"] for one in FORMULA.finditer(shown.texts.design)]
    wider = next(key for key in ("ease", "width", "radius") if key in keys)
    return {
        f"length + {STEP} mm and more": partial(longer, "length"),
        f"{wider} + {STEP} mm and more": partial(longer, wider),
        "UK terms": in_uk_terms,
        "inches": in_inches,
    }


def made(shown: Shown) -> object:
    """The whole draft, proven, and its document."""
    return pattern(draft_texts(shown.texts, shown.terms, shown.units).drafted)


def measured(shown: Shown, name: str, edit: Edit) -> tuple[Timed, Timed]:
    """The first draft of what was edited, and the edit itself."""
    first, after = list[float](), list[float]()
    for run in range(RUNS + 1):
        wanted = edit(shown, run)
        forget()
        first.append(once(partial(made, wanted)))
        forget()
        made(shown)
        after.append(once(partial(made, wanted)))
    # The first run is not counted: it imports, and makes the reader's tables.
    return Timed(f"{name}: first draft", tuple(first[1:])), Timed(name, tuple(after[1:]))


def main() -> None:
    """Prints the medians and the ratios."""
    print(f"an edit of a design, to the proven document; {MEDIANS}")
    ratios = []
    for example in EXAMPLES:
        design = (DESIGNS / example / "design.toml").read_text(encoding="utf-8")
        body, swatch = BODY.read_text(encoding="utf-8"), SWATCH.read_text(encoding="utf-8")
        shown = Shown(Texts(design, body, (swatch,)))
        print(example)
        for name, edit in edits(shown).items():
            first, after = measured(shown, name, edit)
            ratios.append(after.median / first.median)
            print(f"{after.line()}, {ratios[-1]:.2f} of the first draft, {1000 * first.median:.0f}")
    print("an edit / the first draft, below 1 is less work")
    print(f"  {'median of all edits':<58}{statistics.median(ratios):9.2f}")
    print(f"  {'worst':<58}{max(ratios):9.2f}")


if __name__ == "__main__":
    main()
