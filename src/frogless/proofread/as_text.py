"""What proofreading found, told on a terminal: each place in turn, then what is left open."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from frogless.proofread.as_json import terms_from
from frogless.proofread.checks.table import CHECKS
from frogless.proofread.findings import Finding, Report
from frogless.proofread.script.model import Span

MOST_WORDS = 160
"""Letters of the pattern that are quoted at one place."""

MOST_REASONS = 3
"""Words for which a dialect is taken that are told; the rest are more of the same."""

_TERMS = {"us": "US", "uk": "UK"}
_FROM = {"asked": "as asked for", "declared": "as the pattern says", "guessed": "guessed"}

Entry = tuple[str, str]
"""What stands in the margin, and what is told beside it."""


def told(report: Report, columns: int = 100, *, size: str = "", remarks: Sequence[str] = ()) -> str:
    """Findings by line, what was not understood, what was assumed, the terms, and the sum of it.

    Args:
        columns: characters in a line.
        size: the name of the one size that was asked about; "": all.
        remarks: what is to be said of the file.
    """
    parts = [
        [_finding(each, report) for each in report.findings],
        list(_not_understood(report)),
        list(_assumed(report)),
        list(_summary(report, size, remarks)),
    ]
    margin = max(len(label) for part in parts for label, _ in part) + 2
    return "\n".join(_set(part, margin, columns) for part in parts if part)


def checks_told(columns: int = 100) -> str:
    """The names of all checks, each with what it looks for."""
    entries = [(check.name, check.title) for check in CHECKS]
    return _set(entries, max((len(name) for name, _ in entries), default=0) + 2, columns)


def _set(entries: Sequence[Entry], margin: int, columns: int) -> str:
    """Each text beside its label, every line of it wrapped in its own column."""
    lines: list[str] = []
    for label, text in entries:
        wrapped = [
            line
            for one in text.split("\n")
            for line in textwrap.wrap(one, columns - margin, break_on_hyphens=False) or [""]
        ]
        lines.append(f"{label:<{margin}}{wrapped[0]}".rstrip())
        lines += [" " * margin + line for line in wrapped[1:]]
    return "".join(f"{line}\n" for line in lines)


def _finding(each: Finding, report: Report) -> Entry:
    where = ", ".join(part for part in (each.piece, each.row, _sizes(each.sizes)) if part)
    says = f"says: {each.says}" if each.says else ""
    works = f"works out to: {each.works_out_to}" if each.works_out_to else ""
    return _line(each.span, report), "\n".join(
        part
        for part in (
            f"{where}: {_quoted(each.span, report)}" if where else _quoted(each.span, report),
            "; ".join(one for one in (says, works) if one),
            each.hint,
            f"[{each.kind}, {each.certainty}]",
        )
        if part
    )


def _sizes(names: Sequence[str]) -> str:
    if not names:
        return ""
    return f"size {names[0]}" if len(names) == 1 else f"sizes {', '.join(names)}"


def _not_understood(report: Report) -> Iterator[Entry]:
    told = {each.span for each in report.findings}
    for each in report.not_understood:
        if each.span in told:
            continue  # it is a finding as well, and stands there
        row = f"{each.row}: " if each.row else ""
        guess = f"; perhaps {each.guess}" if each.guess else ""
        words = _quoted(each.span, report)
        yield _line(each.span, report), f"not understood: {row}{words}{guess}"


def _assumed(report: Report) -> Iterator[Entry]:
    for each in report.assumptions:
        yield "" if each.span is None else _line(each.span, report), f"assumed: {each.sentence}"


def _summary(report: Report, size: str, remarks: Sequence[str]) -> Iterator[Entry]:
    yield from (("file", remark) for remark in remarks)
    yield "terms", _terms(report)
    if sizes := [name for name in report.script.sizes if name]:
        yield "sizes", ", ".join(sizes) + (f"; {size} was asked for" if size else "")
    if report.silenced:
        yield "left out", ", ".join(report.silenced)
    yield "understood", f"{_share(report.understood)} of the letters of the instructions"
    yield "result", _result(report)


def _terms(report: Report) -> str:
    # The strongest first; in the order of the text where they are equally strong.
    evidence = sorted(
        (one for one in report.terms.evidence if one.dialect == report.terms.dialect),
        key=lambda one: -one.weight,
    )
    because = "; ".join(f"{one.why} ({_line(one.span, report)})" for one in evidence[:MOST_REASONS])
    told = f"{_TERMS[report.terms.dialect]}, {_FROM[terms_from(report)]}"
    return f"{told}: {because}" if because else told


def _share(understood: float) -> str:
    """Never 100 % when something is left."""
    percent = understood * 100
    return f"{percent:.0f} %" if percent in (0, 100) else f"{min(percent, 99.9):.1f} %"


def _result(report: Report) -> str:
    rows = len({(each.told, each.number) for each in report.reckoning.rows})
    read = f"{rows} row{'s' * (rows != 1)} worked out"
    number = len(report.findings)
    if not number:
        return f"everything adds up; {read}"
    return f"{number} place{'s' * (number != 1)} where it does not add up; {read}"


def _line(span: Span, report: Report) -> str:
    return f"line {report.script.line(span.start)}"


def _quoted(span: Span, report: Report) -> str:
    words = report.script.words(span)
    return f'"{words}"' if len(words) <= MOST_WORDS else f'"{words[: MOST_WORDS - 1]}…"'
