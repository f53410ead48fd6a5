"""What a maker would want to know when one draft takes the place of another."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.design.knobs_differences import document_differences
from frogless.publish.changes_said import SAID, tell
from frogless.publish.drafted import Drafted
from frogless.publish.facts import Fact, facts

__all__ = ["differences", "document_differences"]

Facts = dict[tuple[object, ...], Fact]


def differences(before: Drafted, after: Drafted) -> tuple[str, ...]:
    """What differs, in the words and units of `after`, the most important first.

    Nothing when nothing differs. Of a piece or a section that is new or gone, only that is told.
    """
    if before is after:
        return ()
    shown = tuple(_told(after, before, after))
    if not shown and before.plan.program != after.plan.program:
        return (tell(after, "worked_otherwise"),)
    return shown


def _told(shown: Drafted, before: Drafted, after: Drafted) -> Iterator[str]:
    called = _renamed(before, after)
    yield from (
        tell(shown, "called", before=name, after=other) for (_, name), other in called.items()
    )
    old = {fact.key: fact for fact in facts(before, shown, called)}
    new = {fact.key: fact for fact in facts(after, shown)}
    parts = _parts(old), _parts(new)
    for key in _order(old, new):
        if key in old and key in new:
            if old[key].compared != new[key].compared:
                yield _changed(shown, old[key], new[key])
        elif key[0] == "points":
            # Of a section that is shaped in one draft only, its shaping tells it.
            continue
        elif key in new:
            if _is_told(new[key], new, parts[0]):
                yield _one(shown, "new", new[key])
        elif _is_told(old[key], old, parts[1]):
            yield _one(shown, "gone", old[key])


def _renamed(before: Drafted, after: Drafted) -> dict[tuple[str, str], str]:
    """Sections that have another name, of pieces that have as many as before."""
    names = {}
    for piece in before.plan.pieces:
        other = after.plan.piece(piece.name)
        if other is not None and len(other.sections) == len(piece.sections):
            there = {section.name for section in other.sections}
            for one, two in zip(piece.sections, other.sections, strict=True):
                if one.name not in there:
                    names[piece.name, one.name] = two.name
    return names


def _parts(found: Facts) -> frozenset[str]:
    return frozenset(fact.part for fact in found.values())


def _order(old: Facts, new: Facts) -> list[tuple[object, ...]]:
    """All keys, kind by kind; of each kind those that are there now first."""
    every = {**new, **{key: fact for key, fact in old.items() if key not in new}}
    return sorted(every, key=lambda key: every[key].rank)


def _is_told(fact: Fact, own: Facts, elsewhere: frozenset[str]) -> bool:
    """Whether a fact that the other draft has not is told: of a part that it has not, the first only."""
    if fact.part in elsewhere:
        return True
    above = fact.part.rpartition("/")[0]
    if above and above not in elsewhere:
        return False
    first = min(
        (f for f in own.values() if f.part == fact.part and f.kind != "points"),
        key=lambda f: f.rank,
    )
    return fact is first


def _one(shown: Drafted, name: str, fact: Fact) -> str:
    """A fact that only one of the drafts has."""
    told = fact.told(shown)
    own = f"{name}_{fact.kind}"
    return tell(shown, own if own in SAID else name, what=fact.what, before=told, after=told)


def _changed(shown: Drafted, old: Fact, new: Fact) -> str:
    if new.kind == "points":
        told = tell(shown, "points_instead", points=new.value, before=old.value)
        return tell(shown, "came", what=new.what, after=told)
    if old.form == new.form:
        change = tell(shown, "arrow", before=old.value, after=new.value)
        told = tell(shown, new.form, n=change) if new.form else change
        return tell(shown, "came", what=new.what, after=told)
    return tell(shown, "changed", what=new.what, before=old.told(shown), after=new.told(shown))
