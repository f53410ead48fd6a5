"""What a pattern says around its rows, in English; a catalogue gives the same in another language."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.publish.drafted import Drafted

MESSAGES: Mapping[str, str] = {
    # Headings
    "glance": "At a glance",
    "cautions": "Please read first",
    "materials": "Materials",
    "gauge": "Gauge",
    "abbreviations": "Abbreviations",
    "special": "How the stitches are worked",
    "before": "Before you start",
    "schematic": "Schematic",
    "instructions": "Instructions",
    "finishing": "Finishing",
    "why": "Why these numbers",
    "checked": "What was checked",
    "about": "About this pattern",
    # At a glance
    "glance_caption": "Girths of body and skirt, with the ease between them",
    "at": "at",
    "body": "body",
    "garment": "skirt",
    "ease": "ease",
    "stitches": "stitches",
    "round": "round",
    "depth": "below the top edge",
    "estimated_mark": "{value} (estimated)",
    "none": "–",
    "verdict_tight": "{value}, tight",
    "verdict_loose": "{value}, loose",
    "glance_rounds": "{rounds} rounds to the hem, {length} from the top edge, worn",
    "glance_edging": "Edging: {name}, {repeats} repeats on {count} stitches",
    "glance_edging_one": "Edging: {name}, on {count} stitches",
    "glance_time": "Working time: about {low} to {high} hours, at 40 to 10 single crochets a minute; time your own hand",
    "glance_finished": "Finished length with the edging: {length}",
    "ease_gathered": "{value}, gathered",
    "glance_goes_on": "Going on: {sentence}",
    "glance_stays_up": "Staying up: {sentence}",
    "waist_girth": "waist",
    "high_hip_girth": "high hip",
    "hip_girth": "hip",
    "hem": "hem",
    # Materials
    "yarn": "{name}: about {length} ({low} to {high}), {mass}",
    "yarn_balls": "{yarn}; with {margin} % to spare {balls} balls of {ball}",
    "yarn_category": "{yarn}; category {category}, {fibre}",
    "yarn_parts": "Of the yarn: {parts}",
    "yarn_uncalibrated": (
        "The swatch was not weighed, so the amount is an estimate from the yarn's thickness; weigh the swatch "
        "and add its mass to make it surer"
    ),
    "notion_hook": "Hook {detail}",
    "notion_marker": "{pieces} stitch markers, {detail}",
    "notion_elastic": "Elastic: cut {length}; {detail}",
    "notion_cord": "Cord: {length}, {detail}",
    "notion_bead": "{pieces} beads for the {detail}",
    "notion_yarn_needle": "Yarn needle, {detail}",
    "notion_sewing_needle": "Sewing needle, {detail}",
    "notion_beading_needle": "Beading needle, {detail}",
    "notion_tape_measure": "Tape measure, {detail}",
    # Gauge
    "gauge_main": (
        "{stitches} sts and {rows} {rounds} in {stitch} to {span}, {state}, on a {hook} hook. "
        "It was counted to within {percent} %: {girth} on the widest girth."
    ),
    "gauge_estimated": "{stitch} ({section}) was not swatched: its gauge is estimated from {main}.",
    "gauge_growth": "Worn, the fabric grows {percent} % in length; all lengths here are worn lengths.",
    "gauge_check": (
        "Measure your own swatch the same way before you begin. Another gauge needs other numbers: draft the "
        "pattern again from your swatch rather than from the nearest one."
    ),
    "state_as worked": "as worked",
    "state_washed": "washed and dried",
    "state_hung": "hung",
    "span_cm": "10 cm",
    "span_in": "4 in",
    # Abbreviations
    "abbr_st": "stitch",
    "abbr_sts": "stitches",
    "abbr_sp": "space",
    "abbr_rnd": "round",
    "abbr_RS": "right side",
    "abbr_WS": "wrong side",
    "abbr_tog": "together",
    # Before you start
    "way_joined and turned": (
        "The skirt is worked from the waist down in joined rounds, turned after each, so that the join stays "
        "where it is: {join}."
    ),
    "way_joined": (
        "The skirt is worked from the waist down in joined rounds, right side always facing. Unturned rounds "
        "lean: after ten rounds measure how far the join has moved from {join}; it will have moved as far "
        "again every ten rounds."
    ),
    "way_spiral": (
        "The skirt is worked from the waist down in a spiral, right side always facing. Keep a marker in the "
        "first stitch of the round, which begins at {join}; it drifts a little, which does not show."
    ),
    "join_centre back": "centre back",
    "join_left side": "the wearer's left side",
    "join_right side": "the wearer's right side",
    "chain_counts": "The turning chain of {n} counts as the first {stitch} of the round, in text and counts.",
    "chain_does_not_count": (
        "The turning chain of {n} does not count as a stitch, in text or counts: work the first {stitch} into "
        "the first stitch too."
    ),
    "chain_does_not_count_top": (
        "The turning chain of {n} does not count as a stitch, in text or counts: work the first {stitch} into "
        "the first stitch too, and close each round into the top of the chain. That join is no stitch either; "
        "do not work into it."
    ),
    "brackets": (
        "Square brackets enclose what is worked the number of times given after them; round brackets what is "
        "worked into one stitch. The number at the end of each round is what you have when it is done."
    ),
    "lengths": (
        "Lengths are given in rounds and on the tape. If the two part, the tape is right: your row gauge is "
        "not the swatch's, and the shaping rounds have to be planned anew."
    ),
    # Sections
    "shape": (
        "From {before} to {after} stitches in {rounds} rounds: {shapings} shaping rounds with {points} shaping "
        "points, {add} at each. Shape {rhythm}."
    ),
    "add_1": "one stitch more",
    "add_2": "two stitches more",
    "less_1": "one stitch fewer",
    "less_2": "two stitches fewer",
    "straight": "{rounds} rounds without shaping, {count} stitches.",
    "cone": "A cone: {share} of a full circle.",
    "flare": "{sentence} The skirt strays at most {stray} from the wanted girth, {depth} below the top edge.",
    "other": "If you would rather follow the body closer: {points} points, {rhythm}; it strays at most {stray}.",
    "check_section": (
        "After round {round} the work measures {depth} from the top edge, worn, and {girth} around "
        "({flat} across, folded flat): {count}."
    ),
    "check_worked": " On the hook, not yet hung, it measures {depth}.",
    "edging_intro": "{name}, over {base} stitches: {repeats} repeats of {multiple}.",
    "edging_intro_one": "{name}, over {base} stitches.",
    "edging_correction": "Its first round takes the {hem} stitches of the hem to {base}.",
    # Waist
    "elastic_1": (
        "Cut {cut} of elastic. Overlap the ends by {lap} and sew them flat with a few crossing stitches: a ring "
        "of {ring}. Pull it over your hips before you go on."
    ),
    "elastic_2": (
        "Lay the ring along the waist edge, right side facing you, and share it out: pin quarters of the ring "
        "to quarters of the edge ({quarter} stitches each)."
    ),
    "elastic_3": (
        "Work over the elastic into the edge, {n} {stitch} in each stitch, pulling the elastic out to the next "
        "pin as you go, so that {total} {stitch} cover it and it can still slide."
    ),
    "cord_1": (
        "The eyelets are in round {round}: {eyelets} of them, an even number, so that both ends of the cord "
        "come out on the same side, left and right of centre front."
    ),
    "cord_2": (
        "Make or buy a cord of {cord}. For a crocheted one chain until it measures that, then slip stitch back "
        "along the chain. Thread it from centre front all the way round, and knot both ends."
    ),
    "cord_join_side": (
        "The join is at a side: count {count} eyelets from it to find the two that lie beside centre front."
    ),
    "band_1": "Work the band sideways and stop at {girth}, not at the row, if the two part.",
    "band_2": (
        "Join the short ends, then pin quarters of the band to quarters of the waist edge and work them "
        "together as the seam below says."
    ),
    # Strand
    "strand_1": (
        "Cut {cut} of yarn and part it into its plies: keep {plies} of {of}, and wind up the rest. Untwist a "
        "forearm's length at a time, holding the end free to spin. Stiffen the tip with a little glue or wax."
    ),
    "strand_1_unknown": (
        "Cut {cut} of yarn and part it into its plies: keep {plies}, and wind up the rest. Untwist a forearm's "
        "length at a time, holding the end free to spin."
    ),
    "strand_2": (
        "Thread {beads} beads and {spare} to spare. Leave a tail of {tail}. With the {hook} hook chain as the "
        "row says, {chains} chains in all; the first chain after each bead locks it."
    ),
    "strand_3": (
        "The strand measures about {length} and hangs {sag} deep between its points. Sew its ends to the waist "
        "edge: {here}, and {there}."
    ),
    "strand_at_front": "at centre front",
    "strand_at_left": "{n} stitches of the waist edge to the wearer's left of centre front",
    "strand_at_right": "{n} stitches of the waist edge to the wearer's right of centre front",
    "strand_hooks": "The hook only has to catch the {plies} plies; the beads are threaded before, not hooked on.",
    # Finishing
    "finish_gap": "With the tail of the foundation close the gap at the foot of its join.",
    "finish_ends": "Weave in each end in three directions, 5 cm in all at least.",
    "finish_ends_in": "Weave in each end in three directions, 2 in in all at least.",
    "finish_seams": "Seams",
    "finish_block": "Wash as the swatch was washed and block to these measurements, lying flat:",
    "finish_block_item": "{at}: {girth} around, {flat} across, {depth} below the top edge",
    "finish_block_length": "{depth} from top edge to hem, before it is worn",
    "finish_dry": "Dry it flat. A hanging wet skirt grows.",
    # Why
    "why_intro": "Every count with the body, the ease and the gauge it comes from.",
    "why_section": "{name}: rounds",
    "why_edging": "edging",
    "why_elastic": "elastic",
    "why_cord": "cord",
    "why_band": "ribbed band",
    # Checked
    "checked_intro": "Before this pattern was written out, every check below passed, or warns of what is not known.",
    "checked_caption": "Checks and what they looked at",
    "check": "check",
    "found": "found",
    "detail": "detail",
    "verdict_pass": "pass",
    "verdict_warn": "warning",
    "verdict_fail": "failed",
    # About
    "terms_us": "US terms",
    "terms_uk": "UK terms",
    "about_version": "Version {version}. {terms}. For {body}, in {swatch}.",
    "about_author": "Design: {author}.",
    "about_tool": "Drafted with Frogless {version}.",
    "subtitle": "for {body}, in {swatch}",
    "footer": "{title}, version {version}, for {body}; {terms}",
}


def say(drafted: Drafted, name: str, /, **values: object) -> str:
    """The message of that name in the pattern's language, its blanks filled."""
    return drafted.phrases.catalogue.gettext(MESSAGES[name]).format(**values)
