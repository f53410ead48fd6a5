"""What the drawings say, by name; a dialect or language hands in its own words for some or all."""

from __future__ import annotations

from collections.abc import Mapping

WORDS: Mapping[str, str] = {
    # Landmarks and sides, used in both drawings.
    "top_edge": "top edge",
    "waist_girth": "waist",
    "high_hip_girth": "high hip",
    "hip_girth": "hip",
    "hem": "hem",
    "join_centre back": "joined at centre back (behind)",
    "join_left side": "joined at the wearer’s left side",
    "join_right side": "joined at the wearer’s right side",
    "begin_centre back": "begun at centre back (behind)",
    "begin_left side": "begun at the wearer’s left side",
    "begin_right side": "begun at the wearer’s right side",
    "count": "{count} sts, {girth}",
    "estimated": "body estimated",
    "wanted": "wanted girth (body and ease)",
    # The schematic.
    "front": "front, folded flat; {join}",
    "edging": "edging",
    "edging_value": "{repeats} repeats, {girth}",
    "edging_plain": "{count} sts, {girth}",
    "elastic": "covered elastic",
    "elastic_value": "ring of {girth}",
    "cord": "drawcord",
    "cord_value": "{length} long",
    "band": "ribbed band",
    "band_value": "{rows} rows, {girth}",
    "strand": "{name}: {beads} beads, hangs {sag} deep",
    "shaping": "shaping points, with a tick at each shaping round",
    "side_join": "join",
    # The pieces lying flat.
    "flat": "the pieces lying flat, right side up, at one scale",
    "way": "direction of work",
    "make": "{name} (make {number})",
    "measure": "{name}: {length}",
    "measure_stitches": "{name}: {length} ({count} sts)",
    "measure_rows": "{name}: {length} ({count} rows)",
    "measure_of": "{piece}, {measure}",
    "tell_piece": "{name}: {measures}.",
    # The profile.
    "profile": "girth by depth below the waist edge",
    "worked": "the rounds as worked",
    "body": "body",
    "allowed": "landmark as worked, with what is allowed there",
    "wanted_value": "wanted {girth}",
    "rounds": "shaping rounds, numbered where there is room",
    "stray": "farthest from wanted: {strays}",
    "stray_value": "{stray} in round {round}",
    # The drawings in words.
    "tell_first": "Front view of a skirt, folded flat:"
    " {girth} around at the {at} ({count} stitches)",
    "tell_girth": "{girth} at the {at}, {depth} down ({count} stitches)",
    "tell_length": "It is {length} long from the waist edge to the hem",
    "tell_widens": "Rounds {first} to {last} widen it"
    " (shaping points: {points}, shaping rounds: {rounds})",
    "tell_narrows": "Rounds {first} to {last} narrow it"
    " (shaping points: {points}, shaping rounds: {rounds})",
    "tell_elastic": "At the waist a covered elastic, a ring of {girth}",
    "tell_cord": "At the waist a drawcord through {eyelets} eyelets, with a bow in front",
    "tell_band": "At the waist a ribbed band {height} high",
    "tell_edging": "Along the hem an edging of {repeats} repeats",
    "tell_edging_plain": "Along the hem an edging of {count} stitches",
    "tell_strand": "From the waist hangs a {name} of {beads} beads, {sag} deep",
    "tell_join": "The rounds are {join}",
    "tell_graph": "Graph of girth against depth",
    "tell_landmark": "At the {at}, {depth} down, wanted {wanted}, worked {girth}",
    "tell_stray": "Rounds {first} to {last} are farthest from the wanted girth"
    " {depth} down, by {stray}",
}


def with_defaults(labels: Mapping[str, str]) -> Mapping[str, str]:
    """The labels handed in, completed."""
    return {**WORDS, **labels}


def landmark_name(key: str, words: Mapping[str, str]) -> str:
    """The landmark's name; for one that has no words, its key spelled out."""
    return words.get(key, key.removesuffix("_girth").replace("_", " "))
