"""The rows of a tube worked in rounds: joined and turned, joined, or a spiral."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from frogless.design.pieces.tube import Section
from frogless.errors import InputError
from frogless.plan import flare, pattern_colours, shaping, waist
from frogless.plan.basis import Basis
from frogless.plan.model import CordPlan
from frogless.plan.pattern_rounds import base_row, met, pattern_rows
from frogless.plan.patterned import Patterned
from frogless.plan.sections import Span
from frogless.plan.tube import Tube
from frogless.rows.nodes import Chain, End, Node, Row, Side, Start, Work
from frogless.stitches.pattern_rows import OTHER_SIDE

FOUNDATION = "foundation"
CHAIN = "chain"


@dataclass(frozen=True, slots=True)
class Manner:
    """How the rounds of a piece are worked, as its design says."""

    turned: bool
    spiral: bool
    chain_counts: bool
    on_chain: bool

    def side(self, round_: int) -> Side:
        """RS, or in turned rounds RS for the odd ones."""
        return "WS" if self.turned and round_ % 2 == 0 else "RS"

    def end(self, round_: int, chains: int, *, last: bool) -> End:
        """Joined as the design says; before an edging turned only if the right side comes up."""
        if self.spiral:
            return End("first_stitch") if last else End()
        turn = self.turned and not (last and self.side(round_) == "RS")
        return End("chain_top" if self.on_chain and chains else "first_stitch", turn=turn)


def manner(basis: Basis) -> Manner:
    """How the rounds of the main piece are worked.

    Raises:
        InputError: a turning chain is to count that is not there.
    """
    work = basis.work
    spiral = work.rounds == "spiral"
    counts = work.turning_chain_counts and not spiral
    plain = [section for section in basis.tube.section if section.pattern is None]
    if counts and not all(turning_chain(basis, section) for section in plain):
        raise InputError(
            "a turning chain of 0 cannot count as a stitch; give it chains, or write "
            "turning_chain_counts = false",
            basis.place("work.turning_chain_counts"),
        )
    return Manner(
        turned=work.rounds == "joined and turned",
        spiral=spiral,
        chain_counts=counts,
        on_chain=counts or work.join_into == "top of chain",
    )


def turning_chain(basis: Basis, section: Section) -> int:
    """Chains that lift the work to a round of the section.

    A section in a stitch of its own has the turning chain of that stitch, unless it says otherwise.
    """
    work = basis.work
    if section.turning_chain is not None:
        return section.turning_chain
    if section.stitch is not None and section.stitch != work.stitch:
        return basis.stitches[section.stitch].turning_chain
    return work.turning_chain


def rows(tube: Tube, cord: CordPlan | None = None, begin: tuple[Node, ...] = ()) -> tuple[Row, ...]:
    """Every row of a tube, the foundation first; without an edging the last one is cut off.

    Args:
        begin: the body of round 1 when it is worked onto edges of other pieces; there is no
            foundation then.
    """
    how = manner(tube.basis)
    rounds = shaping_rounds(tube, how)
    following = {a: rounds[b] for a, b in pairwise(sorted(rounds))}
    made = [] if begin else [_foundation(tube)]
    for span in tube.spans:
        if span.worked is not None:
            made += _in_pattern(tube, span, how, made[-1] if made else None, begin)
            continue
        for r in range(span.rounds_above + 1, span.rounds_above + span.rounds + 1):
            if span.base_stitch and r == span.rounds_above + 1:
                made.append(_base_row(tube, span, r, how.side(r), made[-1], tube.counts[r]))
                continue
            marks = shaping.marks(rounds[r], following.get(r)) if r in rounds else ()
            body = begin if begin and r == 1 else _body(tube, r, rounds, how, cord)
            made.append(_row(tube, r, how, body, marks))
    if any(span.worked for span in tube.spans):
        made = pattern_colours.carried_on(_turned_between(made), tube.spans)
    if tube.basis.tube.edging is None:
        end = replace(made[-1].end, turn=False, fasten_off=True)
        made[-1] = replace(made[-1], end=end)
    return tuple(made)


def _in_pattern(
    tube: Tube, span: Span, how: Manner, below: Row | None, begin: tuple[Node, ...]
) -> Iterator[Row]:
    """The rounds of a section in a stitch pattern; a first round onto edges has the body given."""
    worked, basis = span.worked, tube.basis
    if worked is None:
        return
    hook, name = span.gauge.hook or basis.hook, span.section.name
    first = span.rounds_above + 1
    for i, row in enumerate(pattern_rows(worked, basis.stitches, first, name, hook)):
        if row is not None:
            made = row
        elif below is None:
            count = worked.base_count(worked.rounds[i])
            made = replace(
                base_row(
                    worked.base_stitch, (1,) * count, count, basis.stitches,
                    number=1, side=how.side(1), name=name, hook=hook,
                ),
                body=begin,
            )  # fmt: skip
        else:
            count = worked.base_count(worked.rounds[i])
            side = _side_within(worked, below) if i else how.side(first)
            made = _base_row(tube, span, first + i, side, below, count)
        below = made
        yield made


def _side_within(worked: Patterned, below: Row) -> Side:
    """The side of a base round between bands of a pattern: turned to where its rounds are turned."""
    turns = any(row.end.turn for row in worked.pattern.way.rows)
    return OTHER_SIDE[below.side] if turns else below.side


def _base_row(tube: Tube, span: Span, number: int, side: Side, below: Row, count: int) -> Row:
    """A round that makes the count that a fabric needs of what another has left."""
    stitches = tube.basis.stitches
    stitch = span.worked.base_stitch if span.worked else span.base_stitch
    return base_row(
        stitch, met(below, side, stitches), count, stitches,
        number=number, side=side, name=span.section.name,
        hook=span.gauge.hook or tube.basis.hook,
    )  # fmt: skip


def _turned_between(made: Sequence[Row]) -> list[Row]:
    """The rounds turned wherever the next one has the other side; the last one as for an edging."""
    sides = [*(row.side for row in made[1:]), "RS"]
    return [
        replace(row, end=replace(row.end, turn=row.side != side))
        for row, side in zip(made, sides, strict=True)
    ]


def shaping_rounds(tube: Tube, how: Manner) -> Mapping[int, shaping.Round]:
    """Every shaping round of the piece, by its number."""
    found: dict[int, shaping.Round] = {}
    past_pattern = False
    for span, shaped in zip(tube.spans, tube.layout.shaped, strict=True):
        past_pattern |= span.worked is not None
        if span.worked is not None:
            continue
        for i, within in enumerate(shaped.chosen.rhythm.rounds if shaped else ()):
            r = span.rounds_above + within
            before, after = tube.counts[r - 1 : r + 1]
            points = shaped.points if shaped else 1
            one = shaping.Round(
                places=before,
                points=points,
                add=(after - before) // points,
                side=how.side(r),
                chain_counts=how.chain_counts,
            )
            # No marker is carried through a pattern, so that the lines below it have none.
            found[r] = (
                replace(flare.placed(span.section, one, i), loose=True)
                if past_pattern
                else flare.placed(span.section, one, i)
            )
    return dict(zip(found, shaping.in_line(tuple(found.values())), strict=True))


def eyelets(
    rounds: Mapping[int, shaping.Round], r: int, how: Manner, gaps: tuple[int, ...]
) -> tuple[int, ...] | None:
    """The eyelets of a plain round, clear of markers that pass it; None when they cannot be."""
    marked = marked_places(rounds, r, how)
    return waist.eyelets(gaps, chain_counts=how.chain_counts, marked=marked)


def marked_places(rounds: Mapping[int, shaping.Round], r: int, how: Manner) -> frozenset[int]:
    """The places of a plain round, in the order worked, that carry a marker to a shaping round."""
    above = max((k for k in rounds if k < r), default=None)
    below = min((k for k in rounds if k > r), default=None)
    if above is None or below is None or rounds[above].loose:
        return frozenset()
    if rounds[above].points != rounds[below].points:
        return frozenset()
    one = rounds[above]
    marks = shaping.marks(one, rounds[below])
    places = [group + mark for group, mark in zip(one.groups(), marks, strict=True)]
    if how.turned and (r - above) % 2:
        last = one.left - int(not how.chain_counts)
        places = [last - place for place in places]
    return frozenset(places)


def _row(tube: Tube, r: int, how: Manner, body: tuple[Node, ...], marks: tuple[int, ...]) -> Row:
    span = tube.spans[tube.section_of(r)]
    chains = 0 if how.spiral else turning_chain(tube.basis, span.section)
    return Row(
        number=r,
        side=how.side(r),
        section=span.section.name,
        body=body,
        count=tube.counts[r],
        start=Start(chains, how.chain_counts),
        end=how.end(r, chains, last=r == tube.rounds),
        marks=marks,
        hook=span.gauge.hook or tube.basis.hook,
    )


def _body(
    tube: Tube,
    r: int,
    rounds: Mapping[int, shaping.Round],
    how: Manner,
    cord: CordPlan | None,
) -> tuple[Node, ...]:
    stitch = tube.spans[tube.section_of(r)].gauge.stitch
    if r in rounds:
        return shaping.body(stitch, rounds[r])
    if cord is not None and r == cord.eyelet_round:
        holes = eyelets(rounds, r, how, cord.gaps) or ()
        return waist.eyelet_body(stitch, tube.counts[r], holes, chain_counts=how.chain_counts)
    return (Work(stitch, tube.counts[r] - int(how.chain_counts)),)


def _foundation(tube: Tube) -> Row:
    basis, n = tube.basis, tube.counts[0]
    made_of = basis.stitches[basis.tube.start.made_of or CHAIN]
    body: Node = Work(made_of.key, n) if made_of.kind == FOUNDATION else Chain(n, each=True)
    return Row(
        number=0,
        side="RS",
        section=tube.spans[0].section.name,
        body=(body,),
        count=n,
        end=End("first_stitch"),
        hook=tube.spans[0].gauge.hook or basis.hook,
    )
