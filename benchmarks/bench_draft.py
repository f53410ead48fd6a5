"""How fast is drafting without the PDF? A skirt of 60 rounds against general-purpose tools.

No other program drafts crochet here to compare with, so each step that a general-purpose tool can
do too is given to one, on the same content and in the same run:

* TOML Kit reads the three files (it keeps places and comments; plain `tomllib` does not);
* OR-Tools CP-SAT, a constraint solver, finds the rhythm of both shaped sections to the same proven
  optimum: clauses and stray are compared, and the benchmark stops when they differ (more of this in
  `bench_planner.py`);
* Python-Markdown makes a web page of the pattern's words;
* `json` of the standard library writes the plan file and reads it back.

The peer is the sum of the four; nearly all of it is the solver's time, so its ratio is also given
alone. Frogless does all that and more: it checks what it reads, lands the counts, chooses the
shaping points, expands every stitch, tallies yarn, judges the fit, writes the text in two dialects,
reads it back and proves it. What it remembers from one draft to the next is forgotten before each run.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import partial
from pathlib import Path

import markdown
import numpy as np
import tomlkit
from forgetting import forget
from rhythm_cpsat import solve as in_parts
from skirt import ROUNDS, in_a_folder, request
from timing import MEDIANS, Timed, ratio, timed

from frogless import draft
from frogless.plan.model import SectionPlan
from frogless.plan.rhythm.engine import Task
from frogless.plan.rhythm.engine import solve as best
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain
from frogless.publish.planfile import dump, planfile
from frogless.publish.webpage import webpage

Answer = tuple[int, float]
PARTS = 100  # lengths are whole hundredths of a mm


def frogless(asked: draft.Request) -> str:
    """Load, plan, expand, tally, fit, prove; text, page and plan file. No PDF."""
    drafted = draft.draft(asked).drafted
    document = pattern(drafted)
    return plain(document) + webpage(document) + dump(planfile(drafted))


def questions(drafted: Drafted) -> list[Task]:
    """What the planner asks for each shaped section."""
    return [_question(drafted, s) for s in drafted.plan.sections if s.chosen is not None]


def _question(drafted: Drafted, section: SectionPlan) -> Task:
    """Lengths in whole hundredths of a mm, so that the solver is asked the same."""
    assert section.chosen is not None
    assert section.evidence is not None
    depths = drafted.plan.main.depths[section.first_round - 1 : section.last_round + 1]
    knots, girths = zip(*section.profile, strict=True)
    width, shapings = section.gauge.width.value, len(section.chosen.rhythm.rounds)
    step = (section.count_after - section.count_before) / shapings * width
    return Task(
        wanted=np.round(np.interp(depths, knots, girths), 2),
        before=round(section.count_before * width, 2),
        step=round(step, 2),
        shapings=shapings,
        indifference=round(section.evidence.indifference, 2),
        floor=np.floor(np.array(section.floor) * 10) / 10 if section.floor else None,
    )


def ours(asked: Sequence[Task]) -> list[Answer]:
    """Clauses and stray of each rhythm, by the planner."""
    found = [best(task) for task in asked]
    return [(one.rhythm.clause_count, round(one.stray, 2)) for one in found if one]


def solver(asked: Sequence[Task]) -> list[Answer]:
    """The same by the solver."""
    found = [in_parts(task, PARTS) for task in asked]
    return [(one.clauses, one.stray / PARTS) for one in found if one]


def read_files(asked: draft.Request) -> None:
    """The three files, read and no more."""
    for file in (asked.design, asked.body, *asked.swatches):
        tomlkit.parse(file.read_text(encoding="utf-8"))


def main() -> None:
    """Prints the medians and the ratios."""
    with in_a_folder() as folder:
        asked = request(Path(folder))
        drafted = draft.draft(asked).drafted
        sections = questions(drafted)
        assert ours(sections) == solver(sections), "the planner and the solver differ"
        words = plain(pattern(drafted))
        plan = planfile(drafted)
        whole = timed("Frogless: the whole draft without PDF", partial(frogless, asked), forget)
        mine = timed("Frogless: the rhythms alone", partial(ours, sections), forget)
        peers = (
            timed("TOML Kit: the three files", partial(read_files, asked)),
            timed("OR-Tools CP-SAT: the rhythms", partial(solver, sections)),
            timed("Python-Markdown: the page", partial(markdown.markdown, words)),
            timed("json: the plan file, written and read", lambda: json.loads(json.dumps(plan))),
        )
    together = Timed(
        "the four together", tuple(map(sum, zip(*(p.seconds for p in peers), strict=True)))
    )
    print(f"drafting a skirt of {ROUNDS} rounds, {len(sections)} of its sections shaped; {MEDIANS}")
    for one in (whole, mine, *peers, together):
        print(one.line())
    print("ratios, below 1 is faster than the peer")
    print(ratio("rhythms, Frogless / OR-Tools CP-SAT", mine, peers[1]))
    print(ratio("whole draft / the four together", whole, together))
    print(ratio("whole draft / json alone", whole, peers[3]))


if __name__ == "__main__":
    main()
