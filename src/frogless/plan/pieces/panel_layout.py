"""A flat piece decided: its counts, which row does what at which edge, and the strips it is made of."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from frogless.because import Because
from frogless.design.pieces.panel import Armhole, PanelChoice, PanelSection
from frogless.design.work import Work
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.landing import Landing, land
from frogless.plan.pieces.made import Made, edge_named
from frogless.plan.pieces.panel_cap import CapShape, Wish, plan_cap
from frogless.plan.pieces.panel_edges import (
    HANDS,
    Hand,
    Line,
    Run,
    shaped_rows,
    spread_run,
    steps_of,
)
from frogless.plan.pieces.panel_neck import NeckShape, plan_neck, slope_neck, step_shoulder
from frogless.plan.pieces.panel_patterns import Patterned, patterned
from frogless.plan.pieces.panel_rows import ShortRows, Span
from frogless.rows.nodes import ROW_ENDS
from frogless.swatch import Gauge

NO_RUN = Run({})
NO_REASON = Because()


@dataclass(frozen=True, slots=True)
class Stage:
    """Rows of one kind as they were planned: a section of the design, armhole, neck, cap.

    Args:
        before, after: stitches.
        points: places shaped in a row.
        wanted: width at its end, mm; None when nothing was asked.
        worked: its rows, in a stitch pattern.
    """

    name: str
    first: int
    last: int
    before: int
    after: int
    gauge: Gauge
    points: int = 0
    run: Run = NO_RUN
    wanted: float | None = None
    because: Because = NO_REASON
    worked: Patterned | None = None


@dataclass(slots=True)
class Layout:
    """A panel while it is decided; rows are numbered from 1, `last` is the one decided so far.

    Args:
        count: stitches after it, before the neck takes any.
        armhole, split, neck_row: their first rows, 0 when there is none.
        steps: of one shoulder, from its tip.
        slit: rows of the two halves it begins with.
    """

    basis: Basis
    choice: PanelChoice
    key: str
    work: Work
    gauge: Gauge
    begun: Landing
    count: int
    last: int = 0
    gauges: list[Gauge] = field(default_factory=list)
    lines: Mapping[Hand, Line] = field(default_factory=lambda: {h: Line() for h in HANDS})
    inner: dict[int, tuple[tuple[int, int], ...]] = field(default_factory=dict)
    stages: list[Stage] = field(default_factory=list)
    armhole: int = 0
    neck: NeckShape | None = None
    neck_run: Run = NO_RUN
    split: int = 0
    steps: tuple[int, ...] = ()
    cap: CapShape | None = None
    slit: int = 0
    short: ShortRows | None = None

    @property
    def name(self) -> str:
        """Of the piece."""
        return self.choice.name

    @property
    def neckline(self) -> NeckShape:
        """Its neck.

        Raises:
            TypeError: it has none.
        """
        if self.neck is None:
            raise TypeError("this panel has no neck")
        return self.neck

    @property
    def sleeve_cap(self) -> CapShape:
        """Its cap.

        Raises:
            TypeError: it has none.
        """
        if self.cap is None:
            raise TypeError("this panel has no cap")
        return self.cap

    def where(self, part: str) -> str:
        """A key of this piece in the design."""
        return f"{self.key}.{part}"

    def wide(self, text: str, part: str, gauge: Gauge | None = None) -> int:
        """A length of the design in stitches, rounded."""
        return round(self.basis.length(text, self.where(part)) / (gauge or self.gauge).width.value)

    def high(self, text: str, part: str, gauge: Gauge | None = None) -> int:
        """A length of the design in rows, one at the least."""
        length = self.basis.girth_wanted(text, self.where(part))
        return max(round(length / (gauge or self.gauge).height.value), 1)

    @property
    def foundation_height(self) -> float:
        """mm; a chain has none, a foundation stitch is a row."""
        if self.choice.made_of == "chain":
            return 0.0
        return self.basis.trim_gauge(self.choice.made_of).height.value

    def top_of(self, row: int) -> float:
        """How far the top of a row lies from where the piece begins, mm."""
        return self.foundation_height + sum(g.height.value for g in self.gauges[:row])

    @property
    def spans(self) -> tuple[Span, ...]:
        """The rows by section, each with its stitch."""
        return tuple(self._span(stage) for stage in self.stages)

    def _span(self, stage: Stage) -> Span:
        stitch = stage.gauge.stitch
        own = stitch != self.work.stitch and stage.worked is None
        chains = self.basis.stitches[stitch].turning_chain if own else self.work.turning_chain
        counts = self.work.turning_chain_counts and chains > 0
        rows = stage.worked.rows if stage.worked else ()
        return Span(stage.name, stage.first, stage.last, stitch, chains, counts, rows)


def lay_out(basis: Basis, choice: PanelChoice, key: str, made: Mapping[str, Made]) -> Layout:
    """The panel, decided.

    Raises:
        InputError: parts that do not go together, or are longer than the piece.
        Impossible: no whole stitches do what is asked.
    """
    work = choice.work or basis.design.work
    place = "work.stitch" if choice.work is None else f"{key}.work.stitch"
    gauge = basis.gauge(work.stitch, place)
    _check(basis, choice, key)
    wanted = basis.girth_wanted(choice.width, f"{key}.width")
    wanted += basis.length(choice.ease, f"{key}.ease")
    begun = land(wanted, gauge.width.value, choice.multiple, choice.offset)
    panel = Layout(basis, choice, key, work, gauge, begun, begun.count)
    for i, section in enumerate(choice.section, 1):
        _section(panel, section, f"section.{i}")
    _rest(panel)
    _armhole(panel)
    _neck(panel)
    _cap(panel, made)
    _slit(panel)
    _whole(panel)
    _full_bust(panel)
    return panel


def _check(basis: Basis, choice: PanelChoice, key: str) -> None:
    def refuse(message: str, part: str) -> InputError:
        return InputError(message, basis.place(f"{key}.{part}"))

    if choice.cap and (choice.armhole or choice.neck):
        raise refuse("a cap is the top of a sleeve; leave out armhole and neck", "cap")
    if choice.shoulder and not (choice.neck and choice.armhole):
        raise refuse("a shoulder slopes from a neck to an armhole; write both", "shoulder")
    if choice.placket and not (choice.neck and choice.neck.at == "middle"):
        raise refuse("a placket opens below a neck in the middle; write that too", "placket")
    if choice.worked == "downwards" and (choice.armhole or choice.neck or choice.cap):
        raise refuse("armholes, necks and caps are worked upwards", "worked")
    if choice.neck and choice.armhole and choice.neck.at == choice.armhole.edges:
        raise refuse("the neck lies at the edge of the armhole; give them different edges", "neck")


def _section(panel: Layout, section: PanelSection, part: str) -> None:
    """Lays the rows of a section of the design on what is there."""
    if section.pattern is not None:
        _in_pattern(panel, section, part)
        return
    _refuse_pattern_keys(panel, section, part)
    gauge = panel.gauge
    if section.stitch:
        gauge = panel.basis.gauge(section.stitch, panel.where(f"{part}.stitch"))
    rows = panel.high(section.length, f"{part}.length", gauge)
    first, before = panel.last + 1, panel.count
    last = first + rows - 1
    points = _points(panel, section, part, gauge)
    wanted, after, because = None, before, Because()
    if section.width is not None:
        wanted = panel.basis.girth_wanted(section.width, panel.where(f"{part}.width"))
        after = _landed(before, wanted, gauge, points, section.multiple, section.offset)
        because = land(wanted, gauge.width.value).because
    each = abs(after - before) // points
    once = 0
    if after < before and section.edges != "inside":
        once = min(panel.wide(section.at_once, f"{part}.at_once", gauge), each)
    sign = 1 if after > before else -1
    run = spread_run(
        first + (1 if once else 0), last, sign * (each - once), section.rate, section.rows
    )
    if run.short:
        raise _too_steep(panel, section.name, part, run.short * points, rows, gauge)
    if section.edges == "inside":
        _shape_inside(panel, section, part, run, gauge)
    for hand in _hands(section.edges):
        panel.lines[hand].step(first, once)
        panel.lines[hand].slope(run)
    panel.gauges += [gauge] * rows
    panel.last, panel.count = last, after
    name = f"{panel.name} {section.name}"
    stage = Stage(name, first, last, before, after, gauge, points, run, wanted, because)
    panel.stages.append(stage)


def _in_pattern(panel: Layout, section: PanelSection, part: str) -> None:
    first, name = panel.last + 1, f"{panel.name} {section.name}"
    key = panel.where(part)
    found = patterned(
        panel.basis, section, key, name, panel.count, first, panel.gauge, panel.choice.hook
    )
    panel.gauges += found.gauges
    panel.last += len(found.rows)
    panel.stages.append(
        Stage(
            name, first, panel.last, panel.count, panel.count, panel.gauge,
            because=found.because, worked=found,
        )
    )  # fmt: skip


def _refuse_pattern_keys(panel: Layout, section: PanelSection, part: str) -> None:
    for name in ("parameters", "base_stitch"):
        if name in section.model_fields_set:
            raise InputError(
                f'"{name}" belongs to a section with a pattern',
                panel.basis.place(panel.where(f"{part}.{name}")),
            )


def _whole(panel: Layout) -> None:
    """Rows in a pattern go across the whole piece.

    Raises:
        InputError: a slit, a neck or an armhole that is cut in parts them.
    """
    for stage in panel.stages:
        if stage.worked is None:
            continue
        what = ""
        if panel.slit >= stage.first:
            what = "the slit"
        if panel.split and panel.split <= stage.last:
            what = "the neck"
        if what:
            raise InputError(
                f'{what} of {panel.name} lies in the pattern of "{stage.name}", and a pattern cannot '
                "be parted inside its repeats; end the pattern before it and work plain rows there, "
                "or move it",
                panel.basis.place(panel.where("section")),
            )


def _hands(edges: str) -> tuple[Hand, ...]:
    return HANDS if edges == "both" else tuple(h for h in HANDS if h == edges)


def _points(panel: Layout, section: PanelSection, part: str, gauge: Gauge) -> int:
    """Places that are shaped in one row: the edges, or the lines inside."""
    if section.edges != "inside":
        return len(_hands(section.edges))
    if not section.lines:
        raise InputError(
            'a section shaped inside needs lines, such as lines = ["8 cm"] on both sides of the '
            "middle",
            panel.basis.place(panel.where(f"{part}.lines")),
        )
    return sum(1 if d == 0 else 2 for d in _lines(panel, section, part, gauge))


def _lines(panel: Layout, section: PanelSection, part: str, gauge: Gauge) -> list[int]:
    """Stitches from the middle to each line."""
    return [panel.wide(text, f"{part}.lines", gauge) for text in section.lines]


def _landed(
    before: int, wanted: float, gauge: Gauge, points: int, multiple: int, offset: int
) -> int:
    """The count nearest to a width that so many points can reach and the next stage can use."""
    width = gauge.width.value
    near = round(wanted / width)
    able = [
        n
        for n in range(max(near - points * multiple, 1), near + points * multiple + 1)
        if (n - before) % points == 0 and (n - offset) % multiple == 0
    ]
    return min(able, key=lambda n: (round(abs(n * width - wanted), 4), -n), default=before)


def _too_steep(
    panel: Layout, name: str, part: str, short: int, rows: int, gauge: Gauge
) -> Impossible:
    return Impossible(
        f'section "{name}" of {panel.name} changes by {short} stitches more than its {rows} rows '
        "have room for, two at each place in a row",
        panel.basis.place(panel.where(part)),
        short_stitches=short,
        short=short * gauge.width.value,
        ways_out=("a longer section", 'rows = "any"', "more stitches at once", "more lines"),
    )


def _shape_inside(panel: Layout, section: PanelSection, part: str, run: Run, gauge: Gauge) -> None:
    """Places the changes of each row beside the lines, the same on both sides of the middle."""
    count, lines = panel.count, _lines(panel, section, part, gauge)
    for row, by in sorted(run.amounts.items()):
        if abs(by) > 1:
            raise _too_steep(panel, section.name, part, 1, len(run.amounts), gauge)
        panel.inner[row] = tuple(sorted(_beside(count, lines, by)))
        count += by * len(panel.inner[row])


def _beside(count: int, lines: list[int], by: int) -> Iterator[tuple[int, int]]:
    """The first stitch of each change, from the right edge, outside of its line."""
    takes = 2 if by < 0 else 1
    for line in lines:
        at = (count - takes) // 2 if line == 0 else count // 2 - line - takes
        yield at, by
        if line:
            yield count - takes - at, by


def _rest(panel: Layout) -> None:
    """The rows that no section takes up, as wide as the last one."""
    basis, choice = panel.basis, panel.choice
    length = basis.girth_wanted(choice.length, panel.where("length"))
    height = panel.gauge.height.value
    rows = round((length - panel.top_of(panel.last)) / height)
    if rows < 0 and panel.top_of(panel.last) - length <= _whole_rows_off(panel):
        rows = 0
    if rows < 0:
        raise InputError(
            f"the sections of {panel.name} are {basis.show(panel.top_of(panel.last))} long, and the "
            f"piece {basis.show(length)}",
            basis.place(panel.where("length")),
        )
    if panel.last + rows < 1:
        rows = 1
    if rows:
        _plain(panel, "body", rows)


def _whole_rows_off(panel: Layout) -> float:
    """What a pattern that ends the sections may miss their length by: half of its row repeat, mm."""
    last = panel.stages[-1].worked if panel.stages else None
    if last is None:
        return 0.0
    return last.pattern.way.period * last.gauge.height.value / 2 + 1e-6


def _plain(panel: Layout, name: str, rows: int) -> None:
    first = panel.last + 1
    panel.gauges += [panel.gauge] * rows
    panel.last += rows
    stage = Stage(f"{panel.name} {name}", first, panel.last, panel.count, panel.count, panel.gauge)
    panel.stages.append(stage)


def _cut(panel: Layout, row: int, name: str) -> Stage:
    """Begins a new stage at a row of the plain rest."""
    stage = panel.stages[-1]
    if row == stage.first:
        panel.stages.pop()
    elif stage.worked is not None or any(s.worked and row <= s.last for s in panel.stages):
        raise InputError(
            f"the {name} of {panel.name} begins in row {row}, in rows worked in a stitch pattern, and "
            "a pattern is not cut into inside its repeats; work the rows from there on plain (end the "
            "pattern sooner), leave the armhole uncut (no width), or choose a plain section there",
            panel.basis.place(panel.where(name if name in ("armhole", "neck") else "section")),
        )
    elif row < stage.first or not stage.name.endswith((" body", " armhole", " neck")):
        raise InputError(
            f"the {name} of {panel.name} begins in row {row}, before its sections end in row "
            f"{stage.first - 1 if row < stage.first else stage.last}; make the piece longer, or the "
            "sections shorter",
            panel.basis.place(panel.where("length")),
        )
    else:
        panel.stages[-1] = _ended(stage, row - 1)
    panel.stages.append(
        Stage(f"{panel.name} {name}", row, panel.last, stage.after, stage.after, panel.gauge)
    )
    return panel.stages[-1]


def _ended(stage: Stage, last: int) -> Stage:
    return Stage(
        stage.name, stage.first, last, stage.before, stage.after, stage.gauge, stage.points
    )


def _first_of_top(panel: Layout, depth: str, part: str) -> int:
    """The first of the rows at the top that are so high together; those of patterns have heights."""
    if all(stage.worked is None for stage in panel.stages):
        return panel.last - panel.high(depth, part) + 1
    below = panel.top_of(panel.last) - panel.basis.girth_wanted(depth, panel.where(part))
    return 1 + min(range(panel.last), key=lambda r: (round(abs(panel.top_of(r) - below), 4), r))


def _armhole(panel: Layout) -> None:
    choice = panel.choice.armhole
    if choice is None:
        return
    panel.armhole = _first_of_top(panel, choice.depth, "armhole.depth")
    rows = panel.last - panel.armhole + 1
    if panel.armhole < 2:
        raise InputError(
            f"the armhole of {panel.name} is as deep as the piece is long",
            panel.basis.place(panel.where("armhole.depth")),
        )
    in_pattern = any(s.worked and s.first <= panel.armhole <= s.last for s in panel.stages)
    if choice.width is None and in_pattern:
        return  # nothing is cut: the sleeve is joined to row ends of the pattern
    _cut(panel, panel.armhole, "armhole")
    if choice.width is None:
        return
    hands = _hands(choice.edges)
    before = panel.count
    wanted = panel.basis.girth_wanted(choice.width, panel.where("armhole.width"))
    after = _landed(before, wanted, panel.gauge, len(hands), 1, 0)
    if after > before:
        raise InputError(
            f"{panel.name} is {panel.basis.show(before * panel.gauge.width.value)} wide, less than "
            f"the {panel.basis.show(wanted)} that its armholes leave",
            panel.basis.place(panel.where("armhole.width")),
        )
    each = (before - after) // len(hands)
    once = min(_armhole_step(panel, choice, each), each)
    first = panel.armhole + (1 if once else 0)
    run = spread_run(first, panel.last, once - each, "steep", choice.rows)
    if run.short:
        raise Impossible(
            f"the armhole of {panel.name} loses {each - once} stitches stitch by stitch in "
            f"{rows} rows, two in a row at most",
            panel.basis.place(panel.where("armhole")),
            short_stitches=run.short,
            ways_out=("a deeper armhole", "more stitches at once", 'rows = "any"'),
        )
    for hand in hands:
        panel.lines[hand].step(panel.armhole, once)
        panel.lines[hand].slope(run)
    stage = panel.stages.pop()
    because = land(wanted, panel.gauge.width.value).because
    panel.count = after
    panel.stages.append(
        Stage(
            stage.name, stage.first, stage.last, before, after, panel.gauge, len(hands), run,
            wanted, because,
        )
    )  # fmt: skip


def _armhole_step(panel: Layout, choice: Armhole, each: int) -> int:
    """What each side loses at once: half of it, or as much more as its rows have no room for."""
    if choice.at_once is not None:
        return panel.wide(choice.at_once, "armhole.at_once")
    room = len(shaped_rows(panel.armhole + 1, panel.last, choice.rows, each))
    return max(each // 2, each - room)


def _neck(panel: Layout) -> None:
    choice = panel.choice.neck
    if choice is None:
        return
    rows = panel.high(choice.depth, "neck.depth")
    first = panel.last - rows + 1
    place = panel.basis.place(panel.where("neck"))
    halves = 2 if choice.at == "middle" else 1
    wanted = panel.basis.girth_wanted(choice.width, panel.where("neck.width"))
    taken = _landed(panel.count, wanted, panel.gauge, halves, 1, 0)
    shoulder = (panel.count - taken) // halves
    if shoulder < 1 or first < 2:
        raise Impossible(
            f"the neck of {panel.name} takes {taken} of {panel.count} stitches and {rows} of "
            f"{panel.last} rows, so nothing is left beside or below it",
            place,
            short_stitches=max(1, taken - panel.count + halves),
            ways_out=("a narrower neck", "a wider piece", "a shallower neck"),
        )
    panel.neck = plan_neck(choice, taken, first, panel.last)
    panel.split = first if choice.at == "middle" else 0
    if panel.choice.placket:
        panel.split -= panel.high(panel.choice.placket, "placket")
        if panel.split < 2:
            raise InputError(
                f"the placket of {panel.name} reaches down to its beginning",
                panel.basis.place(panel.where("placket")),
            )
    _cut_neck(panel, panel.split or first)
    panel.neck_run = slope_neck(choice, panel.neck, panel.last, place)
    if choice.at != "middle":
        line = panel.lines["left" if choice.at == "left" else "right"]
        line.step(first, panel.neck.once)
        line.slope(panel.neck_run)
    _shoulder(panel, shoulder)


def _cut_neck(panel: Layout, first: int) -> None:
    """The neck's rows get a heading of their own when they lie in plain rows of armhole or body."""
    stage = panel.stages[-1]
    if stage.first < first and not stage.run.amounts and stage.before == stage.after:
        _cut(panel, first, "neck")


