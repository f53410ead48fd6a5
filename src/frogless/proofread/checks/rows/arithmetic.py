"""What the arithmetic of the rows finds: counts, places, repeats."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.causes import of_count, of_digits, of_places, of_repeat
from frogless.proofread.checks.rows.drift import drifting
from frogless.proofread.checks.rows.following import following
from frogless.proofread.checks.rows.lines import (
    Line,
    certainty_of,
    counted,
    finding,
    lines_of,
    listed,
    named,
    resting,
    row_name,
    speaks_otherwise,
)
from frogless.proofread.checks.rows.numbering import stated_rows
from frogless.proofread.checks.rows.sizes import out_of_step
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Act, Again
from frogless.proofread.work.model import Problem, ProblemKind, Worked

#: Of several problems of one row in one size only the first of these is told: the others follow.
ORDER: tuple[ProblemKind, ...] = (
    "too_long",
    "brackets",
    "again",
    "no_place",
    "repeat",
    "too_many",
    "too_few",
    "passed",
    "count",
    "count_kind",
    "change",
    "range",
)


#: What nothing is said of in rows that rest on one which was not understood: the places that it
#: leaves are guessed from what it states, and so would be whatever is wrong with them.
_ON_FIRM_GROUND: frozenset[ProblemKind] = frozenset(
    {"no_place", "repeat", "passed", "count_kind", "again"}
)


@dataclass(frozen=True, slots=True, eq=False)
class Case:
    """The same problem of one row, in all sizes that share it.

    Args:
        cases: worked row and problem, size by size.
    """

    line: Line
    cases: tuple[tuple[Worked, Problem], ...]

    @property
    def span(self) -> Span:
        """The words that it lies in."""
        return self.cases[0][1].span

    @property
    def name(self) -> str:
        """Of the row that it is in: of a range the first that is off."""
        return row_name(self.line.told.label, self.cases[0][0].number) or "This"

    @property
    def before(self) -> str:
        """The name of the row below it."""
        number = self.cases[0][0].number
        if number is not None and self.line.number is not None and number > self.line.number:
            return row_name(self.line.told.label, number - 1)
        return self.line.before

    def values(self, of: Callable[[Problem], int | None]) -> list[int]:
        """A number of each size, where it is known in all of them."""
        found = [of(problem) for _, problem in self.cases]
        return [value for value in found if value is not None] if None not in found else []


def cases(reading: Reading, *kinds: ProblemKind) -> Iterator[Case]:
    """The problems of some kinds, row by row; those that follow from another are left out."""
    covered = {index for drift in drifting(reading) for index in drift.covers}
    disordered = out_of_step(reading)
    followers = following(reading)
    for line in lines_of(reading):
        if line.index in covered:
            continue
        there: dict[ProblemKind, dict[int, tuple[Worked, Problem]]] = {}
        for worked in line.works:
            problem = foremost(worked.problems)
            if problem and problem.kind == "too_few" and line.told.label is None:
                continue  # a sentence between rows may well work into a part of the edge
            if problem and line.index in resting(reading) and not _is_missing_row(line, problem):
                problem = None if problem.kind in _ON_FIRM_GROUND else problem
            if (line.index, worked.size) in followers:
                continue
            if problem and worked.size not in disordered.get(line.index, ()):
                there.setdefault(problem.kind, {}).setdefault(worked.size, (worked, problem))
        for kind in kinds:
            if kind in there:
                yield Case(line, tuple(there[kind][size] for size in sorted(there[kind])))


def _is_missing_row(line: Line, problem: Problem) -> bool:
    """Rows to be worked again that are not there, not ones that do not fit."""
    if problem.kind != "again" or problem.uses is not None or problem.each is not None:
        return False
    again = next((a for a in line.told.said.acts if isinstance(a, Again)), None)
    if again is None:
        return False
    return problem.says == again.first if again.first else problem.what == again.name


def foremost(problems: Sequence[Problem]) -> Problem | None:
    """The problem that the others follow from."""
    return min(problems, key=lambda each: ORDER.index(each.kind), default=None)


def _told(kind: str, reading: Reading, case: Case, says: str, works: str, hint: str) -> Finding:
    sizes = {worked.size for worked, _ in case.cases}
    every = len(reading.script.sizes)
    if len(sizes) < every:
        names = [name for at, name in enumerate(reading.script.sizes) if at in sizes]
        hint += (
            f" Only in size{'s' if len(names) > 1 else ''} {', '.join(names)}; the others come out."
        )
    number = case.cases[0][0].number
    certainty = certainty_of(reading, case.line)
    return finding(
        kind, reading, case.line, case.span, (says, works, hint), certainty, sizes, number
    )


def row_count(reading: Reading) -> Iterator[Finding]:
    """Rows that make another number of stitches than they state."""
    for case in cases(reading, "count", "change"):
        worked, problem = case.cases[0]
        says, works = case.values(lambda p: p.says), case.values(lambda p: p.works)
        sizes = len(reading.script.sizes)
        settled = len({each.size for each, _ in case.cases}) < sizes
        settled = settled or worked.turning[0] in reading.lexicon.chain_counts
        causes = list(of_count(case.line, worked, problem, sizes, settled=settled))
        hint = _counts_hint(case, worked, problem, causes)
        if problem.kind == "change":
            texts = (_change(says), _change(works))
        else:
            unit = named(problem.what, reading) or "sts"
            texts = (f"{listed(says)} {unit}", f"{listed(works)} {unit}")
        yield _told("row-count", reading, case, *texts, hint)


def _change(values: Sequence[int]) -> str:
    """ "6 more", "6 (8, 8) fewer"."""
    fewer = all(value < 0 for value in values)
    return f"{listed([abs(v) if fewer else v for v in values])} {'fewer' if fewer else 'more'}"


def _counts_hint(case: Case, worked: Worked, problem: Problem, causes: list[str]) -> str:
    name = case.name
    over = f" over {worked.available}" if worked.available is not None else ""
    if problem.kind == "change":
        told, made = _change([problem.says or 0]), _change([problem.works or 0])
        begin = f"{name} makes {made}, not {told}"
    else:
        begin = f"{name} works {counted(problem.works or 0, 'stitch', 'stitches')}{over}"
    if not causes:
        causes = [_plain_cause(problem)]
    elif problem.kind == "count":
        causes = [causes[0], f"the count should be {problem.works}"]
    if problem.need is not None and case.before and problem.need != worked.available:
        causes.append(f"{case.before} should end with {problem.need}")
    return f"{begin}: {', or '.join(causes[:3])}."


def _plain_cause(problem: Problem) -> str:
    over = (problem.works or 0) - (problem.says or 0)
    amount = "one" if abs(over) == 1 else str(abs(over))
    made = f"{amount} too {'many' if over > 0 else 'few'} are made"
    return made if problem.kind == "change" else f"{made}, or the count should be {problem.works}"


def row_fills(reading: Reading) -> Iterator[Finding]:
    """Rows that work into more stitches than there are, or leave some without a word."""
    for case in cases(reading, "too_many", "too_few"):
        worked, problem = case.cases[0]
        uses, has = case.values(lambda p: p.uses), case.values(lambda p: p.has)
        many = problem.kind == "too_many"
        span = case.line.told.span
        text = reading.script.plain[span.start : span.end]
        label = case.line.told.label
        flat = label is not None and label.kind == "row"
        acts = case.line.told.said.acts
        causes = list(of_repeat(acts, worked, problem, len(reading.script.sizes)))
        causes += of_places(worked, problem, text, flat=flat) if not causes else ()
        hint = _places_hint(case, worked, problem, causes, many=many)
        yield _told(
            "row-fills",
            reading,
            case,
            f"uses {listed(uses)} {_places(uses)}" if uses else "works on",
            f"{listed(has)} {_places(has)} {_are(has)} there"
            if has
            else "the row below ends before",
            hint,
        )


def slips_pass(reading: Reading) -> Iterator[Finding]:
    """Slip stitches that do not reach the place where a row begins, and groups entered unlike."""
    for case in cases(reading, "passed"):
        worked, problem = case.cases[0]
        if worked.repeated:
            continue
        if problem.says is not None:
            texts = (
                f"into stitch {problem.says} of one group",
                f"into stitch {problem.works} of another",
                f"{case.name} works into groups of the row below, and not into the same stitch of "
                "each: look at how many are skipped before it.",
            )
            yield finding("row-fills", reading, case.line, case.span, texts, "possible")
            continue
        amount, there = ("fewer", "more stitches") if problem.uses else ("more", "fewer stitches")
        texts = (
            reading.script.words(case.span),
            f"{there} lie before the space",
            f"{case.name} is moved by slip stitches into {amount} stitches than there are up to the "
            "space: count them from where the round was joined.",
        )
        yield finding("row-fills", reading, case.line, case.span, texts, "possible")


def _places(values: Sequence[int]) -> str:
    return "place" if set(values) == {1} else "places"


def _are(values: Sequence[int]) -> str:
    return "is" if set(values) == {1} else "are"


def _places_hint(
    case: Case, worked: Worked, problem: Problem, causes: list[str], *, many: bool
) -> str:
    name, before = case.name, case.before or "the row below"
    gap = abs((problem.uses or 0) - (problem.has or 0))
    stitches = "one stitch" if gap == 1 else f"{gap} stitches"
    made = f"makes {worked.worked} and " if worked.worked is not None else ""
    begin = f"{name} {made}uses {problem.uses} of {problem.has} places"
    if not causes:
        causes.append(
            f"{stitches} too many are worked into" if many else f"{stitches} are left over"
        )
    if problem.need is not None or (worked.stated is not None and worked.stated == worked.worked):
        need = problem.need if problem.need is not None else problem.uses
        causes.append(f"{before} should end with {need}")
    return f"{begin}: {', or '.join(causes[:3])}."


def repeat_comes_out(reading: Reading) -> Iterator[Finding]:
    """Repeats that do not fill the row."""
    for case in cases(reading, "repeat"):
        worked, problem = case.cases[0]
        each, has = case.values(lambda p: p.each), case.values(lambda p: p.has)
        if not each or not has or not each[0] or has[0] % each[0] == 0:
            hint = f"The repeat does not end where {case.before or 'the row below'} ends."
            yield _told("repeat-comes-out", reading, case, "a repeat", "it does not come out", hint)
            continue
        times = f"{has[0] / each[0]:.2f}".rstrip("0").rstrip(".")
        hint = _repeat_hint(case, worked, problem, times)
        yield _told(
            "repeat-comes-out",
            reading,
            case,
            f"a repeat over {listed(each)} places",
            f"{listed(has)} places are there: {times} repeats",
            hint,
        )


def _repeat_hint(case: Case, worked: Worked, problem: Problem, times: str) -> str:
    each, has = problem.each or 1, problem.has or 0
    uses = f"Each repeat uses {each} of {has} places: {has}/{each} = {times}"
    before = case.before or "the row below"
    if problem.need is not None and worked.stated is not None:
        kinds = len(case.line.told.said.stated) > 1
        gives = "comes out as stated" if kinds else f"gives {worked.stated}"
        return (
            f"{uses}; from {problem.need} it {gives}, so {before} may be meant "
            f"to end with {problem.need}."
        )
    low, high = has // each * each, (has // each + 1) * each
    spare = counted(has - low, "place") if has > low else "places"
    fits = f"{low} or {high} would come out" if low else f"{high} would come out"
    return f"{uses}; {fits}. Say what becomes of the last {spare}, or mend the count of {before}."


def place_missing(reading: Reading) -> Iterator[Finding]:
    """Rows that are worked into something that the row below does not have."""
    lines = lines_of(reading)
    for case in cases(reading, "no_place"):
        _, problem = case.cases[0]
        what = named(problem.what, reading) or "such place"
        before = case.before or "the row below"
        there = _spaces(lines[case.line.index - 1]) if case.line.index else ""
        some = f" {what}" in there  # it has some, and they are used up
        no = f"no more {what}" if some else f"no {what}"
        hint = (
            f"{before[:1].upper()}{before[1:]} leaves {no} there{there}: look at what it makes, "
            "or name the place that is meant."
        )
        yield _told("place-missing", reading, case, what, f"{no} in {before}", hint)


def _spaces(line: Line) -> str:
    """The spaces that a row has: ", but 16 ch-3 sps"."""
    below = line.works[-1] if line.works else None
    spaces = (
        {key: count for key, count in below.made.items() if key.endswith(" sp")} if below else {}
    )
    return ", but " + " and ".join(counted(n, key) for key, n in spaces.items()) if spaces else ""


def count_by_kind(reading: Reading) -> Iterator[Finding]:
    """Counts by kind of stitch or space that are not what is made."""
    for case in cases(reading, "count_kind"):
        if speaks_otherwise(reading, case.line):
            continue
        _, problem = case.cases[0]
        says, works = case.values(lambda p: p.says), case.values(lambda p: p.works)
        what = named(problem.what, reading) or "of that kind"
        slip = of_digits(problem.says or 0, problem.works or 0)
        cause = slip or "look at which stitches the count names, and how many of each are made"
        hint = f"{case.name or 'This'} makes {problem.works} {what}, not {problem.says}: {cause}."
        yield _told(
            "count-by-kind",
            reading,
            case,
            f"{listed(says)} {what}",
            f"{listed(works)} {what}",
            hint,
        )


def row_range(reading: Reading) -> Iterator[Finding]:
    """Ranges that do not stand for as many rows as they say to work."""
    for line, span, says, there in stated_rows(reading):
        texts = (
            counted(says, "row"),
            counted(there, "row"),
            f"{line.name} and those after it are {there} rows by their numbers, not {says}: "
            "one of the numbers is wrong.",
        )
        yield finding("row-range", reading, line, span, texts, "certain")
    for case in cases(reading, "range"):
        _, problem = case.cases[0]
        hint = (
            f"{case.name} stands for {problem.says} rows, but {problem.works} are worked: "
            "mend the numbers of the rows or how often they are repeated."
        )
        yield _told(
            "row-range",
            reading,
            case,
            counted(problem.says or 0, "row"),
            counted(problem.works or 0, "row"),
            hint,
        )


def repeated_rows(reading: Reading) -> Iterator[Finding]:
    """Rows to be repeated that are not there, or do not fit onto what they meet."""
    for case in cases(reading, "again"):
        _, problem = case.cases[0]
        what = reading.script.words(case.span)
        if not _is_missing_row(case.line, problem) and problem.uses is None:
            hint = (
                f"The rows to be repeated do not fit onto {case.before or 'the row before'}: look "
                "at the last row before them, or name the rows that are meant."
            )
            works = "they do not come out"
        elif problem.has is not None and problem.uses is not None:
            hint = (
                f"The rows to be repeated use {problem.uses} places, and {problem.has} are "
                "there: another row is meant, or a shaping row must not be repeated here."
            )
            works = f"{problem.has} places are there"
        else:
            hint = "There is no such row before this one: name the row that is meant."
            works = "no such row"
        yield _told("repeated-rows", reading, case, what, works, hint)


#: "Rep these 6 rnds".
_THESE = re.compile(r"\bthese\b", re.IGNORECASE)


def these_rows(reading: Reading) -> Iterator[Finding]:
    """ "Rep these 7 rows" after a row and 5 plain ones: the first of the seven lies within a line."""
    worked = [each for each in reading.reckoning.rows if not each.size]
    begin = {each.told: n for n, each in reversed(list(enumerate(worked)))}
    for line in lines_of(reading):
        act = next((a for a in line.told.said.acts if isinstance(a, Again)), None)
        if act is None or act.name != "last" or act.last < 2 or not line.works:
            continue
        if not _THESE.search(reading.script.plain, act.span.start, act.span.end):
            continue
        at = begin.get(line.index, 0)
        first = at - act.last
        if first <= 0:
            continue
        begins = lines_of(reading)[worked[first].told]
        inside = worked[first - 1].told == begins.index
        if inside or any(isinstance(a, Again) and (a.until or a.length) for a in _acts(begins)):
            fewer = sum(each.told > begins.index for each in worked[first:at])
            texts = (
                reading.script.words(act.span),
                counted(fewer, "row") + " since then",
                f"The first of these {act.last} rows would lie among those that an earlier line "
                f"repeats; {counted(fewer, 'row')} stand after it.",
            )
            yield finding("repeated-rows", reading, line, act.span, texts, "possible")


def _acts(line: Line) -> Sequence[Act]:
    return line.told.said.acts


def too_long(reading: Reading) -> Iterator[Finding]:
    """Rows that nobody could work: more stitches or rows than any garment has."""
    for case in cases(reading, "too_long"):
        hint = (
            "That is more than any garment has, and not all of it was worked out: look whether a "
            "number has a digit too many."
        )
        yield _told(
            "too-long", reading, case, reading.script.words(case.span)[:60], "not worked out", hint
        )
