"""The form of a body as its page shows it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from frogless.studio.fields import UNITS, Field, Values
from frogless.studio.offers import Offer, meant
from frogless.studio.people import measured
from frogless.studio.people.checked import Checked, can_be_estimated
from frogless.units import Units

NAME = Field("name", "Name", hint="What patterns and lists call this person.")
AGE = Field(
    "age",
    "Age in years",
    hint="For a child, so that a child’s limits hold; a grown-up may leave it empty.",
)
NEVER = "Cannot be estimated: a design that uses it needs it measured."


@dataclass(frozen=True, slots=True)
class Row:
    """One field with all that there is to say of it.

    Args:
        number: of its tape in the picture of the whole body; 0 for none.
        how: what its picture shows, in a few words.
        numeric: whether it is a number without a unit.
        offers: what could be written instead of a value that is asked about.
    """

    field: Field
    value: str = ""
    unit: str = ""
    error: str = ""
    question: str = ""
    estimate: str = ""
    needed: str = ""
    number: int = 0
    how: str = "How to measure"
    numeric: bool = False
    offers: tuple[Offer, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """Fields under one title, and how many of them are filled in."""

    title: str
    rows: tuple[Row, ...]
    folded: bool = True

    @property
    def filled(self) -> int:
        """How many have a value."""
        return sum(bool(row.value) for row in self.rows)

    @property
    def is_open(self) -> bool:
        """Whether there is something in it that has to be seen."""
        return not self.folded or any(row.error or row.question for row in self.rows)


@dataclass(frozen=True, slots=True)
class Form:
    """The whole form: who, then the measurements, the few that matter first."""

    who: tuple[Row, ...]
    parts: tuple[Part, ...]

    @property
    def rows(self) -> tuple[Row, ...]:
        """Every field, from top to bottom."""
        return (*self.who, *(row for part in self.parts for row in part.rows))

    @property
    def keys(self) -> tuple[str, ...]:
        """The measurements, from top to bottom."""
        return tuple(row.field.name for part in self.parts for row in part.rows)

    @property
    def filled(self) -> int:
        """How many measurements have a value."""
        return sum(part.filled for part in self.parts)


def form(values: Values, told: Checked, units: Units, designs: Iterable[str]) -> Form:
    """The form with what it holds, and what there is to say of it.

    Args:
        designs: texts of the designs that could be made; they say which fields come first.
    """
    texts = tuple(designs)
    first = measured.never_estimated(texts)
    users = measured.needed_by(texts)
    rest = {
        title: tuple(key for key in keys if key not in first)
        for title, keys in measured.grouped().items()
    }
    groups = {"What most designs need": first, **rest}
    order = {key: n for n, key in enumerate((k for keys in groups.values() for k in keys), 1)}

    def row(key: str) -> Row:
        plain = _row(measured.field(key), values, told)
        missed = key in users and not plain.value and not can_be_estimated(key)
        return replace(
            plain,
            unit=UNITS[plain.field.kind][units],
            estimate=NEVER if missed else plain.estimate,
            needed=measured.needed_words(users.get(key, ())),
            number=order[key],
        )

    parts = tuple(
        Part(title, tuple(map(row, keys)), folded=keys is not first)
        for title, keys in groups.items()
        if keys
    )
    age = replace(_row(AGE, values, told), numeric=True)
    return Form((_row(NAME, values, told), age), parts)


def _row(field: Field, values: Values, told: Checked) -> Row:
    value = values.get(field.name, "")
    error, question = told.errors.get(field.name, ""), told.questions.get(field.name, "")
    return Row(
        field,
        value,
        error=error,
        question=question,
        estimate="" if value else told.estimates.get(field.name, ""),
        offers=meant(f"{error} {question}", field.name, values),
    )
