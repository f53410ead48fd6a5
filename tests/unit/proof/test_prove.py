"""Every check of the proof passes over a sound pattern and is seen to fail over a broken one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import pytest
from one_piece import alter

from frogless import draft
from frogless.because import Because
from frogless.errors import ProofFailed
from frogless.fabric.expand import expand
from frogless.plan.model import JoinPlan
from frogless.proof import prove as prove_
from frogless.proof.model import Finding, Subject
from frogless.proof.prove import CHECKS, prove, require
from frogless.rows.nodes import Change, Node, Program, Repeat, Row, Seam, Work
from frogless.units import Measured
from frogless.write.pattern import write_program

Break = Callable[[Subject], Subject]
COVER, SKIRT = "elastic cover", "skirt"


def rewritten(subject: Subject, program: Program) -> Subject:
    """The subject with another program, expanded and written anew."""
    return replace(
        subject,
        program=program,
        plan=replace(subject.plan, program=program),
        fabric=expand(program, subject.stitches),
        texts={d: write_program(program, subject.stitches, d) for d in subject.texts},
    )


def row_of(subject: Subject, piece: str, number: int) -> Row:
    """One row of one piece."""
    return next(r for r in subject.program.piece(piece).rows if r.number == number)


def with_rows(program: Program, piece: str, change: Callable[[Row], Row]) -> Program:
    """The program with every row of a piece changed."""
    changed = [
        replace(p, rows=tuple(map(change, p.rows))) if p.name == piece else p
        for p in program.pieces
    ]
    return replace(program, pieces=tuple(changed))


def with_row(piece: str, number: int, subject: Subject, **changes: Any) -> Subject:  # noqa: ANN401 — any field
    """The subject with one row changed."""
    return rewritten(
        subject,
        with_rows(
            subject.program, piece, lambda r: replace(r, **changes) if r.number == number else r
        ),
    )


def cover_times(more: int, subject: Subject) -> Subject:
    """The repeat of the elastic's cover worked oftener, its count to match."""
    row = row_of(subject, COVER, 1)
    (repeat,) = row.body
    assert isinstance(repeat, Repeat)
    body = (replace(repeat, times=repeat.times + more),)
    return with_row(COVER, 1, subject, body=body, count=row.count + 2 * more)


def wrong_count(subject: Subject) -> Subject:
    """One stitch too many stated at the end of the elastic's cover."""
    return with_row(COVER, 1, subject, count=row_of(subject, COVER, 1).count + 1)


def wrong_landmark_count(subject: Subject) -> Subject:
    """A landmark planned with a stitch more than its round has."""
    first, second, *others = subject.plan.main.landmarks
    marks = (first, replace(second, count=second.count + 1), *others)
    return replace(subject, plan=alter(subject.plan, landmarks=marks))


def wrong_section_count(subject: Subject) -> Subject:
    """A section planned to end with a stitch more than its last round has."""
    *others, last = subject.plan.main.sections
    sections = (*others, replace(last, count_after=last.count_after + 1))
    return replace(subject, plan=alter(subject.plan, sections=sections))


def not_turned(subject: Subject) -> Subject:
    """A round that is not turned, before one with the other side facing."""
    end = replace(row_of(subject, SKIRT, 2).end, turn=False)
    return with_row(SKIRT, 2, subject, end=end)


def not_joined(subject: Subject) -> Subject:
    """A round that begins with a chain and is left open."""
    end = replace(row_of(subject, COVER, 1).end, join="none")
    return with_row(COVER, 1, subject, end=end)


def misnumbered(subject: Subject) -> Subject:
    """A number that is left out before the edging."""
    return replace(
        subject,
        program=with_rows(
            subject.program,
            SKIRT,
            lambda r: replace(r, number=r.number + (r.section == "edging")),
        ),
    )


def late_shaping(subject: Subject) -> Subject:
    """A plan that shapes its second section a round later than its rows do."""
    first, second, *others = subject.plan.main.sections
    assert second.chosen is not None
    rhythm = second.chosen.rhythm
    late = replace(rhythm, rounds=tuple(r + 1 for r in rhythm.rounds))
    sections = (first, replace(second, chosen=replace(second.chosen, rhythm=late)), *others)
    return replace(subject, plan=alter(subject.plan, sections=sections))


def astray(subject: Subject) -> Subject:
    """All shaping points moved five stitches along, so that the markers still lead to them."""

    def moved(row: Row) -> Row:
        if not row.marks:
            return row
        first, *middle, last = row.body
        by = 5 if row.side == "RS" else -5
        return replace(row, body=(longer(first, by), *middle, longer(last, -by)))

    return rewritten(subject, with_rows(subject.program, SKIRT, moved))


