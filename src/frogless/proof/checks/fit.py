"""Checks of fit: every landmark within its allowed ease, the garment goes on, stays up and leaves a stride."""

from __future__ import annotations

from frogless.fit.staying_up import is_held
from frogless.fit.stride import has_hem
from frogless.proof.model import Finding, Subject, Verdict, finding


def check_ease(subject: Subject) -> Finding:
    """No landmark lies outside its allowed ease."""
    faults = [
        f"{mark.at}: {mark.garment / 10:.1f} cm is {mark.verdict}"
        for mark in subject.fit.landmarks
        if mark.verdict != "ok"
    ]
    return finding("ease", faults, len(subject.fit.landmarks), "landmarks")


def check_goes_on(subject: Subject) -> Finding:
    """The narrowest opening passes the widest part, as far as is known."""
    tried = subject.fit.openings or (subject.fit.going_on,)
    faults = [" ".join(one.reasons) for one in tried if one.verdict != "passes"]
    failed = any(one.verdict == "does not pass" for one in tried)
    worst: Verdict = "fail" if failed else "warn"
    return finding("goes_on", faults, len(tried), "openings", worst)


def check_stays_up(subject: Subject) -> Finding:
    """An elastic, a cord, a band or straps hold up what does not hang from the shoulders."""
    if not subject.fit.staying_up:
        return finding("stays_up", [], 0, "waists", "warn")
    held = is_held(subject.plan)
    return finding("stays_up", [] if held else [subject.fit.staying_up], 1, "waists", "warn")


def check_stride(subject: Subject) -> Finding:
    """The hem of what goes down over the hips leaves a full stride."""
    told = subject.fit.stride
    return finding("stride", [told] if told else [], int(has_hem(subject.plan)), "hems", "warn")
