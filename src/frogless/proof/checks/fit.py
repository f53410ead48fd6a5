"""Checks of fit: every landmark within its allowed ease, the garment goes on and stays up."""

from __future__ import annotations

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
    going = subject.fit.going_on
    faults = [] if going.verdict == "passes" else [" ".join(going.reasons)]
    worst: Verdict = "fail" if going.verdict == "does not pass" else "warn"
    return finding("goes_on", faults, 1, "openings", worst)


def check_stays_up(subject: Subject) -> Finding:
    """An elastic, a cord or a band holds the garment up at the waist."""
    held = subject.plan.main.waist is not None
    return finding("stays_up", [] if held else [subject.fit.staying_up], 1, "waists", "warn")