def _shoulder(panel: Layout, stitches: int) -> None:
    choice, armhole = panel.choice.shoulder, panel.choice.armhole
    if choice is None or armhole is None:
        panel.steps = (stitches,)
        return
    number = min(panel.high(choice.drop, "shoulder.drop"), stitches)
    if number > panel.last - panel.armhole - 1:
        raise InputError(
            f"the shoulder of {panel.name} falls as far as its armhole is deep",
            panel.basis.place(panel.where("shoulder.drop")),
        )
    panel.steps = steps_of(stitches, number)
    for hand in _hands(armhole.edges):
        step_shoulder(panel.lines[hand], stitches, number, panel.last)


def _cap(panel: Layout, made: Mapping[str, Made]) -> None:
    choice = panel.choice.cap
    if choice is None:
        return
    place = panel.basis.place(panel.where("cap"))
    edges = [edge_named(n, made, panel.basis.place(panel.where("cap.into"))) for n in choice.into]
    steps = [
        places
        for edge in edges
        for base, places in zip(edge.bases, edge.places, strict=True)
        if base.edge not in ROW_ENDS
    ]
    once = steps[0] if steps else 0
    if choice.at_once is not None:
        once = panel.wide(choice.at_once, "cap.at_once")
    wanted = panel.basis.girth_wanted(choice.top, panel.where("cap.top"))
    top = _landed(panel.count, wanted, panel.gauge, 2, 1, 0)
    lengths = (
        panel.basis.length(t, panel.where("cap"))
        for t in (choice.ease, choice.shorter, choice.longer)
    )
    wish = Wish(math.fsum(edge.length.value for edge in edges), *lengths)
    most = once if choice.at_once is not None else (panel.count - top) // 4
    cap = plan_cap(panel.count, (once, most), top, wish, panel.gauge, place)
    once = cap.once
    before, first = panel.count, panel.last + 1
    panel.gauges += [panel.gauge] * cap.rows
    panel.last += cap.rows
    run = spread_run(first + (1 if once else 0), panel.last, -cap.each, "even", "any")
    for line in panel.lines.values():
        line.step(first, once)
        line.slope(run)
    panel.cap, panel.armhole, panel.count = cap, first, top
    panel.stages.append(
        Stage(f"{panel.name} cap", first, panel.last, before, top, panel.gauge, 2, run, wanted)
    )


