"""The strips that a panel is worked in: halves below a slit, the main piece, a side beyond the neck.

Where a neck or a placket parts the rows, the main piece goes on with the side at which its row
begins; the other side is begun anew on the stitches that the main piece passes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.plan.pieces.panel_edges import HANDS, Change, Hand, Line
from frogless.plan.pieces.panel_layout import Layout
from frogless.plan.pieces.panel_rows import Strip, hands_of
from frogless.rows.nodes import Base


@dataclass(frozen=True, slots=True)
class Strips:
    """A panel in strips.

    Args:
        halves: below a slit, by hand; empty without one.
        sides: beyond the neck, by hand; the main piece is one of them. Empty when nothing is parted.
        middle: stitches between the sides in the row below the split, and where they begin counted
            from the right edge.
    """

    main: Strip
    halves: Mapping[Hand, Strip]
    sides: Mapping[Hand, Strip]
    middle: tuple[int, int] = (0, 0)

    @property
    def all(self) -> tuple[Strip, ...]:
        """In the order worked."""
        others = (strip for strip in self.sides.values() if strip is not self.main)
        return (*self.halves.values(), self.main, *others)

    def outer(self, hand: Hand, split: int) -> tuple[tuple[Strip, int, int], ...]:
        """The strips along an outer edge from below upwards, each with its rows there."""
        last = self.main.last
        found = [(half, half.first, half.last) for h, half in self.halves.items() if h == hand]
        if not self.sides or self.sides[hand] is self.main:
            return (*found, (self.main, self.main.first, last))
        side = self.sides[hand]
        return (*found, (self.main, self.main.first, split - 1), (side, split, last))


def other(hand: Hand) -> Hand:
    """The opposite edge."""
    return "left" if hand == "right" else "right"


def strips_of(panel: Layout) -> Strips:
    """The strips, in the order worked."""
    edges: dict[Hand, dict[int, Change]] = {h: dict(panel.lines[h].rows) for h in HANDS}
    whole = Strip(
        panel.name,
        1,
        panel.last,
        panel.begun.count,
        edges,
        panel.inner,
        panel.choice.made_of,
        short=panel.short,
    )
    halves = _halves(panel, whole) if panel.slit else {}
    main = _begun_on(whole, halves, panel.slit + 1) if halves else whole
    if not panel.split:
        return Strips(main, halves, {})
    return _parted(panel, whole, main, halves)


def _halves(panel: Layout, whole: Strip) -> dict[Hand, Strip]:
    """The two halves below a slit, in the order in which the row over both meets them."""
    counts: dict[Hand, int] = {"right": whole.count - whole.count // 2, "left": whole.count // 2}
    return {
        hand: Strip(
            f"{panel.name}, {hand} half",
            1,
            panel.slit,
            counts[hand],
            {hand: whole.edges[hand], other(hand): {}},
            begun_with=whole.begun_with,
        )
        for hand in hands_of(panel.slit + 1)
    }


def _begun_on(whole: Strip, halves: Mapping[Hand, Strip], first: int) -> Strip:
    bases = tuple(Base(half.name, "last_row") for half in halves.values())
    count = whole.count_after(first - 1)
    return Strip(
        whole.name, first, whole.last, count, whole.edges, whole.inner, "", bases, whole.short
    )


def _parted(panel: Layout, whole: Strip, main: Strip, halves: Mapping[Hand, Strip]) -> Strips:
    split = panel.split
    begins, ends = hands_of(split)
    below = whole.count_after(split - 1)
    inner, opened = _neck_edges(panel)
    counts = {hand: _side_count(panel, hand) + opened[hand] for hand in HANDS}
    between = below - sum(counts.values())
    passed = Change(below - counts[begins], inner[begins].get(split, Change()).by)
    edges = {
        begins: whole.edges[begins],
        ends: {
            **{row: change for row, change in whole.edges[ends].items() if row < split},
            **inner[begins],
            split: passed,
        },
    }
    first = Strip(
        main.name, main.first, main.last, main.count, edges, main.inner, main.begun_with,
        main.bases, main.short,
    )  # fmt: skip
    # Counted from the far end of the row below, as that row made its stitches.
    base = Base(
        main.name,
        "row",
        row=first.number(split - 1),
        first=0,
        count=counts[ends],
        reverse=True,
    )
    second = Strip(
        f"{panel.name}, {ends} side",
        split,
        main.last,
        counts[ends],
        {
            ends: {row: change for row, change in whole.edges[ends].items() if row >= split},
            begins: inner[ends],
        },
        bases=(base,),
        short=main.short,
    )
    return Strips(first, halves, {begins: first, ends: second}, (between, counts["right"]))


def _neck_edges(panel: Layout) -> tuple[dict[Hand, dict[int, Change]], dict[Hand, int]]:
    """What the neck's edge of each side does, and what it leaves at once above a placket."""
    neck = panel.neckline
    once: dict[Hand, int] = {"right": 0, "left": 0}
    if panel.split < neck.first:
        once = {"right": neck.once - neck.once // 2, "left": neck.once // 2}
    found: dict[Hand, dict[int, Change]] = {}
    for hand in HANDS:
        line = Line()
        line.step(neck.first, once[hand])
        line.slope(panel.neck_run)
        found[hand] = line.rows
    return found, once


def _side_count(panel: Layout, hand: Hand) -> int:
    """Stitches of a side where it is parted: its shoulder, and what both its edges still lose."""
    neck = panel.neckline
    steps = panel.steps[:-1] if _is_stepped(panel, hand) else ()
    lost = sum(
        change.once - change.by
        for row, change in panel.lines[hand].rows.items()
        if row >= panel.split
    )
    return sum(panel.steps) + neck.each + lost - sum(steps)


def _is_stepped(panel: Layout, hand: Hand) -> bool:
    armhole = panel.choice.armhole
    return armhole is not None and armhole.edges in ("both", hand)
