"""Reports of proofreading made by hand, so that what is told of them is tried apart from the reading."""

from __future__ import annotations

from dataclasses import replace

from frogless.proofread.findings import Finding, NotUnderstood, Report
from frogless.proofread.script.model import Label, Script, Span
from frogless.proofread.words.model import Evidence, Said, Terms
from frogless.proofread.work.model import Assumption, Problem, Reckoning, Told, Worked

TEXT = """\
DRUMMER'S CAP
Sizes: S (M)

CROWN
Rnd 1: 6 sc in a ring. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (20 sc)
Rnd 4: Sc in next 10 (12) sts as you hear the drum.
"""


def span(words: str) -> Span:
    """Where words stand in the text."""
    start = TEXT.index(words)
    return Span(start, start + len(words))


SCRIPT = Script(
    text=TEXT,
    plain=TEXT,
    starts=(0, *(place + 1 for place, letter in enumerate(TEXT) if letter == "\n")),
    sizes=("S", "M"),
    sizes_at=span("S (M)"),
)

_ROWS = ("6 sc in a ring", "2 sc in each st", "*Sc in next st", "Sc in next 10")
_COUNTS = ((6, 6, None, None), (12, 12, 6, 6), (20, 18, 12, 12))
TOLD = tuple(
    Told(
        Said(()),
        span(words),
        Label(span(f"Rnd {number}:"), "round", (number,)),
        piece_name="CROWN",
        begins=number == 1,
    )
    for number, words in enumerate(_ROWS, 1)
)


def _worked(number: int, size: int) -> Worked:
    if number == 4:
        return Worked(3, 4, size, None, None, None, 18, "unclear")
    stated, worked, consumed, available = _COUNTS[number - 1]
    wrong = stated != worked
    problems = (Problem("count", span("20 sc"), stated, worked),) if wrong else ()
    return Worked(
        number - 1,
        number,
        size,
        stated,
        worked,
        consumed,
        available,
        "wrong" if wrong else "ok",
        problems,
    )


REPORT = Report(
    script=SCRIPT,
    terms=Terms("us", guessed=True, evidence=(Evidence("us", '"sc"', span("sc in a ring")),)),
    told=TOLD,
    reckoning=Reckoning(tuple(_worked(number, size) for number in (1, 2, 3, 4) for size in (0, 1))),
    findings=(
        Finding(
            kind="count",
            span=span("20 sc"),
            says="20 sc",
            works_out_to="18 sc",
            hint="The repeat is worked 6 times and makes 3 each time. Two stitches too many are stated.",
            certainty="certain",
            row="Rnd 3",
            number=3,
            piece="CROWN",
        ),
        Finding(
            kind="too-few",
            span=span("Sc in next 10 (12) sts"),
            says="10 sts",
            works_out_to="18 sts",
            hint="8 stitches of Rnd 3 are left over.",
            certainty="likely",
            row="Rnd 4",
            number=4,
            sizes=("S",),
            piece="CROWN",
        ),
    ),
    not_understood=(NotUnderstood(span("as you hear the drum"), "a remark", "Rnd 4"),),
    understood=0.87654,
    assumptions=(
        Assumption('"a ring" is an adjustable ring.', span("a ring")),
        Assumption("The work is not turned between rounds."),
    ),
    silenced=("gauge",),
)

PROVEN = replace(
    REPORT,
    told=TOLD[:2],
    reckoning=Reckoning(REPORT.reckoning.rows[:4]),
    findings=(),
    not_understood=(),
    understood=1.0,
    assumptions=(),
    silenced=(),
)
