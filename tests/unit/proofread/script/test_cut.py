"""A written pattern is cut into its parts, its pieces and its rows."""

from hypothesis import given
from hypothesis import strategies as st

from frogless.proofread.script.cut import cut
from frogless.proofread.script.model import Heading, Prose, RowText, Script

BEANIE = """\
BANDSTAND BEANIE

A plain hat for the brass section.

Skill level: Easy
Yarn: worsted wool, 200 m
Gauge: 14 sts and 16 rnds = 10 cm in sc

ABBREVIATIONS
ch – chain
inc – 2 sc in next st

CROWN
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: Inc around. (12) Rnd 3: *Sc in next st, inc; rep from * around. (18)
Rnd 4: *Sc in next 2 sts, inc; rep
from * around. (24)
Rnds 5-8: Rep Rnd 4. (24)
Work even for 6 rounds.
Fasten off. Weave in ends.

BRIM
Rnd 1: Join yarn at back. Sc around.

FINISHING
Sew on the badge. Block.
"""


def rows(script: Script) -> list[tuple[tuple[int, ...], str]]:
    """The numbers and the words of every row."""
    return [
        (each.label.numbers, " ".join(script.plain[each.body.start : each.body.end].split()))
        for part in script.parts
        for each in part.statements
        if isinstance(each, RowText)
    ]


def headings(script: Script) -> list[tuple[str, bool, int]]:
    """Name, whether it is a piece, and how often it is made."""
    return [
        (each.name, each.piece, each.make)
        for part in script.parts
        for each in part.statements
        if isinstance(each, Heading)
    ]


def prose(script: Script) -> list[str]:
    """The sentences between rows."""
    return [
        script.words(each.span)
        for part in script.parts
        for each in part.statements
        if isinstance(each, Prose)
    ]


def kinds(script: Script) -> list[str]:
    """The kinds of the parts in order."""
    return [part.kind for part in script.parts]


def test_parts_are_known_by_their_headings() -> None:
    """Title, front matter, instructions and finishing come out in order."""
    assert kinds(cut(BEANIE)) == [
        "title", "about", "materials", "gauge", "abbreviations", "instructions", "finishing",
    ]  # fmt: skip


def test_rows_run_on_over_lines_and_part_within_one() -> None:
    """A wrapped row is one row; two rows on one line are two."""
    assert rows(cut(BEANIE)) == [
        ((1,), "6 sc in magic ring. (6)"),
        ((2,), "Inc around. (12)"),
        ((3,), "*Sc in next st, inc; rep from * around. (18)"),
        ((4,), "*Sc in next 2 sts, inc; rep from * around. (24)"),
        ((5, 6, 7, 8), "Rep Rnd 4. (24)"),
        ((1,), "Join yarn at back. Sc around."),
    ]


def test_a_piece_begins_where_the_numbers_do() -> None:
    """Both the crown and the brim count their rounds from 1."""
    assert headings(cut(BEANIE)) == [("CROWN", True, 1), ("BRIM", True, 1)]


def test_sentences_between_rows_stand_alone() -> None:
    """Each sentence after the last round is one of its own."""
    assert prose(cut(BEANIE)) == [
        "Work even for 6 rounds.", "Fasten off.", "Weave in ends.", "Sew on the badge.", "Block.",
    ]  # fmt: skip


def test_a_pattern_may_begin_with_its_first_row() -> None:
    """No title and no heading: all of it is instructions."""
    script = cut("Rnd 1: 6 sc in MR\nRnd 2: inc x 6\nRnd 3: (sc, inc) x 6")
    assert kinds(script) == ["instructions"]
    assert [numbers for numbers, _ in rows(script)] == [(1,), (2,), (3,)]


def test_lines_of_windows_and_old_macs_end_alike() -> None:
    """Every line end becomes a single one."""
    assert cut("Rnd 1: sc\r\nRnd 2: sc\rRnd 3: sc").text == "Rnd 1: sc\nRnd 2: sc\nRnd 3: sc"


@given(st.text(alphabet=st.sampled_from("Rnd 12:.()[]*-=#|\n\t aAsc–½\u200f"), max_size=300))
def test_any_text_is_cut(text: str) -> None:
    """Nothing is too odd; places stay within the text and in order."""
    script = cut(text)
    assert len(script.plain) == len(script.text)
    ends = 0
    for part in script.parts:
        assert ends <= part.heading.start <= part.body.start <= part.body.end <= len(script.text)
        at = part.heading.start
        for each in part.statements:
            span = each.body if isinstance(each, RowText) else each.span
            assert at <= span.start <= span.end <= len(script.text)
            at = span.end
        ends = part.body.end


def test_rows_alike_from_the_first_line_on_are_no_running_heads() -> None:
    """A text without a title, whose rows differ in their numbers alone, keeps all of them."""
    script = cut("".join(f"Rnd {number}: sc in each st. (6)\n" for number in range(1, 6)))
    rows = [each for part in script.parts for each in part.statements if isinstance(each, RowText)]
    assert [each.label.numbers for each in rows] == [(1,), (2,), (3,), (4,), (5,)]
