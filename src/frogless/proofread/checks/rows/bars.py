"""The chains of a mesh: as long as what they pass over, and all alike."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.heights import TALL, base_of
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import Act, Bare, Chain, Into, Repeat, Skip


def bars(reading: Reading) -> Iterator[Finding]:
    """Bars that are not as long as the places under them, or as the other bars of the row."""
    pairs: dict[int, list[tuple[Line, Chain, int]]] = {}
    spaces: dict[int, set[int]] = {}
    for line in lines_of(reading):
        if line.told.label is not None:
            found = [(line, chain, n) for chain, n in _pairs(line.told.said.acts, reading)]
            pairs.setdefault(line.told.piece, []).extend(found)
            first = (a.space for a in line.told.said.acts[:2] if isinstance(a, Chain) and a.space)
            spaces.setdefault(line.told.piece, set()).update(first)
            yield from _unlike(reading, line)
    for piece, those in pairs.items():
        odd = [each for each in those if each[1].times.values[0] != each[2]]
        if len(odd) == 1 and (len(those) > 1 or odd[0][2] in spaces.get(piece, ())):
            line, chain, skipped = odd[0]
            length = chain.times.values[0]
            texts = (
                f"ch {length} over {skipped}",
                "a bar is as long as what it passes over",
                f"{line.name} chains {length} and skips {skipped}; the other bars of the piece are "
                "as long as what lies under them.",
            )
            yield finding("group-shape", reading, line, chain.span, texts, "possible")


def _pairs(acts: Sequence[Act], reading: Reading) -> Iterator[tuple[Chain, int]]:
    """A chain, places skipped under it and a tall stitch: a bar of a mesh."""
    for chain, skip, after in zip(acts, acts[1:], acts[2:], strict=False):
        if not isinstance(chain, Chain) or not isinstance(skip, Skip) or skip.to:
            continue
        if skip.target.what not in ("stitch", "chain") or len(set(chain.times.values)) > 1:
            continue
        skipped = skip.times.values if skip.times else (1,)
        if len(set(skipped)) == 1 and _is_tall(after, reading):
            yield chain, skipped[0]
    for act in acts:
        if isinstance(act, Repeat):
            yield from _pairs(act.body, reading)


def _is_tall(act: Act, reading: Reading) -> bool:
    """Double crochets, or taller ones, one into each place."""
    if (
        not isinstance(act, Into)
        or len(act.body) != 1
        or act.target.what not in ("stitch", "chain")
    ):
        return False
    only = act.body[0]
    if not isinstance(only, Bare) or (only.times and max(only.times.values) > 1):
        return False
    known = reading.lexicon.stitches.get(base_of(only.stitch))
    return known is not None and known.kind == "stitch" and known.turning_chain >= TALL


def _unlike(reading: Reading, line: Line) -> Iterator[Finding]:
    """One bar unlike the others of a row that begins with "ch 6, counts as dc and ch 3"."""
    acts = line.told.said.acts
    first = next((act for act in acts[:3] if isinstance(act, Chain)), None)
    if first is None or not first.space:
        return
    inner = [a for a in all_acts(acts) if isinstance(a, Chain) and a is not first]
    lengths = Counter(each.times.values[0] for each in inner)
    odd = [each for each in inner if each.times.values[0] != first.space]
    alone = len({each.span for each in odd}) == 1 and abs(odd[0].times.values[0] - first.space) == 1
    if alone and lengths[first.space] and not _is_in_group(acts, odd[0]):
        length = odd[0].times.values[0]
        texts = (
            f"ch {length}",
            f"ch {first.space} in the rest of the row",
            f"{line.name} has one chain of {length}, and all others of the row are {first.space} "
            "long.",
        )
        yield finding("group-shape", reading, line, odd[0].span, texts, "possible")


def _is_in_group(acts: Sequence[Act], chain: Chain) -> bool:
    """Within stitches that stand in one place, as those of a corner do."""
    groups = (act for act in all_acts(acts) if isinstance(act, Into) and len(act.body) > 1)
    return any(each is chain for group in groups for each in all_acts(group.body))
