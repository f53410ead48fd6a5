"""One thing of the library, in full or in short."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterator, Mapping

from frogless.library.cost import SINGLE, Cost, cost
from frogless.library.items import Fit, Item, Kind, Name, edging_fits, stated, ways
from frogless.read.motifs import motif
from frogless.stitches import edgings
from frogless.stitches.edged import edging_way
from frogless.stitches.joins import joins, say_join
from frogless.stitches.load import dictionary, explain, explain_left_handed
from frogless.stitches.model import Dialect, Edging, Stitch
from frogless.stitches.motifs import Flatness, MotifEntry, motifs
from frogless.stitches.parameters import Parameter
from frogless.stitches.pattern_rows import Way
from frogless.stitches.patterns import patterns
from frogless.write.stitch_motif import rounds_to_tell, say_corner, say_motif
from frogless.write.stitch_pattern import say_way

INDENT = "  "


def multiple(number: int, offset: int) -> str:
    """A multiple as the trade writes it: "6 + 1", "8"."""
    return f"{number} + {offset}" if offset else str(number)


def how_it_works(way: Way | Fit) -> str:
    """ "rows over 6 + 1", "rounds over 6"."""
    name = "rounds" if way.closed else "rows"
    any_count = (way.multiple, way.offset) == (1, 0)
    return f"{name} over {'any count' if any_count else multiple(way.multiple, way.offset)}"


def edging_told(made: Edging) -> str:
    """ "rows over 6 + 1; rounds over 6; turns corners"."""
    corners = ["turns corners"] if made.sides else []
    return "; ".join([*map(how_it_works, edging_fits(made)), *corners])


def motif_told(entry: MotifEntry) -> str:
    """ "square, grows round by round"."""
    grows = "grows round by round" if entry.grows else _rounds(entry.own_rounds)
    return f"{entry.shape}, {grows}"


def _rounds(number: int) -> str:
    return f"{number} {'round' if number == 1 else 'rounds'}"


def how_it_goes_on(entry: MotifEntry) -> str:
    """What the letters in the rounds of a motif mean that grows for ever; "" of another."""
    if not entry.grows:
        return ""
    if entry.period == 1:
        return "In the last line r is the number of the round."
    return (
        f"The last {entry.period} lines take turns: r is the number of the round, and k how often "
        "they were all worked before, 0 the first time."
    )


def again_told(way: Way) -> str:
    """Which rows are worked over and over: "Repeat rows 2 and 3."; "" where there is one alone."""
    first, last = way.setup + 1, len(way.rows)
    if last == 1:
        return ""
    name = "rnd" if way.closed else "row"
    if first == last:
        return f"Repeat {name} {first}."
    return f"Repeat {name}s {first} {'and' if last == first + 1 else 'to'} {last}."


def yarn_told(found: Cost, terms: Dialect) -> str:
    """What a pattern costs in yarn, in words."""
    single = dictionary()[SINGLE].terms[terms].name
    return f"{found.yarn:.2f} times the yarn of {single} over the same area"


def _from(basis: str, source: str, terms: Dialect) -> str:
    """Where it comes from. Sources are kept in US terms, and say so where the reader's are others."""
    kept = "" if terms == "us" else " (in US terms)"
    return f"{basis}{kept}: {spelled(source, terms)}"


def spelled(text: str, terms: Dialect) -> str:
    """What the library has in the spelling of the UK, in the reader's.

    >>> spelled("two colours", "us")
    'two colors'
    """
    return text.replace("colour", "color") if terms == "us" else text


def named(name: Name) -> str:
    """ "single crochet (sc)"."""
    same = not name.abbreviation or name.abbreviation == name.name
    return name.name if same else f"{name.name} ({name.abbreviation})"


def where_named(name: Name) -> str:
    """ "US", "de"."""
    return name.where.upper() if name.where in ("us", "uk") else name.where


def in_short(item: Item) -> str:
    """What a list says of a thing: what it works over, or what it looks like."""
    if item.kind == "pattern":
        return "; ".join(how_it_works(way) for way in stated(patterns()[item.key]))
    if item.kind == "edging":
        return edging_told(edgings.edging(item.key))
    if item.kind == "motif":
        return motif_told(motifs()[item.key])
    if item.kind == "join":
        return joins()[item.key].looks
    stitch = dictionary()[item.key]
    return _stands(stitch)


def _stands(stitch: Stitch) -> str:
    if not stitch.stands_on and not stitch.leaves:
        return "stands on nothing, leaves nothing to work into"
    return f"stands on {stitch.stands_on}, leaves {stitch.leaves}"


def in_full(item: Item, terms: Dialect, columns: int = 100) -> str:
    """All that the library knows of a thing, in lines of so many columns."""
    wrapped = (
        textwrap.fill(line, columns, subsequent_indent=INDENT, break_on_hyphens=False)
        for line in _IN_FULL[item.kind](item, terms)
    )
    return "\n".join(wrapped) + "\n"


