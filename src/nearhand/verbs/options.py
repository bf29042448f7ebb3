"""The options that several verbs share, each written once, and the words that may follow them."""

from __future__ import annotations

from nearhand.notation.conventions import DEGREES, FIGURES, LAYOUTS, MINOR, NAMES, SEVENTHS, SING, SYMBOLS
from nearhand.theory.melody import WAYS
from nearhand.verbs.verb import Option
from nearhand.voicing.wishes import LEFT_PATTERNS, NO_VOICING, STYLES

VOICINGS = (*STYLES, NO_VOICING)
SHELLS = ("bash", "zsh", "fish")
SWITCHES = ("on", "off")
COLOURS = ("auto", "on", "off")

TO_HELP = (
    "a key, several between commas, or all: the twelve by falling fifths; all rising, all semitones, all tones, "
    "all random or all random 7 (the same order again)"
)
KEY = Option("key", "KEY", "the key the chords are in, for example E minor; inferred when it is not given")
DEGREES_HELP = (
    "count degrees in the mode (mode), against the major scale (major), numbers in the relative major (relative)"
)
SEVENTHS_HELP = "read I7 as a dominant seventh (chord), or with the seventh of the scale, as RomanText does (scale)"
SYMBOLS_HELP = "write chord symbols plain (Cm7b5), jazz (signs), long (Cmin7b5), compact (CM7) or ascii (b and #)"
FIGURES_HELP = "write figures and extensions on the line (line), or above it (raised)"
NAMES_HELP = (
    "name notes and keys in english, german (H is B natural, B is B flat) or solfege (Do is C); chord symbols and what "
    "you type stay English"
)
SING_HELP = "write the degrees of a melody as numbers, or as syllables to sing (do is the tonic in every key)"
WAY_HELP = "how a melody goes to another key: the nearest way (a tritone goes up), always up, or always down"
LAYOUT_HELP = "draw answers as grids and keyboards (drawn), or write them for ears, one fact a line (spoken)"
VOICE_HELP = (
    "voice chords in a family: close, open, drop2, spread, shell, rootless, four-part ...; none for tones alone"
)
LEFT_HELP = "what the left hand plays below: bass, root, octave, fifth (root, fifth, octave), tenth or none"
SPAN_HELP = "how far a hand reaches: octave, ninth (the default), tenth, or semitones"
REGISTER_HELP = (
    "lowest and highest note of the upper voices (G3 E5; off for the family's own); moves takes the same positions to "
    "every key, stays finds them anew near the hand"
)
TOP_HELP = (
    "a top line that is free, falling, rising or still, or its notes, one a chord: E5 D5 - C5; melody puts "
    "the tune's own melody on top"
)
PROFILE_HELP = "compare a melody with one of the published profiles of keys; albrecht-shanahan when it is not given"
LAYOUT = Option("layout", "HOW", LAYOUT_HELP, LAYOUTS)
PLAIN = Option("plain", "", "write b and # for flats and sharps, and draw with keyboard characters")
JSON = Option("json", "", "answer in one JSON document")
NOTATION = (
    Option("degrees", "HOW", DEGREES_HELP, DEGREES),
    Option("sevenths", "HOW", SEVENTHS_HELP, SEVENTHS),
    Option("symbols", "STYLE", SYMBOLS_HELP, SYMBOLS),
    Option("figures", "WHERE", FIGURES_HELP, FIGURES),
    Option("names", "HOW", NAMES_HELP, NAMES),
    LAYOUT,
    PLAIN,
    JSON,
)
MELODY = Option("melody", "NOTES", "a melody over the chords or alone: 5_ | 1 2 3 1 |, E4 F#4 [G4 A4], do re mi")
SING_OPTION = Option("sing", "HOW", SING_HELP, SING)
WAY = Option("way", "WAY", WAY_HELP, WAYS)
MINOR_OPTION = Option(
    "minor",
    "FORM",
    "read bare 6 and 7 in minor as in the natural scale (natural), with a raised 7 (harmonic), or both raised where "
    "the melody rises and low where it falls (melodic)",
    MINOR,
)
WITH_MELODY = (MELODY, SING_OPTION, WAY)
READING = (KEY, *NOTATION)
VOICING = Option("voicing", "STYLE", VOICE_HELP, VOICINGS)
LOOP = Option("loop", "", "let the last chord lead back to the first")
HANDS = (
    LOOP,
    Option("left", "PATTERN", LEFT_HELP, LEFT_PATTERNS),
    Option("span", "SPAN", SPAN_HELP),
    Option("register", "NOTES", REGISTER_HELP),
    Option("top", "LINE", TOP_HELP),
    Option("pin", "PINS", "chords with their notes, for example 2 D4 G4 Bb4; 4 B3 D4 F4 G4"),
    Option("first", "NOTES", "the notes of the first chord, for example E4 G4 C5"),
    Option("last", "NOTES", "the notes of the last chord"),
    Option("weights", "WEIGHTS", "what costs weigh, for example leap 3, parallels 10"),
)
PATH = Option("path", "N", "the N-th best path instead of the best")
VOICED_READING = (VOICING, *HANDS, PATH, *READING)
