"""Reports of written patterns, made by hand: what the proofreading room is shown before it is asked."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.findings import Finding, NotUnderstood, Report
from frogless.proofread.script.model import Label, Script, Span
from frogless.proofread.words.model import Evidence, Numbers, Said, Stated, Terms
from frogless.proofread.work.model import Assumption, Problem, Reckoning, Told, Worked

ROW = re.compile(r"^(Rnd|Row) (\d+): (.*)$", re.MULTILINE)
COUNT = re.compile(r"\((\d[^()]*(?:\([^()]*\))?) sts\)")
NUMBER = re.compile(r"\d+")


def report(text: str, made: dict[int, tuple[int, ...]], sizes: tuple[str, ...] = ("",)) -> Report:
    """What would be told of a text whose rows make so many stitches, size by size.

    A row that states another count than it makes has a finding at its count.

    Args:
        made: stitches by row; a row that is not in it makes what it states.
    """
    told, worked, findings = [], [], []
    below: tuple[int, ...] = tuple(0 for _ in sizes)
    for row in ROW.finditer(text):
        number, label = int(row[2]), Span(row.start(1), row.start(3))
        count = COUNT.search(text, row.start(), row.end())
        stated = tuple(map(int, NUMBER.findall(count[1]))) if count else ()
        span = Span(count.start(1), count.end(1)) if count else label
        said = Said((), (Stated(span, Numbers(stated, span)),) if stated else ())
        kind = "round" if row[1] == "Rnd" else "row"
        told.append(Told(said, Span(row.start(3), row.end()), Label(label, kind, (number,))))
        says = stated if len(stated) == len(sizes) else stated * len(sizes)
        makes = made.get(number, says)
        wrong = []
        for size, name in enumerate(sizes):
            problem = ()
            if says and says[size] != makes[size]:
                problem = (Problem("count", span, says=says[size], works=makes[size]),)
                wrong.append(name)
            worked.append(
                Worked(
                    len(told) - 1,
                    number,
                    size,
                    says[size] if says else None,
                    makes[size] if makes else None,
                    below[size],
                    below[size],
                    "wrong" if problem else "ok",
                    problem,
                )
            )
        if wrong:
            findings.append(_finding(span, f"{row[1]} {number}", number, says, makes, wrong, sizes))
        below = makes or below
    return _whole(text, sizes, told, worked, findings)


def _finding(
    span: Span,
    row: str,
    number: int,
    says: tuple[int, ...],
    makes: tuple[int, ...],
    wrong: list[str],
    sizes: tuple[str, ...],
) -> Finding:
    first = sizes.index(wrong[0])
    return Finding(
        "row-count",
        span,
        f"{says[first]} sts",
        f"{makes[first]} sts",
        f"{row} works {makes[first]} stitches; the count that it states is another.",
        "certain",
        row,
        number,
        tuple(wrong) if len(wrong) < len(sizes) else (),
    )


def _whole(
    text: str,
    sizes: tuple[str, ...],
    told: list[Told],
    worked: list[Worked],
    findings: list[Finding],
) -> Report:
    starts = (0, *(found.end() for found in re.finditer("\n", text)))
    evidence = tuple(_spoken(text))
    terms = Terms("us", guessed=True, evidence=evidence)
    unclear = tuple(
        NotUnderstood(Span(found.start(), found.end()), "sc in next st", "2")
        for found in re.finditer("frobnicate [a-z ]+", text)
    )
    return Report(
        Script(text, text, starts, sizes=sizes),
        terms,
        tuple(told),
        Reckoning(tuple(worked)),
        tuple(findings),
        unclear,
        0.97 if unclear else 1.0,
        (Assumption("The rounds are not joined.", evidence[0].span if evidence else None),),
    )


def _spoken(text: str) -> Iterator[Evidence]:
    for found in re.finditer(r"\bsc\b", text):
        yield Evidence("us", "only US terms have sc", Span(found.start(), found.end()))
        return
