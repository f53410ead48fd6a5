"""The pattern's tables with a key in every cell whose number can be asked; the keys of its rows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from frogless.plan.model import PiecePlan, SectionPlan
from frogless.publish import front, garment_pages, materials
from frogless.publish.blocks import Instruction, Table
from frogless.publish.drafted import Drafted
from frogless.publish.garment import measures_table
from frogless.publish.messages import say
from frogless.publish.pattern import rooms
from frogless.publish.reasons_fit import ease_reason, fit_key, fits
from frogless.publish.reasons_model import Asked, KeyedTable
from frogless.publish.reasons_names import (
    landmark_name,
    notions,
    piece_keys,
    row_key,
    sections,
    titled,
    yarns,
)
from frogless.publish.reasons_pieces import has_origin, measures
from frogless.publish.reasons_sections import rhythm_of, rows_in
from frogless.publish.reasons_yarn import notion_name, notion_reason
from frogless.publish.shown import about, mass_about
from frogless.units import show_length
from frogless.write.pattern import rounds_of, write_pieces, write_seam


def landmark_table(drafted: Drafted) -> KeyedTable:
    """The girths at a glance; without rows when the garment has no landmarks."""
    if drafted.of_pieces:
        found = next(garment_pages.landmarks_table(drafted), Table("", (), ()))
    else:
        found = front.landmarks_table(drafted)
    named = ("", "") if drafted.of_pieces else ("",)
    rows = (
        _asked(drafted, cells, (*named, *_of_landmark(drafted, key, mark.key)))
        for (key, _, mark, _), cells in zip(fits(drafted), found.rows, strict=True)
    )
    return KeyedTable(found.caption, found.header, tuple(rows))


def _of_landmark(drafted: Drafted, key: str, body: str) -> tuple[str, ...]:
    """Body, garment, ease, stitches; in a skirt round and depth."""
    keys = (f"body.{body}", f"{key}.girth", fit_key(key), key)
    return keys if drafted.of_pieces else (*keys, f"{key}.round", f"{key}.depth")


def _asked(drafted: Drafted, cells: Iterable[str], keys: Iterable[str]) -> tuple[Asked, ...]:
    """The cells of a row with their keys; a dash asks for nothing."""
    none = say(drafted, "none")
    return tuple(
        Asked(text, "" if text == none else key) for text, key in zip(cells, keys, strict=True)
    )


def section_table(drafted: Drafted) -> KeyedTable:
    """The sections of all pieces: their rounds, their counts, how they are shaped."""
    names = ("section", "rounds_of", "how_many", "from_count", "to_count", "shaped", "strays")
    rows = tuple(_section(drafted, key, piece, one) for key, piece, one in sections(drafted))
    header = tuple(say(drafted, name) for name in names)
    return KeyedTable(say(drafted, "sections_caption"), header, rows)


def _section(
    drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan
) -> tuple[Asked, ...]:
    none, chosen = say(drafted, "none"), section.chosen
    first, last = max(section.first_round, 1), section.last_round
    rounds = str(last) if first == last else say(drafted, "from_to", first=first, last=last)
    return (
        Asked(titled(drafted, piece.name, section.name)),
        Asked(rounds),
        Asked(str(rows_in(section)), f"{key}.rounds"),
        Asked(str(section.count_before), _before(drafted, piece, section)),
        Asked(str(section.count_after), key),
        Asked(rhythm_of(drafted, piece, section, chosen), f"{key}.shaping")
        if chosen
        else Asked(none),
        Asked(show_length(abs(chosen.stray), drafted.units), f"{key}.stray")
        if chosen
        else Asked(none),
    )


def _before(drafted: Drafted, piece: PiecePlan, section: SectionPlan) -> str:
    """The row that leaves what a section begins on, where it leaves just that."""
    worked = (one for one in drafted.plan.program.pieces if one.name == piece.name)
    rows = {row.number: row.count for one in worked for row in one.rows}
    number = max(section.first_round, 1) - 1
    same = rows.get(number) == section.count_before
    return row_key(drafted, piece.name, number) if same else ""


def piece_tables(drafted: Drafted) -> tuple[KeyedTable, ...]:
    """Of each piece its finished measurements; nothing where none is stated."""
    found = next(measures_table(drafted), None)
    if found is None:
        return ()
    none = say(drafted, "none")
    told: dict[str, list[tuple[Asked, ...]]] = {}
    for (key, piece, measure), (_, *cells) in zip(measures(drafted), found.rows, strict=True):
        wanted = f"{key}.wanted" if has_origin(measure) else ""
        keys = ("", key, wanted, f"{key}.worked")
        told.setdefault(piece.name, []).append(
            tuple(
                Asked(text, "" if text == none else k) for text, k in zip(cells, keys, strict=True)
            )
        )
    return tuple(
        KeyedTable(say(drafted, "pieces_caption", name=name), found.header[1:], tuple(rows))
        for name, rows in told.items()
    )


def materials_table(drafted: Drafted) -> KeyedTable:
    """Yarn by length, weight and balls; everything else by length or number."""
    header = tuple(say(drafted, name) for name in ("to_have", "long", "weight", "many"))
    rows = (*_yarn_rows(drafted), *_notion_rows(drafted))
    return KeyedTable(say(drafted, "to_have_caption"), header, rows)


def _yarn_rows(drafted: Drafted) -> Iterator[tuple[Asked, ...]]:
    none, units = say(drafted, "none"), drafted.units
    for key, need in yarns(drafted):
        yield (
            Asked(materials.labelled_yarn(drafted, need)),
            Asked(about(need.length.value, units), f"{key}.length"),
            Asked(mass_about(need.mass.value, units), f"{key}.mass"),
            Asked(str(need.balls), key) if need.balls else Asked(none),
        )


def _notion_rows(drafted: Drafted) -> Iterator[tuple[Asked, ...]]:
    none = Asked(say(drafted, "none"))
    for key, notion in notions(drafted):
        many = Asked(notion_reason(drafted, key, notion).number, key)
        is_long = notion.length is not None
        name = f"{notion_name(notion)}: {notion.detail}" if notion.detail else notion_name(notion)
        yield Asked(name), many if is_long else none, none, none if is_long else many


def materials_lines(drafted: Drafted) -> tuple[Asked, ...]:
    """The pattern's list of materials, each line with its key."""
    return tuple(materials.lines(drafted))


