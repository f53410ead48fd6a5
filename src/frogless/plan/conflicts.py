"""When there is room for the shaping, and still no rhythm: what of a section's keys stands in the way."""

from __future__ import annotations

import math
from collections.abc import Iterator

from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.rhythm.conflict import Conflict, Name
from frogless.plan.rhythm.engine import Task
from frogless.plan.sections import Span

_CALLED: dict[Name, str] = {
    "clauses": "in {clauses}",
    "least_gap": "at least {least_gap} rounds apart",
    "every": "every {every} rounds",
    "allowed": "on right-side rounds only",
    "forbidden": "outside the plain stretches",
    "floor": "with the body's room at every landmark",
    "ceiling": "within the greatest girth",
}
"""What each requirement is called in a sentence."""

_KEYS: dict[Name, str] = {
    "allowed": "shape_on",
    "forbidden": "plain",
    "floor": "landmarks",
    "shapings": "girth",
}
"""What a design calls a requirement that the engine names otherwise."""

OF_KEYS: frozenset[Name] = frozenset({"clauses", "least_gap", "every", "allowed", "forbidden"})
"""Requirements that an author makes by keys of a section."""


def refuse(basis: Basis, span: Span, task: Task, conflict: Conflict) -> Impossible:
    """The refusal: what cannot be had together, and the least change of each that would do."""
    asked = [name for name in reversed(conflict.names) if name in _CALLED]
    clauses = f"{task.clauses} clause{'' if task.clauses == 1 else 's'}"
    words = [
        _CALLED[name].format(clauses=clauses, least_gap=task.least_gap, every=task.every)
        for name in asked
    ]
    key = next((name for name in asked if name in OF_KEYS), None)
    return Impossible(
        f'section "{span.section.name}": {task.shapings} shaping rounds in {span.rounds} cannot be '
        f"had {' and '.join(words)}",
        basis.place(f"{span.key}.{_KEYS.get(key, key)}" if key else span.key),
        ways_out=tuple(_ways(basis, task, conflict)),
        requirements=[_KEYS.get(name, name) for name in conflict.names],
    )


def _ways(basis: Basis, task: Task, conflict: Conflict) -> Iterator[str]:
    for name in conflict.names:
        freed = conflict.freed_by(name)
        if freed is None:
            continue
        match name:
            case "clauses" | "least_gap" | "every":
                yield f"{name} = {freed:.0f}"
            case "allowed":
                yield 'shape_on = "any": on wrong-side rounds too'
            case "forbidden":
                yield "shorter plain stretches, or none"
            case "floor":
                yield f"{basis.show(_up(freed))} less room at the landmarks on the way"
            case "ceiling":
                yield f"{basis.show(_up(freed))} more at its widest"
            case "rounds":
                yield f"a longer section: {freed:.0f} rounds instead of {task.rounds}"
            case "shapings":
                yield f"{freed:.0f} shaping rounds instead of {task.shapings}: another girth at its end"


def _up(length: float) -> float:
    """mm, to the next half centimetre that is enough."""
    return math.ceil(length / 5 - 1e-9) * 5.0
