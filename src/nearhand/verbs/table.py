"""The table of verbs: one entry each, feeding the reader of lines, the help and the completion."""

from __future__ import annotations

from nearhand.harmony.key_profiles import PROFILES
from nearhand.melody.ranges import VOICES
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import DEGREES, FIGURES, LAYOUTS, NAMES, SEVENTHS, SING, SYMBOLS
from nearhand.notation.errors import InputError
from nearhand.theory.melody import WAYS
from nearhand.verbs import options
from nearhand.verbs.options import COLOURS, SWITCHES
from nearhand.verbs.verb import Option, Verb
from nearhand.voicing.wishes import TOP_LINES

VERBS = (
    Verb(
        "show",
        "[CHART]",
        "show chords, numerals, numbers, notes and motion, in one key or several",
        "show.show",
        (
            Option("to", "KEYS", options.TO_HELP),
            *options.WITH_MELODY,
            *options.VOICED_READING,
        ),
        (
            'show "| Em | Bm/D | Am/C | B7 |" --to "C minor,G minor"',
            "show waltz.toml --to all --voicing none",
            'show "| Dm7 | G7 | Cmaj7 |" --voicing drop2 --top falling',
        ),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "melody",
        "[NOTES]",
        "put a melody over the chords or alone, and show it in numbers and notes, in one key or several",
        "melody.melody",
        (
            Option("to", "KEYS", options.TO_HELP),
            Option("meter", "METER", "the meter of a melody alone, for example 3/4; 4/4 when it is not given"),
            Option("alone", "", "put the chords away that are there"),
            options.MINOR_OPTION,
            options.SING_OPTION,
            options.WAY,
            *options.READING,
        ),
        ('melody "G: 5_ | 1 2 [3 4] 5 | 6 b7 6 5 |" --to all', 'melody "E4 F#4 [G4 A4] B4"', "melody off"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "keys",
        "[CHART]",
        "say which keys the chords or a melody may be in, and where the key turns",
        "keys.keys",
        (
            Option("melody", "NOTES", "a melody, alone or with the chords: E4 F#4 [G4 A4], or without octaves"),
            Option("profile", "NAME", options.PROFILE_HELP, tuple(PROFILES)),
            *options.READING,
        ),
        ('keys "| Am | F | C | G |"', 'keys --melody "E F# G A B D# E"'),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "cadences",
        "[CHART]",
        "name phrases and cadences at their bars, and where minor turns",
        "cadences.cadences",
        options.VOICED_READING,
        ('cadences "| Am | Em | Dm | E7 |"',),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "explain",
        "[CHART] [N]",
        "say what each chord is and does, or chord N alone",
        "explain.explain",
        options.VOICED_READING,
        ('explain "| C | E7 | Am | Fm | C |"', "explain 4"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "tones",
        "[CHART] [N]",
        "say what each note of the melody is over its chord, or over chord N, and where they clash",
        "tones.tones",
        (*options.WITH_MELODY, *options.READING),
        ('tones "| C | G7 | C |" --melody "E4 F E C | B3 A3 B3 D | C - - -"', "tones 2"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "borrow",
        "[KEY]",
        "list the chords that each parallel mode lends to a key",
        "borrow.borrow",
        options.NOTATION,
        ('borrow "C major"', "borrow Eb"),
        ("keys",),
        one_shot=True,
    ),
    Verb(
        "instead",
        "[CHART] N",
        "say what else fits in place of chord N, nearest first",
        "instead.instead",
        options.READING,
        ('instead "| Dm7 | G7 | C |" 2', "instead 3"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "lines",
        "[CHART]",
        "show each voice as a line, to be sung or played alone",
        "voice_lines.lines",
        options.VOICED_READING,
        ('lines "| Dm7 | G7 | C |" --voicing four-part',),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "why",
        "[CHART] N",
        "say why chord N has its voicing, and what the next best would cost",
        "why.why",
        options.VOICED_READING,
        ('why "| Dm7 | G7 | C |" 2', "why 3"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "others",
        "[CHART] [N]",
        "list the next best ways to voice the whole; others 2, others next or others back takes one",
        "others.others",
        (
            Option("count", "N", "how many paths to list; 5 when it is not given"),
            options.VOICING,
            *options.HANDS,
            *options.READING,
        ),
        ('others "| Dm7 | G7 | C |"', "others 2", "others next"),
        ("files", "next", "back"),
        one_shot=True,
    ),
    Verb(
        "singer",
        "[CHART]",
        "rank the keys in which a tune lies well for a singer, or for several",
        "singer.singer",
        (
            Option(
                "tune",
                "NOTES",
                "the tune's lowest and highest note in its own key: C4 E5, or as degrees: 5 3, or the whole melody; "
                "the melody on the stand when it is not given",
            ),
            Option(
                "range",
                "VOICES",
                "lowest and highest note, with the comfortable part behind them or without: A3 D5 C4 A4, or a kind of "
                "voice such as alto; several with semicolons: alto; C3 G4",
                completes=tuple(VOICES),
            ),
            Option(
                "for",
                "NAMES",
                "instruments that should have few accidentals, with commas: alto sax, guitar",
                completes=("instruments",),
            ),
            *options.READING,
        ),
        (
            'singer "| C | F | G7 | C |" --tune "C4 E5" --range "A3 D5"',
            'singer --key C --tune "5_ | 1 2 3 5 | 6 5 3 1" --range "A3 D5 C4 A4; baritone"',
            'singer --tune "5 3" --range alto --for "alto sax, guitar"',
        ),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "parts",
        "[CHART]",
        "write the chart for the instruments of a band, and for a guitar with a capo",
        "parts.parts",
        (
            Option(
                "for",
                "NAMES",
                "instruments with commas between: alto sax, guitar; one of each kind when not given",
                completes=("instruments",),
            ),
            *options.WITH_MELODY,
            *options.READING,
        ),
        ('parts "| Eb | Ab | Bb7 | Eb |" --for "alto sax, trumpet, guitar"',),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "difficulty",
        "[CHART]",
        "say what is hard about each key, and which few keys teach most",
        "difficulty.difficulty",
        (
            Option("to", "KEYS", options.TO_HELP),
            Option(
                "known",
                "KEYS",
                "the keys you know the chords in; the tune's own when it is not given",
                completes=("keys", "all"),
            ),
            Option("choose", "N", "how many keys to choose; 3 when it is not given"),
            options.MELODY,
            *options.READING,
        ),
        ('difficulty "| Dm7 | G7 | Cmaj7 |" --known "C,F,G"', "difficulty --to Eb,Ab,A,E --choose 2"),
        ("files",),
        one_shot=True,
    ),
    Verb(
        "list",
        "[FOLDER]",
        "list the charts in a folder",
        "list_charts.list_charts",
        (options.PLAIN, options.JSON),
        ("list progressions",),
        ("folders",),
        one_shot=True,
    ),
    Verb(
        "completion",
        "SHELL",
        "give the script by which bash, zsh or fish completes verbs, options and chart files",
        "completion.completion",
        (options.JSON,),
        ("completion bash",),
        options.SHELLS,
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
        "octave",
        "up|down|nearest",
        "take the melody an octave up or down, or back to the nearest way",
        "melody.octave",
        examples=("octave up",),
        completes=("up", "down", "nearest"),
    ),
    Verb("up", "[N]", "move a semitone up, or N of them", "moves.up", examples=("up", "up 2")),
    Verb("down", "[N]", "move a semitone down, or N of them", "moves.down", examples=("down", "down 3")),
    Verb(
        "key",
        "[KEY]",
        "name the key the chords are in; their numerals follow",
        "keys.key",
        examples=("key A minor",),
        completes=("keys",),
    ),
    Verb(
        "relative",
        "",
        "read the same chords in the relative key, that of the same signature",
        "moves.relative",
    ),
    Verb(
        "parallel",
        "",
        "read the same chords in the parallel key, the other mode on the same tonic",
        "moves.parallel",
    ),
    Verb(
        "voice",
        "STYLE",
        options.VOICE_HELP,
        "voicing_settings.voice",
        examples=("voice drop2", "voice four-part", "voice none"),
        completes=("words",),
    ),
    Verb(
        "loop",
        "on|off",
        "let the last chord lead back to the first, or not",
        "voicing_settings.loop",
        examples=("loop on",),
        completes=SWITCHES,
    ),
    Verb(
        "left",
        "PATTERN",
        options.LEFT_HELP,
        "voicing_settings.left",
        examples=("left fifth",),
        completes=("words",),
    ),
    Verb(
        "span",
        "SPAN",
        options.SPAN_HELP,
        "voicing_settings.span",
        examples=("span octave", "span 15"),
        completes=("words",),
    ),
    Verb(
        "register",
        "NOTES",
        options.REGISTER_HELP,
        "voicing_settings.register",
        examples=("register G3 E5", "register moves", "register off"),
        completes=("moves", "stays", "off"),
    ),
    Verb(
        "top",
        "LINE",
        options.TOP_HELP,
        "voicing_settings.top",
        examples=("top falling", "top E5 D5 - C5", "top melody", "top free"),
        completes=TOP_LINES,
    ),
    Verb(
        "pin",
        "N [NOTES]",
        "keep chord N as it is voiced now, or in the notes that follow; off lets go",
        "voicing_settings.pin",
        examples=("pin 2", "pin 2 D4 G4 Bb4", "pin 2 off", "pin off"),
        completes=("off",),
    ),
    Verb(
        "weigh",
        "COST N",
        "change what a cost weighs in the search; 0 switches it off, off restores the style's own",
        "voicing_settings.weigh",
        examples=("weigh leap 3", "weigh parallels 10", "weigh off"),
        completes=("words", "off"),
    ),
    Verb("degrees", "HOW", options.DEGREES_HELP, "settings.degrees", examples=("degrees major",), completes=DEGREES),
    Verb(
        "sevenths", "HOW", options.SEVENTHS_HELP, "settings.sevenths", examples=("sevenths scale",), completes=SEVENTHS
    ),
    Verb("symbols", "STYLE", options.SYMBOLS_HELP, "settings.symbols", examples=("symbols jazz",), completes=SYMBOLS),
    Verb("figures", "WHERE", options.FIGURES_HELP, "settings.figures", examples=("figures raised",), completes=FIGURES),
    Verb("sing", "HOW", options.SING_HELP, "settings.sing", examples=("sing syllables",), completes=SING),
    Verb("way", "WAY", options.WAY_HELP, "melody.way", examples=("way up",), completes=WAYS),
    Verb("names", "HOW", options.NAMES_HELP, "settings.names", examples=("names german",), completes=NAMES),
    Verb(
        "plain",
        "on|off",
        "draw with keyboard characters alone, b and # for flats and sharps",
        "settings.plain",
        examples=("plain on",),
        completes=SWITCHES,
    ),
    Verb(
        "colours",
        "on|off|auto",
        "colour the pages, or not; auto where the terminal says that it can; NO_COLOR goes before",
        "settings.colours",
        examples=("colours off",),
        completes=COLOURS,
    ),
    Verb("layout", "HOW", options.LAYOUT_HELP, "settings.layout", examples=("layout spoken",), completes=LAYOUTS),
    Verb(
        "paging",
        "on|off",
        "stop a long answer at every screen, or let it run through",
        "settings.paging",
        examples=("paging off",),
        completes=SWITCHES,
    ),
    Verb(
        "set",
        "[NAME [VALUE]]",
        "list the settings, or keep one for every start of the shell (commands take options); default lets it go",
        "setting.set_setting",
        (options.JSON,),
        ("set", "set symbols jazz", "set symbols default"),
        ("words",),
        one_shot=True,
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
    Verb(
        "recent",
        "[N]",
        "list the charts opened or saved lately, or open one of them",
        "recent.recent",
        (options.PLAIN, options.JSON),
        ("recent", "recent 1"),
        one_shot=True,
    ),
    Verb("undo", "", "take back the last change", "keeping.undo_change"),
    Verb("redo", "", "make it again", "keeping.redo_change"),
    Verb(
        "recover",
        "[off]",
        "bring back a session that ended early, as when the window was closed; off lets it go",
        "recovering.recover",
        completes=("off",),
    ),
    Verb(
        "help",
        "[VERB|TOPIC]",
        "explain a verb or a topic, with examples to run; help everything lists all verbs",
        "helping.give_help",
        (options.JSON,),
        ("help show", "help minor", "help everything"),
        ("verbs", "words"),
        one_shot=True,
    ),
    Verb(
        "run",
        "[N]",
        "run example N of the help or the tour shown last; the first when no number is given",
        "helping.run_example",
        examples=("run 2",),
    ),
    Verb(
        "tour",
        "[N]",
        "show around in ten steps; tour 3 goes to a step, tour next and tour back walk on",
        "touring.tour",
        examples=("tour", "tour next", "tour 3"),
        completes=("next", "back"),
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


_SAID_OTHERWISE = {
    "transpose": "to",
    "move": "to",
    "modulate": "to",
    "circle": "next",
    "round": "next",
    "previous": "back",
    "voicing": "voice",
    "write": "save",
    "load": "open",
    "substitute": "instead",
    "capo": "parts",
    "band": "parts",
    "instruments": "parts",
    "hard": "difficulty",
    "range": "singer",
    **dict.fromkeys(("tune", "theme", "notes", "solfege", "solfa", "syllables", "rhythm", "abc", "pickup"), "melody"),
    "settings": "set",
    "bye": "quit",
}
"""Words that players try first, and the verb that does it."""


def nearest_verb(word: str) -> str:
    """A hint that names the verb nearest to a word, or the chord it would be with a capital.

    >>> nearest_verb("hlep"), nearest_verb("em7")
    ('did you mean help?', 'chords begin with a capital letter: Em7')
    """
    from difflib import get_close_matches

    capital = word[:1].upper() + word[1:]
    meant = _SAID_OTHERWISE.get(word.lower())
    near = [meant] if meant else get_close_matches(word[:40].lower(), BY_NAME, n=1)
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
