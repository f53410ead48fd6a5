"""What an editor would say of a wrong number: where the difference most likely comes from."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from frogless.proofread.checks.rows.lines import Line, counted
from frogless.proofread.words.model import Act, Bare, Chain, Increase, Into, Repeat, Skip, Together
from frogless.proofread.work.model import Problem, Worked

#: Stitches in one place that are still likely.
_MOST_IN_EACH = 9


def of_digits(says: int, works: int) -> str:
    """A slip of the pen: digits changed round, one lost, or one wrong; ""."""
    told, right = str(says), str(works)
    if says == works:
        return ""
    if len(told) > 1 and sorted(told) == sorted(right):
        return f"{says} looks like {works} with its digits changed round"
    if len(right) == len(told) + 1 and _without_one(right, told):
        return f"{says} looks like {works} with a digit lost"
    if len(told) == len(right) + 1 > 2 and _without_one(told, right):
        return f"{says} looks like {works} with a digit too many"
    alike = len(told) == len(right) > 1
    if alike and abs(says - works) >= 10 and _differ(told, right) == 1:
        return f"one digit of {says} may be wrong: {works}"
    return ""


def _differ(told: str, right: str) -> int:
    return sum(a != b for a, b in zip(told, right, strict=True))


def _without_one(longer: str, shorter: str) -> bool:
    return any(longer[:at] + longer[at + 1 :] == shorter for at in range(len(longer)))


def of_count(
    line: Line, worked: Worked, problem: Problem, sizes: int, *, settled: bool = False
) -> Iterator[str]:
    """Likely causes of a row that makes another number than it states, likeliest first.

    Args:
        settled: neither its chain nor its edges are in question, as other sizes come out.
    """
    says, works = problem.says, problem.works
    if says is None or works is None:
        return
    over = works - says
    if slip := of_digits(says, works):
        yield slip
    for times in repeat_times(line.told.said.acts, worked, sizes):
        if times > 1 and over % times == 0:
            each = counted(abs(over) // times, "stitch", "stitches")
            yield f"{each} too {'many' if over > 0 else 'few'} in each of {times} repeats"
            break
    if many := _in_each(line.told.said.acts, worked, says):
        yield f"{many} in each would make {says}"
    chains, counts = worked.turning
    if settled:
        return
    if abs(over) == 1 and chains and (over > 0) == counts and not _is_said(line, chains):
        takes = "counted" if counts else "not counted"
        if _is_skipped(line.told.said.acts):
            skips = (
                "chain that it skips is" if chains == 1 else f"{chains} chains that it skips are"
            )
            yield f"the {skips} {takes} as a stitch here"
        else:
            yield f"the chain of {chains} that it begins with is {takes} as a stitch here"
    elif abs(over) == 2 and line.told.label and line.told.label.kind == "row":
        yield "one stitch too " + ("many" if over > 0 else "few") + " at each edge"


def of_places(worked: Worked, problem: Problem, text: str, *, flat: bool) -> Iterator[str]:
    """Likely causes of a row that uses more or fewer places than there are.

    Args:
        text: of the row; a number may be a slip of the pen only where it stands in it.
        flat: it is no round, and has edges.
    """
    uses, has = problem.uses, problem.has
    if uses is None or has is None:
        return
    if re.search(rf"(?<!\d){uses}(?!\d)", text) and (slip := of_digits(uses, has)):
        yield slip
    chains, counts = worked.turning
    if uses - has == 1 and counts:
        yield f"the chain of {chains} stands on the first stitch already: work into the next one"
    elif has - uses == 1 and not counts and chains:
        yield f"if the chain of {chains} counts as a stitch, it stands on the one that is left"
    elif has - uses == 1 and counts:
        yield "the top of the turning chain below is a stitch too: work into it"
    elif abs(uses - has) == 2 and flat:
        yield f"one stitch at each edge is {'left over' if uses < has else 'too many'}"


def of_repeat(acts: Sequence[Act], worked: Worked, problem: Problem, sizes: int) -> Iterator[str]:
    """What would make a repeat that is worked a number of times fill the row."""
    uses, has, size = problem.uses, problem.has, worked.size
    repeats = [a for a in acts if isinstance(a, Repeat) and a.extent.kind == "times"]
    if uses is None or has is None or len(repeats) != 1 or not repeats[0].extent.times:
        return
    repeat, whole = repeats[0], sum(_takes(act, size, sizes) for act in acts)
    times = repeats[0].extent.times.of(size, sizes) or 0
    once = sum(_takes(inner, size, sizes) for inner in repeat.body)
    often = times + int(repeat.more)
    if once < 1 or often < 1 or uses - whole not in (0, int(worked.turning[1])):
        return  # it is not plain what each act takes
    left = has - (uses - once * often)
    if left > 0 and left % once == 0:
        more = " more" if repeat.more else ""
        fits = left // once - int(repeat.more)
        yield f"{fits}{more} {'time' if fits == 1 else 'times'} would fill the row"
    if left > 0 and left % often == 0 and often > 1:
        yield f"each of the {often} repeats would have to use {left // often} places, not {once}"


def _in_each(acts: Sequence[Act], worked: Worked, says: int) -> int:
    """How many in each place would make what is stated, where all places have as many; 0."""
    only = [act for act in acts if isinstance(act, Into | Bare | Repeat | Increase | Together)]
    has, makes = worked.available, worked.worked
    if len(only) != 1 or not isinstance(only[0], Into) or not has or not makes:
        return 0
    if only[0].extent.kind != "end" or worked.consumed != has or makes % has or says % has:
        return 0
    return says // has if 0 < says // has <= _MOST_IN_EACH and makes // has > 1 else 0


def _is_said(line: Line, chains: int) -> bool:
    """Whether the row itself says how its chain counts."""
    begun = [act for act in line.told.said.acts if isinstance(act, Chain)][:1]
    return any(act.counts is not None and act.times.values[0] == chains for act in begun)


def _is_skipped(acts: Sequence[Act]) -> bool:
    """ "Dc in 4th ch from hook": it begins with no chain of its own."""
    return any(isinstance(act, Into) and act.target.what == "from_hook" for act in acts[:1])


def repeat_times(acts: Sequence[Act], worked: Worked, sizes: int) -> list[int]:
    """How often each repeat of a row is worked, where that can be told."""
    found = []
    for act in acts:
        if not isinstance(act, Repeat):
            continue
        if act.extent.kind == "times" and act.extent.times:
            times = act.extent.times.of(worked.size, sizes)
            found.append((times or 0) + int(act.more))
        elif worked.available:
            others = sum(_takes(other, worked.size, sizes) for other in acts if other is not act)
            once = sum(_takes(inner, worked.size, sizes) for inner in act.body)
            if once:
                found.append((worked.available - others) // once)
    return found


def _takes(act: Act, size: int, sizes: int) -> int:
    """Places of the row below that an act takes, where its numbers tell."""
    match act:
        case Into(extent=extent) | Increase(extent=extent) if extent.kind == "times":
            return (extent.times.of(size, sizes) or 0) if extent.times else 1
        case Together(places=places, extent=extent) if extent.kind == "times":
            return places * ((extent.times.of(size, sizes) or 0) if extent.times else 1)
        case Bare(times=times) | Skip(times=times):
            return (times.of(size, sizes) or 0) if times else 1
        case Chain(counts=True):
            return 1
        case Repeat(body=body, extent=extent, more=more) if extent.kind == "times":
            often = ((extent.times.of(size, sizes) or 0) if extent.times else 1) + int(more)
            return often * sum(_takes(inner, size, sizes) for inner in body)
    return 0
