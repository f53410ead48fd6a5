"""What the planner stands on: design, body and swatches together, formulas and gauges found."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.body.measurements import Body
from frogless.design import formulas
from frogless.design.document import Design, PieceChoice, PiecesDesign, TubeDesign
from frogless.design.pieces.border import BorderChoice
from frogless.design.pieces.cord import CordChoice
from frogless.design.pieces.panel import PanelChoice
from frogless.design.pieces.tube import TubeChoice
from frogless.design.work import Work
from frogless.errors import InputError, Place, near_names
from frogless.plan.patterns import NO_LIBRARY, Library, Pattern
from frogless.stitches.model import Stitch
from frogless.swatch import (
    Gauge,
    Swatch,
    comfortable_stretch,
    growth,
    has_gauge,
    pattern_gauges,
    pattern_name,
)
from frogless.swatch import gauge as swatch_gauge
from frogless.swatch_file import STITCH_NAMES
from frogless.units import Measured, Units, show_length

# Gauge in one stitch foretells gauge in another badly: hobby measurements miss by 16 to 19 %
# (swatches that makers published in two stitches); half of that is taken as one standard
# uncertainty.
CROSS_STITCH_UNCERTAINTY = 0.09

# What the fabric's measured comfortable stretch is called in formulas: 0.2 for 20 %.
STRETCH = "stretch"


@dataclass(frozen=True, slots=True)
class Basis:
    """Design, body and swatches with what follows from them directly.

    Args:
        growth: lengthening when worn, as a ratio (0.08: 8 %), 0 when it was not measured.
        stretch: comfortable stretch of the main fabric as a ratio, None when it was not measured.
        units: what remarks and refusals are told in.
        chosen: the tube that is planned, where the design has several pieces.
        prefix: what its keys begin with ("piece.2.").
        begun_with: stitches of its first round, when it is begun on edges of earlier pieces.
        library: where stitch patterns are found.
    """

    design: Design
    body: Body
    swatches: tuple[Swatch, ...]
    stitches: Mapping[str, Stitch]
    scope: formulas.Scope
    growth: Measured | None
    stretch: float | None
    units: Units = "cm"
    chosen: TubeChoice | None = None
    prefix: str = ""
    begun_with: int = 0
    library: Library = NO_LIBRARY

    def of_tube(self, choice: TubeChoice, key: str) -> Basis:
        """The same basis, to plan one tube of the design with."""
        return replace(self, chosen=choice, prefix=f"{key}.")

    @property
    def work(self) -> Work:
        """How the tube is worked: as it says itself, else as the design does."""
        own = self.chosen.work if self.chosen is not None else None
        return own or self.design.work

    @property
    def tube(self) -> TubeChoice:
        """The tube that is planned.

        Raises:
            TypeError: the design is of several pieces, and none of them was chosen.
        """
        if self.chosen is not None:
            return self.chosen
        if isinstance(self.design, TubeDesign):
            return self.design.tube
        raise TypeError("no tube was chosen")

    def show(self, length: float) -> str:
        """A length in the user's units."""
        return show_length(length, self.units)

    def place(self, key: str) -> Place:
        """Where a key of the design stands, for messages."""
        if self.chosen is None or key.startswith(self.prefix):
            return self.scope.where(key)
        if key.startswith("work.") and self.chosen.work is None:
            return self.scope.where(key)
        return self.scope.where(self.prefix + key.removeprefix("garment."))

    def length(self, text: str, key: str) -> float:
        """A formula's length, mm. Raises InputError naming `key`."""
        return formulas.length(text, self.scope, self.place(key))

    def girth_wanted(self, text: str, key: str) -> float:
        """A formula's length that has to be above zero, mm."""
        value = self.length(text, key)
        if value <= 0:
            message = f'"{text}" gives {self.show(value)}; it has to be above zero'
            raise InputError(message, self.place(key))
        return value

    def because_formula(self, text: str, key: str) -> Because:
        """The measurements a formula uses, by way of the design's own lengths too, then itself."""
        steps = [
            Step(m.key, m.value.value, "mm", m.source, m.estimated)
            for name in self._names(text, key)
            if (m := self.body.get(name)) is not None
        ]
        if len(steps) == 1 and steps[0].what == text:
            return Because(tuple(steps))
        own = self.design.lengths.get(text)
        told = text if own is None else f"{text}: {own}"
        return Because((*steps, Step("formula", self.length(text, key), "mm", told)))

    def _names(self, text: str, key: str) -> tuple[str, ...]:
        """Names a formula uses; for a length of the design's own, those that it uses in turn."""
        found: list[str] = []
        for name in formulas.names_in(text, self.place(key)):
            own = self.design.lengths.get(name)
            found.extend([name] if own is None else self._names(own, f"lengths.{name}"))
        return tuple(dict.fromkeys(found))

    def gauge(self, stitch: str, key: str, hook: float | None = None) -> Gauge:
        """The gauge of a stitch that the garment itself is made of; only a swatch in it will do.

        Args:
            hook: the one that a section asks for, mm; None for the first swatch's.

        Raises:
            InputError: no swatch has that stitch, or none on that hook.
        """
        if hook is not None:
            return self._gauge_on(stitch, hook, key)
        try:
            found = next((s for s in self.swatches if has_gauge(s, stitch)), self.swatches[0])
            return swatch_gauge(found, stitch)
        except InputError as error:
            raise error.at(self.place(key)) from None

    def _gauge_on(self, stitch: str, hook: float, key: str) -> Gauge:
        found = [swatch_gauge(s, stitch) for s in self.swatches if has_gauge(s, stitch)]
        for one in found:
            if abs(one.hook - hook) < 1e-6:
                return one
        have = ", ".join(f"{one.hook:g} mm" for one in found) or "none"
        raise InputError(
            f"no swatch in {stitch.replace('_', ' ')} was worked with a {hook:g} mm hook (worked "
            f"with: {have}); give a swatch file for each hook",
            self.place(key.rpartition(".")[0] + ".hook"),
        )

    def pattern(
        self, key: str, parameters: Mapping[str, int], where: str, *, closed: bool
    ) -> Pattern:
        """A stitch pattern with its numbers filled in.

        Args:
            where: the key of the section that asks for it, "section.2".

        Raises:
            InputError: there is no such pattern, not in rows or not in rounds, or a number of it is
                out of range.
        """
        try:
            return self.library.find(key, closed, parameters)
        except InputError as error:
            known = key in self.library.keys and parameters
            raise error.at(self.place(f"{where}.{'parameters' if known else 'pattern'}")) from None

    def pattern_gauge(self, pattern: Pattern, where: str, hook: float | None = None) -> Gauge:
        """The gauge of a stitch pattern: only a swatch in it, with these numbers, will do.

        Its width is that of one of the stitches that a repeat stands on. Where no hook is asked for,
        that of the garment comes before others.

        Raises:
            InputError: nobody swatched it, or not with that hook; says what to work.
        """
        found = pattern_gauges(self.swatches, pattern.key, pattern.parameters, pattern.usual)
        wanted = self.hook if hook is None else hook
        fits = [one for one in found if abs(one.hook - wanted) < 1e-6]
        for one in fits or (found if hook is None else ()):
            return replace(one, width=one.width.over(Measured(pattern.way.multiple, 0.0)))
        raise InputError(_to_swatch(pattern, found, hook), self.place(f"{where}.pattern"))

    def trim_gauge(self, stitch: str) -> Gauge:
        """The gauge of a stitch used for a trim: swatched, else estimated from the main stitch.

        An estimate is marked as one.
        """
        for swatch in self.swatches:
            if _was_swatched(swatch, stitch):
                return swatch_gauge(swatch, stitch)
        main = self.gauge(self.design.work.stitch, "work.stitch")
        ours, theirs = self.stitches[stitch], self.stitches[main.stitch]
        width = _scaled(main.width, ours.width.typical / theirs.width.typical)
        height = _scaled(main.height, ours.height.typical / theirs.height.typical)
        return Gauge(stitch, width, height, main.state, estimated=True, source="main_gauge")

    @property
    def main_swatch(self) -> Swatch:
        """The swatch that the main stitch was worked in; the first one when none was."""
        main = self.design.work.stitch
        return next((w for w in self.swatches if has_gauge(w, main)), self.swatches[0])

    @property
    def hook(self) -> float:
        """The hook the maker's main stitch was swatched with, mm."""
        main = self.gauge(self.design.work.stitch, "work.stitch")
        return main.hook or self.main_swatch.hook

    @property
    def scale(self) -> float:
        """Width of the maker's stitch over the designer's; 1 when the design states no gauge."""
        theirs = self.design.gauge
        if theirs is None:
            return 1.0
        mine = self.trim_gauge(theirs.stitch)
        return mine.width.value / (100 / theirs.stitches_in_10cm)


