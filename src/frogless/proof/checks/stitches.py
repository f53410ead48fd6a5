"""Checks of stitches: each closes, each has a name of its own in both dialects."""

from __future__ import annotations

from frogless.proof.model import Finding, Subject, finding
from frogless.rows.count import SLIP_STITCH
from frogless.rows.nodes import Together
from frogless.rows.walk import nodes, stitch_keys
from frogless.stitches.steps import closes, loops_after
from frogless.stitches.together import can_close_together


def _used(subject: Subject) -> list[str]:
    rows = [row for piece in subject.program.pieces for row in piece.rows]
    found = {key for row in rows for key in stitch_keys(row.body)}
    if any(row.start.across for row in rows):
        found.add(SLIP_STITCH)
    return sorted(found | {seam.stitch for seam in subject.program.seams})


def _together(subject: Subject) -> list[tuple[str, int]]:
    """Stitches that are worked together, with over how many places."""
    bodies = (row.body for piece in subject.program.pieces for row in piece.rows)
    met = (node for body in bodies for node, _ in nodes(body))
    return sorted({(n.stitch, n.places) for n in met if isinstance(n, Together)})


def check_stitches_close(subject: Subject) -> Finding:
    """Every stitch that is used, alone or worked together, ends with one loop on the hook."""
    used, together = _used(subject), _together(subject)
    faults = [
        f"{key}: ends with {loops_after(subject.stitches[key].steps)[-1]} loops on the hook"
        for key in used
        if not closes(subject.stitches[key])
    ]
    faults += [
        f"{key}: {places} of them do not close together"
        for key, places in together
        if places < 2 or not can_close_together(subject.stitches[key])
    ]
    return finding("stitches_close", faults, len(used) + len(together), "stitches")


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
