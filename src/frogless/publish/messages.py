"""What a pattern says around its rows, in English; a catalogue gives the same in another language.

The names of places, checks and remarks are found by their own names: `check_places`,
`remark_strand_sample`, `waist_girth`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from frogless.publish.drafted import Drafted
from frogless.publish.messages_reasons import REASONS

MESSAGES: Mapping[str, str] = {
    **REASONS,
    # Headings
    "glance": "At a glance",
    "cautions": "Please read first",
    "schematic": "Schematic",
    "materials": "Materials",
    "gauge": "Gauge",
    "abbreviations": "Abbreviations",
    "special": "How the stitches are worked",
    "before": "Before you start",
    "cord": "Drawcord",
    "putting_on": "Putting the band on",
    "finishing": "Finishing",
    "why": "Why these numbers",
    "checked": "What was checked",
    "about": "About this pattern",
    # Notes
    "note_caution": "Caution",
    "note_check": "Check",
    "note_hint": "Hint",
    "note_remark": "Please note",
    "sourced": "{sentence} (Source: {source}.)",
    "unsourced": "{sentence} (No published source.)",
    # At a glance
    "glance_caption": (
        "Girths, and the ease between body and skirt; depths are from the waist edge to the lower edge of "
        "the round, worn"
    ),
    "at": "at",
    "body": "body",
    "garment": "skirt",
    "ease": "ease",
    "stitches": "stitches",
    "round": "round",
    "depth": "depth",
    "estimated_mark": "{value} (estimated)",
    "none": "–",
    "verdict_tight": "{value}, tight",
    "verdict_loose": "{value}, loose",
    "ungathered": "{at}, ungathered",
    "glance_length": "{rounds} rounds; worn, it hangs {length} from the waist edge to the hem",
    "glance_length_edging": "{told}, {length} with the edging",
    "glance_length_band": "{told}; the band stands {height} above the waist edge",
    "glance_edging": "Edging: {name}, {repeats} repeats on {count} stitches",
    "glance_edging_one": "Edging: {name}, on {count} stitches",
    "glance_stray": (
        "Between these places it is at most {stray} than wanted, {depth} below the waist edge"
    ),
    "wider": "{length} wider",
    "narrower": "{length} narrower",
    "glance_goes_on": "Going on: {sentence}",
    "glance_stays_up": "Staying up: {sentence}",
    "glance_time": (
        "Working time: about {low} to {high} hours, at {fast} to {slow} {stitch} stitches a "
        "minute; time your own hand"
    ),
    "glance_estimated": (
        "Estimated, not measured: {lengths}. Measure and draft again, or trust "
        "the tape more than the round when you get there."
    ),
    "length_of": "{name} {length}",
    "top_edge": "top edge",
    "waist_girth": "waist",
    "high_hip_girth": "high hip",
    "hip_girth": "hip",
    "hem": "hem",
    # The drawings
    "schematic_caption": (
        "The skirt folded flat, seen from the front. Girths are all the way around: each line is "
        "half as long."
    ),
    "profile_caption": (
        "Girth by depth. The steps are the rounds as worked, the dotted line is what was wanted."
    ),
    # Materials
    "yarn": "{name}: about {length} ({low} to {high}), {mass}",
    "yarn_label": "{name} ({label})",
    "yarn_category": "category {category}",
    "yarn_ball": "{told}. With {margin} % to spare 1 ball of {ball}",
    "yarn_balls": "{told}. With {margin} % to spare {balls} balls of {ball}, of one dye lot",
    "yarn_parts": "Of this: {parts}",
    "yarn_part": "{name} {mass}",
    "yarn_colour": "{which}, in {name}",
    "yarn_uncalibrated": (
        "The swatch was not weighed, so the amount is an estimate from the thickness of the yarn. "
        "Weigh the swatch to make it surer"
    ),
    "and": "{first} and {last}",
    "hook": "Hook {size}: {parts}",
    "hook_us": "{size} (US {label})",
    "hook_steel": "{size} (US steel {label})",
    "notion_marker": "{pieces} stitch markers, {detail}",
    "notion_marker_one": "1 stitch marker, {detail}",
    "notion_elastic": (
        "Elastic, {kind}, {width} wide: {cut}, of which {lap} is the lap. Over the hips it "
        "stretches to {stretch} times its length"
    ),
    "notion_cord": (
        "Cord: {length}, thin enough to slide through a hole of one stitch; one crocheted from the "
        "yarn is counted above"
    ),
    "notion_bead": "{pieces} beads for the {detail}",
    "have_scissors": "Scissors",
    "have_pins": "{pieces} pins or clips, for the quarters",
    "have_bodkin": "Bodkin or safety pin, to thread the cord",
    "have_glue": "A little glue or wax, to stiffen the tip of the strand",
    "notion_yarn_needle": "Yarn needle, {detail}",
    "notion_sewing_needle": "Sewing needle, {detail}",
    "notion_beading_needle": "Beading needle, {detail}",
    "notion_tape_measure": "Tape measure, {detail}",
    "notion_other": "{name}: {detail}",
    # Colours
    "colours": "Colours",
    "colour": "Colour {letter}",
    "colour_named": "Colour {letter}, {name}",
    "colour_told": "{name}about {length}, {mass}",
    "colour_in_rounds": (
        "In a joined round the last stitch brings the new colour: the slip stitch that joins, and the "
        "chain after it, are worked with it."
    ),
    "colour_up": (
        "A colour that is carried from the end of one row to that of another hangs there until it is "
        "wanted: lay it loosely up the edge, on the wrong side at a join, and draw it no tighter than "
        "the rows are high."
    ),
    "stripes": "{told}",
    "stripes_again": "{told}, over and over",
    "stripes_on": "{where}: {told}",
    "stripe": "{rows} rows of colour {letter}",
    "stripe_one": "1 row of colour {letter}",
    "stripe_rest": "colour {letter} to the end",
    "ends_of": "{number} of {letter}",
    "ends_of_named": "{number} of {letter} ({name})",
    "finish_colours": (
        "The colours leave {ends} ends to weave in, besides those of new balls and of seams: {listed}."
    ),
    # Gauge
    "gauge_main": (
        "{stitches} sts and {rows} rounds in {stitch} to {span}, {state}, on a {hook} hook. It was "
        "counted to within {percent} % (95 %), which is {girth} on the widest girth."
    ),
    "gauge_estimated": (
        "{stitch} ({sections}) was not swatched: its gauge is estimated from {main}."
    ),
    "gauge_growth": (
        "Worn, the fabric grows {percent} % in length. The rounds are planned for that: lengths "
        "are worn lengths unless they say that the work lies flat."
    ),
    "gauge_check": (
        "Measure your own swatch the same way before you begin. Another gauge needs other numbers: "
        "draft the pattern again from your swatch rather than follow this one."
    ),
    "gauge_swatch_turned": (
        "Swatch for it with the {hook} hook: {stitch} in rows turned as the rounds are, at least "
        "{size} wide and high. Measure it {state}, in the middle."
    ),
    "gauge_swatch_unturned": (
        "Swatch for it with the {hook} hook: {stitch} with the right side always facing, as the "
        "rounds are; in rounds, or flat by cutting the yarn after each row or carrying it loosely "
        "across the back; at least {size} wide and high. Measure it {state}, in the middle."
    ),
    "size_cm": "15 cm",
    "size_in": "6 in",
    "state_as worked": "as worked",
    "state_washed": "washed and dried",
    "state_hung": "hung",
    "span_cm": "10 cm",
    "span_in": "4 in",
    # Abbreviations
    "abbr_st": "stitch",
    "abbr_sts": "stitches",
    "abbr_sp": "space",
    "abbr_sps": "spaces",
    "abbr_rep": "repeat",
    "abbr_rnd": "round",
    "abbr_rnds": "rounds",
    "abbr_RS": "right side",
    "abbr_WS": "wrong side",
    "abbr_tog": "{stitch}, {n} together",
    "how_tog": (
        "Work each {stitch} into its own stitch, but stop before its last {yarn_over}: one more "
        "loop stays on the hook each time. Then {yarn_over} and draw through all loops."
    ),
    # Before you start
    "way_joined and turned": (
        "Work from the waist down in joined rounds and turn after each, so that the join keeps its "
        "place at {join}."
    ),
    "way_joined": (
        "Work from the waist down in joined rounds, right side always facing. Rounds that are not "
        "turned lean a little: after ten of them measure how far the join has moved from {join}; "
        "it will move as far again in every ten."
    ),
    "way_spiral": (
        "Work from the waist down in a spiral, right side always facing. Keep a marker in the "
        "first stitch of the round, which begins at {join}. The beginning drifts: after ten rounds "
        "measure how far it has moved from {join}; it will move as far again in every ten."
    ),
    "spiral_step": ("The spiral ends in a low step; the slip stitch at the very end evens it out."),
    "spiral_taper": (
        "The spiral begins and ends in a step as high as a stitch. To soften it, begin the first "
        "round with {up} in place of its first {n} {stitch}, and end the last round the same way "
        "down; each still counts as one stitch."
    ),
    "way_side": (
        "Positions are told from front, back and sides of the wearer. You hold the skirt with its "
        "waist edge down, the other way up than it is worn: with the right side facing, a round of "
        "a right-handed maker goes from the join over the {first} first, then over the {second}."
    ),
    "front": "front",
    "back": "back",
    "left_handed": (
        "Left-handed: work as written; your rounds run the other way, and left and right of the "
        "work change places, but not the wearer's."
    ),
    "left_title": "Left-handed",
    "left_work": (
        "This pattern is set for the left hand. Work every row and round as it is written, from left to "
        "right where a right-hander works from right to left. What you make is the mirror image: counts, "
        "lengths and yarn stay the same, and whatever slants, slants the other way. The stitches are "
        "explained for the left hand."
    ),
    "left_drawing": "The drawing is mirrored too: it shows your {kind}.",
    "left_join": (
        "Your rounds begin and end at {join}, where a right-hander has the other side; this pattern says "
        "so throughout."
    ),
    "left_lean": "Rounds that are not turned lean the other way too.",
    "left_sewn": (
        "What is sewn on in the end goes where it is said: there left and right are the wearer's, and do "
        "not change."
    ),
    "left_edges": (
        "Where rows, edges and joins are told by left and right, read the other: they are named as a "
        "right-hander's work lies."
    ),
    "left_pieces": "So, worn, these change sides: {pairs}.",
    "left_pair": "“{name}” is the {other}",
    "left_caption": "{caption} Drawn for the left hand.",
    "left_terms": "{terms}, for the left hand",
    "way_side_left": (
        "Positions are told from front, back and sides of the wearer. You hold the skirt with its "
        "waist edge down, the other way up than it is worn: with the right side facing, your round "
        "goes from the join over the {first} first, then over the {second}."
    ),
    "markers_increase": (
        "A marker shows where its next increase goes: work up to the marked stitch, work the "
        "increase into it, and move the marker up as told."
    ),
    "markers_decrease": (
        "A marker shows where its next decrease goes: the marked stitch is one of those that are "
        "worked together. Then move the marker up as told."
    ),
    "from_join": "from the join",
    "from_join_side": "from the join, counted towards the front",
    "join_centre back": "centre back",
    "join_left side": "the wearer's left side",
    "join_right side": "the wearer's right side",
    "chain_counts": (
        "The turning chain of {n} counts as the first {stitch} of the round, in text and counts."
    ),
    "chain_counts_top": (
        "The turning chain of {n} counts as the first {stitch} of the round, in text and counts; "
        "each round closes into its top."
    ),
    "chain_of_patterns": (
        "A round of a stitch pattern may say otherwise of its own chain, and then that holds."
    ),
    "chain_does_not_count": (
        "The turning chain of {n} does not count as a stitch, in text or counts: work the first "
        "{stitch} into the first stitch too."
    ),
    "chain_does_not_count_top": (
        "The turning chain of {n} does not count as a stitch, in text or counts: work the first "
        "{stitch} into the first stitch too, and close each round into the top of the chain. That "
        "join is no stitch either; do not work into it."
    ),
    "brackets": (
        "RS or WS after the number of a round is the side that faces you. Square brackets hold "
        "what is worked as often as the number after them says, round brackets what is worked into "
        "one stitch. The count of a round is what you have when it is done."
    ),
    "lengths": (
        "Lengths are given in rounds and on the tape, and the tape is right. If the two part by "
        "more than a round, your rounds are not as high as the swatch's: have the pattern drafted "
        "again from what you measure."
    ),
    # Sections
    "begin": "Begin at the waist; the rounds begin and end at {join}.",
    "long_chain": (
        "So long a chain twists easily: lay it flat along a ruler or the edge of a table before "
        "you join it. Or leave it open, work the first round flat along it, join then, and close "
        "the gap below with the tail."
    ),
    "pattern_repeats": "{name}: {repeats} repeats of {multiple} stitches all round, on {count}.",
    "pattern_grows": (
        "{name}: {before} repeats of {multiple} stitches become {repeats}, on {count} at the end."
    ),
    "pattern_columns": (
        "{name}: {columns} panels of {repeats} repeats of {multiple} stitches, and after each a plain "
        "column in {stitch}, of {before} stitches at the beginning and {after} at the end."
    ),
    "pattern_rows": "Its {rows} rounds come again and again.",
    "pattern_setup": (
        "It begins with rounds that come once ({setup}); the {rows} after them come again and again."
    ),
    "pattern_base_one": "Round {round}, in {stitch}, only makes the count.",
    "pattern_base": "Rounds {rounds}, in {stitch}, only make the count.",
    "pattern_repeats_flat": (
        "{name}: {repeats} repeats of {multiple} stitches across, on {count} in all."
    ),
    "pattern_rows_flat": "Its {rows} rows come again and again.",
    "pattern_setup_flat": (
        "It begins with rows that come once ({setup}); the {rows} after them come again and again."
    ),
    "pattern_base_one_flat": "Row {round}, in {stitch}, only makes the count.",
    "pattern_base_flat": "Rows {rounds}, in {stitch}, only make the count.",
    "pattern_width": "It is {after} wide.",
    "pattern_girth": "It is {after} around.",
    "pattern_girths": "From {before} around to {after}.",
    "pattern_left": "{left} places to work into, {repeats} whole repeats",
    "pattern_left_columns": (
        "{left} places to work into, {repeats} whole repeats and {columns} columns"
    ),
    "pattern_gauge": (
        "{name}: a repeat of {multiple} stitches is {width} wide on a {hook} mm hook, and {rows} rounds "
        "of it are {height} high. Swatch it too: it has a gauge of its own."
    ),
    "pattern_gauge_one": (
        "{name}: a repeat of {multiple} stitches is {width} wide on a {hook} mm hook, and a round of it "
        "is {height} high. Swatch it too: it has a gauge of its own."
    ),
    "pattern_unturned": "Do not turn after its rounds.",
    "straight": "{rounds} rounds without shaping, {count} stitches.",
    "straight_one": "One round without shaping, {count} stitches.",
    "straight_flat": "{rounds} rows without shaping, {count} stitches.",
    "straight_one_flat": "One row without shaping, {count} stitches.",
    "as_told": "{rounds} rounds, shaped as they say: {first} stitches in the first, {last} in the last.",
    "as_told_one": "One round, shaped as it says: {last} stitches.",
    "as_told_flat": "{rounds} rows, shaped as they say: {first} stitches in the first, {last} in the last.",
    "as_told_one_flat": "One row, shaped as it says: {last} stitches.",
    "shape": (
        "From {before} to {after} stitches in {rounds} rounds: {add} at each of {points} shaping "
        "points. Shape {rhythm}."
    ),
    "shape_flat": (
        "From {before} to {after} stitches in {rounds} rows: {add} at each of {points} shaping "
        "points. Shape {rhythm}."
    ),
    "add_1": "one stitch more",
    "add_2": "two stitches more",
    "add_3": "three stitches more",
    "add_4": "four stitches more",
    "less_1": "one stitch fewer",
    "less_2": "two stitches fewer",
    "less_3": "three stitches fewer",
    "less_4": "four stitches fewer",
    "fullness": (
        "Fullness λ = {share}: {what} (0 is a tube, 1 lies flat, more than that ruffles)."
    ),
    "fullness_tube": "a tube",
    "fullness_cone": "a cone",
    "fullness_flat": "it lies flat",
    "fullness_ruffle": "a ruffle",
    "lies_tube": "It hardly widens or narrows.",
    "lies_cone_wider": "It widens like a cone.",
    "lies_cone_narrower": "It narrows like a cone.",
    "lies_flat": "It lies flat, like a disc.",
    "lies_ruffle": "It ruffles.",
    "stray": (
        "On the way the skirt gets up to {stray} than a smooth outline, {depth} below the waist "
        "edge; that is planned."
    ),
    "check_section": (
        "After round {round}: {count}. Lying flat, the work is {flat} across ({girth} around) and "
        "{depth} long from the waist edge."
    ),
    "check_worn": " Worn, it hangs to {depth}.",
    "edging_intro": (
        "{name} with the {hook} hook, over {base} stitches: {repeats} repeats of {multiple}."
    ),
    "edging_intro_one": "{name} with the {hook} hook, over {base} stitches.",
    "edging_correction": (
        "Its first round takes the {hem} stitches of the hem to {base}, spread evenly."
    ),
    # Waist
    "gap": "With the tail of the foundation close the gap at the foot of its join.",
    "elastic_1": (
        "Cut {cut} of elastic. Lap the ends by {lap} and sew the lap flat through both layers: a "
        "ring of {ring}. Pull it over your hips before you go on."
    ),
    "elastic_2": (
        "Mark quarters on the ring and on the waist edge, from the join on ({quarter} stitches "
        "each), lay the ring along the edge and pin quarter to quarter."
    ),
    "elastic_3": (
        "With the right side facing, join the yarn to the waist edge at {join}. For each {stitch} "
        "insert the hook under the elastic into the stitch, pull up a loop as high as the elastic "
        "and finish above it: {n} {stitch} in each stitch, {total} in all. Pull the elastic out to "
        "the next pin as you go; when it is covered, it must still slide."
    ),
    "elastic_3_one": (
        "With the right side facing, join the yarn to the waist edge at {join}. For each {stitch} "
        "insert the hook under the elastic into the stitch, pull up a loop as high as the elastic "
        "and finish above it, {total} {stitch} in all. Pull the elastic out to the next pin as you "
        "go; when it is covered, it must still slide."
    ),
    "eyelets": (
        "The eyelets are in round {round}: {eyelets} of them, an even number, so that both ends of "
        "the cord come out on the right side at centre front."
    ),
    "cord_1": (
        "Buy a cord of {cord}, or crochet one with the {hook} hook: chain until it is that long, "
        "not pulled, then slip stitch back into every chain."
    ),
    "cord_2": (
        "Thread it from the right side: in at one of the two eyelets beside centre front (the "
        "{first} and the {second} {from_join}), out at the next, and so all the way round, until "
        "it comes out at the other."
    ),
    "cord_3": "Knot both ends, so that they cannot slip back, and tie a bow.",
    "cord_3_child": (
        "Make no knots: turn each end back on itself and sew it flat. Sew the cord down at centre "
        "back, and keep its ends as short as the caution says."
    ),
    "band_1": (
        "The band is worked sideways: its rows will stand upright around the waist. All {rows} "
        "rows should measure {girth}, not pulled. If the tape disagrees, stop at that length, "
        "after an even number of rows; the seam is then spread over the rows that you have."
    ),
    "band_2": "Lay the first and the last row together, right sides in, and join them to a ring.",
    "band_3": (
        "Put the band inside out over the waist of the skirt, right sides together, its seam at "
        "{join}. Pin quarter to quarter: {quarter} stitches of the skirt to {rows} row ends of the "
        "band. Join the yarn at {join} and work through both edges, pulling the band out to the "
        "next pin as you go. Where a row end takes 2, work two stitches of the skirt into it, one "
        "after the other. Then fold the band up."
    ),
    "band_quarter": "Of the seam to the waist, each quarter of {rows} row ends takes {total}: {told}.",
    "band_quarters": "Of the seam to the waist: {told}.",
    "band_nth_quarter": "quarter {n}, {rows} row ends take {total}",
    # Strand
    "strand_1": (
        "Cut {cut} of yarn and part it into its plies: keep {plies} of {of}, and wind up the rest. "
        "Untwist a forearm's length at a time, holding the end free to spin. Stiffen the tip with "
        "a little glue or wax."
    ),
    "strand_1_unknown": (
        "Cut {cut} of yarn and part it into its plies: keep {plies}, and wind up the rest. Untwist "
        "a forearm's length at a time, holding the end free to spin. Stiffen the tip with a little "
        "glue or wax."
    ),
    "strand_2": (
        "Thread all beads before you begin: {beads}, and {spare} to spare. The {hook} hook only "
        "has to catch the {plies} plies, it does not go through the beads."
    ),
    "strand_3": (
        "Leave a tail of {tail} and make a slip knot. Then work the row: {chains} chains in all. "
        "The first chain after each bead is pulled tight and locks it. Leave a tail of {tail} at "
        "the end too."
    ),
    "strand_4": (
        "The strand should measure {length} and will hang {sag} deep. Try it on, then sew it with "
        "its tails to the round below the waist edge: one end {here}, the other {there}. Centre "
        "front is {front} stitches {from_join}."
    ),
    "strand_at_front": "at centre front",
    "strand_at_left": "{n} stitches to the wearer's left of centre front",
    "strand_at_right": "{n} stitches to the wearer's right of centre front",
    # Remarks that the planner words for the designer
    "remark_hip_depth": (
        "How far the hip lies below the waist was not measured, so the girth there is not checked. "
        "Measure it, and draft again."
    ),
    "remark_high_hip": (
        "The high hip was not measured, so nobody has checked the girth between waist and hip, "
        "where a skirt is most often too tight. Measure it about half way down, and how far below "
        "the waist it lies, and draft again."
    ),
    "remark_edging_hook": (
        "The designer works the edging with a {theirs} hook. Your main hook differs from the "
        "designer's, so yours for the edging does in the same measure: {edging_hook}."
    ),
    "remark_edging_correction": (
        "The first round of the edging changes more than one stitch in fifty, which may show as a "
        "faint ruffle or gathering."
    ),
    "remark_edging_width": (
        "The edging is planned as wide as the stitches under it. Work a hand's width of it first: "
        "if it draws in take a larger hook, if it waves a smaller one."
    ),
    "remark_elastic_cover": (
        "So many stitches on so short a ring sit very close. Try a hand's width first; if they will "
        "not close up so far, work fewer in each stitch."
    ),
    "remark_rib_gauge": (
        "The rib was not swatched, so its rows are an estimate: go by the length, not by the row."
    ),
    "remark_strand_sample": (
        "No sample was given, so the length of the strand is an estimate, good to 40 %. Work "
        "ten repeats and measure them, and add or leave out repeats until the strand is as long as "
        "it should be."
    ),
    # Finishing
    "finish_ends": "Weave in each end in three directions, over 5 cm at least.",
    "finish_ends_in": "Weave in each end in three directions, over 2 in at least.",
    "finish_block": (
        "Wash the skirt as the swatch was washed, and dry it lying flat to these measurements: a "
        "wet skirt that hangs grows."
    ),
    "block_caption": "To block to, lying flat; depths are from the waist edge to the lower edge of the round",
    "around": "around",
    "across": "across",
    "finish_length": "Lying flat it is {flat} long with the edging; worn, {worn}.",
    "finish_length_same": "With the edging it is {flat} long.",
    # Why
    "why_intro": (
        "Each number with the body, the ease and the gauge that it comes from, first cause first."
    ),
    "why_section": "{name}: rounds",
    "why_as_above": "as at the {at}: {told}",
    "why_share": (
        "{told}; a skirt that widens as much as this (λ = {share}) reaches the hip in time on "
        "about {percent} % of surveyed women"
    ),
    "why_tube": "{told}; a tube (fullness λ = 0)",
    "why_weighed": "{unit}, weighed on the swatch in {stitch}; stitches not weighed take yarn by their loops",
    "why_other": "{told}. Closer to the body, but longer to read: {other}",
    "other": "{points} shaping points, {rhythm}; strays at most {stray}",
    "why_edging": "edging",
    "why_elastic": "elastic",
    "why_cord": "cord",
    "why_band": "ribbed band",
    "why_strand_yarn": (
        "{told}; a chain takes about {times} times its length of yarn, and two tails of {tail}: "
        "{cut} to cut"
    ),
    "why_yarn": "yarn",
    "why_yarn_of": "yarn, colour {letter}",
    # Checked
    "checked_intro": (
        "Before this pattern was written out, every check below passed, or warns of what is not "
        "known."
    ),
    "checked_caption": "Checks and how many things they looked at",
    "check": "check",
    "looked_at": "looked at",
    "found": "found",
    "verdict_pass": "passed",
    "verdict_warn": "warning: {told}",
    "see_goes_on": "see “Going on” at a glance",
    "check_places": "Every stitch of the round below is worked into, or skipped on purpose",
    "check_repeats": "Repeats fill their rounds exactly",
    "check_counts": "Every count that is stated is the count that is worked",
    "check_planned": "Waist, hips, hem and the ends of sections have the stitches that were planned",
    "check_rounds": "Rounds close, and the side changes only where the work is turned",
    "check_numbers": "Rounds are numbered one after the other",
    "check_shaping_rounds": "The count changes in the shaping rounds and in no others",
    "check_lines": "Shaping points keep their line",
    "check_markers": "Every marker stands in a stitch of its shaping point",
    "check_multiples": "The repeats of the edging fill the hem",
    "check_begins": "Pieces begun on an edge find all their stitches there, and share none",
    "check_seams": "Edges that are joined match",
    "check_joins": "Edges that are joined are as long as each other",
    "check_stitches_close": "Every stitch ends with one loop on the hook",
    "check_terms": "Every stitch has an abbreviation of its own, in US and in UK terms",
    "check_colours": "Every colour is begun, changed and told in the materials",
    "check_ease": "Every girth has the ease it is allowed",
    "check_goes_on": "The waist goes on over the widest part",
    "check_stays_up": "Something holds the skirt up",
    "check_stride": "The hem leaves a full stride",
    "check_reads_back": "Read back from its words, the pattern makes the same stitches",
    # A garment of several pieces: what is said instead, and what is said of it alone
    "glance_caption_pieces": "Girths, and the ease between body and {kind}",
    "garment_pieces": "{kind}",
    "piece": "piece",
    "measure": "measurement",
    "finished": "finished",
    "wanted": "wanted",
    "worked": "stitches or rows",
    "measures_caption": "Finished measurements, piece by piece",
    "measure_stitches": "{count} stitches",
    "measure_rows": "{count} rows",
    "glance_join": "{name}: {told}",
    "join_same": "{first} and {second}, {length} each",
    "join_eased": (
        "{first} ({first_length}) and {second} ({second_length}); ease in {longer}, {off} longer"
    ),
    "schematic_caption_pieces": (
        "The pieces lying flat, right side up, at one scale; the arrow is the way the work grows."
    ),
    "gauge_main_plain": (
        "{stitches} sts and {rows} rows in {stitch} to {span}, {state}, on a {hook} hook. It was "
        "counted to within {percent} % (95 %)."
    ),
    "gauge_main_pieces": (
        "{stitches} sts and {rows} rows in {stitch} to {span}, {state}, on a {hook} hook. It was "
        "counted to within {percent} % (95 %), which is {girth} on the widest part."
    ),
    "gauge_growth_pieces": ("Worn, the fabric grows {percent} % in length, from the hang test."),
    "gauge_swatch_turned_pieces": (
        "Swatch for it with the {hook} hook: {stitch} in turned rows, at least {size} wide and "
        "high. Measure it {state}, in the middle."
    ),
    "left_handed_pieces": (
        "Left-handed: work as written; your rows and rounds run the other way, and left and right "
        "of the work change places, but not the wearer's."
    ),
    "chain_counts_pieces": (
        "A chain of {n} at the beginning of a row of {stitch} counts as its first {stitch}, in text "
        "and counts."
    ),
    "chain_does_not_count_pieces": (
        "A chain of {n} at the beginning of a row of {stitch} does not count as a stitch, in text "
        "or counts."
    ),
    "brackets_pieces": (
        "RS or WS after the number of a row or round is the side that faces you. Square brackets "
        "hold what is worked as often as the number after them says, round brackets what is worked "
        "into one stitch. The count is what you have when the row is done."
    ),
    "lengths_pieces": (
        "Lengths are given in rows and on the tape, and the tape is right. If the two part by more "
        "than a row, your rows are not as high as the swatch's: draft it again "
        "from what you measure."
    ),
    "make": "Make {number}.",
    "all_pieces": "everything",
    "measured": "{name} {length}",
    "measured_counted": "{name} {length} ({counted})",
    "stray_pieces": "On the way it gets up to {stray} than a smooth outline; that is planned.",
    "check_around": "After round {round}: {count}, {girth} around and {depth} long.",
    "check_across": "After row {round}: {count}, {girth} wide and {depth} long.",
    "joining": "Joining",
    "join_first": (
        "It goes on from one piece to the next: before you begin it, work those seams that make them "
        "meet (under Joining)."
    ),
    "joining_intro": (
        "Lay the edges together, pin their ends first, then their middles, and work through both."
    ),
    "finish_block_pieces": (
        "Wash the {kind} as the swatch was washed, and dry it lying flat to its finished "
        "measurements."
    ),
    "why_waist": "waist finish",
    "why_section_pieces": "{name}: rows",
    "why_runner_dearer": (
        "{told}. Another way to say it, {rhythm}, would stray {stray}, {by} further"
    ),
    "why_runner_closer": (
        "{told}. Closer, but longer to read: {rhythm}, which strays {stray}, {by} less"
    ),
    "check_planned_pieces": "Every piece has the stitches that were planned",
    "check_goes_on_pieces": "Every opening passes what has to go through it",
    "check_stays_up_pieces": "Something holds the {kind} up",
    "remark_high_hip_pieces": (
        "The high hip was not measured, so nobody has checked the girth between waist and hip. "
        "Measure it about half way down, and how far below the waist it lies, and draft "
        "again."
    ),
    # About
    "terms_us": "US terms",
    "terms_uk": "UK terms",
    "about_version": "Version {version}. {terms}. For {body}, in {swatch}.",
    "about_author": "Design: {author}.",
    "about_tool": "Drafted with Frogless {version}.",
    "subtitle": "for {body}, in {swatch}",
    "footer": "{title}, version {version}, for {body}; {terms}",
}

#: Words of the messages that are spelled otherwise in American English.
AMERICAN: Mapping[str, str] = {
    "centre": "center",
    "Centre": "Center",
    "fibre": "fiber",
    "fibres": "fibers",
    "colour": "color",
    "colours": "colors",
    "Colour": "Color",
    "Colours": "Colors",
}
#: The same for British English, where it is not the words of the messages.
BRITISH: Mapping[str, str] = {
    "gauge": "tension",
    "gauges": "tensions",
    "Gauge": "Tension",
}
SPELLINGS: Mapping[str, Mapping[str, str]] = {"us": AMERICAN, "uk": BRITISH}

_WORDS = {
    dialect: re.compile("|".join(rf"\b{word}\b" for word in spelling))
    for dialect, spelling in SPELLINGS.items()
}


#: What the name of a message ends with that garments of several pieces have instead.
OF_PIECES = "_pieces"


def say(drafted: Drafted, name: str, /, **values: object) -> str:
    """The message of that name in the pattern's language, its blanks filled.

    A garment of several pieces has the message "name_pieces" instead, if there is one. Every
    message may name the `kind` of garment.
    """
    own = f"{name}{OF_PIECES}"
    text = MESSAGES[own if drafted.of_pieces and own in MESSAGES else name]
    filled = {"kind": drafted.basis.design.garment.kind, **values}
    return spelled(drafted, drafted.phrases.catalogue.gettext(text)).format(**filled)


def spelled(drafted: Drafted, text: str) -> str:
    """English of our own as the dialect spells it; another language as it is."""
    if drafted.language != "en":
        return text
    spelling = SPELLINGS[drafted.dialect]
    return _WORDS[drafted.dialect].sub(lambda found: spelling[found[0]], text)
