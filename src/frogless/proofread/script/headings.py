"""The words that head the parts of a pattern, and those that name its pieces."""

from __future__ import annotations

import re

from frogless.proofread.script.model import PartKind

_KINDS: tuple[tuple[PartKind, str], ...] = (
    ("materials",
     r"what (?:i|we|you) used?"
        r"|materials?(?: (?:and|&) (?:tools|notions|gauge|equipment|supplies))?|materials? (?:list|needed"
     r"|used)|yarns?(?: used| needed)?|hooks?"
     r"|hook sizes?|(?:crochet )?hooks?|notions|tools(?: (?:and|&) materials)?|supplies|equipment"
     r"|(?:what )?(?:you|i|we)(?: will|'ll| ?ll)? need"
     r"|what you need|thread|(?:yarn )?requirements|yarn amounts?|yarn (?:and|&) hooks?|hooks? (?:and"
     r"|&) (?:yarn|notions)|needles?|yardage"
     r"|shopping list|yarn weight|extras|other (?:materials|notions|supplies)"),
    ("gauge", r"(?:gauge|tension)(?: swatch| square| (?:and|&) hook| information)?|(?:stitch )?gauge|swatch|row gauge"),
    ("sizes",
     r"sizes?|sizing|to fit(?: (?:sizes?|bust|chest|waist|hips?|heads?|head circumference|ages?))?"
     r"|sizes? (?:guide|chart|range|key|included|available)"
     r"|available sizes|to fit .{0,30}"),
    ("measurements",
     r"(?:(?:finished|final|actual|garment|approximate|approx\.?"
     r"|completed) ){1,2}(?:garment )?(?:measurements?|sizes?|dimensions?|bust|chest|waist"
     r"|hips?|length|width|circumference|measures|circ\.?)(?: .{0,30})?|finished|measurements?|dimensions?"
     r"|schematics?|at a glance"
     r"|(?:sizes?|sizing) (?:and|&) (?:finished )?measurements|(?:finished )?measurements? (?:and|&) sizes?"
     r"|(?:bust|chest|waist|hip|head|brim) circumference|(?:full|total|body|sleeve) length"),
    ("abbreviations",
     r"(?:(?:us|uk|u\.s\.|u\.k\.|stitch|crochet|general|standard) ){0,2}abbreviations?(?: used| key"
     r"| list| (?:and|&) (?:terms|stitches|stitch key))?(?: in .{0,30})?"
     r"|abbrevs?\.?|key|stitch(?:es)? key|stitch(?:es)?(?: used| list)|stitches|abbreviation key|glossary|abbr\.?"
     r"|legend|stitches (?:and|&) abbreviations"
     r"|terms used|list of abbreviations"),
    ("special",
     r"(?:special|advanced) (?:stitch(?:es)?|terms?|techniques?|abbreviations?"
     r"|instructions)(?: .{0,30})?|stitch (?:guide|glossary|explanations?|definitions?"
     r"|patterns?|instructions)|pattern stitch(?:es)?|how the stitches are worked"
     r"|stitch explanations?|stitches explained|techniques?(?: used)?"
     r"|special"),
    ("notes",
     r"(?:(?:pattern|general|design(?:er)?(?:'?s)?|construction|important|some|a few|sizing"
     r"|helpful) ){0,2}(?:notes?|tips)(?: (?:on|about|before|and|&) .{0,40})?"
     r"|before (?:you )?(?:start(?:ing)?|begin(?:ning)?)|(?:things|good) to (?:know|note)"
     r"|please (?:note|read)|read (?:this )?first|hints?(?: (?:and|&) tips)?"
     r"|tips (?:and|&) tricks"),
    ("instructions",
     r"(?:(?:written|crochet|the|main|pattern) ){0,2}(?:instructions?|directions?"
     r"|pattern)(?: (?:begins?|starts?)(?: here)?)?|method"
     r"|(?:how )?to (?:make|work)(?: (?:it|the .{1,20}))?|let'?s (?:begin|start|crochet)|working instructions"),
    ("finishing",
     r"(?:to )?finish(?:ing)?(?: (?:and|&) .{0,30}| off| touches| the .{1,20}| up)?|(?:to )?mak(?:ing"
     r"|e) up|(?:final )?assembly|assembling(?: the .{1,20})?"
     r"|to assemble|joining(?: the .{1,20}| pieces)?|seam(?:ing|s)|sewing(?: up| together)?"
     r"|putting (?:it|the pieces) (?:all )?together|blocking"
     r"|block(?:ing)? (?:and|&) .{1,20}|to complete|completion|assembly (?:and|&) .{1,20}"
     r"|construct(?:ing)? the .{1,20}|care|washing|weaving in"),
    ("about",
     r"about .{1,30}|(?:skill |experience )?levels?|skill|difficulty(?: level)?|description"
     r"|introduction|intro|construction|overview|(?:the )?story"
     r"|copyright(?: .{0,30})?|terms of use|licen[cs]e|why these numbers|what was checked|support"
     r"|contact|credits|(?:a )?word (?:of|from) .{1,30}"
     r"|designed by|design(?:er)?|by|contents|table of contents|(?:pattern )?info(?:rmation)?"
     r"|crochet terms|terms|language|terminology|photos?"
     r"|versions?|changes|changelog|errata|what was .{1,20}|inspiration"),
)  # fmt: skip
_TABLE = tuple((kind, re.compile(rf"(?:{words})", re.IGNORECASE)) for kind, words in _KINDS)

