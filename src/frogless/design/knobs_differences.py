"""What changed from one text of a design to another, in the words of its knobs."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from frogless.design.document import Design
from frogless.design.knobs_found import Group, Knob, found
from frogless.design.load import parse_design
from frogless.errors import InputError
from frogless.files import Document
from frogless.stitches.model import Dialect
from frogless.toml_text import Steps

OPEN = "left open"
"""What a knob is that holds nothing and has no default in words."""

Pair = tuple[Group | None, Group | None]


def document_differences(before: str, after: str, terms: Dialect = "us") -> tuple[str, ...]:
    """What changed in the text of a design: "Section waist to hip, points: auto → 8".

    Of texts of which one is no design, and where only comments or rows written out changed, how many
    lines came and went. Nothing when the texts are the same.
    """
    if before == after:
        return ()
    try:
        texts = parse_design(before), parse_design(after)
    except InputError:
        return (_lines(before, after),)
    told = [*_in_knobs(*(found(text, terms) for text in texts)), *_in_patterns(*texts)]
    return tuple(told) or (_lines(before, after),)


def _in_knobs(before: tuple[Group, ...], after: tuple[Group, ...]) -> Iterator[str]:
    pairs = tuple(_paired(before, after))
    came = [new.path for old, new in pairs if old is None and new is not None]
    went = [old.path for old, new in pairs if new is None and old is not None]
    for old, new in pairs:
        if old is None and new is not None:
            if not _is_inside(new.path, came):
                yield f"{_name(new)}: added"
        elif old is not None and new is None:
            if not _is_inside(old.path, went):
                yield f"{_name(old)}: taken away"
        elif old is not None and new is not None:
            yield from _in_group(old, new)


def _is_inside(path: Steps, tables: list[Steps]) -> bool:
    """Whether a table stands in one of these: then that one says it all."""
    return any(table != path and path[: len(table)] == table for table in tables)


def _paired(before: tuple[Group, ...], after: tuple[Group, ...]) -> Iterator[Pair]:
    """Groups of one name; those that are left over, of one place: that one was given a new name."""
    old = {group.title: group for group in before}
    new = {group.title: group for group in after}
    renamed = {
        old_one.title: group
        for group in after
        if group.title not in old
        for old_one in before
        if old_one.path == group.path
        and old_one.title not in new
        and _is_level(before, after, group)
    }
    known_by = {group.title: title for title, group in renamed.items()}
    for title, group in new.items():
        yield old.get(known_by.get(title, title)), group
    for title, group in old.items():
        if title not in new and title not in renamed:
            yield group, None


def _is_level(before: tuple[Group, ...], after: tuple[Group, ...], one: Group) -> bool:
    """Whether there are as many groups beside this one as there were."""
    counts = [sum(g.path[:-1] == one.path[:-1] for g in groups) for groups in (before, after)]
    return counts[0] == counts[1]


def _in_group(old: Group, new: Group) -> Iterator[str]:
    was, now = ({_key(knob, one): knob for knob in one.knobs} for one in (old, new))
    for key, knob in now.items():
        former = was.get(key)
        if former is None and knob.written:
            yield f"{_name(new)}, {knob.label}: {_value(knob)}"
        elif former is not None and _value(former) != _value(knob):
            yield f"{_name(new)}, {knob.label}: {_value(former)} → {_value(knob)}"
    # What goes with another edging or another kind of waist needs no words of its own.
    other = any(
        key[-1] in ("kind", "pattern") and key in was and was[key].value != knob.value
        for key, knob in now.items()
    )
    for key, knob in was.items():
        if key not in now and knob.written and not other:
            yield f"{_name(new)}, {knob.label}: {_value(knob)}, left out"


def _key(knob: Knob, group: Group) -> Steps:
    """The way to a knob in the table of its group, wherever that stands; others are set beside it."""
    inside = group.path and knob.path[: len(group.path)] == group.path
    return knob.path[len(group.path) :] if inside else knob.path


def _name(group: Group) -> str:
    """A group in a sentence: "Section waist to hip"."""
    return group.title.replace(": ", " ")


def _value(knob: Knob) -> str:
    if not knob.written:
        return knob.default or OPEN
    return dict(knob.choices).get(knob.value, knob.value) or OPEN


def _in_patterns(before: Document[Design], after: Document[Design]) -> Iterator[str]:
    """Stitch patterns of the design's own: which came, went, or are worked otherwise."""
    old, new = (document.checked.pattern for document in (before, after))
    for key, pattern in new.items():
        if key not in old:
            yield f"Stitch pattern {pattern.name}: added"
        elif pattern != old[key]:
            yield f"Stitch pattern {pattern.name}: changed"
    for key, pattern in old.items():
        if key not in new:
            yield f"Stitch pattern {pattern.name}: taken away"


def _lines(before: str, after: str) -> str:
    """How many lines came and went."""
    matched = SequenceMatcher(None, before.splitlines(), after.splitlines(), autojunk=False)
    came = went = 0
    for tag, from_, to, first, last in matched.get_opcodes():
        if tag != "equal":
            went, came = went + to - from_, came + last - first
    return f"lines of the text: {came} came, {went} went"
