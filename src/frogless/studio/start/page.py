"""The first page of one garment, as its template shows it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.fields import UNITS, Field, Values
from frogless.studio.library import shelf
from frogless.studio.library.preferences import Preferred
from frogless.studio.needs import Needs
from frogless.studio.people.shown import Row
from frogless.studio.start.asked import BODY, STATES, Asked, Reading, over_its_window
from frogless.studio.start.written import Understood, swatch_lacks
from frogless.units import Units


@dataclass(frozen=True, slots=True)
class ReadingRows:
    """One reading's fields: what is asked, and what most will leave as it is."""

    title: str
    asked: tuple[Row, ...]
    others: tuple[Row, ...]
    is_open: bool


@dataclass(frozen=True, slots=True)
class Pick:
    """A list to pick from what is there already; `chosen` is "" for something new.

    Args:
        has_own: whether there is something of the person's own in it.
        mend: the key of the own document that lacks something; 0 for none.
    """

    name: str
    groups: refs.Choices
    chosen: str
    has_own: bool
    error: str = ""
    mend: int = 0

    @property
    def is_open(self) -> bool:
        """Whether it has to be seen."""
        return self.has_own or bool(self.chosen or self.error)


@dataclass(frozen=True, slots=True)
class Shown:
    """Everything on the page, from top to bottom."""

    measurements: tuple[Row, ...]
    wanted: tuple[Row, ...]
    worth: tuple[Row, ...]
    name: Row
    about_body: tuple[Row, ...]
    hook: Row
    readings: tuple[ReadingRows, ...]
    about_swatch: tuple[Row, ...]
    state: str
    advice: tuple[str, ...] = ()
    states: tuple[tuple[str, str], ...] = STATES

    @property
    def rows(self) -> tuple[Row, ...]:
        """Every field."""
        read = (row for one in self.readings for row in (*one.asked, *one.others))
        body = (self.name, *self.measurements, *self.wanted, *self.worth, *self.about_body)
        return (*body, self.hook, *read, *self.about_swatch)

    @property
    def doubted(self) -> tuple[Row, ...]:
        """The fields of the swatch that are asked about before it is kept."""
        read = (row for one in self.readings for row in one.asked)
        return tuple(row for row in read if row.question)

    @property
    def worth_is_open(self) -> bool:
        """Whether something in it has to be seen."""
        return any(row.value or row.error for row in self.worth)

    @property
    def about_body_is_open(self) -> bool:
        """Whether something in it has to be seen."""
        return any(row.value or row.error for row in self.about_body)

    @property
    def faulty(self) -> tuple[Row, ...]:
        """The fields in which something is wrong."""
        return tuple(row for row in self.rows if row.error)


def shown(page: Asked, need: Needs, values: Values, told: Understood, units: Units) -> Shown:
    """The page with what it holds, and what there is to say of it."""

    def rows(fields: Iterable[Field]) -> tuple[Row, ...]:
        return tuple(
            _row(over_its_window(one, page, values, units), values, told, units) for one in fields
        )

    def reading(one: Reading) -> ReadingRows:
        asked, others = rows(one.asked), rows(one.others)
        kept = all(values.get(name) == text for name, text in one.kept.items())
        return ReadingRows(one.title, asked, others, not kept or any(r.error for r in others))

    # What a design uses and a survey tells is asked at once where nothing else is to be measured.
    used = {f"{BODY}{key}" for key in need.estimated} if not need.measurements else set()
    return Shown(
        measurements=rows(page.measurements),
        wanted=rows(one for one in page.worth if one.name in used),
        worth=rows(one for one in page.worth if one.name not in used),
        name=rows(page.about_body[:1])[0],
        about_body=rows(page.about_body[1:]),
        hook=rows([page.hook])[0],
        readings=tuple(map(reading, page.readings)),
        about_swatch=rows(page.about_swatch),
        state=values.get("swatch-state", "washed"),
        advice=told.advice,
    )


def _row(field: Field, values: Values, told: Understood, units: Units) -> Row:
    value = values.get(field.name, "")
    return Row(
        field,
        value,
        UNITS[field.kind][units] if field.kind else "",
        told.errors.get(field.name, ""),
        told.questions.get(field.name, ""),
        "" if value or field.needed else told.estimates.get(field.name, ""),
        how="How to measure" if field.name.startswith(BODY) else "How to count",
        numeric=not field.kind and not field.name.endswith("-name"),
        offers=told.offers.get(field.name, ()),
    )


def pick(kind: str, chosen: str, error: str = "") -> Pick:
    """The list of bodies or swatches to pick from."""
    groups = refs.choices(kind)
    own = int(chosen.removeprefix("own:")) if chosen.startswith("own:") else 0
    has_own = shelf.documents(kind).exists()
    return Pick(kind, groups, chosen, has_own, error, own if error else 0)


def swatch_pick(chosen: str, need: Needs, likes: Preferred, error: str = "") -> Pick:
    """The list of swatches, each with what it lacks for the design."""
    plain = pick("swatch", chosen, error)
    groups = tuple(
        (title, tuple((ref, _told(ref, name, need, likes)) for ref, name in choices))
        for title, choices in plain.groups
    )
    return Pick(plain.name, groups, chosen, plain.has_own, error, plain.mend)


def _told(ref: str, name: str, need: Needs, likes: Preferred) -> str:
    try:
        lacks = swatch_lacks(need, refs.resolve("swatch", ref).text, likes.terms)
    except InputError:
        return name
    return f"{name} (does not do for this design)" if lacks else name
