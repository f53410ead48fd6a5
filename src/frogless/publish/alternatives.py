"""Rhythms that could be had instead of the one taken, each with what to turn in the design for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from frogless.design.document import Design, PiecesDesign, TubeDesign
from frogless.design.pieces.tube import Section, TubeChoice
from frogless.design.strict import Strict
from frogless.errors import FroglessError
from frogless.plan.make import plan
from frogless.plan.model import Option, PiecePlan, Rhythm, SectionPlan
from frogless.publish.changes_said import counted, number, tell
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.places_said import where
from frogless.toml_text import Steps
from frogless.units import as_shown, show_length
from frogless.write.rhythm import rhythm_sentence

Changes = tuple[tuple[Steps, str], ...]
"""Knobs of the design with what to write: `frogless.design.knobs.turn` takes each."""

TOO_DEAR = 50.0
"""mm that a simpler rhythm may stray further (own choice): more ease than that is another garment."""


@dataclass(frozen=True, slots=True)
class Alternative:
    """A rhythm that a section could have instead.

    Args:
        section: its name in the pattern.
        sentence: what it gains and costs against the one taken.
        changes: what to turn in the design, so that the planner takes just this one.
        rhythm: the rhythm in words.
    """

    section: str
    sentence: str
    changes: Changes
    option: Option
    rhythm: str


def alternatives(drafted: Drafted) -> tuple[Alternative, ...]:
    """Rhythms worth a choice, section by section, fewest clauses first.

    Each was planned with its changes, and came out; those that the design cannot ask for are left
    out. So are those of more clauses that stray no less as far as a tape can see, and simpler ones
    that nobody would wear.
    """
    return tuple(
        alternative
        for piece in drafted.plan.pieces
        for section in piece.sections
        if section.chosen is not None
        if (at := _place(drafted.basis.design, piece.name, section.name)) is not None
        for alternative in _of_section(drafted, piece, section, section.chosen, at)
    )


def _of_section(
    drafted: Drafted, piece: PiecePlan, section: SectionPlan, chosen: Option, at: Steps
) -> Iterator[Alternative]:
    asked = _table(drafted.basis.design, at)
    for option in _options(section, chosen):
        if not _is_worth_a_choice(drafted, option, chosen):
            continue
        for changes in _ways(asked, option, chosen, drafted.units):
            if _comes_out(drafted, section.name, option, at, changes):
                yield Alternative(
                    section.name,
                    _sentence(drafted, piece, option, chosen),
                    tuple(((*at, key), written) for key, written in changes.items()),
                    option,
                    rhythm_sentence(
                        option.rhythm,
                        section.first_round - 1,
                        drafted.language,
                        closed=is_closed(drafted, piece.name),
                    ),
                )
                break


def _options(section: SectionPlan, chosen: Option) -> tuple[Option, ...]:
    """What the planner weighed, each once."""
    found = {(o.points, o.rhythm): o for o in section.others}
    for other in section.evidence.runners_up if section.evidence else ():
        same = Option(chosen.points, chosen.add, other.rhythm, other.stray, other.stray_at)
        found.setdefault((chosen.points, other.rhythm), same)
    found.pop((chosen.points, chosen.rhythm), None)
    order = sorted(found.values(), key=lambda o: (o.rhythm.clause_count, abs(o.stray)))
    return tuple(order)


def _is_worth_a_choice(drafted: Drafted, option: Option, chosen: Option) -> bool:
    if abs(option.stray) > abs(chosen.stray) + TOO_DEAR:
        return False
    if option.rhythm.clause_count < chosen.rhythm.clause_count or option.points < chosen.points:
        return True
    shown = [as_shown(abs(one.stray), drafted.units) for one in (option, chosen)]
    return shown[0] < shown[1]


def _place(design: Design, piece: str, name: str) -> Steps | None:
    """The way to the section of a tube in the design; None for one that was split in planning."""
    if isinstance(design, TubeDesign):
        found = [i for i, section in enumerate(design.section) if section.name == name]
        return ("section", found[0]) if found else None
    if not isinstance(design, PiecesDesign):
        return None
    for i, choice in enumerate(design.piece):
        if choice.name == piece and isinstance(choice, TubeChoice):
            for j, section in enumerate(choice.section):
                if name in (section.name, f"{piece} {section.name}"):
                    return ("piece", i, "section", j)
    return None


def _table(design: Design, at: Steps) -> Section:
    table: Any = design
    for step in at:
        table = table[step] if isinstance(step, int) else getattr(table, step)
    return table  # type: ignore[no-any-return]


def _ways(
    asked: Section, option: Option, chosen: Option, units: str
) -> Iterator[Mapping[str, str]]:
    """What may make the planner take it, least first.

    Fewer clauses are had by allowing no more; more of them, by giving up nothing for fewer. The
    points that it has now are only asked for where the others would come to take another number.
    """
    fewer, closest = {"clauses": str(option.rhythm.clause_count)}, {"indifference": f"0 {units}"}
    simpler = option.rhythm.clause_count < chosen.rhythm.clause_count
    plain = (fewer if simpler else closest, {**fewer, **closest})
    if option.points == chosen.points:
        yield from plain
    if not asked.gores:
        points = {"points": str(option.points)}
        if option.points != chosen.points:
            yield points
        yield from ({**points, **one} for one in plain)


def _comes_out(
    drafted: Drafted, name: str, option: Option, at: Steps, changes: Mapping[str, str]
) -> bool:
    """Whether the planner takes just this rhythm when the design is turned so."""
    design = drafted.basis.design
    values = {key: int(text) if text.isdecimal() else text for key, text in changes.items()}
    turned = _changed(design, at, values)
    try:
        made = plan(replace(drafted.basis, design=turned))
    except FroglessError:
        return False
    section = next((s for s in made.sections if s.name == name), None)
    return section is not None and _is(section.chosen, option.points, option.rhythm)


def _is(found: Option | None, points: int, rhythm: Rhythm) -> bool:
    return found is not None and found.points == points and found.rhythm == rhythm


def _changed(part: Any, at: Steps, values: Mapping[str, Any]) -> Any:  # noqa: ANN401 tables and lists of them
    """A checked table with other values somewhere in it."""
    if not at:
        return _with(part, values)
    step, rest = at[0], at[1:]
    if isinstance(step, int):
        return tuple(
            _changed(one, rest, values) if i == step else one for i, one in enumerate(part)
        )
    return _with(part, {step: _changed(getattr(part, step), rest, values)})


def _with(part: Strict, values: Mapping[str, Any]) -> Strict:
    # Not `model_copy`, which copies what the design has worked out already.
    fields = {name: getattr(part, name) for name in type(part).model_fields}
    given = part.model_fields_set | values.keys()
    return type(part).model_construct(given, **{**fields, **values})


def _sentence(drafted: Drafted, piece: PiecePlan, option: Option, chosen: Option) -> str:
    """What it is instead, and how far it strays where."""
    parts = []
    if option.points != chosen.points:
        points, before = (number(drafted, one.points) for one in (option, chosen))
        parts.append(tell(drafted, "points_instead", points=points, before=before))
    more = option.rhythm.clause_count - chosen.rhythm.clause_count
    if more or not parts:
        name = "clauses_more" if more > 0 else "clauses_fewer"
        parts.append(counted(drafted, name, abs(more), number(drafted, abs(more))))
    what = parts[0]
    for part in parts[1:]:
        what = tell(drafted, "and", first=what, second=part)
    return tell(drafted, "alternative", what=what, stray=_stray(drafted, piece, option, chosen))


def _stray(drafted: Drafted, piece: PiecePlan, option: Option, chosen: Option) -> str:
    stray, before = (_off(drafted, one) for one in (option, chosen))
    place, there = (where(drafted, piece, one.stray_at) for one in (option, chosen))
    if _is_none(drafted, option):
        return stray
    if stray == before:
        key = "stray_as_now" if place == there else "stray_as_far"
        return tell(drafted, key, stray=stray, where=place, there=there)
    if place == there or _is_none(drafted, chosen):
        return tell(drafted, "stray_instead_here", stray=stray, where=place, before=before)
    return tell(drafted, "stray_instead", stray=stray, where=place, before=before, there=there)


def _is_none(drafted: Drafted, option: Option) -> bool:
    return as_shown(option.stray, drafted.units) == 0


def _off(drafted: Drafted, option: Option) -> str:
    """ "2.5 cm too wide"."""
    if _is_none(drafted, option):
        return tell(drafted, "not_off")
    key = "too_wide" if option.stray > 0 else "too_narrow"
    return tell(drafted, key, length=show_length(abs(option.stray), drafted.units))
