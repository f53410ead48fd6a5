"""Tables of a design that are added or taken away whole, without writing TOML."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import tomlkit

from frogless.design.document import Design, PiecesDesign, TubeDesign
from frogless.design.knobs_found import found
from frogless.design.load import parse_design
from frogless.design.pieces.border import BorderChoice
from frogless.design.pieces.disc import DiscChoice
from frogless.design.pieces.shawl import ShawlChoice
from frogless.design.pieces.tube import TubeChoice
from frogless.design.save import edited, inside
from frogless.design.strict import Strict
from frogless.errors import InputError
from frogless.files import Document
from frogless.toml_text import Steps
from frogless.units import Units

LANDMARK_GIRTHS = {"hip": "hip_girth", "high hip": "high_hip_girth"}
EDGED = (TubeDesign, TubeChoice, DiscChoice, ShawlChoice, BorderChoice)
TUBES = (TubeDesign, TubeChoice)


@dataclass(frozen=True, slots=True)
class Part:
    """A table that may be added to a design.

    Args:
        what: "section", "edging", "waist", "strand", "seat", "beads". at: the table it is added to;
            () for a design that is one tube.
        label: what it is called there.
    """

    what: str
    at: Steps
    label: str


def parts(text: str) -> tuple[Part, ...]:
    """What can be added to a design.

    Raises:
        InputError: the text is no design.
    """
    return tuple(_parts(parse_design(text).checked))


def _parts(design: Design) -> Iterator[Part]:
    holders: list[tuple[Steps, Strict, str]] = [((), design, "")]
    if isinstance(design, PiecesDesign):
        holders = [(("piece", i), p, f" of {p.name}") for i, p in enumerate(design.piece)]
    for at, holder, named in holders:
        if isinstance(holder, TUBES):
            yield Part("section", at, f"section{named}")
            if holder.start.made_of is not None:  # what hangs from a waist begins with a foundation
                yield from _at_waist(at, holder, named)
        if isinstance(holder, EDGED):
            if holder.edging is not None and holder.edging.beads is None:
                yield Part("beads", (*at, "edging"), f"beads in the edging{named}")
            if holder.edging is None and not _goes_on(design, holder):
                yield Part("edging", at, f"edging{named}")


def _at_waist(at: Steps, tube: TubeDesign | TubeChoice, named: str) -> Iterator[Part]:
    if tube.waist is None:
        yield Part("waist", at, f"waist{named}")
    yield Part("strand", at, f"strand{named}")
    # Short rows would come between the rounds that a stitch pattern counts.
    plain = not any(section.pattern for section in tube.section)
    if tube.start.seat is None and plain and (tube.waist or not at):
        yield Part("seat", (*at, "start"), f"seat{named}")


def _goes_on(design: Design, holder: Strict) -> bool:
    """Whether something else is worked onto the last edge of a piece, or sewn to it."""
    if not isinstance(design, PiecesDesign) or isinstance(holder, BorderChoice):
        return False
    name = getattr(holder, "name", "")
    used = [edge for join in design.join for edge in (*join.first, *join.second)]
    for piece in design.piece:
        used += piece.on if isinstance(piece, BorderChoice) else ()
        used += piece.start.on if isinstance(piece, TubeChoice) else ()
    return any(f"{name}.{edge}" in used for edge in ("hem", "edge", "last row"))


def add(text: str, what: str, at: Steps = (), units: Units = "cm") -> str:
    """The design with one more table, filled in as is usual.

    A section is a plain straight one in the stitch of the last, which it is put before; the waist is
    a covered elastic; the edging takes any count.

    Args:
        what: "section", "edging", "waist", "strand", "seat" or "beads", as `parts` has it.
        at: the table that it is for, ("piece", 2); () in a design of one tube.

    Raises:
        InputError: the text is no design, or this cannot be added there.
    """
    document = parse_design(text)
    able = list(_parts(document.checked))
    if not any(part.what == what and part.at == at for part in able):
        there = ", ".join(dict.fromkeys(part.label for part in able)) or "nothing"
        raise InputError(f"no {what} can be added here; what can be is {there}", document.place(at))
    table = _table(document, what, at, units)
    before = _section_after(document, at) if what == "section" else None
    changed = _written(document, text, (*at, what), table, before)
    parse_design(changed)
    return changed


def _table(document: Document[Design], what: str, at: Steps, units: Units) -> dict[str, Any]:
    holder = inside(document.data, at)
    gauge = document.data.get("gauge", {})
    inches = units == "in"
    match what:
        case "section":
            last = holder["section"][-1]
            kept = {k: last[k] for k in ("stitch", "hook", "turning_chain") if k in last}
            name = _new_name("new section", [one["name"] for one in holder["section"]])
            return {
                "name": name,
                "shape": "straight",
                "length": "2 in" if inches else "5 cm",
                **kept,
            }
        case "edging":
            return {"pattern": "crab", "hook": gauge.get("hook", "3.5 mm")}
        case "waist":
            return {"kind": "covered elastic", "percent": 90, "width": "6 mm"}
        case "seat":
            return {"extra": "1 1/4 in" if inches else "3 cm"}
        case "beads":
            return {"bead_diameter": "4 mm", "bead_hole": "1.4 mm"}
    names = [one.get("name", "beaded strand") for one in holder.get("strand", ())]
    ends = ("-3 1/2 in", "3 1/2 in", "2 1/2 in") if inches else ("-9 cm", "9 cm", "6 cm")
    return {
        "name": _new_name("beaded strand", names), "from": ends[0], "to": ends[1], "sag": ends[2],
        "bead_diameter": "4 mm", "bead_hole": "1.4 mm", "hook": "0.6 mm",
    }  # fmt: skip


def _new_name(name: str, taken: list[str]) -> str:
    number = 2
    new = name
    while new in taken:
        new, number = f"{name} {number}", number + 1
    return new


def _section_after(document: Document[Design], at: Steps) -> int | None:
    """The place of the last section where it ends at the hem; a new one goes before it."""
    sections = inside(document.data, at)["section"]
    return len(sections) - 1 if sections[-1].get("to") == "hem" else None


def take_away(text: str, path: Steps) -> str:
    """The design without one of its tables: an edging, a waist, a strand, a section, a piece.

    When the last section goes, the one before it ends at the hem instead.

    Raises:
        InputError: the text is no design, or this table cannot go.
    """
    document = parse_design(text)
    able = [group for group in found(document) if group.may_go]
    if path not in [group.path for group in able]:
        there = ", ".join(group.title for group in able)
        told = f"this cannot be taken away; what can be is {there}"
        raise InputError(told, document.place(path))
    if path[-2:-1] == ("section",):
        text = _ended(document, text, path)
    changed = _cut(parse_design(text), text, path)
    parse_design(changed)
    return changed


def _ended(document: Document[Design], text: str, path: Steps) -> str:
    """The text whose section before the last one ends where that did, at the hem."""
    sections = inside(document.data, path[:-1])
    place = int(path[-1])
    if place != len(sections) - 1 or sections[place].get("to") != "hem":
        return text
    above, steps = sections[place - 1], (*path[:-1], place - 1)
    changes: dict[Steps, Any] = {(*steps, "to"): "hem"}
    landmark = LANDMARK_GIRTHS.get(above.get("to", ""))
    if above.get("shape") == "shaped" and "girth" not in above and landmark:
        changes[(*steps, "girth")] = landmark
    return edited(text, changes, [(*steps, "length")])


def _cut(document: Document[Design], text: str, path: Steps) -> str:
    """The text without a table: by its lines where they stand together, else out of the document."""
    wanted = _without(tomllib.loads(text), path)
    lines = _lines(text)
    own = [n for steps, n in document.lines.items() if steps[: len(path)] == path]
    first = min(own) - 1
    last = _after(document, lines, own, first)
    while first and lines[first - 1].startswith("#") and not _is_top(lines, first - 1):
        first -= 1
    shorter = "".join((*lines[:first], *lines[last:]))
    if last == len(lines):
        shorter = re.sub(r"(?<=\n)\r?\n\Z", "", shorter)
    if _loaded(shorter) == wanted:
        return shorter
    return edited(text, {}, [path])


def _lines(text: str) -> list[str]:
    """The lines as TOML counts them, each with its end."""
    return [line for line in re.split(r"(?<=\n)", text) if line]


def _is_top(lines: list[str], place: int) -> bool:
    """Whether a comment is the one that the file begins with."""
    return all(line.startswith("#") for line in lines[: place + 1])


def _after(document: Document[Design], lines: list[str], own: list[int], first: int) -> int:
    """The place of the line after a table: the next header, with the comments right above it."""
    inside = set(own)
    starts = sorted(
        n - 1
        for steps, n in document.lines.items()
        if n - 1 > first and n not in inside and lines[n - 1].lstrip().startswith("[")
    )
    if not starts:
        return len(lines)
    place = starts[0]
    while lines[place - 1].startswith("#"):
        place -= 1
    return place


def _written(
    document: Document[Design], text: str, path: Steps, table: Mapping[str, Any], before: int | None
) -> str:
    """The text with one more table: as lines of its own where that says it, else in the document."""
    listed = path[-1] in ("section", "strand")
    wanted = _with(tomllib.loads(text), path, table, before, listed=listed)
    name = ".".join(str(step) for step in path if isinstance(step, str))
    end = "\r\n" if "\r\n" in text else "\n"
    header = f"[[{name}]]" if listed else f"[{name}]"
    block = f"{header}\n{tomlkit.dumps(dict(table))}".replace("\n", end)
    lines = _lines(text)
    place = _place_for(document, lines, path, before)
    above, below = "".join(lines[:place]), "".join(lines[place:])
    gap = end if above.endswith(end) else end * 2
    gap = "" if below and above.endswith(end * 2) else gap
    longer = above + gap + block + (end + below if below else "")
    if _loaded(longer) == wanted:
        return longer
    return _in_document(text, path, table, before, listed=listed)


def _place_for(
    document: Document[Design], lines: list[str], path: Steps, before: int | None
) -> int:
    """Where the lines of a new table belong."""
    if before is not None:
        place = document.lines[(*path, before)] - 1
        while place and lines[place - 1].startswith("#"):
            place -= 1
        return place
    holder = path[:-1]
    if not holder:
        return len(lines)
    own = [n for steps, n in document.lines.items() if steps[: len(holder)] == holder]
    return _after(document, lines, own, min(own) - 1)


def _in_document(
    text: str, path: Steps, table: Mapping[str, Any], before: int | None, *, listed: bool
) -> str:
    document = tomlkit.parse(text)
    holder: Any = document
    for step in path[:-1]:
        holder = holder[step]
    inline = tomlkit.inline_table()
    inline.update(table)
    key = path[-1]
    if not listed:
        holder[key] = inline
    elif key in holder:
        there = holder[key]
        there.insert(len(there) if before is None else before, inline)
    else:
        several = tomlkit.array()
        several.append(inline)
        holder[key] = several
    return tomlkit.dumps(document)


def _loaded(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return None


def _without(data: dict[str, Any], path: Steps) -> dict[str, Any]:
    holder = inside(data, path[:-1])
    del holder[path[-1]]
    if not holder and isinstance(holder, list):
        del inside(data, path[:-2])[path[-2]]
    return data


def _with(
    data: dict[str, Any], path: Steps, table: Mapping[str, Any], before: int | None, *, listed: bool
) -> dict[str, Any]:
    holder = inside(data, path[:-1])
    if not listed:
        holder[path[-1]] = dict(table)
        return data
    there = holder.setdefault(path[-1], [])
    there.insert(len(there) if before is None else before, dict(table))
    return data
