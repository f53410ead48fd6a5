"""Keys of what can be asked for, and what it is called: stable, of letters, digits, dots, hyphens."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from frogless.plan.model import Landmark, PiecePlan, SectionPlan
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.reasons_model import slugs
from frogless.tally.model import Notion, YarnNeed


def piece_keys(drafted: Drafted) -> Mapping[str, str]:
    """The part of a key that names a piece, by the piece's name."""
    worked = [piece.name for piece in drafted.plan.program.pieces]
    names = list(dict.fromkeys([*worked, *(piece.name for piece in drafted.plan.pieces)]))
    return dict(zip(names, slugs(names, "piece"), strict=True))


def landmarks(drafted: Drafted) -> Iterator[tuple[str, PiecePlan, Landmark]]:
    """Every landmark with its key: `landmark.hip_girth`, and of further pieces with their name."""
    pieces = piece_keys(drafted)
    for piece in drafted.plan.pieces:
        whose = "" if piece is drafted.plan.main else f"{pieces[piece.name]}."
        names = slugs((mark.key for mark in piece.landmarks), "landmark")
        for mark, name in zip(piece.landmarks, names, strict=True):
            yield f"landmark.{whose}{name}", piece, mark


def sections(drafted: Drafted) -> Iterator[tuple[str, PiecePlan, SectionPlan]]:
    """Every section with its key: `section.skirt.1`."""
    pieces = piece_keys(drafted)
    for piece in drafted.plan.pieces:
        for n, section in enumerate(piece.sections, start=1):
            yield f"section.{pieces[piece.name]}.{n}", piece, section


def yarns(drafted: Drafted) -> Iterator[tuple[str, YarnNeed]]:
    """Every yarn with its key: `yarn.a` by its colour's letter, else `yarn.1`."""
    needs = drafted.tally.yarn
    names = slugs((need.colour or str(n) for n, need in enumerate(needs, 1)), "colour")
    for need, name in zip(needs, names, strict=True):
        yield f"yarn.{name}", need


def notions(drafted: Drafted) -> Iterator[tuple[str, Notion]]:
    """Everything else to have ready, with its key."""
    for n, notion in enumerate(drafted.tally.notions, start=1):
        yield f"notion.{n}", notion


def row_key(drafted: Drafted, piece: str, number: int) -> str:
    """The key of a row, by its piece and its number."""
    return f"row.{piece_keys(drafted)[piece]}.{number}"


def titled(drafted: Drafted, piece: str, name: str) -> str:
    """What a number of a piece is called; where there are several pieces, with the piece."""
    if not drafted.of_pieces or name.startswith(piece):
        return name
    return say(drafted, "reason_of_piece", piece=piece, name=name)


def landmark_name(drafted: Drafted, mark: Landmark) -> str:
    """What a landmark is called: in a skirt of one tube as its tables call it."""
    return drafted.phrases.measurement(mark.key) if drafted.of_pieces else say(drafted, mark.key)