def _to_swatch(pattern: Pattern, found: Iterable[Gauge], hook: float | None) -> str:
    """What to swatch for a pattern: repeats over 15 cm can only be guessed, so four at least."""
    way, repeats = pattern.way, max(4, pattern.way.least)
    rows = max(way.setup + way.period * max(1, round(8 / way.period)), 6)
    called = pattern_name(pattern.key, pattern.parameters)
    numbers = "".join(f", {name} = {n}" for name, n in pattern.parameters.items())
    hooks = ", ".join(f"{one.hook:g} mm" for one in found)
    lacks = "" if hook is None else f" on a {hook:g} mm hook"
    have = f" (there is one on {hooks})" if hooks else ""
    written = f'pattern = "{pattern.key}"' + (
        f" and parameters = {{ {numbers.removeprefix(', ')} }}" if numbers else ""
    )
    return (
        f"no swatch was worked in {called.replace('_', ' ')}{lacks}{have}, and a pattern has a gauge "
        f"of its own: work {repeats} repeats of {way.multiple} stitches"
        f"{f' and {way.offset} more' if way.offset else ''} over {rows} rows or more, and give "
        f"the swatch a reading of them ({written}), repeats over a width and rows over a height"
    )


def _was_swatched(swatch: Swatch, stitch: str) -> bool:
    """Whether a swatch has the stitch; trims have stitches that no swatch file names."""
    return any(r.stitch == stitch for r in swatch.readings) and has_gauge(swatch, stitch)