_BODY_WORDS = (
    r"sleeves?|fronts?|backs?|bod(?:y|ies)|bodice|yokes?|skirts?|pockets?|straps?|ties?|hoods?"
    r"|brims?|crowns?|squares?|motifs?|panels?|edgings?"
    r"|borders?|cuffs?|collars?|neckbands?|buttonbands?|button bands?|bands?|ribbing|hems?"
    r"|waistbands?|peplum|gussets?|cups?|thumbs?|hands?"
    r"|feet|foot|heels?|toes?|legs?|arms?|head|ears?|tails?|base|bottom|top|sides?|flaps?|handles?"
    r"|strips?|rectangles?|circles?|triangles?|hexagons?"
    r"|flowers?|lea(?:f|ves)|petals?|tassels?|fringe|cords?|drawstrings?|belts?|placket|facing"
    r"|neckline|neck|lining|ruffles?|frills?|tiers?|wings?"
    r"|scarf|shawl|hat|cap|beanie|mittens?|gloves?|socks?|cowl|bag|blanket|top-?piece|shoulders?"
    r"|armholes?|cord|i-cord|button loops?|loops?|buttons?"
    r"|elastic cover|covers?|lid|rim|stem|part \d+|part [a-d]|piece(?: \d+| [a-d])?|left|right"
    r"|main piece|medallions?|granny squares?|coasters?"
)
_BODY = re.compile(rf"(?<![a-z])(?:{_BODY_WORDS})(?![a-z])", re.IGNORECASE)
_MAKE = re.compile(
    r"\b(?:make|work|crochet|create)\s(?:(\d{1,4})(?!\d)|(one|two|three|four|five|six|seven|eight"
    r"|nine|ten|both))(?!\w|[.]\d)"
    r"|(?:^|[(\[,\s])(?:x\s?(\d{1,4})|(\d{1,4})\s?x)(?!\w|[.]\d)",
    re.IGNORECASE,
)  # fmt: skip
_COUNTED = {
    "one": 1, "two": 2, "both": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10,
}  # fmt: skip
_SAYS_MORE = re.compile(r"\s{0,3}[(\[][^()\[\]]{0,60}[)\]]\s*$")
_NUMBERED = re.compile(
    r"^\s*(?:\d{1,2}[.)]|[ivx]{1,4}\.|step \d{1,2}:?|part \d{1,2}:)\s+(?=\S)", re.I
)


def part_kind(words: str) -> PartKind | None:
    """The part that these words head; None when they head none.

    >>> part_kind("ABBREVIATIONS (US terms):"), part_kind("Sleeve (make 2)")
    ('abbreviations', None)
    """
    name = bare_name(words)
    if len(name) > 70:
        return None
    for kind, form in _TABLE:
        if form.fullmatch(name):
            return kind
    return None


def bare_name(words: str) -> str:
    """Words of a heading on one line, without its number, colon, marks and what is in brackets."""
    name = " ".join(words[:400].split()).strip(" -=~:.*#_")
    name = _NUMBERED.sub("", name)
    return _SAYS_MORE.sub("", name).strip(" -=~:.*#_")


def bracketless(words: str) -> str:
    """The words without a bracket at their end."""
    return _SAYS_MORE.sub("", words)


def names_piece(words: str) -> bool:
    """Whether a word of it is a part of a garment or of something else that is made."""
    return bool(_BODY.search(words))


def how_often(words: str) -> int:
    """How often a piece is made, "(make 2)": 2; 0 where the words do not say."""
    found = _MAKE.search(words)
    if not found:
        return 0
    return _COUNTED[found[2].lower()] if found[2] else int(found[1] or found[3] or found[4])