def longer(node: Node, by: int) -> Node:
    """A run of stitches with some more of them."""
    assert isinstance(node, Work)
    return replace(node, times=node.times + by)


def wrong_marks(subject: Subject) -> Subject:
    """The markers of the first shaping round moved into the other stitch of each increase."""
    row = row_of(subject, SKIRT, 5)
    return with_row(SKIRT, 5, subject, marks=tuple(1 - mark for mark in row.marks))


def wrong_base(subject: Subject) -> Subject:
    """An edging planned over a stitch more than there is."""
    assert subject.plan.main.edging is not None
    edging = replace(subject.plan.main.edging, base_count=subject.plan.main.edging.base_count + 1)
    return replace(subject, plan=alter(subject.plan, edging=edging))


def longer_base(subject: Subject) -> Subject:
    """An elastic's cover begun on a stitch more than the skirt's edge has."""
    pieces = [
        replace(p, bases=tuple(replace(b, count=153) for b in p.bases)) if p.name == COVER else p
        for p in subject.program.pieces
    ]
    return replace(subject, program=replace(subject.program, pieces=tuple(pieces)))


def unlike_edges(subject: Subject) -> Subject:
    """A join of edges of which one is 2 cm longer, where 1.5 cm is allowed."""
    join = JoinPlan(
        name="side seam",
        first="front side",
        second="back side",
        first_length=Measured(431.0),
        second_length=Measured(451.0),
        limit=15.0,
        because=Because(()),
    )
    return replace(subject, plan=replace(subject.plan, joins=(join,)))


def a_row_more(subject: Subject) -> Subject:
    """A plan of one row more than is worked."""
    main = subject.plan.main
    return replace(subject, plan=alter(subject.plan, counts=(*main.counts, main.counts[-1])))


def seam_changed(change: Callable[[Seam], Seam], subject: Subject) -> Subject:
    """The last seam changed."""
    *others, last = subject.program.seams
    return replace(subject, program=replace(subject.program, seams=(*others, change(last))))


def seam_rewritten(change: Callable[[Seam], Seam], subject: Subject) -> Subject:
    """The last seam changed, and the text with it."""
    return rewritten(subject, seam_changed(change, subject).program)


def uneven(seam: Seam) -> Seam:
    """Two stitches taken from the first place and given to the last."""
    first, *middle, last = seam.spread
    return replace(seam, spread=(first - 1, *middle, last + 1))


def changed_to(letter: str, number: int, subject: Subject) -> Subject:
    """A row of the shawl that ends with a change to this colour, whatever it had before."""
    body = tuple(n for n in row_of(subject, "shawl", number).body if not isinstance(n, Change))
    return with_row("shawl", number, subject, body=(*body, Change(letter)))


def open_stitch(subject: Subject) -> Subject:
    """A dictionary whose double crochet has lost its last step."""
    stitch = subject.stitches["double_crochet"]
    broken = replace(stitch, steps=stitch.steps[:-1])
    return replace(subject, stitches={**subject.stitches, stitch.key: broken})


def shared_term(subject: Subject) -> Subject:
    """A dictionary in which the bead, which is told in words, is shortened as the picot is."""
    stitch, other = subject.stitches["bead"], subject.stitches["picot"]
    short = other.terms["us"].abbreviation
    terms = {**stitch.terms, "us": replace(stitch.terms["us"], abbreviation=short)}
    return replace(subject, stitches={**subject.stitches, "bead": replace(stitch, terms=terms)})


def tight(subject: Subject) -> Subject:
    """A landmark that came out too tight."""
    first, *others = subject.fit.landmarks
    marks = (replace(first, verdict="tight"), *others)
    return replace(subject, fit=replace(subject.fit, landmarks=marks))


def does_not_pass(subject: Subject) -> Subject:
    """A waist that cannot be pulled over the hips."""
    going = replace(subject.fit.going_on, verdict="does not pass", reasons=("It is too narrow.",))
    return replace(subject, fit=replace(subject.fit, going_on=going))


def held_by_nothing(subject: Subject) -> Subject:
    """A skirt without elastic, cord or band."""
    fit = replace(subject.fit, staying_up="Nothing holds it up.")
    return replace(subject, plan=alter(subject.plan, waist=None), fit=fit)


def altered_text(old: str, new: str, subject: Subject) -> Subject:
    """A slip in the written US text."""
    assert old in subject.texts["us"]
    texts = {**subject.texts, "us": subject.texts["us"].replace(old, new, 1)}
    return replace(subject, texts=texts)