def _suits(stitch: Stitch, key: str) -> bool:
    """Whether a stitch can be what the design uses it for."""
    if key.endswith("start.with"):
        return stitch.begins_on > 0 or stitch.key == "chain"
    swatched = stitch.key in STITCH_NAMES.values()
    return swatched and stitch.kind == "stitch" and stitch.stands_on == stitch.leaves == 1


def _wrong_kind(stitch: str, key: str, stitches: Mapping[str, Stitch]) -> str:
    able = [name for name, entry in stitches.items() if _suits(entry, key)]
    what = "begin with" if key.endswith("start.with") else "make a fabric of"
    return f'"{stitch}" is nothing to {what}; accepted are {", ".join(able)}'


def _scaled(value: Measured, factor: float) -> Measured:
    scaled = value.times(factor)
    spread = scaled.value * CROSS_STITCH_UNCERTAINTY
    return Measured(scaled.value, (scaled.uncertainty**2 + spread**2) ** 0.5)


def build(
    design: Design,
    body: Body,
    swatches: tuple[Swatch, ...],
    stitches: Mapping[str, Stitch],
    known_measurements: Iterable[str],
    where: formulas.Where = lambda key: Place(key=key),
    units: Units = "cm",
    library: Library = NO_LIBRARY,
) -> Basis:
    """A basis; checks that the design's own names are names and that it uses known stitches.

    Args:
        known_measurements: every key a body file may hold, to tell "not measured" from "not known".
        where: the place of a key of the design file ("section.2.girth", counted from 1).

    Raises:
        InputError: a stitch is unknown or of the wrong kind, or a length of the design's own has a
            name that means something else already.
    """
    known = frozenset(known_measurements)
    _check_stitches(design, stitches, where)
    _check_names(design, known, where)
    main = design.work.stitch
    stretch = next((s for w in swatches if (s := comfortable_stretch(w, main)) is not None), None)
    lengths = {key: m.value.value for key, m in body.measurements.items()}
    numbers = {STRETCH: stretch} if stretch is not None else {}
    scope = formulas.Scope(lengths, numbers, design.lengths, known - set(lengths), where)
    grown = next((g for w in swatches if (g := growth(w, main)) is not None), None)
    return Basis(design, body, swatches, stitches, scope, grown, stretch, units, library=library)


