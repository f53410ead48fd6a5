"""What proofreading found, told on a terminal: each place in turn, then what is left open."""

from __future__ import annotations

import textwrap
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from frogless.proofread.as_json import terms_from
from frogless.proofread.checks.rows.lines import row_name
from frogless.proofread.checks.table import CHECKS
from frogless.proofread.findings import Finding, Report
from frogless.proofread.script.model import Span

MOST_WORDS = 160
"""Letters of the pattern that are quoted at one place."""

MOST_REASONS = 2
"""Words for which a dialect is guessed that are told; the rest are more of the same."""

MOST_ROWS = 3
"""Rows that are named where more could not be worked out."""

NO_SUMS = frozenset({
    "unclear", "doubtful-reading", "undefined-abbreviation", "unused-abbreviation", "mixed-terms",
    "turning-chain", "stitch-odd", "material-unused", "material-missing",
})  # fmt: skip
"""Checks that weigh no number against another: what was found is said in the hint alone."""

MOST_LINES = 4
"""Lines that are named where the same holds for many."""

MOST_UNREAD = 3
"""Words of one row that are quoted where no sense was made of more."""

UNREAD = "unclear"
"""The check that tells of words that no sense was made of."""

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
        list(_findings(report)),
        list(_not_understood(report)),
        list(_assumed(report)),
        list(_summary(report, size, remarks)),
    ]
    margin = max(len(label) for part in parts for label, _ in part) + 2
    found, *others = parts
    blocks = [*([one] for one in found), *others]
    return "\n".join(_set(block, margin, columns) for block in blocks if block)


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


def _findings(report: Report) -> Iterator[Entry]:
    hints: set[str] = set()
    for each in report.findings:
        if each.kind == UNREAD:
            yield _unread(each, report, "" if each.hint in hints else each.hint)
            hints.add(each.hint)
        else:
            yield _finding(each, report)


def _unread(each: Finding, report: Report, hint: str) -> Entry:
    """Words of a row that no sense was made of, all of them once; what follows is told once."""
    row = _row_of(each.span, report)
    spans = [one.span for one in report.not_understood if _within(one.span, row)] or [each.span]
    words = ", ".join(_quoted(span, report) for span in spans[:MOST_UNREAD])
    more = f" and {len(spans) - MOST_UNREAD} more" if len(spans) > MOST_UNREAD else ""
    where = _where(each)
    parts = (
        f"{where}: not understood: {words}{more}" if where else f"not understood: {words}{more}",
        hint,
        f"[{each.kind}, {each.certainty}]",
    )
    return _line(each.span, report), "\n".join(part for part in parts if part)


def _row_of(span: Span, report: Report) -> Span:
    """The row or sentence that words stand in; they themselves where none does."""
    at = bisect_right(report.told, span, key=lambda one: one.span)
    rows = (one.span for one in report.told[max(0, at - 2) : at + 1])
    return next((row for row in rows if _within(span, row)), span)


def _within(span: Span, row: Span) -> bool:
    return row.start <= span.start and span.end <= row.end


def _where(each: Finding) -> str:
    return ", ".join(part for part in (each.piece, each.row, _sizes(each.sizes)) if part)


def _finding(each: Finding, report: Report) -> Entry:
    where = _where(each)
    said_again = each.says == report.script.words(each.span)
    sums = each.kind not in NO_SUMS
    says = f"says: {each.says}" if each.says and sums and not said_again else ""
    works = f"works out to: {each.works_out_to}" if each.works_out_to and sums else ""
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
    told = {_row_of(each.span, report) for each in report.findings if each.kind == UNREAD}
    spans: dict[str, list[Span]] = defaultdict(list)
    for each in report.not_understood:
        if _row_of(each.span, report) in told:
            continue  # it is a finding as well, and stands there
        row = f"{each.row}: " if each.row else "between rows: "
        guess = f"; perhaps {each.guess}" if each.guess else ""
        spans[f"not understood: {row}{_quoted(each.span, report)}{guess}"].append(each.span)
    yield from _once_each(spans, report)


def _assumed(report: Report) -> Iterator[Entry]:
    spans: dict[str, list[Span]] = defaultdict(list)
    for each in report.assumptions:
        spans[f"assumed: {each.sentence}"] += [each.span] if each.span else []
    yield from _once_each(spans, report)


def _once_each(spans: Mapping[str, Sequence[Span]], report: Report) -> Iterator[Entry]:
    """The same sentence once, with the lines that it holds for."""
    for sentence, places in spans.items():
        lines = list(dict.fromkeys(report.script.line(span.start) for span in places))
        also = _numbers(lines[1:])
        yield f"line {lines[0]}" if lines else "", f"{sentence} ({also})" if also else sentence


def _numbers(lines: Sequence[int]) -> str:
    if not lines:
        return ""
    named = ", ".join(map(str, lines[:MOST_LINES]))
    more = f" and {len(lines) - MOST_LINES} more" if len(lines) > MOST_LINES else ""
    return f"also line{'s' * (len(lines) > 1)} {named}{more}"


def _summary(report: Report, size: str, remarks: Sequence[str]) -> Iterator[Entry]:
    yield from (("file", remark) for remark in remarks)
    yield "terms", _terms(report)
    if sizes := [name for name in report.script.sizes if name]:
        named = "" if report.script.sizes_at else " (the pattern names none)"
        yield "sizes", ", ".join(sizes) + named + (f"; {size} was asked for" if size else "")
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
    source = terms_from(report)
    told = f"{_TERMS[report.terms.dialect]}, {_FROM[source]}"
    return f"{told}: {because}" if because and source == "guessed" else told


def _share(understood: float) -> str:
    """Never 100 % when something is left."""
    percent = understood * 100
    return f"{percent:.0f} %" if percent in (0, 100) else f"{min(percent, 99.9):.1f} %"


def _result(report: Report) -> str:
    rows = len({(each.told, each.number) for each in report.reckoning.rows})
    open_ = dict.fromkeys((each.told, each.number) for each in report.open_rows)
    if open_:
        read = f"{rows - len(open_)} of {rows} rows worked out, not {_named(list(open_), report)}"
    else:
        read = f"{rows} row{'s' * (rows != 1)} worked out"
    unread = sum(each.kind == UNREAD for each in report.findings)
    number = len(report.findings) - unread
    told = f"{_places(number)} where it does not add up" if number else ""
    if unread:
        left = f"{_places(unread)} that {'was' if unread == 1 else 'were'} not understood"
        told = f"{told}, {left}" if told else f"not proven: {left}"
    if not told:
        told = "not proven, though nothing was found" if open_ else "everything adds up"
    return f"{told}; {read}"


def _named(rows: Sequence[tuple[int, int | None]], report: Report) -> str:
    """Rows by their names, each once: "Rnd 3, Rnd 22 and 4 more"."""
    names = [
        row_name(report.told[told].label, number) or _line(report.told[told].span, report)
        for told, number in rows[:MOST_ROWS]
    ]
    more = f" and {len(rows) - MOST_ROWS} more" if len(rows) > MOST_ROWS else ""
    return ", ".join(dict.fromkeys(names)) + more


def _places(number: int) -> str:
    return f"{number} place{'s' * (number != 1)}"


def _line(span: Span, report: Report) -> str:
    return f"line {report.script.line(span.start)}"


def _quoted(span: Span, report: Report) -> str:
    words = report.script.words(span)
    return f'"{words}"' if len(words) <= MOST_WORDS else f'"{words[: MOST_WORDS - 1]}…"'
