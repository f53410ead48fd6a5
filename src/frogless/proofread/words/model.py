"""What the text of a row says, as a small tree: acts in the order of the work.

A number is given for each size (`Numbers`), so that a row is read once and worked once for each.
Stitches are named by their dictionary key, by the key of a stitch that the pattern defines itself,
or "" where the pattern leaves the stitch open ("inc", "5 sts").
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from frogless.proofread.script.model import Span

What = Literal[
    "stitch",  # "st"; `stitch` names one: "next dc", "next shell"
    "space",  # "ch-2 sp" (chains 2), "next sp" (chains unsaid); a chain loop
    "chain",  # a single chain: "next ch", "each ch across"
    "any",  # "each st and ch": whatever comes, each chain for itself
    "ring",  # magic ring, chain ring
    "same",  # the place worked into last; at a row's start, the place at the foot of its chain
    "top",  # top of the turning chain, "in tch"
    "marked",  # "marked st": a marker stands on it
    "from_hook",  # "2nd ch from hook": `nth`
    "row_end",  # an edge: no places are known
    "between",  # between two stitches: a place that the row below does not count
    "corner",  # "in corner sp": a space, whichever its chains
    "skipped",  # "in the skipped st": the place passed over last
]


@dataclass(frozen=True, slots=True)
class Numbers:
    """A number, or one for each size: 100 (108, 116) [124, 132].

    A dash among them ("for this size nothing") is 0. `at` tells which.
    """

    values: tuple[int, ...]
    span: Span

    def of(self, size: int, sizes: int) -> int | None:
        """The number of a size (0 first); None where the list has not as many as there are sizes."""
        if len(self.values) == 1:
            return self.values[0]
        return self.values[size] if len(self.values) == sizes else None


@dataclass(frozen=True, slots=True)
class Target:
    """Which places are meant.

    Args:
        others: "each st and ch-1 sp": further kinds that are meant as well.
        which: "next" also where nothing is said.
        nth: of `from_hook` the number of the chain; elsewhere the number of the place ("3rd dc of
            next shell"), -1: the middle one; 0: not said.
        of: dictionary key or own key of the stitch that the place is part of ("in ch-2 sp of next
            V-st"); "".
        counts: of `from_hook`, what the text says of the chains passed over: they count as a stitch,
            or not; None where it says nothing. `counts_as`: the stitch that they stand for. Elsewhere
            False of slip stitches that only lead on: "sl st in next 2 sts (not counted)".
    """

    what: What = "stitch"
    stitch: str = ""
    chains: Numbers | None = None
    which: Literal["next", "first", "last", "each", "same"] = "next"
    nth: int = 0
    of: str = ""
    others: tuple[Target, ...] = ()
    counts: bool | None = None
    counts_as: str = ""


@dataclass(frozen=True, slots=True)
class Extent:
    """How far.

    kind:
        times: `times` times, or into `times` places.
        end: to the end of the row, "around", "across".
        but_last: to the last `times` places that are `target`: "to last 3 sts".
        until: up to a place that is met: "to marked st", "to next ch-2 sp"; it is left alone, and
            `times` places before it ("to 2 sts before marked st"; None: 0).
        unsaid: "rep from *" and no more.
    """

    kind: Literal["times", "end", "but_last", "until", "unsaid"]
    times: Numbers | None = None
    target: Target | None = None


@dataclass(frozen=True, slots=True)
class Bare:
    """`times` stitches with no place named: "5 sc", "sc5", "sc", "fsc 90", "picot".

    Within `Into` they are worked into its place; else the next places take one each.
    """

    span: Span
    stitch: str
    times: Numbers | None = None  # None: once
    written_after: bool = False  # "sc 5", "sc5": one in each; "5 sc" may be read either way


@dataclass(frozen=True, slots=True)
class Into:
    """All of `body` worked into one place, and again into the next, as far as `extent` says.

    "sc in next 5 sts": body sc, extent 5 times. "2 dc in each st around": body 2 dc, extent end.
    """

    span: Span
    body: tuple[Act, ...]
    target: Target
    extent: Extent


@dataclass(frozen=True, slots=True)
class Met:
    """Places worked differently as they are met, to the end of the row.

    "sc in each dc and 3 sc in each ch-2 sp around"; "sc in each st around, working 3 sc in each
    corner". Each part says what is worked into which places; of two that fit, the later holds.
    """

    span: Span
    parts: tuple[Into, ...]
    extent: Extent


@dataclass(frozen=True, slots=True)
class Increase:
    """ "inc": `makes` stitches into one place; what the glossary says, else two of the row's."""

    span: Span
    stitch: str
    makes: int
    extent: Extent
    target: Target = Target()


@dataclass(frozen=True, slots=True)
class Together:
    """`places` places closed into one stitch, again as far as `extent` says: "dc2tog", "dec"."""

    span: Span
    stitch: str
    places: int
    extent: Extent
    target: Target = Target()


@dataclass(frozen=True, slots=True)
class Chain:
    """A run of chains.

    Args:
        counts: what the text says of a chain that begins a row: counts as a stitch, or not; None
            where it says nothing.
        counts_as: the stitch that it stands for.
        space: of `times`, those that are no part of that stitch but a space after it ("ch 4, counts
            as dc and ch 1": 1).
    """

    span: Span
    times: Numbers
    counts: bool | None = None
    counts_as: str = ""
    space: int = 0


@dataclass(frozen=True, slots=True)
class Skip:
    """Places passed over.

    Args:
        to: all before the place that is named: "skip to next ch-2 sp".
    """

    span: Span
    target: Target
    times: Numbers | None = None  # None: one
    to: bool = False


@dataclass(frozen=True, slots=True)
class Leave:
    """Places left unworked: "leave last 5 sts unworked", "leave rem sts unworked" (times None)."""

    span: Span
    times: Numbers | None = None


@dataclass(frozen=True, slots=True)
class Repeat:
    """A group worked again and again.

    Args:
        more: the extent's times come after a first time ("5 more times", "rep from * 5 times more").
        doubtful: "rep from * 5 times" may mean five more or five in all.
        in_place: "(2 sc, 4 dc)": the group stands in round brackets and no place is named; it may
            be meant into one place.
    """

    span: Span
    body: tuple[Act, ...]
    extent: Extent
    more: bool = False
    doubtful: bool = False
    in_place: bool = False


@dataclass(frozen=True, slots=True)
class Evenly:
    """ "inc 8 evenly", "sc evenly around, decreasing 6 sts", "work 90 sc evenly along edge".

    Args:
        change: how many more (`sense` 1) or fewer (-1) than the row below; None where it is not said.
        total: how many are made in all.
        over: the places that they are spread over; None: all of the row.
    """

    span: Span
    stitch: str
    change: Numbers | None = None
    total: Numbers | None = None
    sense: Literal[1, -1] = 1
    over: Numbers | None = None


@dataclass(frozen=True, slots=True)
class Again:
    """Rows worked again: "rep Row 2", "rep Rnds 3 and 4 until …", "work 6 more rounds even".

    Args:
        first, last: the rows that are worked again, by number; 0: as said in `name`.
        name: "increase", "decrease", "last" (the last `last` rows), "even", "pattern", "same", and
            "piece" ("work as back": `until` says which) where no number is given.
        times: how often the rows are worked again, all of them.
        rows: how many rows are worked so, counted one by one.
        every: "every 3rd rnd".
        until: what stands after "until" or "for" when it is a length or a remark; "".
        until_rows: "until Row 20", "through Rnd 14": up to and with that row; 0.
        length: in mm, for each size, when the piece is measured; empty otherwise.
    """

    span: Span
    first: int = 0
    last: int = 0
    name: str = ""
    times: Numbers | None = None
    rows: Numbers | None = None
    every: int = 1
    until: str = ""
    until_rows: int = 0
    length: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Turn:
    """The work is turned; `turned` False: it is said not to be."""

    span: Span
    turned: bool = True


@dataclass(frozen=True, slots=True)
class Join:
    """A round is closed, or not.

    Args:
        to: what the join goes into: the first stitch, the top of a chain, a ring made of a chain.
        stitch: which first stitch is said; "".
        chains: of the top that is said; 0.
    """

    span: Span
    to: Literal["first", "top", "ring", "unsaid", "none"]
    stitch: str = ""
    chains: int = 0


@dataclass(frozen=True, slots=True)
class Ring:
    """A ring that is pulled shut: "magic ring", "make a magic loop"."""

    span: Span


@dataclass(frozen=True, slots=True)
class Aside:
    """What changes no stitch: markers, colours, fastening off, a remark that is understood.

    Args:
        kind: "join_piece": what follows is worked into another piece, "join to first leg"; "back":
            the row is worked back along the row below, without turning; "spaces": a chain space of
            the row below is called a stitch; "left_over": the row goes on over what was left unworked.
        hook: mm, when a hook is named; 0.
    """

    span: Span
    kind: Literal[
        "marker", "colour", "fasten_off", "join_yarn", "join_piece", "hook", "back", "spaces",
        "left_over", "remark",
    ]  # fmt: skip
    hook: float = 0.0


@dataclass(frozen=True, slots=True)
class Unclear:
    """Words that were not understood, with a guess at what would be ("" when there is none)."""

    span: Span
    guess: str = ""


Act = (
    Bare | Into | Met | Increase | Together | Chain | Skip | Leave | Repeat | Evenly | Again | Turn | Join
    | Ring | Aside | Unclear
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Stated:
    """One count that is stated: "(96 dc)", "- 64 dc, 32 ch-2 sps": two of these.

    Args:
        what: "stitch" for "sts" or nothing, else as `Target.what`; `stitch` names the stitch.
        change: it states stitches made more (+) or fewer, "(+6 sts)": no count.
    """

    span: Span
    count: Numbers
    what: Literal["stitch", "space", "chain", "group", "any"] = "stitch"
    stitch: str = ""
    chains: int = 0
    change: bool = False


@dataclass(frozen=True, slots=True)
class Used:
    """A word of the trade that the text uses, in the writing of the text in lower case."""

    word: str
    span: Span
    stitch: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """All that the text of a row, or a sentence between rows, says."""

    acts: tuple[Act, ...]
    stated: tuple[Stated, ...] = ()
    used: tuple[Used, ...] = ()


@dataclass(frozen=True, slots=True)
class OwnStitch:
    """A stitch, group or abbreviation that the pattern defines.

    Args:
        key: its name in lower case, "shell".
        words: all that it is called in the pattern, in lower case.
        body: what it works into one place; empty when its steps are told in motions (yo, pull up).
        takes: places of the row below: 1 for a group; n for "over next n sts".
        leaves: places it leaves, when it counts as one stitch or its steps are told in motions.
        meaning: of a plain abbreviation the key of the stitch it stands for; "".
    """

    key: str
    words: tuple[str, ...]
    span: Span
    body: tuple[Act, ...] = ()
    takes: int = 1
    leaves: int = 1
    meaning: str = ""


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of the list of abbreviations: "dc2tog = double crochet 2 together"."""

    word: str
    meaning: str
    span: Span


@dataclass(frozen=True, slots=True)
class Evidence:
    """A word or a turn of phrase that speaks for one dialect."""

    dialect: Literal["us", "uk"]
    why: str
    span: Span
    weight: float = 1.0


@dataclass(frozen=True, slots=True)
class Terms:
    """The dialect that a pattern is read in, and why.

    Args:
        declared: what the pattern says of itself; "" when nothing.
        guessed: it was not asked for and not declared.
    """

    dialect: Literal["us", "uk"]
    declared: Literal["us", "uk", ""] = ""
    guessed: bool = False
    evidence: tuple[Evidence, ...] = field(default=())