@dataclass(frozen=True, slots=True)
class Broken:
    """A way to break a pattern, the check that has to find it, and what it says.

    Args:
        also: checks that rightly fail with it.
    """

    check: str
    how: Break
    says: str
    pattern: str = "ring"
    also: tuple[str, ...] = ()


FAULTS = {
    "a place left out": Broken(
        "places",
        partial(cover_times, -1),
        "elastic cover, row 1: place 152 of the row below is left out",
    ),
    "a repeat too many": Broken(
        "repeats", partial(cover_times, 1), "elastic cover, row 1: asks for 1 places more than"
    ),
    "a count too high": Broken(
        "counts", wrong_count, "elastic cover, row 1: states 305 and leaves 304"
    ),
    "another count planned": Broken(
        "planned", wrong_landmark_count, "high_hip_girth: planned 169, row 9 leaves 168"
    ),
    "another end of a section planned": Broken(
        "planned", wrong_section_count, "end of hip to hem: planned 249, row 51 leaves 248"
    ),
    "a turn forgotten": Broken("rounds", not_turned, "skirt, row 2: is not turned, but the side"),
    "a round left open": Broken(
        "rounds", not_joined, "elastic cover, round 1: begins with a chain and is not joined"
    ),
    "a number left out": Broken("numbers", misnumbered, "50, 51, 53]"),
    "shaping planned later": Broken(
        "shaping_rounds", late_shaping, "row 5: 8 shaping points, 0 planned; row 6: 0 shaping"
    ),
    "points off their lines": Broken("lines", astray, "a shaping point lies 5."),
    "markers in the wrong stitch": Broken(
        "markers", wrong_marks, "row 8: shaping point 1 is worked into place"
    ),
    "a base that is no multiple": Broken("multiples", wrong_base, "249 is no 4 × m + 0"),
    "a base beyond the edge": Broken(
        "begins", longer_base, "elastic cover: its base asks for 1 places more than skirt has there"
    ),
    "edges that do not match": Broken(
        "joins",
        unlike_edges,
        "side seam: front side is 43.1 cm and back side 45.1 cm, 2.0 cm apart where 1.5 cm",
    ),
    "a row more planned": Broken("planned", a_row_more, "skirt: 54 rows planned, 53 worked"),
    "a seam of another length": Broken(
        "seams",
        partial(seam_rewritten, lambda seam: replace(seam, count=seam.count + 1)),
        "stitches for an edge of",
        "procession",
    ),
    "a seam over too many places": Broken(
        "seams",
        partial(seam_rewritten, lambda seam: replace(seam, over=seam.over + 1)),
        "places, the edge has",
        "procession",
    ),
    "an uneven seam": Broken(
        "seams", partial(seam_rewritten, uneven), "the spread is uneven", "procession"
    ),
    "a stitch that stays open": Broken(
        "stitches_close", open_stitch, "double_crochet: ends with 2 loops on the hook"
    ),
    "an abbreviation of two stitches": Broken(
        "terms",
        shared_term,
        'us: "p" stands for bead and for picot',
        also=("reads_back",),  # a reader cannot tell the two apart either
    ),
    "a change to the colour in use": Broken(
        "colours",
        partial(changed_to, "A", 4),
        "shawl, row 4: changes to colour A, which is in use",
        "torchlight",
    ),
    "a colour that was not bought": Broken(
        "colours",
        lambda subject: replace(subject, bought=("A",)),
        "no yarn is told for colour B",
        "torchlight",
    ),
    "a colour that was bought for nothing": Broken(
        "colours",
        lambda subject: replace(subject, bought=("A", "B", "C")),
        "yarn is told for colour C, which is not used",
        "torchlight",
    ),
    "a tight landmark": Broken("ease", tight, "waist_girth: 84.4 cm is tight"),
    "a waist that does not pass": Broken("goes_on", does_not_pass, "It is too narrow."),
    "a number altered in the text": Broken(
        "reads_back", partial(altered_text, "Work 152 fdc", "Work 153 fdc"), "us: skirt, row 0:"
    ),
    "a number of one kind altered in the text": Broken(
        "reads_back", partial(altered_text, "186 picots", "185 picots"), "us: Rnd 52 (RS) states"
    ),
    "a word altered in the text": Broken(
        "reads_back", partial(altered_text, "turn", "trun"), "us: the text cannot be read: line"
    ),
}


def failed(subject: Subject) -> dict[str, Finding]:
    """The checks that fail, by name."""
    return {f.name: f for f in prove(subject) if f.verdict == "fail"}