def _slit(panel: Layout) -> None:
    if panel.choice.slit is None:
        return
    panel.slit = panel.high(panel.choice.slit, "slit")
    before = min(r for r in (panel.armhole, panel.split, panel.last) if r)
    if panel.slit >= before - 1 or min(panel.inner, default=before) <= panel.slit:
        raise InputError(
            f"the slit of {panel.name} ends in row {panel.slit}; it has to end below armhole, neck "
            "and what is shaped inside",
            panel.basis.place(panel.where("slit")),
        )


def _full_bust(panel: Layout) -> None:
    """Pairs of short rows in a plain right-side row near to where they are asked for.

    They turn in equal steps, the innermost over about a third of the width.

    Source: extra length over row height, in pairs, so that work ends where it began (common
    practice); the third is an own choice.
    """
    choice = panel.choice.full_bust
    if choice is None:
        return
    place = panel.basis.place(panel.where("full_bust"))
    pairs = max(round(panel.high(choice.extra, "full_bust.extra") / 2), 1)
    near = panel.high(choice.above, "full_bust.above") + 1
    end = min(r for r in (panel.armhole, panel.split, panel.last) if r)
    # Only the row after them is whole again, so that nothing may end or part on theirs.
    ends = {stage.last for stage in panel.stages}
    ends |= {r for s in panel.stages if s.worked is not None for r in range(s.first, s.last + 1)}
    plain = [
        r
        for r in range(max(panel.slit, 1) + 1, end - 1)
        if r % 2
        and r not in ends
        and not panel.inner.get(r)
        and all(r not in panel.lines[h].rows for h in HANDS)
    ]
    narrowest = min(min(stage.before, stage.after) for stage in panel.stages)
    step = narrowest // (3 * pairs)
    if not plain or step < 1:
        raise Impossible(
            f"{panel.name} has no plain row, or too few stitches, for {pairs} pairs of short rows",
            place,
            short_stitches=max(0, 3 * pairs - narrowest),
            ways_out=("less extra length", "a longer piece"),
        )
    panel.short = ShortRows(min(plain, key=lambda r: abs(r - near)), pairs, step)