def _check_stitches(design: Design, stitches: Mapping[str, Stitch], where: formulas.Where) -> None:
    named = [("work.stitch", design.work.stitch)]
    if design.gauge is not None:
        named.append(("gauge.stitch", design.gauge.stitch))
    if isinstance(design, TubeDesign):
        named += _tube_stitches(design.tube, "")
    if isinstance(design, PiecesDesign):
        for i, piece in enumerate(design.piece, 1):
            named += _piece_stitches(piece, f"piece.{i}.")
    for key, stitch in named:
        if stitch not in stitches:
            near = (
                near_names(stitch, stitches)
                or "; stitches are named in full, such as double_crochet"
            )
            raise InputError(f'unknown stitch "{stitch}"{near}', where(key))
        if not _suits(stitches[stitch], key):
            raise InputError(_wrong_kind(stitch, key, stitches), where(key))


def _tube_stitches(tube: TubeChoice, prefix: str) -> list[tuple[str, str]]:
    named = [(f"{prefix}start.with", tube.start.made_of)] if tube.start.made_of else []
    return named + [
        (f"{prefix}section.{i}.{key}", stitch)
        for i, s in enumerate(tube.section, 1)
        for key in ("stitch", "base_stitch", "column_stitch")
        if (stitch := getattr(s, key)) and key in s.model_fields_set
    ]


def _piece_stitches(piece: PieceChoice, prefix: str) -> list[tuple[str, str]]:
    """Stitches a piece names: its own work's, and those of its sections."""
    work = getattr(piece, "work", None)
    named = [] if work is None else [(f"{prefix}work.stitch", work.stitch)]
    if isinstance(piece, TubeChoice):
        named += _tube_stitches(piece, prefix)
    if isinstance(piece, PanelChoice):
        named += [] if piece.made_of == "chain" else [(f"{prefix}start.with", piece.made_of)]
        named += [
            (f"{prefix}section.{i}.{key}", stitch)
            for i, s in enumerate(piece.section, 1)
            for key in ("stitch", "base_stitch")
            if (stitch := getattr(s, key)) and key in s.model_fields_set
        ]
    if isinstance(piece, BorderChoice | CordChoice):
        named.append((f"{prefix}stitch", piece.stitch))
    return named


def _check_names(design: Design, known: frozenset[str], where: formulas.Where) -> None:
    """A length of the design's own would be passed over if its name meant something else."""
    for name in design.lengths:
        taken = (
            "a measurement of the body"
            if name in known
            else "a word of formulas"
            if name in {STRETCH, *formulas.FUNCTIONS}
            else ""
        )
        if taken:
            told = f'"{name}" is {taken}; choose another name'
        elif not formulas.is_name(name):
            told = f'"{name}" is no name for a length; write letters, figures and _, a letter first'
        else:
            continue
        raise InputError(told, where(f"lengths.{name}"))
