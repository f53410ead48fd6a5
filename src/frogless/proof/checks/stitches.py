"""Checks of stitches: each closes, each has a name of its own in both dialects."""

from __future__ import annotations

from frogless.proof.model import Finding, Subject, finding
from frogless.rows.walk import stitch_keys
from frogless.stitches.steps import closes, loops_after


def _used(subject: Subject) -> list[str]:
    bodies = (row.body for piece in subject.program.pieces for row in piece.rows)
    found = {key for body in bodies for key in stitch_keys(body)}
    return sorted(found | {seam.stitch for seam in subject.program.seams})


def check_stitches_close(subject: Subject) -> Finding:
    """Every stitch that is used ends with one loop on the hook, as it began."""
    used = _used(subject)
    faults = [
        f"{key}: ends with {loops_after(subject.stitches[key].steps)[-1]} loops on the hook"
        for key in used
        if not closes(subject.stitches[key])
    ]
    return finding("stitches_close", faults, len(used), "stitches")


def check_terms(subject: Subject) -> Finding:
    """Every stitch of the pattern has an abbreviation in each dialect, shared with no other."""
    used = _used(subject)
    faults = []
    for dialect in subject.texts:
        seen: dict[str, str] = {}
        for key in used:
            term = subject.stitches[key].terms.get(dialect)
            if term is None:
                faults.append(f"{dialect}: {key} has no abbreviation")
                continue
            short = term.abbreviation
            if short in seen:
                faults.append(f'{dialect}: "{short}" stands for {seen[short]} and for {key}')
            seen[short] = key
    return finding("terms", faults, len(used) * len(subject.texts), "terms")
