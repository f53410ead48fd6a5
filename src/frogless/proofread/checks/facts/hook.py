"""Hooks of the materials against hooks of the rows."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.facts.told import plain
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.hooks import size_of
from frogless.proofread.facts.model import Hook
from frogless.proofread.findings import Finding

#: Two hooks are one within this, mm; by the letter charts differ by half a millimeter.
_SAME, _LETTERED = 0.06, 0.55


def hook_differs(reading: Reading) -> Iterator[Finding]:
    """Hooks in rows and gauge that the materials do not list, and letters of another size."""
    hooks = reading.facts.hooks
    listed = [hook for hook in hooks if hook.place == "materials"]
    for hook in hooks:
        if hook.label and hook.mm:
            yield from _letter(hook)
    if not listed:
        return
    told: set[float] = set()
    for hook in hooks:
        if hook.place == "materials" or hook.mm in told:
            continue
        if not any(_same(hook, each, reading) for each in listed):
            told.add(hook.mm)
            yield _finding(hook, listed, reading)


def _same(one: Hook, other: Hook, reading: Reading) -> bool:
    near = _SAME if _in_mm(one, reading) and _in_mm(other, reading) else _LETTERED
    return abs(one.mm - other.mm) <= near


def _in_mm(hook: Hook, reading: Reading) -> bool:
    return reading.script.plain[hook.span.start : hook.span.start + 1].isdigit()


def _letter(hook: Hook) -> Iterator[Finding]:
    size = size_of(hook.label)
    if size and abs(size - hook.mm) > _LETTERED and hook.mm > 2:  # steel hooks have other labels
        yield Finding(
            "hook-differs",
            hook.span,
            f"{plain(hook.mm)} mm, {hook.label}",
            f"{hook.label} is {plain(size)} mm",
            f"A hook {hook.label} has about {plain(size)} mm, not {plain(hook.mm)} mm: one of the "
            "two is wrong.",
            "likely",
        )


def _finding(hook: Hook, listed: list[Hook], reading: Reading) -> Finding:
    names = " and ".join(dict.fromkeys(f"{plain(each.mm)} mm" for each in listed))
    told = next(
        (
            each
            for each in reading.told
            if each.label and each.span.start <= hook.span.start < each.span.end
        ),
        None,
    )
    label = told.label if told else None
    number = label.numbers[0] if label and label.numbers else None
    where = "the rows use" if hook.place == "rows" else "the gauge is taken with"
    return Finding(
        "hook-differs",
        hook.span,
        f"hook {plain(hook.mm)} mm",
        f"{names} in the materials",
        f"The materials list a hook of {names}; {where} {plain(hook.mm)} mm. Name it in the "
        "materials, or correct one of them.",
        "certain" if hook.place == "rows" else "likely",
        row=reading.script.words(label.span).rstrip(":") if label else "",
        number=number,
    )


HOOK = Check(
    "hook-differs",
    "the hooks of the rows are those that the materials list",
    "Materials\nDK cotton\n5 mm hook\n\nInstructions\n"
    "Row 1: With 3.5 mm hook, ch 31, sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n",
    hook_differs,
)
