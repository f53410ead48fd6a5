"""A report as a page shows it: plain words and places, small enough to be sent between processes."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from frogless.proofread.checks.table import BY_NAME
from frogless.proofread.findings import Finding, Report
from frogless.studio.proofreading.amend import amendment
from frogless.studio.proofreading.places import Place, Places
from frogless.studio.proofreading.strip import Strip, strip
from frogless.studio.proofreading.table import RowTable, row_table

MOST_FOUND = 300
"""Findings that one page shows; whoever has more mends these first."""

MOST_UNCLEAR = 100
MOST_EVIDENCE = 12

UNCLEAR = "unclear"
"""The check whose findings are words that no sense was made of."""

CERTAIN = {"certain": "Certain", "likely": "Likely", "possible": "Possible"}
NAMES = {"us": "US", "uk": "UK"}


@dataclass(frozen=True, slots=True)
class Put:
    """What can be put in place with one button, and where, as a browser counts."""

    start: int
    end: int
    words: str


@dataclass(frozen=True, slots=True)
class Found:
    """One finding.

    Args:
        number: within the list, from 1.
        where: "Rnd 7, Sleeve"; "" outside of rows.
        sizes: "size M", "sizes M and L"; "" for all.
    """

    number: int
    kind: str
    title: str
    place: Place
    where: str
    sizes: str
    says: str
    works_out_to: str
    hint: str
    certainty: str
    put: Put | None = None


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of findings: how many there are, and whether they are left out."""

    name: str
    title: str
    number: int
    silenced: bool


@dataclass(frozen=True, slots=True)
class Spoken:
    """The terms that a pattern is read in: why, and the words that say so."""

    dialect: str
    sentence: str
    evidence: tuple[tuple[Place, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Looked:
    """Everything that a page tells of a text.

    Args:
        fault: why the text was not read; "" when it was.
        again: it was not read for want of time, and can be asked for again.
        size: the one that is looked at; "": all.
        more: findings that are not listed because there are too many.
        left_out: findings of kinds that are silenced.
        unclear: words that no sense was made of, where they are not among the findings.
        understood: in percent, never 100 while anything is left.
    """

    fault: str = ""
    again: bool = False
    size: str = ""
    sizes: tuple[str, ...] = ()
    found: tuple[Found, ...] = ()
    more: int = 0
    left_out: int = 0
    kinds: tuple[Kind, ...] = ()
    spoken: Spoken | None = None
    unclear: tuple[tuple[Place, str, str], ...] = ()
    more_unclear: int = 0
    understood: int = 100
    assumptions: tuple[tuple[str, Place | None], ...] = ()
    rows: RowTable | None = None
    strip: Strip | None = None

    @property
    def number(self) -> int:
        """How many findings there are, those that are left out not counted."""
        return len(self.found) + self.more

    @property
    def told(self) -> str:
        """The outcome in one line.

        >>> Looked().told, Looked(more=2, left_out=1).told
        ('Nothing found.', '2 findings; 1 left out.')
        """
        if self.fault:
            return "Not read yet." if self.again else "Not read."
        number = self.number
        found = f"{number} finding{'' if number == 1 else 's'}" if number else "Nothing found"
        size = f" for size {self.size}" if self.size else ""
        left = f"; {self.left_out} left out" if self.left_out else ""
        return f"{found}{size}{left}."


def looked(report: Report, size: str = "", silenced: Collection[str] = ()) -> Looked:
    """What a page tells of a report.

    Args:
        size: the name of the size that is asked about; one that is not there means all.
        silenced: names of checks whose findings are left out.
    """
    places = Places(report.script)
    size = size if size in report.script.sizes else ""
    of_size = [f for f in report.findings if not (size and f.sizes and size not in f.sizes)]
    shown = [f for f in of_size if f.kind not in silenced]
    listed = tuple(
        _found(report, one, number, places) for number, one in enumerate(shown[:MOST_FOUND], 1)
    )
    told = {one.span for one in shown if one.kind == UNCLEAR}
    unclear = [one for one in report.not_understood if one.span not in told]
    return Looked(
        size=size,
        sizes=tuple(name for name in report.script.sizes if name),
        found=listed,
        more=len(shown) - len(listed),
        left_out=len(of_size) - len(shown),
        kinds=_kinds(of_size, silenced),
        spoken=_spoken(report, places),
        unclear=tuple((places.of(one.span), one.guess, one.row) for one in unclear[:MOST_UNCLEAR]),
        more_unclear=max(0, len(unclear) - MOST_UNCLEAR),
        understood=_percent(report),
        assumptions=tuple(
            (one.sentence, places.of(one.span) if one.span else None) for one in report.assumptions
        ),
        rows=row_table(report, places, size),
        strip=strip(report, size),
    )


def _found(report: Report, finding: Finding, number: int, places: Places) -> Found:
    check = BY_NAME.get(finding.kind)
    better = amendment(report, finding)
    put = None
    if better is not None:
        at = places.of(better.span)
        put = Put(at.start, at.end, better.words.strip())
    return Found(
        number,
        finding.kind,
        check.title if check else finding.kind.replace("-", " "),
        places.of(finding.span),
        ", ".join(part for part in (finding.row, finding.piece) if part),
        _sizes(finding, report.script.sizes),
        finding.says,
        finding.works_out_to,
        finding.hint,
        CERTAIN[finding.certainty],
        put,
    )


def _sizes(finding: Finding, names: tuple[str, ...]) -> str:
    if not finding.sizes or len(names) == 1:
        return ""
    *rest, last = finding.sizes
    return f"sizes {', '.join(rest)} and {last}" if rest else f"size {last}"


def _kinds(found: list[Finding], silenced: Collection[str]) -> tuple[Kind, ...]:
    names = dict.fromkeys([*(one.kind for one in found), *silenced])
    return tuple(
        Kind(
            name,
            BY_NAME[name].title if name in BY_NAME else "",
            sum(one.kind == name for one in found),
            name in silenced,
        )
        for name in names
    )


def _spoken(report: Report, places: Places) -> Spoken:
    terms = report.terms
    name, other = NAMES[terms.dialect], "uk" if terms.dialect == "us" else "us"
    against = sum(one.dialect == other for one in terms.evidence)
    if not terms.guessed:
        said = "as it says of itself" if terms.declared == terms.dialect else "as you chose"
        sentence = f"Read in {name} terms, {said}."
    elif terms.evidence:
        sentence = f"Read in {name} terms; that is a guess from its words."
    else:
        sentence = f"Read in {name} terms; nothing in it tells which, so that is a guess."
    if terms.declared == other:
        sentence += f" It says of itself that it is in {NAMES[other]} terms."
    elif against:
        sentence += f" Some words speak for {NAMES[other]} terms."
    evidence = tuple(
        (places.of(one.span), f"{NAMES[one.dialect]}: {one.why}")
        for one in terms.evidence[:MOST_EVIDENCE]
    )
    return Spoken(terms.dialect, sentence, evidence)


def _percent(report: Report) -> int:
    percent = int(100 * report.understood + 1e-9)
    return min(percent, 99) if report.not_understood else percent