def _stitch_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    stitch = dictionary()[item.key]
    yield f"{named(item.name(terms))} [{item.key}]"
    yield "; ".join(f"{where_named(name)} {named(name)}" for name in item.names)
    if stitch.also:
        yield f"also called: {', '.join(stitch.also)}"
    yield explain(stitch, terms)
    if stitch.left_handed:
        yield f"Left-handed: {explain_left_handed(stitch, terms)}"
    yield f"{_stands(stitch)}; catches the yarn {stitch.catches} times ({stitch.yarn_basis})"
    if stitch.turning_chain:
        counts = {"yes": "counts", "no": "does not count", "varies": "counts for some designers"}
        told_ = counts.get(stitch.chain_counts, "")
        yield f"usual turning chain: {stitch.turning_chain}" + (f", {told_}" if told_ else "")
    height, single = stitch.height, dictionary()[SINGLE].terms[terms].name
    yield (
        f"height against {single}: {height.typical:g} ({height.low:g} to {height.high:g}); "
        + _from(stitch.basis, stitch.source, terms)
    )


def _pattern_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    entry = patterns()[item.key]
    yield f"{entry.names[terms]} [{entry.key}]"
    if entry.also:
        yield f"also called: {', '.join(entry.also)}"
    yield f"drape: {entry.drape}; stretch: {entry.stretch}; leans: {entry.bias}"
    yield from _may_be_changed(entry.parameters)
    for way in ways(entry):
        found = cost(way, dictionary())
        yield ""
        yield f"{how_it_works(way).capitalize()}; {yarn_told(found, terms)} (derived)"
        yield from say_way(way, dictionary(), terms)
        yield from filter(None, [again_told(way)])
    if any(way.colour for way in ways(entry)):
        yield "To change, draw the new yarn through as the last loop of the stitch before."
    if entry.note:
        yield spelled(entry.note, terms)
    yield ""
    yield _from(entry.basis, entry.source, terms)


def _edging_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    pattern, made = edgings.patterns()[item.key], edgings.edging(item.key)
    yield f"{named(item.name(terms))} [{item.key}]"
    yield from _may_be_changed(pattern.parameters)
    for way in edging_ways(made):
        yield ""
        yield how_it_works(way).capitalize()
        yield from say_way(way, dictionary(), terms)
    if made.sides:
        yield ""
        yield from corners_told(made, terms)
    if made.note:
        yield spelled(made.note, terms)
    yield ""
    yield _from(made.basis, made.source, terms)


def corners_told(made: Edging, terms: Dialect) -> Iterator[str]:
    """How an edging goes round a corner and along the side after it, a line for each round."""
    over = (made.multiple, made.side_offset)
    sides = "any count" if over == (1, 0) else multiple(*over)
    yield (
        f"Round corners, over sides of {sides} between them. Begin in a corner; for each corner and "
        "the side after it:"
    )
    for number, line in enumerate(say_corner(made, dictionary(), terms), start=1):
        yield f"Rnd {number}: {line}"


def edging_ways(made: Edging) -> Iterator[Way]:
    """An edging in rows along an edge where it has any, and in rounds."""
    if made.rows:
        yield edging_way(made, closed=False)
    yield edging_way(made, closed=True)


def motif_rows(entry: MotifEntry, terms: Dialect) -> tuple[str, ...]:
    """The rounds of a motif; those that it grows by for ever come last, as sums over the round."""
    if not entry.grows:
        return say_motif(motif(entry.key).program, dictionary(), terms)
    rounds = rounds_to_tell(entry.own_rounds, entry.period)
    made = motif(entry.key, rounds)
    own = entry.own_rounds
    return say_motif(made.program, dictionary(), terms, own=own, period=entry.period)


def flatness_told(flatness: Flatness, terms: Dialect) -> str:
    """How a motif lies, with the figures."""
    stitch, flat = dictionary()[flatness.stitch].terms[terms].name, flatness.flat
    return (
        f"Each round gains {flatness.growth:.3g} stitches of {stitch}; {flat.low:.1f} to "
        f"{flat.high:.1f} lie flat: it {flatness.lies}."
    )


def _motif_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    entry = motifs()[item.key]
    yield f"{entry.names[terms]} [{entry.key}]: {motif_told(entry)}"
    yield from _may_be_changed(entry.parameters)
    yield ""
    yield from motif_rows(entry, terms)
    yield from filter(None, [how_it_goes_on(entry)])
    if flatness := motif(entry.key).flatness:
        yield flatness_told(flatness, terms)
    if entry.note:
        yield spelled(entry.note, terms)
    yield ""
    yield _from(entry.basis, entry.source, terms)


def _join_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    join = joins()[item.key]
    yield f"{join.names[terms]} [{join.key}]: {join.looks}"
    yield f"Hold the pieces {join.held}; with a {join.tool}."
    yield say_join(join, terms)
    yield ""
    yield _from(join.basis, join.source, terms)


def _may_be_changed(parameters: Mapping[str, Parameter]) -> Iterator[str]:
    if parameters:
        told_ = (f"{n} {p.low} to {p.high} (here {p.default})" for n, p in parameters.items())
        yield f"may be changed: {', '.join(told_)}"


_IN_FULL: Mapping[Kind, Callable[[Item, Dialect], Iterator[str]]] = {
    "stitch": _stitch_in_full,
    "pattern": _pattern_in_full,
    "edging": _edging_in_full,
    "motif": _motif_in_full,
    "join": _join_in_full,
}