def glance_lines(drafted: Drafted) -> tuple[Asked, ...]:
    """What the pattern tells at a glance besides its tables, each line with its key."""
    pages = garment_pages if drafted.of_pieces else front
    return (*pages.figures(drafted), *front.worn(drafted))


def fit_table(drafted: Drafted) -> KeyedTable:
    """At each landmark the body, the girth wanted, the garment and the ease."""
    names = ("at", "body", "wanted", "garment", "ease")
    rows = []
    for key, piece, mark, fit in fits(drafted):
        ease = ease_reason(drafted, fit_key(key), piece, mark, fit)
        cells = (
            titled(drafted, piece.name, landmark_name(drafted, mark)),
            ease.steps[1].value_text,
            show_length(mark.wanted, drafted.units),
            ease.steps[0].value_text,
            ease.number,
        )
        keys = ("", f"body.{mark.key}", f"{key}.wanted", f"{key}.girth", fit_key(key))
        rows.append(_asked(drafted, cells, keys))
    header = tuple(say(drafted, name) for name in names)
    return KeyedTable(say(drafted, "fit_caption"), header, tuple(rows))


def row_keys(drafted: Drafted) -> Mapping[int, tuple[str, ...]]:
    """The keys of the rows that each instruction of the pattern tells of.

    Instructions are numbered from 0 as the pattern has them. A seam has the key of its join, if
    there is one.
    """
    told = [block for block in rooms(drafted)["pattern"] if isinstance(block, Instruction)]
    lines, seams = list(_lines(drafted)), dict(_seams(drafted))
    found: dict[int, tuple[str, ...]] = {}
    for n, block in enumerate(told):
        if lines and lines[0][0] == block:
            found[n] = lines.pop(0)[1]
        else:
            found[n] = seams.get(block, ())
    return found


def _seams(drafted: Drafted) -> Iterator[tuple[Instruction, tuple[str, ...]]]:
    """Every seam of pieces as the pattern tells it, with the key of its join."""
    program = drafted.plan.program
    joins = {join.name: f"join.{n}" for n, join in enumerate(drafted.plan.joins, start=1)}
    rounds = rounds_of(program)
    for seam in program.seams:
        line = write_seam(seam, drafted.stitches, drafted.dialect, drafted.language, rounds)
        keys = (joins[seam.name],) if seam.name in joins else ()
        yield Instruction(line.label, line.text, line.count), keys


def _lines(drafted: Drafted) -> Iterator[tuple[Instruction, tuple[str, ...]]]:
    """Every line of rows as the pattern tells it, with the keys of its rows."""
    program, keys = drafted.plan.program, piece_keys(drafted)
    written = write_pieces(program, drafted.stitches, drafted.dialect, drafted.language)
    for piece, words in zip(program.pieces, written, strict=True):
        for line in words.lines:
            rows = (r.number for r in piece.rows if line.first_row <= r.number <= line.last_row)
            own = tuple(f"row.{keys[piece.name]}.{number}" for number in rows)
            yield Instruction(line.label, line.text, line.count), own