@pytest.mark.parametrize("name", FAULTS)
def test_just_the_one_check_fails_when_the_pattern_is_broken(
    name: str, request: pytest.FixtureRequest
) -> None:
    """It says what is wrong and where; nothing else is blamed."""
    fault = FAULTS[name]
    subject = request.getfixturevalue(fault.pattern)
    assert not failed(subject)
    found = failed(fault.how(subject))
    assert list(found) == [fault.check, *fault.also]
    assert fault.says in "; ".join(found[fault.check].faults)


def names_of_checks() -> list[str]:
    """The names that the functions of the table go by."""
    return [check.__name__.removeprefix("check_") for check in CHECKS]


def test_every_check_is_seen_to_fail() -> None:
    """A check that cannot fail proves nothing."""
    only_warns = {"stays_up", "stride"}
    assert {fault.check for fault in FAULTS.values()} | only_warns == set(names_of_checks())


def test_every_check_says_what_it_is_for() -> None:
    """In its docstring, which the pages of the documentation list."""
    assert all(check.__doc__ for check in CHECKS)


def test_findings_go_by_the_names_of_their_checks(ring: Subject) -> None:
    """One for each check, in the order of the table."""
    assert [finding.name for finding in prove(ring)] == names_of_checks()


def test_every_check_looks_at_something_in_a_sound_pattern(
    ring: Subject, procession: Subject, torchlight: Subject
) -> None:
    """Seams and colours in those that have them, all else in the first."""
    unseen = {f.name for f in prove(ring) if not f.looked_at}
    assert unseen == {"seams", "joins", "colours"}
    assert "seams" not in {f.name for f in prove(procession) if not f.looked_at}
    assert "colours" not in {f.name for f in prove(torchlight) if not f.looked_at}


def test_garment_that_may_not_pass_is_only_warned_of(ring: Subject) -> None:
    """What is not known does not stop publication."""
    going = replace(ring.fit.going_on, verdict="uncertain", reasons=("It may stick.",))
    doubtful = prove(replace(ring, fit=replace(ring.fit, going_on=going)))
    (warned,) = [f for f in doubtful if f.verdict == "warn"]
    assert (warned.name, warned.faults) == ("goes_on", ("It may stick.",))
    require(doubtful)


def test_place_that_is_worked_and_skipped_is_a_fault(ring: Subject) -> None:
    """Both at once cannot be."""
    rows = list(ring.fabric.pieces[COVER])
    skipped = rows[0].skipped.copy()
    skipped[3] = 1
    rows[0] = replace(rows[0], skipped=skipped)
    fabric = replace(ring.fabric, pieces={**ring.fabric.pieces, COVER: tuple(rows)})
    found = failed(replace(ring, fabric=fabric))["places"]
    assert found.faults == (
        "elastic cover, row 1: place 4 of the row below is worked into and skipped",
    )


def test_stitch_without_a_term_is_a_fault(ring: Subject) -> None:
    """A dialect that has no word for a stitch cannot tell of it."""
    stitch = ring.stitches["bead"]
    nameless = replace(stitch, terms={"us": stitch.terms["us"]})
    broken = replace(ring, stitches={**ring.stitches, "bead": nameless}, texts={"uk": ""})
    check = next(check for check in CHECKS if check.__name__ == "check_terms")
    assert check(broken).faults == ("uk: bead has no abbreviation",)


def test_garment_that_nothing_holds_is_only_warned_of(ring: Subject) -> None:
    """In the words of the fit."""
    held = prove(held_by_nothing(ring))
    found = next(f for f in held if f.name == "stays_up")
    assert (found.verdict, found.faults) == ("warn", ("Nothing holds it up.",))
    assert next(f for f in prove(ring) if f.name == "stays_up").verdict == "pass"


def test_failed_checks_stop_publication_with_all_their_sentences(ring: Subject) -> None:
    """Each by its name, with what was found and how much was looked at."""
    with pytest.raises(ProofFailed) as stopped:
        require(prove(wrong_count(tight(ring))))
    first, second = stopped.value.findings
    assert first.startswith("counts: elastic cover, row 1: states 305 and leaves 304 (55 rows")
    assert second.startswith("ease: waist_girth: 84.4 cm is tight")


def test_nothing_is_drafted_when_a_check_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    """A check of the table stops `draft`, whatever it is about."""
    from examples import Example

    def check_never(subject: Subject) -> Finding:
        """Fails over every pattern."""
        return Finding("never", "fail", 1, "patterns", ("this one is not liked",))

    monkeypatch.setattr(prove_, "CHECKS", (*CHECKS, check_never))
    design, body, swatch = Example().files
    with pytest.raises(ProofFailed, match=r"never: this one is not liked \(1 patterns looked at"):
        draft.draft(draft.Request(design, body, (swatch,)))
