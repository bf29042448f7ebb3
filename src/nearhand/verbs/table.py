"""The table of verbs: one entry each, feeding the reader of lines, the help and the completion."""

from __future__ import annotations

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import DEGREES, FIGURES, SEVENTHS, SYMBOLS
from nearhand.notation.errors import InputError
from nearhand.verbs.verb import Option, Verb
from nearhand.voicing.voice import NO_VOICING, STYLES

VOICINGS = (*STYLES, NO_VOICING)
SWITCHES = ("on", "off")

_KEY = Option("key", "KEY", "the key the chords are in, for example E minor; inferred when it is not given")
_DEGREES_HELP = (
    "count degrees in the mode (mode), against the major scale (major), numbers in the relative major (relative)"
)
_SEVENTHS_HELP = "read I7 as a dominant seventh (chord), or with the seventh of the scale, as RomanText does (scale)"
_SYMBOLS_HELP = "write chord symbols plain (Cm7b5), jazz (signs), long (Cmin7b5), compact (CM7) or ascii (b and #)"
_FIGURES_HELP = "write figures and extensions on the line (line), or above it (raised)"
_DEGREES = Option("degrees", "HOW", _DEGREES_HELP, DEGREES)
_SEVENTHS = Option("sevenths", "HOW", _SEVENTHS_HELP, SEVENTHS)
_SYMBOLS = Option("symbols", "STYLE", _SYMBOLS_HELP, SYMBOLS)
_FIGURES = Option("figures", "WHERE", _FIGURES_HELP, FIGURES)
_PLAIN = Option("plain", "", "write b and # for flats and sharps, and draw with keyboard characters")
_JSON = Option("json", "", "answer in one JSON document")
_NOTATION = (_DEGREES, _SEVENTHS, _SYMBOLS, _FIGURES, _PLAIN, _JSON)
_READING = (_KEY, *_NOTATION)
_VOICED_READING = (
    Option("voicing", "close|none", "voice the chords, so that the top note tells cadences apart", VOICINGS),
    *_READING,
)

