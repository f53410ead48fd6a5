"""The proof: every check of the table, run over a drafted pattern."""

from __future__ import annotations

from collections.abc import Callable

from frogless.errors import ProofFailed
from frogless.proof.checks import colours, edges, fit, rows, shaping, stitches, text
from frogless.proof.model import Finding, Subject

CHECKS: tuple[Callable[[Subject], Finding], ...] = (
    rows.check_places,
    rows.check_repeats,
    rows.check_counts,
    rows.check_planned,
    rows.check_rounds,
    rows.check_numbers,
    shaping.check_shaping_rounds,
    shaping.check_lines,
    shaping.check_markers,
    edges.check_multiples,
    edges.check_begins,
    edges.check_seams,
    edges.check_joins,
    stitches.check_stitches_close,
    stitches.check_terms,
    colours.check_colours,
    fit.check_ease,
    fit.check_goes_on,
    fit.check_stays_up,
    fit.check_stride,
    text.check_reads_back,
)


def prove(subject: Subject) -> tuple[Finding, ...]:
    """What every check found, in the order of the table."""
    return tuple(check(subject) for check in CHECKS)


def require(findings: tuple[Finding, ...]) -> None:
    """Stops publication when a check failed.

    Raises:
        ProofFailed: with one sentence for each check that failed.
    """
    failed = [f"{f.name}: {f.detail}" for f in findings if f.verdict == "fail"]
    if failed:
        raise ProofFailed(failed)
