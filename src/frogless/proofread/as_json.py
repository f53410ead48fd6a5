"""What proofreading found, as data for other programs (schema/proofread.schema.json)."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from typing import Any

from frogless.proofread.findings import Finding, Report
from frogless.proofread.work.model import Told, Worked

FORMAT = "frogless-proofread/1"


def data(report: Report, size: str = "", remarks: Sequence[str] = ()) -> dict[str, Any]:
    """The report; docs/proofreading.md says what each key is.

    Args:
        size: the name of the one size that is asked about; "": all.
        remarks: what is to be said of the file.
    """
    script = report.script
    return {
        "format": FORMAT,
        "terms": report.terms.dialect,
        "terms_from": terms_from(report),
        "sizes": [name for name in script.sizes if name],
        "proven": report.proven,
        "understood": round(report.understood, 4),
        "rows": [
            _row(each, report)
            for each in _rows(report)
            if not size or script.sizes[each.size] == size
        ],
        "findings": [one for each in report.findings for one in _findings(each, report, size)],
        "not_understood": [
            {
                "line": script.line(each.span.start),
                "row": each.row or None,
                "words": script.words(each.span),
                "guess": each.guess or None,
            }
            for each in report.not_understood
        ],
        "assumptions": [
            {
                "line": None if each.span is None else script.line(each.span.start),
                "sentence": each.sentence,
            }
            for each in report.assumptions
        ],
        "silenced": list(report.silenced),
        "remarks": list(remarks),
    }


def terms_from(report: Report) -> str:
    """Where the dialect comes from: it was "asked" for, "declared" by the pattern, or "guessed"."""
    if report.terms.guessed:
        return "guessed"
    return "declared" if report.terms.declared == report.terms.dialect else "asked"


def _rows(report: Report) -> Iterator[Worked]:
    """All rows; a sentence between them that is no row, as nothing is said of what it leaves, not."""
    at = sorted(finding.span.start for finding in report.findings)
    for each in report.reckoning.rows:
        told = report.told[each.told]
        if told.label is None and each.verdict == "wrong":
            first = bisect_left(at, told.span.start)
            if first == len(at) or at[first] >= told.span.end:
                continue
        yield each


def _row(each: Worked, report: Report) -> dict[str, Any]:
    told = report.told[each.told]
    place = told.label.span if told.label else told.span
    return {
        "number": each.number,
        "name": row_name(told, each.number) or None,
        "piece": told.piece_name or None,
        "line": report.script.line(place.start),
        "size": report.script.sizes[each.size] or None,
        "stated": each.stated,
        "worked": each.worked,
        "consumed": each.consumed,
        "available": each.available,
        "verdict": each.verdict,
    }


def row_name(told: Told, number: int | None) -> str:
    """What a row is called: "Rnd 7", "Row 2", "foundation"; "" for a sentence between rows."""
    if told.label is None:
        return ""
    if number is None:
        return told.label.name
    return f"{'Rnd' if told.label.kind == 'round' else 'Row'} {number}"


def _findings(each: Finding, report: Report, size: str) -> Iterator[dict[str, Any]]:
    """One for each size that it holds for; one for all of them, without a size."""
    sizes: tuple[str, ...] = each.sizes or ("",)
    for one in sizes:
        if size and one not in ("", size):
            continue
        yield {
            "line": report.script.line(each.span.start),
            "row": each.number,
            "name": each.row or None,
            "piece": each.piece or None,
            "size": one or None,
            "kind": each.kind,
            "words": report.script.words(each.span),
            "says": each.says,
            "works_out_to": each.works_out_to,
            "hint": each.hint,
            "certainty": each.certainty,
        }