VERBS = (
    Verb(
        "show",
        "[CHART]",
        "show chords, numerals, numbers, notes and motion, in one key or several",
        "show.show",
        (
            Option("to", "KEYS", "a key, several between commas, or all: the twelve by falling fifths"),
            Option("voicing", "close|none", "close position for two hands, or the chord tones alone", VOICINGS),
            Option("loop", "", "let the last chord lead back to the first"),
            *_READING,
        ),
        ('show "| Em | Bm/D | Am/C | B7 |" --to "C minor,G minor"', "show waltz.toml --to all --voicing none"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "keys",
        "[CHART]",
        "say which keys the chords or a melody may be in, and where the key turns",
        "keys.keys",
        (Option("melody", "NOTES", "a melody, alone or with the chords: E4 F#4 G4, or without octaves"), *_READING),
        ('keys "| Am | F | C | G |"', 'keys --melody "E F# G A B D# E"'),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "cadences",
        "[CHART]",
        "name phrases and cadences at their bars, and where minor turns",
        "cadences.cadences",
        _VOICED_READING,
        ('cadences "| Am | Em | Dm | E7 |"',),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "explain",
        "[CHART] [N]",
        "say what each chord is and does, or chord N alone",
        "explain.explain",
        _VOICED_READING,
        ('explain "| C | E7 | Am | Fm | C |"', "explain 4"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "borrow",
        "[KEY]",
        "list the chords that each parallel mode lends to a key",
        "borrow.borrow",
        _NOTATION,
        ('borrow "C major"', "borrow Eb"),
        ("keys",),
        one_shot=True,
    ),
    Verb(
        "instead",
        "[CHART] N",
        "say what else fits in place of chord N, nearest first",
        "instead.instead",
        _READING,
        ('instead "| Dm7 | G7 | C |" 2', "instead 3"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "list",
        "[FOLDER]",
        "list the charts in a folder",
        "list_charts.list_charts",
        (_PLAIN, _JSON),
        ("list progressions",),
        ("folders",),
        one_shot=True,
    ),
    Verb(
        "to",
        "KEYS",
        "move to a key, to several, or to all twelve",
        "moves.to",
        examples=("to G minor", "to all"),
        completes=("keys", "all"),
    ),
    Verb("next", "", "move a fifth down round the circle", "moves.next_key"),
    Verb("back", "", "move a fifth up round the circle", "moves.back"),
    Verb("home", "", "move to the tune's own key", "moves.home"),
    Verb(
        "key",
        "[KEY]",
        "name the key the chords are in; their numerals follow",
        "keys.key",
        examples=("key A minor",),
        completes=("keys",),
    ),
    Verb(
        "voice",
        "close|none",
        "voice in close position, or show the chord tones alone",
        "settings.voice",
        examples=("voice close",),
        completes=VOICINGS,
    ),
    Verb(
        "loop",
        "on|off",
        "let the last chord lead back to the first, or not",
        "settings.loop",
        examples=("loop on",),
        completes=SWITCHES,
    ),
    Verb(
        "degrees",
        "HOW",
        _DEGREES_HELP,
        "settings.degrees",
        examples=("degrees major",),
        completes=DEGREES,
    ),
    Verb(
        "sevenths",
        "HOW",
        _SEVENTHS_HELP,
        "settings.sevenths",
        examples=("sevenths scale",),
        completes=SEVENTHS,
    ),
    Verb(
        "symbols",
        "STYLE",
        _SYMBOLS_HELP,
        "settings.symbols",
        examples=("symbols jazz",),
        completes=SYMBOLS,
    ),
    Verb(
        "figures",
        "WHERE",
        _FIGURES_HELP,
        "settings.figures",
        examples=("figures raised",),
        completes=FIGURES,
    ),
    Verb(
        "plain",
        "on|off",
        "draw with keyboard characters alone, b and # for flats and sharps",
        "settings.plain",
        examples=("plain on",),
        completes=SWITCHES,
    ),
    Verb("open", "FILE", "open a chart", "keeping.open_chart", examples=("open waltz.toml",), completes=("files",)),
    Verb(
        "save",
        "FILE",
        "save the chart in the key it is shown in",
        "keeping.save",
        (Option("over", "", "write over a file that is there already"),),
        ("save waltz-in-g.toml",),
        ("files",),
    ),
    Verb("undo", "", "take back the last change", "keeping.undo_change"),
    Verb("redo", "", "make it again", "keeping.redo_change"),
    Verb(
        "help",
        "[VERB]",
        "explain the verbs, or one of them",
        "keeping.give_help",
        examples=("help show",),
        completes=("verbs",),
    ),
    Verb("quit", "", "leave", "keeping.leave", aliases=("exit",)),
)

BY_NAME = {name: verb for verb in VERBS for name in (verb.name, *verb.aliases)}


def find_verb(name: str, line: str, start: int = 0) -> Verb:
    """The verb of a name, which begins at ``start`` in ``line``.

    Raises InputError with the nearest name when there is none.
    """
    if name in BY_NAME:
        return BY_NAME[name]
    what = f"{name[:40]!r} is neither a verb nor a chord"
    raise InputError(what, line, start, wanted="a verb or chords", hint=nearest_verb(name))


def nearest_verb(word: str) -> str:
    """A hint that names the verb nearest to a word, or the chord it would be with a capital.

    >>> nearest_verb("hlep"), nearest_verb("em7")
    ('did you mean help?', 'chords begin with a capital letter: Em7')
    """
    from difflib import get_close_matches

    capital = word[:1].upper() + word[1:]
    near = get_close_matches(word[:40].lower(), BY_NAME, n=1)
    if near:
        return f"did you mean {near[0]}?"
    if word[:1] in "abcdefg" and _is_chord(capital):
        return f"chords begin with a capital letter: {capital}"
    return "help lists the verbs; chords begin with a capital A to G, a numeral or a number"


def _is_chord(text: str) -> bool:
    try:
        parse_chord(text)
    except InputError:
        return False
    return True
